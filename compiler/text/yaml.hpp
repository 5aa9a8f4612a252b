#pragma once

#include "text/diagnostics.hpp"
#include "text/files.hpp"
#include "text/source.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::text {

struct Entry;

/// A piece of a YAML file that knows where it stands. Scalars stay text: what a text means is for
/// the phase that reads it.
struct Node {
  enum class Kind { null, scalar, sequence, mapping };

  Kind kind = Kind::null;
  std::string scalar;         ///< the text of a scalar
  Span span;                  ///< the whole of a scalar (inside its quotes), the start of others
  std::vector<Node> items;    ///< of a sequence
  std::vector<Entry> entries; ///< of a mapping, in the order of the file

  [[nodiscard]] bool is_scalar() const { return kind == Kind::scalar; }
  [[nodiscard]] bool is_sequence() const { return kind == Kind::sequence; }
  [[nodiscard]] bool is_mapping() const { return kind == Kind::mapping; }

  /// The place of `length` bytes at `offset` of the scalar. Exact for a scalar that stands in the
  /// file as it reads (no escapes, one line); else the place of the whole scalar.
  [[nodiscard]] Span part(std::size_t offset, std::size_t length) const;
};

struct Entry {
  Node key; ///< always a scalar
  Node value;
};

/// Reads a file into `sources`. Nothing, with an error, when it is not a file that can be read or
/// is too large.
std::optional<FileId> load(const std::string& path, const Files& files, Sources& sources,
                           Diagnostics& diagnostics);

/// The one YAML document of a file. Nothing, with errors, when it is none. Keys that stand twice,
/// keys that are not text, aliases and further documents are errors.
std::optional<Node> parse_yaml(FileId file, const Sources& sources, Diagnostics& diagnostics);

/// What stands at `node`, for messages: "a list", "a mapping", "nothing", "text".
std::string_view shape(const Node& node);

/// The scalar of `node`, or an error that says what is wanted: "a date such as 2027-03-02".
const std::string* text_of(const Node& node, std::string_view wanted, Diagnostics& diagnostics);

} // namespace manciple::text
