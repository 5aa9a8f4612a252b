// What the food reference costs a build: opening the book and finding the foods of a month, as a
// share of nothing but time. `food_bench [FOODS]`.

#include "foods/book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>

int main(int count, char** arguments) {
  using namespace manciple;
  const int wanted = count > 1 ? std::atoi(arguments[1]) : 90;
  foods::Book all;
  const std::vector<std::string> names = all.food_names();
  double best = 1e9;
  for (int repeat = 0; repeat < 20; ++repeat) {
    const auto start = std::chrono::steady_clock::now();
    foods::Book book;
    for (int i = 0; i < wanted; ++i) {
      const std::size_t at = static_cast<std::size_t>(i) * names.size() /
                             static_cast<std::size_t>(std::max(1, wanted));
      (void)book.find(names[at]);
    }
    best = std::min(
        best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  fmt::print("{} of {} foods found and read: {:.3f} ms\n", wanted, names.size(), 1000 * best);
  return 0;
}
