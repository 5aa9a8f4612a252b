#pragma once

#include "emit/compiled.hpp"

#include <optional>
#include <string>

namespace manciple::cli {

/// Compiles a plan file: text and measures into foods and kitchen, the kitchen resolved into
/// makings and uses, what is missing bought, what is to be done scheduled. Nothing when there are
/// errors. The search for the cheapest list ends after `seconds`.
std::optional<emit::Compiled> compile(const std::string& plan_path, text::Sources& sources,
                                      text::Diagnostics& diagnostics,
                                      double seconds = purchase::usual_search);

} // namespace manciple::cli
