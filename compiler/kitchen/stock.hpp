#pragma once

#include "foods/book.hpp"
#include "kitchen/ingredient.hpp"
#include "text/date.hpp"

#include <optional>
#include <vector>

namespace manciple::kitchen {

/// Something in the house.
struct StockLot {
  Ingredient what; ///< as written; its target is a food
  Rational amount; ///< as purchased, in the food's basis
  foods::Place place{};
  std::optional<text::Date> use_by; ///< last good day; absent when neither label nor tables say
  bool thawed = false;              ///< was frozen before, and is not to be frozen again
  std::optional<text::Date> opened; ///< since when it is open
  bool hard = false;                ///< fruit that has still to ripen
  bool given = false;               ///< left over from a dish, for others that ask for it

  [[nodiscard]] foods::FoodId food() const { return *what.food(); }
};

/// Something in the house that was made of a recipe: leftovers, a batch.
struct MadeLot {
  Ingredient what; ///< as written; its target is a recipe
  foods::Place place{};
  text::Date made;
  std::optional<text::Date> use_by;   ///< else it keeps as long as the recipe says
  std::optional<Rational> times = {}; ///< the recipe as written; else as `what` says
};

/// What is no longer there although no plan used it, and where it went.
struct Gone {
  Ingredient what;     ///< as written; its target is a food
  Rational amount;     ///< as purchased, in the food's basis
  bool thrown = false; ///< else eaten
};

/// What is in the house on a date, in the morning.
struct OnHand {
  std::optional<text::Date> date;
  text::Span at; ///< of the date
  std::vector<StockLot> lots;
  std::vector<MadeLot> made;
  std::vector<Gone> gone; ///< since the count before
};

/// Lines such as "2 lb onions, pantry", "1 lb ground beef, in the freezer, until 10 Apr" and "1 qt
/// milk, opened 3 Apr". What else stands after a comma is an error or a warning. A lot
/// without a use-by date keeps from the date of the list as long as the food does in its place. A
/// list without a date was counted on `usual_date`. "6 servings beef-chili, freezer" and "8 cups
/// stock, made 3 Apr" are of recipes. Under "eaten" and "thrown away" stand amounts alone.
OnHand read_on_hand(const text::Node& file, const measure::Customs& customs,
                    std::optional<text::Date> usual_date, Names& foods, Names& recipes,
                    text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
