#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::kitchen {

/// Brings what is taken as usual into line with the plan and its recipes: appliances that recipes
/// name are there, meals that the plan does not have are not. Of what is taken as usual and
/// matters, one remark tells.
void settle_usual(Kitchen& kitchen, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
