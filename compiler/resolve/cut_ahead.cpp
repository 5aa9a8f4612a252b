#include "resolve/cut_ahead.hpp"

#include <algorithm>
#include <array>

namespace manciple::resolve {
namespace {

// By a word of its name. Apples, pears, potatoes and mushrooms brown; leaves wilt and bleed; a
// tomato or cucumber runs.
constexpr std::array<std::string_view, 33> cut_when_used{
    "apple",    "pear",      "quince",    "avocado",  "banana",      "plantain", "potato",
    "eggplant", "aubergine", "artichoke", "mushroom", "chanterelle", "morel",    "lettuce",
    "spinach",  "arugula",   "rocket",    "chard",    "salad",       "cress",    "kale",
    "peach",    "nectarine", "apricot",   "tomato",   "basil",       "parsley",  "cilantro",
    "mint",     "dill",      "chive",     "sorrel",   "lemon"};
constexpr std::array<std::string_view, 5> sharp{"onion", "garlic", "shallot", "leek", "scallion"};
constexpr int sharp_keeps = 2; // days
constexpr int worth_cutting_ahead = 2;

bool has_word(const foods::Food& food, std::string_view word) {
  const std::string name = " " + food.name + " ";
  return name.find(" " + std::string(word) + " ") != std::string::npos;
}

template <std::size_t N>
bool has_one(const foods::Food& food, const std::array<std::string_view, N>& words) {
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return has_word(food, word); });
}

} // namespace

int keeps_cut(const foods::Food& food) {
  if (!food.keeps.opened) {
    return 0;
  }
  if (has_one(food, sharp)) { // "green onion"
    return std::min(sharp_keeps, food.keeps.opened->value);
  }
  const bool used_at_once = has_one(food, cut_when_used);
  return used_at_once || food.keeps.opened->value < worth_cutting_ahead ? 0
                                                                        : food.keeps.opened->value;
}

} // namespace manciple::resolve
