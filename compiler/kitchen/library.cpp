#include "kitchen/library.hpp"

#include "kitchen/errors.hpp"
#include "text/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace manciple::kitchen {
namespace {

// The files in which something is wrong.
std::set<text::FileId> spoilt_files(const text::Diagnostics& diagnostics) {
  std::set<text::FileId> out;
  for (const text::Diagnostic& one : diagnostics.all()) {
    if (one.severity == text::Severity::error && one.at) {
      out.insert(one.at->file);
    }
  }
  return out;
}

} // namespace

std::vector<bool> readable_recipes(const Kitchen& kitchen, const text::Diagnostics& diagnostics) {
  const std::set<text::FileId> spoilt = spoilt_files(diagnostics);
  std::vector<bool> out(kitchen.recipes.size(), true);
  std::vector<std::vector<const Recipe*>> needed_by(kitchen.recipes.size());
  std::vector<const Recipe*> unreadable;
  for (const Recipe& recipe : kitchen.recipes) {
    // Of a file that is no YAML nothing is known, not even its name.
    if (recipe.slug.empty() || spoilt.contains(recipe.at.file)) {
      unreadable.push_back(&recipe);
    }
    for (const Ingredient& line : recipe.ingredients) {
      if (const RecipeId* part = line.recipe()) {
        needed_by[static_cast<std::size_t>(*part)].push_back(&recipe);
      }
    }
  }
  while (!unreadable.empty()) {
    const auto at = static_cast<std::size_t>(unreadable.back()->id);
    unreadable.pop_back();
    if (out[at]) {
      out[at] = false;
      unreadable.insert(unreadable.end(), needed_by[at].begin(), needed_by[at].end());
    }
  }
  return out;
}

void check_suits(const Kitchen& kitchen, text::Diagnostics& diagnostics) {
  std::vector<std::string_view> known{Suited::side};
  for (const Slot& slot : kitchen.household.slots) {
    known.push_back(slot.name);
  }
  for (const Recipe& recipe : kitchen.recipes) {
    for (const Suited& suited : recipe.suits) {
      if (std::find(known.begin(), known.end(), suited.meal) == known.end()) {
        diagnostics.warning(
            errors::unknown_slot, suited.at,
            fmt::format("the household has no meal '{}' that this recipe could suit", suited.meal),
            text::did_you_mean(suited.meal, known));
      }
    }
  }
}

} // namespace manciple::kitchen
