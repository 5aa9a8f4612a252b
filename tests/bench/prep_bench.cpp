// Schedules the PSPLIB instances of a folder and compares with the published optima.

#include "scheduling/check.hpp"
#include "scheduling/project.hpp"
#include "solver/scheduling/psplib.hpp"

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>

namespace {

namespace fs = std::filesystem;
using namespace manciple::scheduling;

int run(const fs::path& folder, double seconds) {
  const std::vector<fs::path> files = psplib::instances(folder);
  const std::map<std::string, int> known = psplib::optima(folder);
  std::printf("%-10s %8s %8s %8s %-8s %10s %10s\n", "instance", "optimum", "ours", "bound",
              "proven", "ms", "nodes");
  std::size_t proven = 0;
  std::size_t wrong = 0;
  double deviation = 0;
  double slowest = 0;
  double all = 0;
  std::string slowest_name;
  for (const fs::path& file : files) {
    std::ifstream in(file);
    const Project project = psplib::read(in);
    const auto begin = std::chrono::steady_clock::now();
    const Schedule schedule = shortest(project, {.seconds = seconds});
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    const std::string name = file.stem().string();
    const auto optimum = known.find(name);
    if (optimum == known.end()) {
      std::printf("%-10s has no optimum in optima.csv\n", name.c_str());
      ++wrong;
      continue;
    }
    std::printf("%-10s %8d %8d %8d %-8s %10.1f %10lld\n", name.c_str(), optimum->second,
                schedule.length, schedule.bound, schedule.proven() ? "yes" : "no", took.count(),
                static_cast<long long>(schedule.nodes));
    if (const auto what = fault(project, schedule)) {
      std::printf("%-10s is wrong: %s\n", name.c_str(), what->c_str());
      ++wrong;
    }
    if (schedule.length < optimum->second || schedule.bound > optimum->second) {
      std::printf("%-10s contradicts the published optimum\n", name.c_str());
      ++wrong;
    }
    proven += schedule.proven() ? 1 : 0;
    deviation += 100.0 * (schedule.length - optimum->second) / optimum->second;
    all += took.count();
    if (took.count() > slowest) {
      slowest = took.count();
      slowest_name = name;
    }
  }
  if (files.empty()) {
    std::printf("no .sm file in %s\n", folder.c_str());
    return 1;
  }
  std::printf("proven %zu of %zu, mean deviation %.3f %%, slowest %s %.1f ms, all %.1f ms\n",
              proven, files.size(), deviation / static_cast<double>(files.size()),
              slowest_name.c_str(), slowest, all);
  return wrong == 0 ? 0 : 1;
}

} // namespace

int main(int argc, char** argv) {
  if (argc < 2 || argc > 3) {
    std::cerr << "usage: prep_bench DIRECTORY [SECONDS]\n";
    return 2;
  }
  return run(argv[1], argc > 2 ? std::stod(argv[2]) : 1.0);
}
