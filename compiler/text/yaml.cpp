#include "text/yaml.hpp"

#include "text/errors.hpp"
#include "text/nearest.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <unordered_map>

namespace manciple::text {
namespace {

// Where the scalar that starts at `mark` stands in the file, inside its quotes. When its text does
// not stand there letter for letter (escapes, folded lines), the first line of it.
Span scalar_span(FileId file, std::string_view text, std::size_t at, std::string_view value) {
  at = std::min(at, text.size());
  const std::size_t inside =
      at < text.size() && (text[at] == '"' || text[at] == '\'') ? at + 1 : at;
  if (text.substr(inside, value.size()) == value) {
    return {file, static_cast<std::uint32_t>(inside),
            static_cast<std::uint32_t>(inside + value.size())};
  }
  std::size_t end = text.find('\n', at);
  if (end == std::string_view::npos) {
    end = text.size();
  }
  return {file, static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(std::max(end, at))};
}

// Builds the tree from yaml-cpp's events. yaml-cpp's own nodes lose the second of two equal keys;
// events keep every key and its place.
class Builder final : public YAML::EventHandler {
public:
  Builder(FileId file, std::string_view text, Diagnostics& diagnostics)
      : file_(file), text_(text), diagnostics_(&diagnostics) {}

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_anchor(mark, anchor);
    add(Node{Node::Kind::null, {}, here(mark), {}, {}});
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    diagnostics_->error(errors::no_alias, here(mark), "an alias stands here; write the value out");
    add(Node{Node::Kind::null, {}, here(mark), {}, {}});
  }

  void OnScalar(const YAML::Mark& mark, const std::string&, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_anchor(mark, anchor);
    add(Node{Node::Kind::scalar, value, scalar_span(file_, text_, offset(mark), value), {}, {}});
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    refuse_anchor(mark, anchor);
    open_.push_back({Node{Node::Kind::sequence, {}, here(mark), {}, {}}, {}});
  }
  void OnSequenceEnd() override { close(); }

  void OnMapStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    refuse_anchor(mark, anchor);
    open_.push_back({Node{Node::Kind::mapping, {}, here(mark), {}, {}}, {}});
  }
  void OnMapEnd() override { close(); }

  std::optional<Node> root;

private:
  // A collection whose end has not come yet; `key` waits for its value.
  struct Open {
    Node node;
    std::optional<Node> key;
  };

  static std::size_t offset(const YAML::Mark& mark) {
    return mark.pos < 0 ? 0 : static_cast<std::size_t>(mark.pos);
  }

  [[nodiscard]] Span here(const YAML::Mark& mark) const {
    const auto at = static_cast<std::uint32_t>(std::min(offset(mark), text_.size()));
    return {file_, at, std::min(at + 1, static_cast<std::uint32_t>(text_.size()))};
  }

  void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (anchor != YAML::NullAnchor) {
      diagnostics_->error(errors::no_alias, here(mark),
                          "an anchor stands here; write the value out where it is needed");
    }
  }

  void close() {
    Node done = std::move(open_.back().node);
    open_.pop_back();
    add(std::move(done));
  }

  void add(Node node) {
    if (open_.empty()) {
      root = std::move(node);
      return;
    }
    Open& top = open_.back();
    if (top.node.is_sequence()) {
      top.node.items.push_back(std::move(node));
    } else if (!top.key) {
      if (!node.is_scalar()) {
        diagnostics_->error(errors::wrong_shape, node.span, "a key must be a word");
      }
      top.key = std::move(node);
    } else {
      top.node.entries.push_back({std::move(*top.key), std::move(node)});
      top.key.reset();
    }
  }

  FileId file_;
  std::string_view text_;
  Diagnostics* diagnostics_;
  std::vector<Open> open_;
};

void refuse_duplicates(const Node& node, Diagnostics& diagnostics) {
  std::unordered_map<std::string_view, Span> seen;
  for (const Entry& entry : node.entries) {
    const auto [first, fresh] = seen.emplace(entry.key.scalar, entry.key.span);
    if (!fresh) {
      diagnostics
          .error(errors::duplicate_key, entry.key.span,
                 fmt::format("'{}' stands twice", entry.key.scalar))
          .note(first->second, "it stands here first");
    }
    refuse_duplicates(entry.value, diagnostics);
  }
  for (const Node& item : node.items) {
    refuse_duplicates(item, diagnostics);
  }
}

} // namespace

Span Node::part(std::size_t offset, std::size_t length) const {
  return span.end - span.begin == scalar.size() ? part_of(span, offset, length) : span;
}

std::optional<FileId> load(const std::string& path, const std::string& shown_path, Sources& sources,
                           Diagnostics& diagnostics, std::optional<Span> place) {
  const auto refuse = [&](Code code, std::string what,
                          std::string fix = {}) -> std::optional<FileId> {
    diagnostics.error(code, place, std::move(what), std::move(fix));
    return std::nullopt;
  };
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (!std::filesystem::exists(status)) {
    return refuse(errors::cannot_read, fmt::format("there is no file {}", shown_path));
  }
  if (!std::filesystem::is_regular_file(status)) {
    return refuse(errors::cannot_read, fmt::format("{} is not a file", shown_path),
                  std::filesystem::is_directory(status) ? "name a file in that directory" : "");
  }
  const auto size = std::filesystem::file_size(path, error);
  if (!error && size > largest_file) {
    return refuse(errors::too_large,
                  fmt::format("{} has {} bytes; a file of recipes or plans has at most {}",
                              shown_path, size, largest_file));
  }
  std::ifstream in(path, std::ios::binary);
  std::ostringstream bytes;
  bytes << in.rdbuf();
  if (!in) {
    if (size != 0) {
      return refuse(errors::cannot_read, fmt::format("{} cannot be read", shown_path));
    }
  }
  std::string text = std::move(bytes).str();
  if (text.starts_with("\xEF\xBB\xBF")) {
    text.erase(0, 3);
  }
  return sources.add(shown_path, std::move(text));
}

