#pragma once

#include "foods/food.hpp"

/// Fruit that is bought hard and ripens at home: its record says how long that takes. What it keeps
/// ("Timeline for refrigerator applies to ripe fruit", FSIS storage data) counts from when it is
/// ripe.
namespace manciple::foods {

/// Days that it keeps once ripe, where it keeps longest; nothing for what does not ripen.
std::optional<int> keeps_ripe(const Food& food);
/// Days from the shop on which it is good if it is bought hard: held hard in the fridge, where that
/// is right, then ripened, then kept where it keeps least. Nothing for what does not ripen.
std::optional<int> keeps_hard(const Food& food);
/// Days from the shop on which a food is good where it keeps longest, unopened.
std::optional<int> keeps_from_shop(const Food& food);

} // namespace manciple::foods
