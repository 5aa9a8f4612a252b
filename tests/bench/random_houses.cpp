#include <cstdlib>
#include <string>

#include <fmt/format.h>

#include "buying/solve.hpp"
#include "solver/buying/brute_force.hpp"
#include "solver/buying/check.hpp"
#include "solver/buying/small_model.hpp"

/// random_houses FIRST LAST [FEATURES]: solves random models by seed, compares their totals with
/// what comes of trying everything, and checks every solution. FEATURES is any of: r (room), c
/// (credit), s (reductions), v (vast prices).
int main(int argc, char** argv) {
  using namespace manciple::buying;
  if (argc < 3) {
    fmt::print(stderr, "random_houses FIRST LAST [rcsv]\n");
    return 2;
  }
  Features features;
  const std::string letters = argc > 3 ? argv[3] : "";
  const auto has = [&](char letter) { return letters.find(letter) != std::string::npos; };
  features.room = has('r');
  features.credit = has('c');
  features.spend_over = has('s');
  features.vast = has('v');
  int compared = 0;
  int too_large = 0;
  int unproven = 0;
  int wrong = 0;
  for (int seed = std::atoi(argv[1]); seed <= std::atoi(argv[2]); ++seed) {
    manciple::Dice dice(static_cast<std::uint64_t>(seed));
    const Model model = make_small(dice, features);
    const Solution solution = solve(model);
    for (const std::string& finding : check(model, solution)) {
      fmt::print("seed {}: {}\n", seed, finding);
      ++wrong;
    }
    const auto least = least_total(model);
    if (!least) {
      ++too_large;
      continue;
    }
    ++compared;
    const bool proven = solution.status == Status::optimal;
    unproven += proven ? 0 : 1;
    // What containers hold is rounded, in one order or another.
    if (proven
            ? std::abs(solution.total_fine - *least) >= fine_per_money
            : solution.total_fine <= *least - fine_per_money || to_money(*least) < solution.bound) {
      fmt::print("seed {}: {} (proven: {}) but {}\n", seed, solution.total_fine, proven, *least);
      ++wrong;
    }
  }
  fmt::print("{} compared, {} too large to try everything, {} unproven, {} wrong\n", compared,
             too_large, unproven, wrong);
  return wrong == 0 ? 0 : 1;
}
