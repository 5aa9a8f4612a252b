#pragma once

#include "foods/nutrients.hpp"
#include "kitchen/people.hpp"

#include <optional>

namespace manciple::nutrition {

/// What is recommended for a day, in the nutrient's unit. Where the sex is not said, from the
/// lesser to the greater of the two.
struct Intake {
  double least = 0;      ///< the recommended dietary allowance, or the adequate intake
  double most = 0;       ///< the same, of the other sex, where that is not said
  bool adequate = false; ///< an adequate intake: less is known than behind an allowance
  /// The tolerable upper level; of sodium the level above which less is better (2019).
  std::optional<double> upper;
};

/// Percent of a day's energy.
struct EnergyShares {
  double fat_least, fat_most;
  double carbohydrate_least, carbohydrate_most;
  double protein_least, protein_most;
};

/// US Dietary Reference Intakes (Institute of Medicine, Food and Nutrition Board, tables as of
/// 2011); sodium and potassium as renewed in 2019 (National Academies; from memory). From one year
/// of age. For pregnancy and while nursing, from 14 to 50 years. Nothing for nutrients of which the
/// tables have none: energy depends on weight and work.
std::optional<Intake> intake(foods::Nutrient nutrient, int months, std::optional<kitchen::Sex> sex,
                             std::optional<kitchen::Stage> stage = {});
std::optional<EnergyShares> energy_shares(int months);

} // namespace manciple::nutrition
