#include "cli/last_result.hpp"

#include "cli/revision.hpp"
#include "compare/changes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace manciple::cli {
namespace {

// A month of a family is a megabyte.
constexpr std::uintmax_t largest_result = std::uintmax_t{256} << 20U;

} // namespace

std::optional<std::string> read_whole(const std::string& path) {
  std::error_code error;
  const auto size = std::filesystem::is_regular_file(path, error)
                        ? std::filesystem::file_size(path, error)
                        : largest_result + 1;
  std::ifstream in(path, std::ios::binary);
  if (error || size > largest_result || !in) {
    return std::nullopt;
  }
  std::string bytes{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  return in.bad() ? std::nullopt : std::optional(std::move(bytes));
}

std::string since_last_build(const std::optional<std::string>& last,
                             const std::vector<emit::Output>& now, const std::string& plan) {
  const auto result = std::find_if(now.begin(), now.end(), [](const emit::Output& output) {
    return output.name == "result.json";
  });
  const auto before = last ? compare::read_result(*last) : tl::unexpected(std::string());
  const auto after =
      result != now.end() ? compare::read_result(result->content) : tl::unexpected(std::string());
  if (!before || !after) {
    return {};
  }
  return compare::print_since_last_build(
      compare::compare(*before, *after),
      is_in_git(plan) ? fmt::format("manciple compare HEAD --plan {}", plan) : std::string());
}

} // namespace manciple::cli
