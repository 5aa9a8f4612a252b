#pragma once

#include "text/files.hpp"

#include <string>
#include <vector>

/// Where the files of a house stand; see kitchen.hpp for the whole.
namespace manciple::kitchen {

/// Whether a path is that of a plan, by where it stands: plans/NAME.yaml, but not the household's
/// file or what is on hand.
bool is_plan(const std::string& path);

/// The name of a plan's file, without its ending.
std::string plan_slug(const std::string& path);

/// The folder above `plans` or `recipes`, as it would be typed from where one is: "." for
/// plans/x.yaml and recipes/x.yaml, ".." for x.yaml in plans, "../.." for ../x.yaml in
/// plans/stores.
std::string root_of(const std::string& path);

/// The house that one is in: the nearest folder at or above this one that has plans or recipes, at
/// most three up; else this one.
std::string house_here();

/// A path below a root, as it would be typed.
std::string in_root(const std::string& root, const std::string& path);

/// The paths of the plans below `root`, sorted.
std::vector<std::string> plan_files(const std::string& root,
                                    const text::Files& files = text::disk());

} // namespace manciple::kitchen
