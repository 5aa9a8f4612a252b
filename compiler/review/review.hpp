#pragma once

#include "history/past.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

/// What a plan came to, by its receipts and counts.
namespace manciple::review {

using kitchen::Cents;
using measure::Rational;
using text::Date;

/// A price that a receipt has.
struct PriceSeen {
  Date date;
  kitchen::ShopId shop{};
  Rational unit; ///< cents for a unit of the food's basis
  Cents paid = 0;
  Rational amount;
  bool sale = false;
};

/// What a food cost over time.
struct FoodPrices {
  foods::FoodId food{};
  std::vector<PriceSeen> seen; ///< by date
  Rational usual;              ///< the median of what was no sale, or else of all
  std::size_t lowest = 0;      ///< of `seen`
  bool varies = false;         ///< bought more than once, and not always for about the same
};

/// What going to a shop saved, in cents, before tax: what it would have cost to buy the same on the
/// same day, in whole packs, at the cheapest of the other shops of the plan, less what was paid.
/// What is left of such packs counts with the household's `leftovers are worth`.
/// What no other of them has is not in it.
struct ShopSaving {
  kitchen::ShopId shop{};
  int stops = 0;
  Rational goods;           ///< paid less than elsewhere; negative: more
  std::size_t compared = 0; ///< foods that others have, too
  std::size_t only_here = 0;
  Cents cash_back = 0;
  Cents stop_costs = 0;
  std::optional<Rational> membership; ///< its share of a year, for the days that are looked at
  /// What others would have paid more: by prices for members alone.
  std::optional<Rational> by_member_prices;

  [[nodiscard]] Rational in_all() const {
    return goods + cash_back - stop_costs - membership.value_or(0);
  }
};

/// A staple against what was used of it.
struct Rate {
  std::size_t staple = 0;
  Rational planned; ///< a week, as purchased, in the food's basis
  Rational used;
};

struct Thrown {
  foods::FoodId food{};
  Rational amount;
  std::optional<Rational> cost; ///< cents, as far as receipts say
};

struct Review {
  Date from;
  Date until; ///< up to its morning
  Cents paid = 0;
  std::map<kitchen::ShopId, std::pair<int, Cents>> by_shop; ///< stops and what was paid
  std::map<foods::Department, Cents> by_department;         ///< goods, before tax
  std::map<std::string, Rational>
      by_meal; ///< by the meal of the day; "staples", "extra", "besides"
  std::map<std::string, Rational> by_person;
  Rational thrown_away;
  Rational still_there;                         ///< of what receipts say was paid for
  std::vector<Thrown> thrown;                   ///< what cost most first
  Rational missing;                             ///< of what a count has less, and nobody says why
  std::vector<FoodPrices> prices;               ///< of foods bought, by name
  std::vector<ShopSaving> savings;              ///< by shop
  std::vector<history::Difference> differences; ///< of later counts
  Rational weeks;          ///< between the first count and the last; 0: there is one only
  std::vector<Rate> rates; ///< of staples, where there are two counts
};

/// Of the plan of a kitchen.
Review review(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
              const history::Past& past);

/// What going to each shop saved, of receipts of the plan's days up to one.
std::vector<ShopSaving> savings(const kitchen::Kitchen& kitchen, text::Date until);

/// What a count has of a food, in words: "expected 6, counted 4: 2 less, of which 1 was thrown
/// away". Nothing for what nobody would notice.
std::optional<std::string> in_words(const kitchen::Kitchen& kitchen,
                                    const history::Difference& difference);
/// In words, for the terminal.
std::string in_words(const kitchen::Kitchen& kitchen, const Review& review);

} // namespace manciple::review
