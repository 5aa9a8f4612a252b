#pragma once

#include "emit/compiled.hpp"

#include <optional>
#include <string>

namespace manciple::cli {

/// Compiles a plan file: text and measures into foods and kitchen, the kitchen resolved into
/// makings and uses, what is missing bought, what is to be done scheduled. Of a plan of which
/// something is done, by its receipts, counts or `as_of`, only what is to come. Nothing when there
/// are errors.
std::optional<emit::Compiled> compile(const std::string& plan_path, text::Sources& sources,
                                      text::Diagnostics& diagnostics,
                                      const purchase::Search& search = {},
                                      const text::Files& files = text::disk(),
                                      std::optional<text::Date> as_of = std::nullopt);

} // namespace manciple::cli
