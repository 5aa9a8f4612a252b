#pragma once

#include "emit/compiled.hpp"

#include <nlohmann/json.hpp>

namespace manciple::emit {

/// What is in what is eaten, by person and day and by serving, and how the aims are met.
nlohmann::ordered_json nutrition_json(const Compiled& compiled);

} // namespace manciple::emit
