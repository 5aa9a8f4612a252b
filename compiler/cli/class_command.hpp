#pragma once

#include <string>

namespace manciple::cli {

/// Says which foods are of a class, or which a diet does without. Gives the exit code.
int foods_of_class(const std::string& word);

} // namespace manciple::cli
