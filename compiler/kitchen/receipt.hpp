#pragma once

#include "foods/book.hpp"
#include "kitchen/household.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/shop.hpp"
#include "text/date.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// One line of a receipt: what was bought.
struct Bought {
  Ingredient what;                ///< as written; its target is a food
  Rational amount;                ///< as purchased, in the food's basis
  std::optional<Cents> paid;      ///< for all of it, before tax; absent where it is not said
  std::optional<Rational> frozen; ///< of it, on that day; absent: what will be eaten too late
  std::optional<text::Date> use_by;
  bool sale = false;      ///< not what it usually costs there
  std::string instead_of; ///< what the list said; empty: nothing else
  text::Span at;
};

/// What was really bought on a day at a shop.
struct Receipt {
  std::string slug; ///< the name of its file
  ShopId shop{};
  text::Date date;
  std::vector<Bought> bought;
  std::vector<Ingredient> missing; ///< looked for, and not there
  std::optional<Cents> tax;
  Cents credit = 0;           ///< store credit that paid a part of it
  Cents off = 0;              ///< taken off the sum by the shop
  std::optional<Cents> total; ///< what was paid at the till, tax included
  text::Span at;

  /// The sum of its lines, as far as their prices are said.
  [[nodiscard]] Cents goods() const;
  /// What its lines come to: with tax, less what was taken off and what credit paid.
  [[nodiscard]] Cents sum() const { return goods() + tax.value_or(0) - off - credit; }
  /// What was paid: the total, or else what its lines come to.
  [[nodiscard]] Cents paid() const { return total.value_or(sum()); }
};

/// Puts them in the order of their days; those of a day stay as they are.
void by_date(std::vector<Receipt>& receipts);

/// What receipts are read with.
struct ReceiptContext {
  const Household& household;
  std::vector<Shop>& shops; ///< a shop that is only named here is added
  Names& foods;
};

/// A line is what was bought, as a line of what is on hand is written, and after commas what it
/// cost in all, what was frozen of it, and until when it is good: "6 lb ground beef, 24.99, freeze
/// 4.5 lb". Nothing where neither shop nor date can be told.
std::optional<Receipt> read_receipt(const text::Node& file, std::string slug,
                                    const ReceiptContext& context, text::Diagnostics& diagnostics);

/// The day that a file of receipts or of what is on hand is called after: "2027-03-06-corner".
std::optional<text::Date> day_in_name(std::string_view name);

} // namespace manciple::kitchen
