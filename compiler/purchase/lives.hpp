#pragma once

#include "buying/model/model.hpp"
#include "kitchen/kitchen.hpp"

#include <optional>

namespace manciple::purchase {

/// Days; longer than any plan: what does not spoil keeps so long.
inline constexpr int longer_than_any_plan = 3650;

/// A place at home as the model has it.
buying::Place in_model(foods::Place place);

/// Where a food is kept as it is bought, and how long.
struct Keeping {
  buying::Place place = buying::Place::pantry;
  buying::Life life;
  bool known = true; ///< else it is taken to keep until it is used
};

/// Of a food in a plan of so many days.
Keeping keeping_of(const foods::Food& food, int days);

/// Days that something on hand keeps, counted from the plan's first day, and where it stands.
/// None if it is no longer good on that day.
std::optional<Keeping> keeping_of(const kitchen::StockLot& lot, const foods::Food& food,
                                  text::Date first, int days);

/// Litres for a unit of a food, in microlitres: cool, and frozen.
buying::Volume room_cool(const foods::Food& food);
buying::Volume room_frozen(const foods::Food& food);

} // namespace manciple::purchase
