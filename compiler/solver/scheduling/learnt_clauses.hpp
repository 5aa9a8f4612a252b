#pragma once

#include "scheduling/trail.hpp"

namespace manciple::scheduling {

/// What a contradiction taught: of `bounds` at least one holds in every schedule. The first follows
/// from the others once the search has gone back to `level`, the second was the last to fail there.
struct Lesson {
  std::vector<Bound> bounds;
  int level = 0;
  int spread = 0; ///< how many levels its bounds come from: the fewer, the more it is worth
};

/// The lessons, each watched by two of its bounds (Moskewicz et al. 2001, for bounds instead of
/// propositions).
class Clauses {
public:
  explicit Clauses(std::size_t sides) : watches_(sides) {}

  /// Remembers a lesson and draws the conclusion. The trail must be at the lesson's level.
  bool add(Trail& trail, const Lesson& lesson);

  /// Draws the conclusions from a side that went up. False on contradiction.
  bool follow(Trail& trail, Side side);

  /// Was of use just now.
  void praise(int clause);
  void fade() { step_ *= 1.001; }

  [[nodiscard]] std::size_t size() const { return clauses_.size(); }
  /// Forgets the less useful half, and what the first level makes true. At level 0 only, with all
  /// conclusions drawn; false if the clauses contradict each other there.
  bool forget(Trail& trail);

private:
  struct Clause {
    std::size_t begin = 0;
    std::size_t size = 0;
    int spread = 0;
    double use = 0;
  };
  // Woken when the side of its list reaches `least`: then the watched bound fails.
  struct Watch {
    int least = 0;
    std::uint32_t clause = 0;
    Bound hint; // while this holds there is nothing to do
  };
  bool wake(Trail& trail, Side side, Watch& watch, bool& keep);
  bool insert(Trail& trail, std::span<const Bound> bounds, int spread, double use);

  std::vector<Bound> store_;
  std::vector<Clause> clauses_;
  std::vector<std::vector<Watch>> watches_; // by side
  std::vector<Bound> reasons_;
  double step_ = 1;
};

} // namespace manciple::scheduling
