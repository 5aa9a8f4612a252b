#pragma once

#include "emit/compiled.hpp"

#include <vector>

/// A session on paper: cooks side by side along one axis of time, in letters that are read from
/// where one works, over as many sheets as that takes.
namespace manciple::emit::page {

/// The axis of a session has a line for every moment at which something begins or ends, so that the
/// words of a short task have as much room as they need; how long it takes stands in it.
class Axis {
public:
  explicit Axis(const prep::SessionPlan& session);
  /// The line at a moment, from 1; of one between two, the later one.
  [[nodiscard]] std::size_t line(int moment) const;
  [[nodiscard]] const std::vector<int>& moments() const { return moments_; }

private:
  std::vector<int> moments_; // going up
};

/// Where a task stands: its column and the lines between which it stands.
struct Cell {
  std::size_t column = 0; ///< from 2, for the first is the time; what starts by itself has the last
  std::size_t from = 0;
  std::size_t to = 0;
};

/// By task. What starts by itself has a column of its own beside the cooks, one thing below the
/// other.
std::vector<Cell> cells(const prep::SessionPlan& session, std::size_t cooks, const Axis& axis);

/// A sheet has the lines from one to before another.
struct SheetLines {
  std::size_t from = 1;
  std::size_t to = 1;
};

/// What has to be known of a sheet's content to see how much of it fits.
struct SheetContent {
  std::vector<Cell> cells;
  std::vector<std::size_t> letters; ///< by cell, of its words
  std::size_t lines = 1;            ///< of the axis
  std::size_t cooks = 1;
  bool alone = false;           ///< something starts by itself
  std::size_t bars = 0;         ///< appliances
  std::size_t bar_letters = 0;  ///< of the longest of their names, which stand upright
  std::size_t head_letters = 0; ///< of what stands above the axis of the first sheet, in full width
};

/// The sheets (A4 or US Letter across, letters of 9 pt) that an axis takes, each as full as the
/// others. A reckoning with the usual width of letters: a browser that has wider ones breaks a
/// sheet where it ends.
std::vector<SheetLines> sheets_of(const SheetContent& content);

} // namespace manciple::emit::page