std::optional<Node> parse_yaml(FileId file, const Sources& sources, Diagnostics& diagnostics) {
  const std::string_view text = sources.text(file);
  const Span start{file, 0, 0};
  if (const std::size_t zero = text.find('\0'); zero != std::string_view::npos) {
    diagnostics.error(errors::not_yaml, start, "this is not a text file");
    return std::nullopt;
  }
  Builder builder(file, text, diagnostics);
  const std::size_t errors_before = diagnostics.errors();
  try {
    std::istringstream in{std::string(text)};
    YAML::Parser parser(in);
    if (!parser.HandleNextDocument(builder) || !builder.root ||
        builder.root->kind == Node::Kind::null) {
      if (diagnostics.errors() == errors_before) {
        diagnostics.error(errors::empty, start, fmt::format("{} is empty", sources.path(file)));
      }
      return std::nullopt;
    }
    Builder further(file, text, diagnostics);
    if (parser.HandleNextDocument(further)) {
      diagnostics.error(errors::no_alias, start, "the file holds more than one YAML document");
    }
  } catch (const YAML::Exception& e) {
    const auto at = static_cast<std::uint32_t>(
        e.mark.is_null()
            ? 0
            : std::min<std::size_t>(static_cast<std::size_t>(e.mark.pos), text.size()));
    diagnostics.error(errors::not_yaml, Span{file, at, at},
                      fmt::format("this is not YAML: {}", e.msg));
    return std::nullopt;
  }
  refuse_duplicates(*builder.root, diagnostics);
  return std::move(builder.root);
}

Fields::Fields(const Node& node, std::string what, Diagnostics& diagnostics)
    : node_(&node), what_(std::move(what)), diagnostics_(&diagnostics) {
  if (!node.is_mapping()) {
    diagnostics.error(
        errors::wrong_shape, node.span,
        fmt::format("{} is a mapping of keys to values; here stands {}", what_, shape(node)));
  }
}

const Node* Fields::find(std::string_view key) {
  known_.push_back(key);
  const auto entry = std::find_if(node_->entries.begin(), node_->entries.end(),
                                  [&](const Entry& e) { return e.key.scalar == key; });
  return entry == node_->entries.end() ? nullptr : &entry->value;
}

const Node* Fields::need(std::string_view key) {
  const Node* found = find(key);
  if (found == nullptr && node_->is_mapping()) {
    diagnostics_->error(errors::missing_key, node_->span, fmt::format("{} needs '{}'", what_, key));
  }
  return found;
}

const Node* Fields::find_text(std::string_view key) {
  const Node* found = find(key);
  return found != nullptr &&
                 text_of(*found, fmt::format("a text for '{}'", key), *diagnostics_) != nullptr
             ? found
             : nullptr;
}

const Node* Fields::need_text(std::string_view key) {
  const Node* found = need(key);
  return found != nullptr &&
                 text_of(*found, fmt::format("a text for '{}'", key), *diagnostics_) != nullptr
             ? found
             : nullptr;
}

std::vector<const Node*> Fields::list(std::string_view key) {
  const Node* found = find(key);
  std::vector<const Node*> out;
  if (found != nullptr && found->is_sequence()) {
    for (const Node& item : found->items) {
      out.push_back(&item);
    }
  } else if (found != nullptr && found->kind != Node::Kind::null) {
    out.push_back(found);
  }
  return out;
}

void Fields::close() {
  for (const Entry& entry : node_->entries) {
    if (std::find(known_.begin(), known_.end(), entry.key.scalar) == known_.end()) {
      std::string fix = did_you_mean(entry.key.scalar, known_);
      if (fix.empty()) {
        fix = "known here:";
        for (const std::string_view key : known_) {
          fix += fmt::format("{} {}", fix.ends_with(':') ? "" : ",", key);
        }
      }
      diagnostics_->error(errors::unknown_key, entry.key.span,
                          fmt::format("{} has no '{}'", what_, entry.key.scalar), std::move(fix));
    }
  }
}

std::string_view shape(const Node& node) {
  switch (node.kind) {
  case Node::Kind::null:
    return "nothing";
  case Node::Kind::scalar:
    return "text";
  case Node::Kind::sequence:
    return "a list";
  case Node::Kind::mapping:
    return "a mapping";
  }
  return "nothing";
}

const std::string* text_of(const Node& node, std::string_view wanted, Diagnostics& diagnostics) {
  if (node.is_scalar()) {
    return &node.scalar;
  }
  diagnostics.error(errors::wrong_shape, node.span,
                    fmt::format("{} is needed; here stands {}", wanted, shape(node)));
  return nullptr;
}

} // namespace manciple::text
