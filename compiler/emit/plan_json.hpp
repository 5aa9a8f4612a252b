#pragma once

#include "emit/json_words.hpp"

namespace manciple::emit::json {

/// What is eaten and made, by whom and when: meals, makings, by-products, uses of food.
void add_plan(Json& out, const Compiled& compiled);

} // namespace manciple::emit::json
