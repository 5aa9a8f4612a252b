#pragma once

#include "buying/model/money.hpp"

#include <cstdint>
#include <functional>
#include <limits>

namespace manciple::buying {

/// How the search stands.
struct Progress {
  Fine best = 0;  ///< total of the best list so far
  Fine bound = 0; ///< nothing costs less
};

struct Options {
  /// Work after which the search ends with what has been found and proven by then: labels made and
  /// compared, edges tried, plans combined. Counted, not timed, so that the same model gives the
  /// same solution everywhere. Some 3 to 7 million are a second.
  std::int64_t work = 40'000'000;
  /// Asked every now and then: ends the search at once if it says so. The result may then differ
  /// from run to run, and Solution::interrupted is set.
  std::function<bool()> stop;
  /// Told of every better list and every better bound.
  std::function<void(const Progress&)> progress;
};

/// The work that a search has done, and whether it has to end.
class WorkBudget {
public:
  explicit WorkBudget(const Options& options) : options_(&options) {}

  /// Counts a node of a search tree.
  void node() {
    ++nodes_;
    add(1);
  }
  void add(std::int64_t work) { work_ += work; }
  /// For those who count by themselves.
  std::int64_t& work() { return work_; }

  /// True once the work is spent or someone has stopped it.
  [[nodiscard]] bool spent() {
    if (!stopped_ && options_->stop && work_ >= ask_again_) {
      ask_again_ = work_ + works_between_questions;
      stopped_ = options_->stop();
    }
    return stopped_ || work_ >= options_->work;
  }
  [[nodiscard]] bool stopped() const { return stopped_; }
  [[nodiscard]] std::int64_t nodes() const { return nodes_; }

  /// Tells who wants to know.
  void tell(const Progress& progress) const {
    if (options_->progress) {
      options_->progress(progress);
    }
  }

private:
  static constexpr std::int64_t works_between_questions = 100'000;

  const Options* options_;
  std::int64_t nodes_ = 0;
  std::int64_t work_ = 0;
  std::int64_t ask_again_ = 0;
  bool stopped_ = false;
};

} // namespace manciple::buying
