#pragma once

#include "purchase/dice.hpp"
#include "purchase/model.hpp"

namespace manciple::purchase {

/// Which parts of the model a random instance may use.
struct Features {
  bool freezing = true;
  bool longest_age = true;
  bool opened = true;
  bool left_over = true;
  bool multi_buy = true;
  bool by_weight = true;
  bool room = false;
  bool credit = false;
  bool spend_over = false;
};

/// A random instance small enough for a general solver: a few goods, demands, offers and stops, in
/// amounts that do not fit together. It may be impossible.
Model make_small(Dice& dice, const Features& features);

} // namespace manciple::purchase
