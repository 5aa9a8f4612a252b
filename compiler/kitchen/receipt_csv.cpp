#include "kitchen/receipt_csv.hpp"

#include "kitchen/errors.hpp"
#include "text/errors.hpp"
#include "text/printable.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

namespace manciple::kitchen {
namespace {

using text::Node;

Node scalar(std::string text, text::Span at) {
  Node node;
  node.kind = Node::Kind::scalar;
  node.scalar = std::move(text);
  node.span = at;
  return node;
}

Node empty(Node::Kind kind, text::Span at) {
  Node node;
  node.kind = kind;
  node.span = at;
  return node;
}

// The rows of a table, each cell with its place.
class Table {
public:
  Table(text::FileId file, std::string_view text) : file_(file), text_(text) {
    constexpr std::string_view mark = "\xEF\xBB\xBF"; // of UTF-8, as spreadsheets write it
    at_ = text_.starts_with(mark) ? mark.size() : 0;
    const std::string_view first = text_.substr(0, text_.find('\n'));
    comma_ = first.find(';') != std::string_view::npos ? ';' : ',';
  }

  std::vector<std::vector<Node>> rows() {
    std::vector<std::vector<Node>> out;
    while (at_ < text_.size()) {
      std::vector<Node> row;
      do {
        row.push_back(cell());
      } while (at_ < text_.size() && text_[at_] == comma_ && ++at_ <= text_.size());
      while (at_ < text_.size() && (text_[at_] == '\n' || text_[at_] == '\r')) {
        ++at_;
      }
      const bool filled =
          std::any_of(row.begin(), row.end(), [](const Node& one) { return !one.scalar.empty(); });
      if (filled) {
        out.push_back(std::move(row));
      }
    }
    return out;
  }

private:
  Node cell() {
    while (at_ < text_.size() && text_[at_] == ' ') {
      ++at_;
    }
    const bool quoted = at_ < text_.size() && text_[at_] == '"';
    at_ += quoted ? 1 : 0;
    const std::size_t begin = at_;
    std::string out;
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (quoted && c == '"') {
        const bool twice = at_ + 1 < text_.size() && text_[at_ + 1] == '"';
        if (!twice) {
          break;
        }
        ++at_;
      } else if (!quoted && (c == comma_ || c == '\n' || c == '\r')) {
        break;
      }
      out += text_[at_++];
    }
    const text::Span span{file_, static_cast<std::uint32_t>(begin),
                          static_cast<std::uint32_t>(at_)};
    while (at_ < text_.size() && text_[at_] != comma_ && text_[at_] != '\n' && text_[at_] != '\r') {
      ++at_; // the closing quote, and what stands behind it
    }
    return scalar(std::string(text::trim(out)), span);
  }

  text::FileId file_;
  std::string_view text_;
  std::size_t at_ = 0;
  char comma_ = ',';
};

bool is_sum(std::string_view word) {
  constexpr std::array<std::string_view, 4> sums{"tax", "off", "credit", "total"};
  return std::find(sums.begin(), sums.end(), word) != sums.end();
}

} // namespace

std::optional<Node> receipt_of_table(text::FileId file, std::string_view name,
                                     const text::Sources& sources, text::Diagnostics& diagnostics) {
  const std::string_view text = sources.text(file);
  const text::Span start{file, 0, 0};
  constexpr std::size_t after_day = 11; // "2027-03-06-"
  auto rows = Table(file, text).rows();
  for (const std::vector<Node>& row : rows) {
    for (const Node& cell : row) {
      if (text::find_unprintable(cell.scalar)) {
        diagnostics.error(text::errors::not_text, cell.span,
                          "this cell holds something that is not text");
        return std::nullopt;
      }
    }
  }
  if (rows.empty() || name.size() <= after_day) {
    diagnostics.error(
        errors::bad_value, start,
        rows.empty() ? "this table is empty" : "nothing says which shop this receipt is from",
        rows.empty() ? "its first line names the columns: bought,paid"
                     : "name the file after the day and the shop: 2027-03-06-corner.csv");
    return std::nullopt;
  }
  Node out = empty(Node::Kind::mapping, start);
  out.entries.push_back(
      {scalar("shop", start), scalar(std::string(name.substr(after_day)), start)});
  Node lines = empty(Node::Kind::sequence, start);
  const std::vector<Node> header = std::move(rows.front());
  for (std::size_t r = 1; r < rows.size(); ++r) {
    std::vector<Node>& row = rows[r];
    const std::string first = text::lower(row.front().scalar);
    if (is_sum(first)) {
      const auto value = std::find_if(row.begin() + 1, row.end(),
                                      [](const Node& one) { return !one.scalar.empty(); });
      if (value != row.end()) {
        out.entries.push_back({scalar(first, row.front().span), *value});
      }
      continue;
    }
    Node line = empty(Node::Kind::mapping, row.front().span);
    for (std::size_t c = 0; c < std::min(row.size(), header.size()); ++c) {
      if (!row[c].scalar.empty()) {
        line.entries.push_back(
            {scalar(text::lower(header[c].scalar), header[c].span), std::move(row[c])});
      }
    }
    lines.items.push_back(std::move(line));
  }
  out.entries.push_back({scalar("lines", start), std::move(lines)});
  return out;
}

} // namespace manciple::kitchen
