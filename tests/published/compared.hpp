#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>

namespace manciple::published {

/// Counts how many values were compared with a source and how many differ, fails the test for each
/// that differs, and prints the counts at the end.
class Compared {
public:
  explicit Compared(std::string source) : source_(std::move(source)) {}
  ~Compared() {
    std::printf("published: %s: %d compared, %d differ\n", source_.c_str(), compared_, differ_);
  }
  Compared(const Compared&) = delete;
  Compared& operator=(const Compared&) = delete;

  void near(const std::string& what, double ours, double theirs, double tolerance) {
    ++compared_;
    if (!(std::abs(ours - theirs) <= tolerance)) {
      ++differ_;
      ADD_FAILURE() << source_ << ": " << what << ": ours " << ours << ", theirs " << theirs;
    }
  }
  void at_most(const std::string& what, double ours, double theirs) {
    near(what, std::max(ours, theirs), theirs, 0);
  }
  [[nodiscard]] int count() const { return compared_; }

private:
  std::string source_;
  int compared_ = 0;
  int differ_ = 0;
};

} // namespace manciple::published
