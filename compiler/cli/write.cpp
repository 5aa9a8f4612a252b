#include "cli/write.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>

namespace manciple::cli {
namespace fs = std::filesystem;

std::string write_all(const std::string& folder, const std::vector<emit::Output>& files) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) {
    return fmt::format("{} cannot be made: {}", folder, error.message());
  }
  const auto draft = [&](const emit::Output& file) {
    return fs::path(folder) / ("." + file.name + ".draft");
  };
  std::string failed;
  for (const emit::Output& file : files) {
    std::ofstream out(draft(file), std::ios::binary | std::ios::trunc);
    out << file.content;
    out.close();
    if (!out) {
      failed = fmt::format("{} cannot be written", (fs::path(folder) / file.name).string());
      break;
    }
  }
  for (const emit::Output& file : files) {
    if (failed.empty()) {
      fs::rename(draft(file), fs::path(folder) / file.name, error);
      if (error) {
        failed = fmt::format("{} cannot be written: {}", (fs::path(folder) / file.name).string(),
                             error.message());
      }
    } else {
      fs::remove(draft(file), error);
    }
  }
  return failed;
}

} // namespace manciple::cli
