#include "emit/page/session_sheets.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>
#include <set>

namespace manciple::emit::page {
namespace {

// Millimetres on paper, with letters of 9 pt.
constexpr double sheet_width = 267;  // the narrower one across is Letter, less its margins
constexpr double sheet_height = 198; // the lower one across is A4, less its margins
constexpr double letter = 1.36;      // on the average
constexpr double torn = 5;           // left at the end of a line, on the average
constexpr double row_height = 3.35;
constexpr double box = 5;        // what a tick and the line before it take of a column
constexpr double task_edge = .3; // above and below its words
constexpr double time_width = 11;
constexpr double bar_width = 4;
constexpr double alone_share = .4; // of a cook's column
constexpr double head_height = 12; // the day
constexpr double again = 8;        // the day again, and some room to spare
constexpr double names_letter = 1.75;
constexpr double names_edge = 1.5;

double rows_of(std::size_t letters, double width) {
  return std::ceil(static_cast<double>(letters) * letter / (width - torn));
}

class Reckoning {
public:
  explicit Reckoning(const SheetContent& content) : content_(content) {
    const double rest = sheet_width - time_width - bar_width * static_cast<double>(content.bars);
    const double alone = content.alone ? alone_share : 0;
    const double shares = static_cast<double>(content.cooks) + alone;
    cook_ = std::max(torn * 2, rest / shares - box);
    alone_ = std::max(torn * 2, rest / shares * alone - box);
  }

  /// So many millimetres above the axis of the first sheet.
  [[nodiscard]] double above() const {
    return head_height + rows_of(content_.head_letters, sheet_width) * row_height;
  }

  /// How high the lines from one to before another are, as in a grid of CSS: what spans several
  /// rows and needs more than they have widens them all alike, the shortest spans first.
  [[nodiscard]] double height(std::size_t from, std::size_t to) const {
    std::vector<double> rows(to - from, row_height + task_edge / 2);
    for (std::size_t span = 1; span <= rows.size(); ++span) {
      std::vector<double> wider(rows.size(), 0);
      for (std::size_t c = 0; c < content_.cells.size(); ++c) {
        const Cell& cell = content_.cells[c];
        if (cell.from < from || cell.from >= to || std::min(cell.to, to) - cell.from != span) {
          continue;
        }
        const auto first = rows.begin() + static_cast<std::ptrdiff_t>(cell.from - from);
        const double has = std::accumulate(first, first + static_cast<std::ptrdiff_t>(span), 0.0);
        for (std::size_t r = cell.from - from; r < cell.from - from + span; ++r) {
          wider[r] = std::max(wider[r], (task(c) - has) / static_cast<double>(span));
        }
      }
      std::transform(rows.begin(), rows.end(), wider.begin(), rows.begin(), std::plus<>());
    }
    return names_height() + std::accumulate(rows.begin(), rows.end(), 0.0);
  }

  /// The sheets of which none is filled higher than so much.
  [[nodiscard]] std::vector<SheetLines> filled_to(double most) const {
    std::vector<SheetLines> out;
    std::size_t from = 1;
    while (from < content_.lines) {
      const double room = most - (out.empty() ? above() : again);
      std::size_t to = from + 1;
      while (to < content_.lines && height(from, to + 1) <= room) {
        ++to;
      }
      out.push_back({from, to});
      from = to;
    }
    return out;
  }

private:
  // Of cooks, and of appliances.
  [[nodiscard]] double names_height() const {
    return names_edge +
           std::max(row_height, static_cast<double>(content_.bar_letters) * names_letter);
  }

  [[nodiscard]] double task(std::size_t c) const {
    const bool alone = content_.cells[c].column == content_.cooks + 2;
    return task_edge + rows_of(content_.letters[c], alone ? alone_ : cook_) * row_height;
  }

  const SheetContent& content_;
  double cook_ = 0;
  double alone_ = 0;
};

} // namespace

Axis::Axis(const prep::SessionPlan& session) {
  std::set<int> moments;
  for (const prep::Task& task : session.tasks) {
    moments.insert(task.start);
  }
  moments.insert(session.length);
  moments_.assign(moments.begin(), moments.end());
}

std::size_t Axis::line(int moment) const {
  const auto found = std::lower_bound(moments_.begin(), moments_.end(), moment);
  return 1 + static_cast<std::size_t>(std::distance(moments_.begin(), found));
}

std::vector<Cell> cells(const prep::SessionPlan& session, std::size_t cooks, const Axis& axis) {
  std::vector<Cell> out;
  std::vector<std::size_t> free_from(cooks + 1, 1);
  for (const prep::Task& task : session.tasks) {
    const std::size_t lane = task.cook.value_or(cooks);
    const std::size_t from = std::max(axis.line(task.start), free_from[lane]);
    const std::size_t to = std::max(from + 1, axis.line(task.start + task.hands_on));
    free_from[lane] = to;
    out.push_back({lane + 2, from, to});
  }
  return out;
}

std::vector<SheetLines> sheets_of(const SheetContent& content) {
  const Reckoning reckoning(content);
  std::vector<SheetLines> best = reckoning.filled_to(sheet_height);
  // As many sheets, and the fullest of them less full.
  constexpr double step = 8;
  for (int less_by = 1; less_by * step < sheet_height / 2; ++less_by) {
    std::vector<SheetLines> less = reckoning.filled_to(sheet_height - less_by * step);
    if (less.size() > best.size()) {
      break;
    }
    best = std::move(less);
  }
  return best;
}

} // namespace manciple::emit::page
