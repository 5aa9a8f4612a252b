#include "text/yaml.hpp"

#include "text/date.hpp"
#include "text/errors.hpp"
#include "text/printable.hpp"
#include "text/words.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
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
    if (joined_) {
      joined_ = false; // the value of what was taken for a key
      return;
    }
    refuse_anchor(mark, anchor);
    add(Node{Node::Kind::null, {}, here(mark), {}, {}});
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    diagnostics_->error(errors::no_alias, here(mark), "aliases are not read; write the value out");
    add(Node{Node::Kind::null, {}, here(mark), {}, {}});
  }

  void OnScalar(const YAML::Mark& mark, const std::string&, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_anchor(mark, anchor);
    const Span span = scalar_span(file_, text_, offset(mark), value);
    if (is_cut_off(span)) {
      join(value, span);
      return;
    }
    add(Node{Node::Kind::scalar, plain_text(value, span), span, {}, {}});
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

  // What a file says is printed on terminals, lists and pages, a line each: line ends of all kinds
  // and tabs are blanks, other control characters (by escapes, as a rule) are refused.
  std::string plain_text(const std::string& value, const Span& span) {
    std::string text(trim(value));
    for (const std::string_view blank : {"\n", "\r", "\t", "\u2028", "\u2029"}) {
      for (std::size_t at = text.find(blank); at != std::string::npos; at = text.find(blank, at)) {
        text.replace(at, blank.size(), " ");
      }
    }
    if (const auto bad = find_unprintable(text)) {
      diagnostics_->error(errors::not_text, span,
                          fmt::format("this character is not text (U+{:04X})",
                                      static_cast<unsigned>(bad->character.value_or(0))),
                          "remove it");
      return printable(text);
    }
    return text;
  }

  void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (anchor != YAML::NullAnchor) {
      diagnostics_->error(errors::no_alias, here(mark),
                          "anchors are not read; write the value out where it is needed");
    }
  }

  // Whether a scalar is what follows a decimal comma in brackets: "[500 g 2,49]" is two items to
  // YAML. Dates are not meant.
  [[nodiscard]] bool is_cut_off(const Span& span) const {
    const Node* before = last_in_brackets();
    if (before == nullptr || !before->is_scalar() || span.begin != before->span.end + 1 ||
        before->scalar.empty() || parse_date(before->scalar)) {
      return false;
    }
    const std::string_view here = text_.substr(span.begin - 1);
    return here.size() > 1 && here[0] == ',' && is_digit(here[1]) &&
           is_digit(before->scalar.back());
  }

  [[nodiscard]] const Node* last_in_brackets() const {
    if (open_.empty() || open_.back().key) {
      return nullptr;
    }
    const Node& node = open_.back().node;
    if (node.is_sequence()) {
      return node.items.empty() ? nullptr : &node.items.back();
    }
    return node.entries.empty() ? nullptr : &node.entries.back().value;
  }

  // What YAML has cut in two is one again, so that nothing else is said of it.
  void join(const std::string& value, const Span& span) {
    Node& node = open_.back().node;
    Node& before = node.is_sequence() ? node.items.back() : node.entries.back().value;
    before.scalar += "," + value;
    before.span.end = span.end;
    joined_ = !node.is_sequence();
    diagnostics_->error(
        errors::cut_at_comma, before.span,
        fmt::format("within brackets YAML cuts '{}' in two at the comma", before.scalar),
        fmt::format("quote it: \"{}\"", before.scalar));
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
  bool joined_ = false; ///< a value of a mapping has been made one again
};

void refuse_duplicates(const Node& node, Diagnostics& diagnostics) {
  std::unordered_map<std::string_view, Span> seen;
  for (const Entry& entry : node.entries) {
    const auto [first, fresh] = seen.emplace(entry.key.scalar, entry.key.span);
    if (!fresh) {
      diagnostics
          .error(errors::duplicate_key, entry.key.span,
                 fmt::format("'{}' is given twice", entry.key.scalar))
          .note(first->second, "first given here");
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

std::optional<FileId> load(const std::string& path, const Files& files, Sources& sources,
                           Diagnostics& diagnostics) {
  auto text = files.read(path);
  if (!text) {
    diagnostics.error(text.error().code, {}, text.error().what, text.error().fix);
    return std::nullopt;
  }
  if (text->starts_with("\xEF\xBB\xBF")) {
    text->erase(0, 3);
  }
  return sources.add(path, std::move(*text));
}

std::optional<Node> parse_yaml(FileId file, const Sources& sources, Diagnostics& diagnostics) {
  const std::string_view text = sources.text(file);
  const Span start{file, 0, 0};
  if (const std::size_t zero = text.find('\0'); zero != std::string_view::npos) {
    diagnostics.error(errors::not_yaml, start, "this is not a text file");
    return std::nullopt;
  }
  if (const auto bad = find_not_utf8(text)) {
    const auto at = static_cast<std::uint32_t>(bad->at);
    diagnostics.error(errors::not_text, Span{file, at, at + 1}, "this byte is not UTF-8",
                      "save the file as UTF-8");
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
                    fmt::format("{} is needed, but this is {}", wanted, shape(node)));
  return nullptr;
}

} // namespace manciple::text
