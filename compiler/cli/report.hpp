#pragma once

#include "emit/compiled.hpp"

#include <optional>
#include <string>

namespace manciple::cli {

/// Says what there is to say, on the error stream, and gives the exit code.
int report(const text::Diagnostics& diagnostics, const text::Sources& sources);

/// Compiles a plan and says what there is to say; nothing when there are errors.
std::optional<emit::Compiled> compile_and_report(const std::string& plan,
                                                 const purchase::Search& search = {},
                                                 bool strict = false,
                                                 std::optional<text::Date> as_of = std::nullopt);

/// "manciple: no food is called 'onoin'; did you mean onion?"
void complain_of_name(std::string_view what, std::string_view name, std::string_view nearest);

} // namespace manciple::cli
