#pragma once

#include <string>

namespace manciple::cli {

/// Says how a later count differs from what should have been there; where no plan is named, of the
/// one that its day is in. Gives the exit code.
int settle_count(const std::string& count, const std::string& plan);

} // namespace manciple::cli
