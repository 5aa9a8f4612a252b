#pragma once

#include "scheduling/trail.hpp"

#include <unordered_map>

namespace manciple::scheduling {

/// What to branch on next. Bounds that were met in recent conflicts have the highest activity and
/// come first (variable state independent decaying sum: Moskewicz et al. 2001); while none is open,
/// the start that can be earliest is set to just that.
class Branching {
public:
  /// The first `starts` variables of the trail are starts. `guide` is a value for each variable,
  /// from the incumbent: the branch that agrees with it is tried first.
  Branching(std::size_t starts, std::vector<int> guide)
      : starts_(starts), guide_(std::move(guide)) {}

  void bump_met(const std::vector<Bound>& bounds);
  void decay() { increment_ /= 0.95; }
  void guide(std::vector<int> guide) { guide_ = std::move(guide); }

  /// An open bound to assume; false if all starts are fixed.
  bool next(const Trail& trail, Bound& out);
  /// The search went back to a level.
  void back(int level);

private:
  struct Candidate { // is the variable at least that?
    Side side = 0;
    int least = 0;
    double activity = 0;
    std::size_t place = nowhere;
  };
  struct Asked {
    std::size_t candidate = 0;
    int level = 0;
  };
  static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

  [[nodiscard]] bool more_active(std::size_t a, std::size_t b) const;
  void rise(std::size_t place);
  void sink(std::size_t place);
  void insert(std::size_t candidate);
  std::size_t take_most_active();

  std::size_t starts_;
  std::vector<int> guide_;
  std::vector<Candidate> candidates_;
  std::unordered_map<std::uint64_t, std::size_t> known_; // only looked up, never walked
  std::vector<std::size_t> heap_;
  std::vector<Asked> asked_; // out of the heap, by level
  double increment_ = 1;
};

} // namespace manciple::scheduling
