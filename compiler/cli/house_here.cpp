#include "cli/house_here.hpp"

#include "kitchen/paths.hpp"
#include "text/files.hpp"

namespace manciple::cli {

std::optional<text::Node> file_here(const std::string& path, text::Sources& sources,
                                    text::Diagnostics& diagnostics) {
  const std::string full = kitchen::in_root(kitchen::house_here(), path);
  if (!text::disk().exists(full)) {
    return std::nullopt;
  }
  const auto file = text::load(full, text::disk(), sources, diagnostics);
  return file ? text::parse_yaml(*file, sources, diagnostics) : std::nullopt;
}

std::optional<text::Node> household_here() {
  text::Sources sources;
  text::Diagnostics unsaid;
  return file_here("plans/household.yaml", sources, unsaid);
}

} // namespace manciple::cli
