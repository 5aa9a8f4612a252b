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
  Rational still_there;           ///< of what receipts say was paid for
  std::vector<Thrown> thrown;     ///< what cost most first
  std::vector<FoodPrices> prices; ///< of foods bought at different prices, by name
  Rational weeks;                 ///< between the two counts; 0: there is one only
  std::vector<Rate> rates;        ///< of staples, where there are two counts
};

/// Of the plan of a kitchen. `later` is a later count of the same house, with what it has of each
/// food, in the food's basis.
struct LaterCount {
  Date date;
  std::map<foods::FoodId, Rational> amounts;
};
Review review(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
              const history::Past& past, const std::optional<LaterCount>& later);

/// In words, for the terminal.
std::string in_words(const kitchen::Kitchen& kitchen, const Review& review);

} // namespace manciple::review
