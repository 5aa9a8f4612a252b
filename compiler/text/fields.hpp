#pragma once

#include "text/keys.hpp"
#include "text/yaml.hpp"

namespace manciple::text {

/// A mapping, read by a table of its keys. What is not in the table, what is needed and missing and
/// what has another shape than the table says is an error at its place, said once; a reader is
/// handed only what fits, and asks for nothing that is not in the table.
class Fields {
public:
  /// `what` names the thing in messages where the table's own word will not do: "the food 'leek'".
  Fields(const Node& node, const Keys& keys, Diagnostics& diagnostics, std::string what = {});

  /// The value of `key`; null when it is not there or does not fit.
  [[nodiscard]] const Node* find(std::string_view key) const;
  /// The items of a list that fit; a single value is a list of one.
  [[nodiscard]] std::vector<const Node*> list(std::string_view key) const;
  /// The entries of a mapping from names whose values fit.
  [[nodiscard]] std::vector<const Entry*> named(std::string_view key) const;
  /// Whether the key stands there at all, fitting or not.
  [[nodiscard]] bool has(std::string_view key) const;

  [[nodiscard]] Span span() const { return node_->span; }

private:
  struct Found {
    const Key* key = nullptr;
    const Node* value = nullptr; // absent from the file, or does not fit: null
    std::vector<const Node*> items;
    std::vector<const Entry*> entries;
    bool present = false;
  };
  void take(const Key& key, const Entry& entry);
  void refuse_unknown(const Entry& entry);
  [[nodiscard]] const Found& get(std::string_view key) const;

  const Node* node_;
  const Keys* keys_;
  std::string what_;
  Diagnostics* diagnostics_;
  std::vector<Found> found_; // one a key of the table
};

/// The parts of a value that can be a list: its items, the single value, or nothing.
std::vector<const Node*> items_of(const Node& node);

/// The entries of a file that is a mapping from names, as its table says; those that fit.
std::vector<const Entry*> entries_of(const Node& file, const Value& value, std::string_view what,
                                     Diagnostics& diagnostics);

} // namespace manciple::text
