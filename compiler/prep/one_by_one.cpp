#include "prep/one_by_one.hpp"

#include <algorithm>
#include <optional>

namespace manciple::prep {

Row& row_at(std::vector<Row>& rows, const scheduling::Project& project, std::size_t minute) {
  while (rows.size() <= minute) {
    rows.emplace_back(project.capacity.size(), 0);
  }
  return rows[minute];
}

std::vector<int> one_by_one(const scheduling::Project& project, const std::vector<int>& order,
                            std::vector<Row> used) {
  constexpr int not_yet = -1;
  const std::size_t count = project.activities.size();
  std::vector<int> out(count, not_yet);
  const auto fits = [&](const scheduling::Activity& what, int at) {
    auto minute = static_cast<std::size_t>(at);
    for (const scheduling::Piece& piece : what.pieces) {
      for (int m = 0; m < piece.minutes; ++m, ++minute) {
        for (std::size_t r = 0; minute < used.size() && r < piece.takes.size(); ++r) {
          if (piece.takes[r] > 0 && used[minute][r] + piece.takes[r] > project.capacity[r]) {
            return false;
          }
        }
      }
    }
    return true;
  };
  for (std::size_t placed = 0; placed < count; ++placed) {
    std::optional<std::size_t> next;
    for (std::size_t i = 0; i < count; ++i) {
      const auto& after = project.activities[i].after;
      const bool may = out[i] == not_yet && std::all_of(after.begin(), after.end(),
                                                        [&](auto b) { return out[b] != not_yet; });
      if (may && (!next || order[i] < order[*next])) {
        next = i;
      }
    }
    const scheduling::Activity& what = project.activities[*next];
    int at = 0;
    for (const std::size_t before : what.after) {
      at = std::max(at, out[before] + project.activities[before].minutes());
    }
    while (!fits(what, at)) {
      ++at;
    }
    out[*next] = at;
    auto minute = static_cast<std::size_t>(at);
    for (const scheduling::Piece& piece : what.pieces) {
      for (int m = 0; m < piece.minutes; ++m, ++minute) {
        Row& row = row_at(used, project, minute);
        for (std::size_t r = 0; r < piece.takes.size(); ++r) {
          row[r] += piece.takes[r];
        }
      }
    }
  }
  return out;
}

} // namespace manciple::prep
