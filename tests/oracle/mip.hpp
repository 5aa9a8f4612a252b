#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace manciple::oracle {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// A mixed-integer program to minimise, in no solver's terms.
struct Mip {
  struct Column {
    std::string name;
    double cost = 0;
    double lower = 0;
    double upper = infinite;
    bool integer = false;
  };
  /// A sum of columns, each by its index and factor.
  using Terms = std::vector<std::pair<std::size_t, double>>;
  struct Row {
    Terms terms;
    double lower = -infinite;
    double upper = infinite;
  };
  std::vector<Column> columns;
  std::vector<Row> rows;

  std::size_t add(std::string name, double cost, double upper, bool integer);
  std::size_t add_binary(std::string name, double cost = 0) {
    return add(std::move(name), cost, 1, true);
  }
  void at_most(Terms terms, double upper) { rows.push_back({std::move(terms), -infinite, upper}); }
  void equal(Terms terms, double value) { rows.push_back({std::move(terms), value, value}); }
};

/// The program in the CPLEX LP format, which cbc and glpsol read.
std::string to_lp_file(const Mip& mip);

struct MipResult {
  enum class State {
    optimal,
    infeasible,
    /// Stopped at the limit: `objective` is the best found, if anything was.
    stopped,
    failed
  };
  State state = State::failed;
  double objective = infinite;
};

/// Solved with GLPK: branch and cut without presolve, to a gap of 0.
MipResult solve_with_glpk(const Mip& mip, int seconds);

} // namespace manciple::oracle
