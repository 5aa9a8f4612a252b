#include "foods/convert.hpp"
#include "foods/swaps.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/household_parts.hpp"
#include "kitchen/line_words.hpp"
#include "text/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::kitchen {

using text::Diagnostics;
using text::Entry;
using text::Node;

void read_any_of(const std::vector<const Node*>& groups, Household& household, Names& names,
                 Diagnostics& diagnostics) {
  for (const Node* group : groups) {
    Substitutes read;
    for (const Entry& entry : group->entries) {
      const auto target = names.find(entry.key.scalar);
      const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
      const auto amount = read_positive(entry.value, diagnostics);
      if (food == nullptr) {
        diagnostics.error(errors::unknown_food, entry.key.span,
                          fmt::format("no food is called '{}'", entry.key.scalar),
                          text::did_you_mean(entry.key.scalar, names.all()));
      } else if (household.instead_of(*food).size() > 1 || read.holds(*food)) {
        diagnostics.error(errors::bad_value, entry.key.span,
                          fmt::format("'{}' is in a group already", entry.key.scalar));
      } else if (amount) {
        if (!read.foods.empty() && foods::basis(*names.food(*food)) !=
                                       foods::basis(*names.food(read.foods.front().first))) {
          diagnostics.error(
              errors::wrong_measure, entry.key.span,
              fmt::format("'{}' is not measured like the others in its group", entry.key.scalar));
          continue;
        }
        read.foods.emplace_back(*food, *amount);
      }
    }
    household.any_of.push_back(std::move(read));
  }
}

void read_swaps(const Node& node, Household& household, Names& names, Diagnostics& diagnostics) {
  if (node.scalar != "usual" && node.scalar != "none") {
    diagnostics.error(errors::bad_value, node.span,
                      fmt::format("'{}' is not a choice of swaps", node.scalar),
                      "write usual or none");
  }
  if (node.scalar != "usual") {
    return;
  }
  std::map<int, Substitutes> groups;
  for (const foods::Swap& swap : foods::usual_swaps) {
    const auto target = names.find(swap.food);
    const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
    if (food != nullptr && household.instead_of(*food).size() == 1) {
      auto& of = groups[swap.group].foods;
      const bool alike = of.empty() || foods::basis(*names.food(*food)) ==
                                           foods::basis(*names.food(of.front().first));
      if (alike) {
        of.emplace_back(*food, swap.amount);
      }
    }
  }
  for (auto& [number, group] : groups) {
    if (group.foods.size() > 1) {
      household.any_of.push_back(std::move(group));
    }
  }
}

bool Substitutes::holds(foods::FoodId food) const {
  return std::any_of(foods.begin(), foods.end(),
                     [&](const auto& one) { return one.first == food; });
}

InTermsOf Household::in_terms_of(foods::FoodId food) const {
  for (const Substitutes& group : any_of) {
    for (const auto& [one, amount] : group.foods) {
      if (one == food) {
        return {group.foods.front().first, group.foods.front().second / amount};
      }
    }
  }
  return {food, 1};
}

std::vector<foods::FoodId> Household::instead_of(foods::FoodId food) const {
  const foods::FoodId first = in_terms_of(food).food;
  for (const Substitutes& group : any_of) {
    if (!group.foods.empty() && group.foods.front().first == first) {
      std::vector<foods::FoodId> out;
      for (const auto& [one, amount] : group.foods) {
        out.push_back(one);
      }
      return out;
    }
  }
  return {food};
}

} // namespace manciple::kitchen
