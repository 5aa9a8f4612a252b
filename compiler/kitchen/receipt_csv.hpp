#pragma once

#include "text/yaml.hpp"

#include <optional>
#include <string_view>

namespace manciple::kitchen {

/// A receipt as a table: RFC 4180, or with semicolons, as the first line has them. That line names
/// the columns by the keys of a line of a receipt ("bought", "paid", "freeze", ...); a row whose
/// first cell is "tax", "off", "credit" or "total" gives that. The day and the shop are those that
/// the file is called after: "2027-03-06-corner.csv". Gives the same that the file in YAML would.
std::optional<text::Node> receipt_of_table(text::FileId file, std::string_view name,
                                           const text::Sources& sources,
                                           text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
