#include "kitchen/library.hpp"

#include "kitchen/errors.hpp"
#include "text/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace manciple::kitchen {
namespace {

class Readable {
public:
  Readable(const Kitchen& kitchen, const text::Diagnostics& diagnostics) : kitchen_(kitchen) {
    for (const text::Diagnostic& one : diagnostics.all()) {
      if (one.severity == text::Severity::error && one.at) {
        spoilt_.insert(one.at->file);
      }
    }
  }

  // Of a file that is no YAML nothing is known, not even its name.
  bool is(const Recipe& recipe, std::set<RecipeId>& seen) const {
    if (recipe.slug.empty() || spoilt_.contains(recipe.at.file)) {
      return false;
    }
    return !seen.insert(recipe.id).second ||
           std::all_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                       [&](const Ingredient& line) {
                         const RecipeId* of = line.recipe();
                         return of == nullptr || is(kitchen_.recipe(*of), seen);
                       });
  }

private:
  const Kitchen& kitchen_;
  std::set<text::FileId> spoilt_;
};

} // namespace

std::vector<bool> readable_recipes(const Kitchen& kitchen, const text::Diagnostics& diagnostics) {
  const Readable readable(kitchen, diagnostics);
  std::vector<bool> out;
  for (const Recipe& recipe : kitchen.recipes) {
    std::set<RecipeId> seen;
    out.push_back(readable.is(recipe, seen));
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
