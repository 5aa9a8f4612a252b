#pragma once

#include "scheduling/trail.hpp"

#include <unordered_map>

namespace manciple::scheduling {

/// What to ask next. Bounds that were met in contradictions lately come first (Moskewicz et al.
/// 2001); while none is open, the start that can be earliest is set to just that.
class Branching {
public:
  /// The first `starts` variables of the trail are starts. `guide` is a value for each variable:
  /// questions are answered the way it does first.
  Branching(std::size_t starts, std::vector<int> guide)
      : starts_(starts), guide_(std::move(guide)) {}

  void met(const std::vector<Bound>& bounds);
  void fade() { step_ /= 0.95; }
  void guide(std::vector<int> guide) { guide_ = std::move(guide); }

  /// An open bound to assume; false if all starts are fixed.
  bool next(const Trail& trail, Bound& out);
  /// The search went back to a level.
  void back(int level);

private:
  struct Question { // is the variable at least that?
    Side side = 0;
    int least = 0;
    double heat = 0;
    std::size_t place = nowhere;
  };
  struct Asked {
    std::size_t question = 0;
    int level = 0;
  };
  static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

  [[nodiscard]] bool hotter(std::size_t a, std::size_t b) const;
  void rise(std::size_t place);
  void sink(std::size_t place);
  void insert(std::size_t question);
  std::size_t take_hottest();

  std::size_t starts_;
  std::vector<int> guide_;
  std::vector<Question> questions_;
  std::unordered_map<std::uint64_t, std::size_t> known_; // only looked up, never walked
  std::vector<std::size_t> heap_;
  std::vector<Asked> asked_; // out of the heap, by level
  double step_ = 1;
};

} // namespace manciple::scheduling
