#include "text/fields.hpp"

#include "text/errors.hpp"
#include "text/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace manciple::text {
namespace {

// Whether a value has one of the shapes that it may have. What stands inside a mapping of keys is
// for its own reader to check. An error otherwise, unless `diagnostics` is null.
bool fits(const Node& node, const Value& value, std::string_view what, Diagnostics& diagnostics);

bool all_items_fit(const Node& node, const Value& value, std::string_view what,
                   Diagnostics& diagnostics) {
  bool good = true;
  for (const Node* item : items_of(node)) {
    good = fits(*item, *value.items, what, diagnostics) && good;
  }
  return good;
}

bool all_entries_fit(const Node& node, const Value& value, Diagnostics& diagnostics) {
  bool good = true;
  for (const Entry& entry : node.entries) {
    good = fits(entry.value, *value.each, entry.key.scalar, diagnostics) && good;
  }
  return good;
}

void refuse_shape(const Node& node, const Value& value, std::string_view what,
                  Diagnostics& diagnostics) {
  diagnostics.error(errors::wrong_shape, node.span,
                    fmt::format("'{}' needs {}, but this is {}", what, value.words, shape(node)),
                    value.example.empty() ? std::string()
                                          : fmt::format("for example '{}'", value.example));
}

// What has no value at all is as good as not there where a list or a mapping could stand.
bool may_be_empty(const Value& value) {
  return value.items != nullptr || value.each != nullptr;
}

bool fits(const Node& node, const Value& value, std::string_view what, Diagnostics& diagnostics) {
  if (node.kind == Node::Kind::null && may_be_empty(value)) {
    return true;
  }
  if (value.items != nullptr) {
    return all_items_fit(node, value, what, diagnostics);
  }
  if (node.is_scalar() && value.text) {
    return true;
  }
  if (node.is_mapping() && value.keys != nullptr) {
    return true;
  }
  if (node.is_mapping() && value.each != nullptr) {
    return all_entries_fit(node, value, diagnostics);
  }
  refuse_shape(node, value, what, diagnostics);
  return false;
}

} // namespace

std::vector<const Node*> items_of(const Node& node) {
  std::vector<const Node*> out;
  if (node.is_sequence()) {
    for (const Node& item : node.items) {
      out.push_back(&item);
    }
  } else if (node.kind != Node::Kind::null) {
    out.push_back(&node);
  }
  return out;
}

std::vector<const Entry*> entries_of(const Node& file, const Value& value, std::string_view what,
                                     Diagnostics& diagnostics) {
  std::vector<const Entry*> out;
  if (!file.is_mapping()) {
    refuse_shape(file, value, what, diagnostics);
  }
  for (const Entry& entry : file.entries) {
    if (fits(entry.value, *value.each, entry.key.scalar, diagnostics)) {
      out.push_back(&entry);
    }
  }
  return out;
}

Fields::Fields(const Node& node, const Keys& keys, Diagnostics& diagnostics, std::string what)
    : node_(&node),
      keys_(&keys),
      what_(what.empty() ? std::string(keys.what) : std::move(what)),
      diagnostics_(&diagnostics) {
  for (const Key& key : keys.keys) {
    found_.push_back({&key, nullptr, {}, {}, false});
  }
  if (!node.is_mapping()) {
    diagnostics.error(
        errors::wrong_shape, node.span,
        fmt::format("{} must be a mapping of keys to values, but this is {}", what_, shape(node)));
    return;
  }
  for (const Entry& entry : node.entries) {
    const auto known = std::find_if(keys.keys.begin(), keys.keys.end(),
                                    [&](const Key& key) { return key.name == entry.key.scalar; });
    if (known == keys.keys.end()) {
      refuse_unknown(entry);
    } else {
      take(*known, entry);
    }
  }
  for (const Found& found : found_) {
    if (found.key->needed && !found.present) {
      diagnostics.error(errors::missing_key, node.span,
                        fmt::format("{} needs '{}'", what_, found.key->name));
    }
  }
}

void Fields::take(const Key& key, const Entry& entry) {
  Found& found = found_[static_cast<std::size_t>(&key - keys_->keys.data())];
  if (found.present) {
    return; // it stands twice, which has been said
  }
  found.present = true;
  const Node& node = entry.value;
  const Value& value = *key.value;
  if (value.items != nullptr) {
    found.value = &node;
    for (const Node* item : items_of(node)) {
      if (fits(*item, *value.items, key.name, *diagnostics_)) {
        found.items.push_back(item);
      }
    }
  } else if (value.each != nullptr && node.is_mapping()) {
    found.value = &node;
    for (const Entry& one : node.entries) {
      if (fits(one.value, *value.each, one.key.scalar, *diagnostics_)) {
        found.entries.push_back(&one);
      }
    }
  } else if (fits(node, value, key.name, *diagnostics_) && node.kind != Node::Kind::null) {
    found.value = &node;
  }
}

void Fields::refuse_unknown(const Entry& entry) {
  std::vector<std::string_view> known;
  for (const Key& key : keys_->keys) {
    known.push_back(key.name);
  }
  std::string fix = did_you_mean(entry.key.scalar, known);
  if (fix.empty()) {
    fix = "known here:";
    for (const std::string_view key : known) {
      fix += fmt::format("{} {}", fix.ends_with(':') ? "" : ",", key);
    }
  }
  diagnostics_->error(errors::unknown_key, entry.key.span,
                      fmt::format("{} has no key '{}'", what_, entry.key.scalar), std::move(fix));
}

const Fields::Found& Fields::get(std::string_view key) const {
  const auto found = std::find_if(found_.begin(), found_.end(),
                                  [&](const Found& one) { return one.key->name == key; });
  if (found == found_.end()) {
    throw std::logic_error(fmt::format("a reader asks for '{}', which is in no table", key));
  }
  return *found;
}

const Node* Fields::find(std::string_view key) const {
  return get(key).value;
}
std::vector<const Node*> Fields::list(std::string_view key) const {
  return get(key).items;
}
std::vector<const Entry*> Fields::named(std::string_view key) const {
  return get(key).entries;
}
bool Fields::has(std::string_view key) const {
  return get(key).present;
}

} // namespace manciple::text
