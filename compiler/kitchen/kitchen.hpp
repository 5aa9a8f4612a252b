#pragma once

#include "kitchen/household.hpp"
#include "kitchen/plan.hpp"
#include "kitchen/receipt.hpp"
#include "kitchen/recipe.hpp"
#include "kitchen/shop.hpp"
#include "kitchen/stock.hpp"
#include "text/files.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// Everything that the files of a house say about one plan, checked. Files stand as
///
///     ROOT/recipes/NAME.yaml           recipes, found by their names
///     ROOT/recipes/foods.yaml          the household's own foods (may be missing)
///     ROOT/plans/household.yaml        (may be missing)
///     ROOT/plans/on-hand.yaml          (may be missing)
///     ROOT/plans/on-hand/DATE.yaml     later counts (may be missing)
///     ROOT/plans/receipts/NAME.yaml    what was bought (may be missing), or NAME.csv
///     ROOT/plans/stores/NAME.yaml      price lists (may be missing)
///     ROOT/plans/PLAN.yaml
struct Kitchen {
  foods::Book foods;
  std::vector<Recipe> recipes; ///< those that the plan reaches, or all
  Household household;
  std::vector<Shop> shops;
  OnHand on_hand; ///< what was counted last
  /// All counts, if they were asked for: from the one with which the plan began to that of the
  /// morning after it, by date.
  std::vector<OnHand> counts;
  std::vector<Receipt> receipts; ///< by date, then by the names of their files
  std::optional<Plan> plan;
  /// The day from which is planned, in the morning; what was bought on it is in the house. Absent
  /// where nothing of the plan is done.
  std::optional<text::Date> as_of;

  [[nodiscard]] const foods::Food& food(foods::FoodId id) const { return foods.get(id); }
  [[nodiscard]] const Recipe& recipe(RecipeId id) const {
    return recipes[static_cast<std::size_t>(id)];
  }
  [[nodiscard]] const Shop& shop(ShopId id) const { return shops[static_cast<std::size_t>(id)]; }
};

enum class Counts : std::uint8_t { last, all };

/// Reads a plan and what it reaches, no more: recipes are opened as they are named. `as_of` goes
/// before what the plan says.
Kitchen read_kitchen(const std::string& plan_path, text::Sources& sources,
                     text::Diagnostics& diagnostics, const text::Files& files = text::disk(),
                     std::optional<text::Date> as_of = std::nullopt, Counts counts = Counts::last);

/// Reads all that stands below `root`: every recipe, every price list, every plan. For `check`.
/// The result holds the last plan.
Kitchen read_everything(const std::string& root, text::Sources& sources,
                        text::Diagnostics& diagnostics, const text::Files& files = text::disk());

/// Recipes of a house, whatever is planned, with its foods, people and price lists.
struct Library {
  Kitchen kitchen;            ///< without a plan, counts and receipts
  std::vector<bool> readable; ///< by recipe: whether it has no error, nor has what it needs
};

/// All of them, or those that say for which meals, and what these need.
enum class Recipes : std::uint8_t { all, suited };

/// Reads the recipes below `root`. What is wrong in them is for `check` to say.
Library read_library(const std::string& root, Recipes which,
                     const text::Files& files = text::disk());

} // namespace manciple::kitchen
