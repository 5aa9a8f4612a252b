#pragma once

#include "history/past.hpp"
#include "kitchen/kitchen.hpp"
#include "nutrition/aims.hpp"
#include "prep/prep.hpp"
#include "purchase/out_of_stock.hpp"
#include "purchase/shopping.hpp"
#include "purchase/worth.hpp"
#include "resolve/resolve.hpp"

namespace manciple::emit {

/// A plan compiled: what each phase found. Everything that is printed comes from here.
struct Compiled {
  kitchen::Kitchen kitchen;          ///< of which only what is to come is planned
  std::optional<history::Past> past; ///< where something of the plan is done
  resolve::Resolved resolved;
  purchase::Shopping shopping;
  purchase::Worth worth;
  std::vector<purchase::OutOfStock> out_of_stock; ///< by line of the list
  nutrition::Nutrition nutrition;
  std::vector<nutrition::AimMet> aims;
  prep::Prep prep;

  [[nodiscard]] const kitchen::Plan& plan() const { return *kitchen.plan; }
};

} // namespace manciple::emit
