#pragma once

#include "review/review.hpp"

/// Several reviews beside each other, such as those of the months of a year.
namespace manciple::review {

/// A plan that has been reviewed.
struct Month {
  const kitchen::Kitchen* kitchen = nullptr;
  const Review* review = nullptr;
};

/// A price by which those of a food are compared.
struct PricePoint {
  Date date;
  std::string shop;
  Rational unit; ///< cents, for a pound, a kilogram or one
  Cents paid = 0;
  std::string words; ///< "4 lb"
  bool sale = false;
};

/// What a food cost over months.
struct PriceHistory {
  std::string food;
  std::string unit;               ///< "/lb", " each"
  std::vector<PricePoint> points; ///< by date; at least one
  Rational usual;                 ///< the median of what was no sale, or else of all
  std::size_t lowest = 0;         ///< of `points`
};

/// Of every food, by name.
std::vector<PriceHistory> price_histories(const std::vector<Month>& months);

} // namespace manciple::review
