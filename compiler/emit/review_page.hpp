#pragma once

#include "review/months.hpp"

#include <string>

namespace manciple::emit {

/// What months came to, as a page: what was spent where, what each shop saved, what was thrown
/// away, and a picture of the prices of each food that was bought more than once. At least one
/// month.
std::string review_html(const std::vector<review::Month>& months);

} // namespace manciple::emit
