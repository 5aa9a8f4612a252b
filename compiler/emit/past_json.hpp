#pragma once

#include "emit/compiled.hpp"

#include <nlohmann/json.hpp>

namespace manciple::emit {

/// What has been done of a plan: receipts, what came and went, what is there.
nlohmann::ordered_json past_json(const kitchen::Kitchen& kitchen, const history::Past& past);

} // namespace manciple::emit
