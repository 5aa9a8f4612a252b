#include "foods/retention.hpp"

#include <algorithm>
#include <array>

namespace manciple::foods {
namespace {

// Heat and water destroy these before all others that the tables have.
constexpr std::array lost_by_heat{Nutrient::vitamin_c, Nutrient::folate};

// Below it, the two rows are of other varieties or from another laboratory (folate of kale: 141 ug
// raw, 13 cooked). Our own choice.
constexpr double least_believed = .3;

std::optional<double> by_dry_weight(const Nutrients& figures, Nutrient nutrient) {
  const auto& amount = figures[nutrient];
  const auto& water = figures[Nutrient::water];
  const double dry = 100 - water.value_or(100);
  return amount && dry > 0 ? std::optional(*amount / dry) : std::nullopt;
}

} // namespace

double retained(const Food& food, Nutrient nutrient) {
  const bool is_lost =
      std::find(lost_by_heat.begin(), lost_by_heat.end(), nutrient) != lost_by_heat.end();
  if (!is_lost || !food.nutrients || !food.cooked) {
    return 1;
  }
  const auto raw = by_dry_weight(*food.nutrients, nutrient);
  const auto cooked = by_dry_weight(*food.cooked, nutrient);
  if (!raw || !cooked || *raw <= 0) {
    return 1;
  }
  const double share = *cooked / *raw;
  return share < least_believed ? 1 : std::min(share, 1.0);
}

std::optional<Nutrients> heated(const Food& food, Form form) {
  const Nutrients* raw = food.nutrients_of(form);
  if (raw == nullptr) {
    return std::nullopt;
  }
  Nutrients out = *raw;
  // A form with figures of its own, such as juice, is not what the cooked row is of.
  if (food.nutrients && raw == &*food.nutrients) {
    for (const Nutrient nutrient : lost_by_heat) {
      if (out[nutrient]) {
        *out[nutrient] *= retained(food, nutrient);
      }
    }
  }
  return out;
}

} // namespace manciple::foods
