#pragma once

#include "emit/json_words.hpp"

namespace manciple::emit::json {

/// Sessions, hours of cooks, what is cooked on each day, and reminders.
void add_prep(Json& out, const Compiled& compiled);

} // namespace manciple::emit::json
