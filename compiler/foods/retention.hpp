#pragma once

#include "foods/food.hpp"

namespace manciple::foods {

/// What is left of a vitamin when a food is cooked, of 1: what the food has cooked beside what it
/// has raw, both by dry weight. This apparent retention (Murphy, Criner and Gray 1975, J Agric Food
/// Chem 23:1153, from memory) takes no account of what dissolves in water that is poured away, and
/// so leaves rather too much. Of vitamin C and folate, for foods of which SR28 has both; 1 for all
/// else, and where the two rows of SR28 are so far apart that they cannot be of like samples.
double retained(const Food& food, Nutrient nutrient);

/// What 100 g of a form hold, weighed before they are cooked, once they are; nothing where there
/// are no figures.
std::optional<Nutrients> heated(const Food& food, Form form);

} // namespace manciple::foods
