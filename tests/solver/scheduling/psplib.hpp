#pragma once

#include "scheduling/project.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <istream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

/// Instances of PSPLIB (Kolisch and Sprecher 1997, "PSPLIB - A project scheduling problem library",
/// European Journal of Operational Research 96).
namespace manciple::scheduling::psplib {

inline void skip_to(std::istream& in, const std::string& heading) {
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with(heading)) {
      return;
    }
  }
  throw std::runtime_error("no line begins with " + heading);
}

inline int after_colon(std::istream& in, const std::string& heading) {
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with(heading)) {
      return std::stoi(line.substr(line.find(':') + 1));
    }
  }
  throw std::runtime_error("no line begins with " + heading);
}

/// A single-mode instance (.sm) with its dummy source and sink as activities of no minutes.
inline Project read(std::istream& in) {
  in.exceptions(std::ios::badbit);
  const auto jobs = static_cast<std::size_t>(after_colon(in, "jobs (incl."));
  const auto resources = static_cast<std::size_t>(after_colon(in, "  - renewable"));
  Project project;
  project.activities.resize(jobs);
  const auto number = [&] {
    int value = 0;
    if (!(in >> value)) {
      throw std::runtime_error("a number is missing");
    }
    return value;
  };
  skip_to(in, "jobnr.");
  for (std::size_t job = 0; job < jobs; ++job) {
    number(); // the job
    number(); // modes
    for (int left = number(); left > 0; --left) {
      project.activities.at(static_cast<std::size_t>(number()) - 1).after.push_back(job);
    }
  }
  skip_to(in, "jobnr.");
  skip_to(in, "---");
  for (Activity& activity : project.activities) {
    number(); // the job
    number(); // the mode
    Piece piece;
    piece.minutes = number();
    for (std::size_t r = 0; r < resources; ++r) {
      piece.takes.push_back(number());
    }
    activity.pieces.push_back(std::move(piece));
  }
  skip_to(in, "RESOURCEAVAILABILITIES");
  skip_to(in, "");
  for (std::size_t r = 0; r < resources; ++r) {
    project.capacity.push_back(number());
  }
  return project;
}

/// The known lengths of a folder's instances, by name: `optima.csv`.
inline std::map<std::string, int> optima(const std::filesystem::path& folder) {
  std::ifstream in(folder / "optima.csv");
  std::map<std::string, int> out;
  std::string line;
  std::getline(in, line); // the names of the columns
  while (std::getline(in, line)) {
    const std::size_t comma = line.find(',');
    out[line.substr(0, comma)] = std::stoi(line.substr(comma + 1));
  }
  return out;
}

/// The instances of a folder, in the order of their names.
inline std::vector<std::filesystem::path> instances(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> out;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".sm") {
      out.push_back(entry.path());
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

} // namespace manciple::scheduling::psplib
