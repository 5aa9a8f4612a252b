#include "prep/roasting.hpp"

#include "measure/units.hpp"

#include <algorithm>
#include <cstdlib>

namespace manciple::prep {
namespace {

using foods::Rational;
using foods::RoastingTime;

// No oven at home is more exact. Common practice, no source.
constexpr int close_to_it = 15; // F

// That of a piece of that weight; the last one of the food for what is heavier.
const RoastingTime& time_of(const foods::Food& food, const Rational& pounds) {
  const auto found = std::find_if(food.roasts.begin(), food.roasts.end(),
                                  [&](const RoastingTime& time) { return pounds <= time.pounds; });
  return found == food.roasts.end() ? food.roasts.back() : *found;
}

} // namespace

int roasting_minutes(const foods::Food& food, const kitchen::MethodStep& step,
                     const Rational& usual, const Rational& grams) {
  const Rational pound = measure::facts(measure::Unit::pound).factor;
  const RoastingTime& least = time_of(food, grams / pound);
  const Rational largest = pound * least.pounds;
  const Rational piece =
      grams > largest ? Rational(grams / Rational(measure::ceil(grams / largest))) : grams;
  Rational minutes = step.then * piece / std::min(usual, largest);
  if (step.fahrenheit && std::abs(*step.fahrenheit - least.fahrenheit) <= close_to_it) {
    minutes = std::max(minutes, Rational(piece / pound * least.minutes_a_pound));
  }
  return static_cast<int>(measure::to_int64(measure::ceil(minutes)));
}

} // namespace manciple::prep
