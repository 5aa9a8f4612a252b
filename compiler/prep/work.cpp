#include "prep/work.hpp"

#include "measure/units.hpp"

#include <algorithm>
#include <array>

namespace manciple::prep {
namespace {

using foods::Form;
using foods::Rational;

// Minutes a pound. Common practice, no source.
Rational minutes_per_pound(Form form) {
  switch (form) {
  case Form::minced:
    return 10;
  case Form::juice: // and its zest
  case Form::diced:
  case Form::cubed:
  case Form::julienned:
    return 6;
  case Form::grated:
  case Form::shredded:
    return 5;
  case Form::chopped:
  case Form::sliced:
    return 4;
  default:
    return 3;
  }
}

} // namespace

int cutting_minutes(Form form, const Rational& grams) {
  const Rational pounds = grams / measure::facts(measure::Unit::pound).factor;
  const auto minutes = measure::to_int64(measure::ceil(pounds * minutes_per_pound(form)));
  constexpr std::int64_t most = 600; // ten hours: nobody cuts that long
  return static_cast<int>(std::clamp<std::int64_t>(minutes, 1, most));
}

int portioning_minutes(int bags) {
  constexpr int set_out = 4; // minutes, and for each bag. Common practice, no source.
  constexpr int a_bag = 2;
  return set_out + a_bag * std::max(1, bags);
}

int thawing_days(const Rational& grams) {
  constexpr int pounds_a_day = 4;  // the lower of the two figures
  constexpr std::int64_t most = 7; // for a turkey of 28 lb. Our own choice.
  const Rational pounds = grams / measure::facts(measure::Unit::pound).factor;
  const auto days = measure::to_int64(measure::ceil(pounds / pounds_a_day));
  return static_cast<int>(std::clamp<std::int64_t>(days, 1, most));
}

} // namespace manciple::prep
