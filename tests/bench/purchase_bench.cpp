// Solves months with our solver and with cbc and glpsol on the same mixed-integer program, one line
// a month. Run by purchase.sh; arguments: cbc's and glpsol's seconds, then sizes (1, 2, ... or a
// letter c before for a coupled month) or files of models.

#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <optional>
#include <sstream>
#include <string>

#include <fmt/format.h>

#include "bench/model_text.hpp"
#include "bench/month.hpp"
#include "oracle/formulation.hpp"
#include "purchase/check.hpp"

namespace {

using namespace manciple;

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Reference {
  double seconds = 0;
  bool proven = false;
  std::optional<double> value;
};

std::string run(const std::string& command) {
  std::string text;
  FILE* pipe = popen(command.c_str(), "r"); // NOLINT: a fixed program and a path of ours
  char buffer[4096];
  while (pipe != nullptr && fgets(buffer, sizeof buffer, pipe) != nullptr)
    text += buffer;
  if (pipe != nullptr)
    pclose(pipe);
  return text;
}

Reference run_cbc(const std::string& lp, int limit) {
  Reference result;
  const std::string out = lp + ".cbc";
  std::remove(out.c_str());
  const auto start = std::chrono::steady_clock::now();
  run(fmt::format("cbc {} ratio 0 allow 0 sec {} solve solu {} 2>&1", lp, limit, out));
  result.seconds = seconds_since(start);
  std::ifstream file(out);
  std::string first;
  std::getline(file, first);
  result.proven = first.rfind("Optimal", 0) == 0;
  const std::string words = "objective value";
  const std::size_t at = first.find(words);
  if (at != std::string::npos && first.find("nfeasible") == std::string::npos &&
      first.find("no integer") == std::string::npos)
    result.value = std::strtod(first.c_str() + at + words.size(), nullptr);
  return result;
}

Reference run_glpsol(const std::string& lp, int limit) {
  Reference result;
  const std::string out = lp + ".glpk";
  std::remove(out.c_str());
  const auto start = std::chrono::steady_clock::now();
  run(fmt::format("glpsol --lp {} --tmlim {} --output {} 2>&1", lp, limit, out));
  result.seconds = seconds_since(start);
  std::ifstream file(out);
  std::string line;
  bool integer_found = false;
  while (std::getline(file, line)) {
    if (line.rfind("Status:", 0) == 0) {
      result.proven = line.find("INTEGER OPTIMAL") != std::string::npos;
      integer_found = result.proven || line.find("INTEGER NON-OPTIMAL") != std::string::npos;
    }
    const std::size_t at = line.find(" = ");
    if (line.rfind("Objective:", 0) == 0 && integer_found && at != std::string::npos) {
      result.value = std::strtod(line.c_str() + at + 3, nullptr);
      break;
    }
  }
  return result;
}

std::string compare(const char* name, const Reference& reference, double ours, double value) {
  std::string verdict = "no value";
  if (reference.value) {
    const double difference = *reference.value - value;
    verdict = reference.proven
                  ? fmt::format("proven, difference {:.0f}", difference)
                  : fmt::format("not proven, {:+.2f} % of ours", 100 * difference / value);
  }
  return fmt::format("{} {:.2f} s, {:.0f} times ours ({})", name, reference.seconds,
                     reference.seconds / ours, verdict);
}

long peak_kilobytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss;
}

struct Case {
  std::string name;
  purchase::Model model;
  /// The reference formulation of it fits into memory.
  bool formulates = true;
};

Case make_case(const std::string& argument) {
  const bool coupled = argument[0] == 'c';
  const std::string digits = argument.substr(coupled ? 1 : 0);
  const bool size = !digits.empty() && std::all_of(digits.begin(), digits.end(),
                                                   [](char c) { return c >= '0' && c <= '9'; });
  if (size) {
    const int scale = std::atoi(digits.c_str());
    return {fmt::format("{}x month{}", scale, coupled ? ", coupled" : ""),
            purchase::make_month({scale, scale, 1, coupled}), !coupled};
  }
  if (argument[0] == 'f' && argument.size() > 1 && argument[1] == '=') {
    const int scale = std::atoi(argument.c_str() + 2);
    return {fmt::format("{}x foods only", scale), purchase::make_month({scale, 1, 1, false})};
  }
  std::ifstream file(argument);
  if (!file)
    throw std::runtime_error("no such file: " + argument);
  return {argument, purchase::read_model(file)};
}

void bench(const Case& one, const std::string& folder, int cbc, int glpsol) {
  // The best of several runs: the first warms the memory, and the clock of a shared machine varies.
  double ours = 1e9;
  purchase::Solution solution;
  const auto begin = std::chrono::steady_clock::now();
  for (int repeat = 0; repeat < 5 || (repeat < 100 && seconds_since(begin) < 1); ++repeat) {
    const auto start = std::chrono::steady_clock::now();
    solution = purchase::solve(one.model);
    ours = std::min(ours, seconds_since(start));
  }
  const long memory = peak_kilobytes();
  const bool checked = purchase::check(one.model, solution).empty();
  std::size_t offers = 0;
  for (const purchase::Good& good : one.model.goods)
    offers += good.offers.size();
  const double gap = solution.total == 0
                         ? 0
                         : 100 * static_cast<double>(solution.total - solution.bound) /
                               static_cast<double>(solution.total);
  std::string line = fmt::format(
      "{}: {} goods, {} stops, {} offers: {:.2f} ms, {}, {} nodes, {} subproblems, {:.1f} MB{}",
      one.name, one.model.goods.size(), one.model.stops.size(), offers, 1000 * ours,
      solution.status == purchase::Status::optimal    ? "optimal"
      : solution.status == purchase::Status::feasible ? fmt::format("gap {:.3f} %", gap)
                                                      : "no solution",
      solution.nodes, solution.subproblems, static_cast<double>(memory) / 1024,
      checked ? "" : ", FAILS THE CHECK");
  if (!one.formulates)
    cbc = glpsol = 0;
  const std::string lp = folder + "/month.lp";
  if (cbc > 0 || glpsol > 0)
    std::ofstream(lp) << oracle::to_lp_file(oracle::formulate(one.model));
  const auto value = static_cast<double>(solution.total_fine) / 1e9;
  if (cbc > 0)
    line += "; " + compare("cbc", run_cbc(lp, cbc), ours, value);
  if (glpsol > 0)
    line += "; " + compare("glpsol", run_glpsol(lp, glpsol), ours, value);
  fmt::print("{}\n", line);
  std::fflush(stdout);
}

} // namespace

int main(int count, char** arguments) {
  if (count < 5) {
    std::cerr << "usage: purchase_bench FOLDER CBC_SECONDS GLPSOL_SECONDS SIZE...\n";
    return 2;
  }
  try {
    for (int i = 4; i < count; ++i)
      bench(make_case(arguments[i]), arguments[1], std::atoi(arguments[2]),
            std::atoi(arguments[3]));
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
