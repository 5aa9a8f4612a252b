#pragma once

#include "emit/compiled.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace manciple::emit {

/// What the ranges are, for every place where they stand.
inline constexpr std::string_view ranges_are_of =
    "Ranges: US Dietary Reference Intakes for age and sex, pregnancy and nursing (National "
    "Academies; sodium and potassium from 2019, the rest from 2011). 'At most' is the upper level; "
    "for vitamin A it applies to the ready-made kind, and for sodium it is the point above which "
    "less is better.";

/// The mean of somebody's days with meals.
nutrition::Sum mean_day(const nutrition::Eater& eater);
/// To two or three figures, as they deserve: "2.4", "62", "1870".
std::string rounded(double value, char point);
/// 0.874 is 87.
int percent_of(double share);
std::string unit_word(nutrition::Nutrient nutrient);
/// "46", "46 to 56" where the sex is not said.
std::string recommended(const nutrition::Intake& range, char point);
/// "below", "within" or "above".
std::string against(double value, const nutrition::Intake& range);
/// "31% is from fat (20 to 35 are usual), ...": the shares of a day's energy.
std::string energy_words(const nutrition::Sum& day, const nutrition::EnergyShares& shares);
/// The recipes that stand in the menu, each once.
std::vector<const kitchen::Recipe*> recipes_in_menu(const Compiled& compiled);

} // namespace manciple::emit
