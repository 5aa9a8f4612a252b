#include "prep/roasting.hpp"

#include "measure/units.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace manciple::prep {
namespace {

using foods::Rational;

// A row of the table, of pieces up to a weight.
struct RoastingTime {
  std::string_view food;
  int product; // the number in the table
  int most_pounds;
  int oven; // F
  int minutes_a_pound;
};

// By food, then weight.
constexpr std::array<RoastingTime, 14> rows{{
    {"bone-in ham", 84, 7, 325, 18},
    {"bone-in ham", 83, 14, 325, 15},
    {"eye of round roast", 36, 4, 325, 30},
    {"ham", 84, 7, 325, 18},
    {"ham", 83, 14, 325, 15},
    {"lamb shoulder", 48, 4, 325, 30},
    {"leg of lamb", 44, 7, 325, 20},
    {"leg of lamb", 45, 9, 325, 15},
    {"pork leg roast", 92, 8, 325, 30},
    {"pork loin roast", 61, 6, 325, 23}, // the table ends at 4 lb; a loin is longer, not thicker
    {"rib roast", 34, 8, 325, 23},
    {"rump roast", 36, 4, 325, 30},
    {"whole chicken", 113, 7, 350, 20},
    {"whole turkey", 114, 24, 325, 30},
}};

// No oven at home is more exact. Common practice, no source.
constexpr int close_to_it = 15; // F

// The row for a piece of that weight; the last one of the food for what is heavier.
const RoastingTime* row_of(const foods::Food& food, const Rational& pounds) {
  const RoastingTime* out = nullptr;
  for (const RoastingTime& row : rows) {
    if (row.food == food.name && (out == nullptr || pounds > out->most_pounds)) {
      out = &row;
    }
  }
  return out;
}

} // namespace

bool is_roast(const foods::Food& food) {
  return row_of(food, 1) != nullptr;
}

int roasting_minutes(const foods::Food& food, const kitchen::MethodStep& step,
                     const Rational& usual, const Rational& grams) {
  const Rational pound = measure::facts(measure::Unit::pound).factor;
  const RoastingTime& row = *row_of(food, grams / pound);
  const Rational largest = pound * row.most_pounds;
  const Rational piece =
      grams > largest ? Rational(grams / Rational(measure::ceil(grams / largest))) : grams;
  Rational minutes = step.then * piece / std::min(usual, largest);
  if (step.fahrenheit && std::abs(*step.fahrenheit - row.oven) <= close_to_it) {
    minutes = std::max(minutes, Rational(piece / pound * row.minutes_a_pound));
  }
  return static_cast<int>(measure::to_int64(measure::ceil(minutes)));
}

} // namespace manciple::prep
