#include "kitchen/paths.hpp"

#include <filesystem>
#include <system_error>

namespace manciple::kitchen {
namespace {

namespace fs = std::filesystem;

// The name of the folder that a path stands in, also where the path does not say it.
std::string folder_of(const std::string& path) {
  std::error_code none;
  return fs::absolute(path, none).lexically_normal().parent_path().filename().string();
}

bool is_below_plans(std::string_view folder) {
  return folder == "stores" || folder == "receipts" || folder == "on-hand";
}

} // namespace

bool is_plan(const std::string& path) {
  const std::string folder = folder_of(path);
  const fs::path stem = fs::path(path).stem();
  return !is_below_plans(folder) && folder != "recipes" && stem != "household" && stem != "on-hand";
}

std::string plan_slug(const std::string& path) {
  return fs::path(path).stem().string();
}

std::string root_of(const std::string& path) {
  fs::path up = fs::path(path).parent_path() / "..";
  if (is_below_plans(folder_of(path))) {
    up /= "..";
  }
  const std::string root = up.lexically_normal().string();
  return root.size() > 1 && root.ends_with('/') ? root.substr(0, root.size() - 1) : root;
}

std::string house_here() {
  for (const char* folder : {".", "..", "../..", "../../.."}) {
    std::error_code none;
    const fs::path at(folder);
    if (fs::is_regular_file(at / "plans/household.yaml", none) ||
        fs::is_directory(at / "recipes", none)) {
      return folder;
    }
  }
  return ".";
}

std::string in_root(const std::string& root, const std::string& path) {
  return root == "." || root.empty() ? path : (fs::path(root) / path).string();
}

std::vector<std::string> plan_files(const std::string& root, const text::Files& files) {
  std::vector<std::string> out;
  const auto names = files.names(in_root(root, "plans"));
  for (const std::string& name : names ? *names : std::vector<std::string>()) {
    const std::string path = in_root(root, "plans/" + name);
    if (name.ends_with(".yaml") && is_plan(path)) {
      out.push_back(path);
    }
  }
  return out;
}

} // namespace manciple::kitchen
