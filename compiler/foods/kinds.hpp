#pragma once

#include "foods/food.hpp"

#include <optional>
#include <string_view>

namespace manciple::foods {

/// Kinds of foods by which people say what they would like to eat: "vegetables", "fruit", "fruit
/// and vegetables", "pulses". By the food group of their SR28 number (11 vegetables, 09
/// fruits, 16 legumes); without a number, by the department. Potatoes count as
/// a starchy food, as the World Health Organization's 400 g of fruit and vegetables a day have it
/// (Healthy diet, fact sheet 394).
std::optional<std::string_view> parse_kind(std::string_view word);

/// Whether a food is of a kind, by the kind's name as parse_kind gives it.
bool is_of_kind(const Food& food, std::string_view kind);

} // namespace manciple::foods
