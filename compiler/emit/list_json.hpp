#pragma once

#include "emit/json_words.hpp"

namespace manciple::emit::json {

/// What is there and what is bought, which uses it serves, and what the list comes to.
void add_list(Json& out, const Compiled& compiled);

} // namespace manciple::emit::json
