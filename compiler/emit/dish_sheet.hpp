#pragma once

#include "emit/compiled.hpp"

#include <optional>
#include <string>
#include <vector>

/// A dish as it is cooked this time: what a cook has to know at the stove.
namespace manciple::emit {

/// One ingredient, in the amount that this making takes.
struct Taken {
  std::string amount; ///< "2 2/3 cups"; empty where the recipe gives none
  std::string name;   ///< "onions"
  std::string how;    ///< "diced", "to serve"
  std::optional<foods::Place> place;
  std::string from;                ///< "cut on Sun 7 Mar", "made on Mon 1 Mar"
  std::optional<std::size_t> step; ///< the first of the sheet's steps whose words speak of it
};

/// One step, with its time by the clock of the day on which it is done.
struct SheetStep {
  std::string what;
  std::optional<int> clock; ///< minutes from midnight
  int hands_on = 0;
  int then = 0;
  std::string on; ///< "oven, 375 F"
};

struct DishSheet {
  std::vector<Taken> taken; ///< in the order of use; what no step speaks of stands first
  std::vector<SheetStep> steps;
};

DishSheet dish_sheet(const Compiled& compiled, const resolve::Making& making);

} // namespace manciple::emit
