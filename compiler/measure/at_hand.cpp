#include "measure/at_hand.hpp"

#include <initializer_list>

namespace manciple::measure {
namespace {

// Whole ones and parts of one; the parts go up and end with 1.
Rational nearest(const Rational& amount, const Rational& least,
                 std::initializer_list<Rational> parts) {
  const Rational whole(floor(amount));
  Rational best = whole;
  for (const Rational& part : parts) {
    const Rational candidate = whole + part;
    if (abs(candidate - amount) < abs(best - amount)) {
      best = candidate;
    }
  }
  return amount > 0 && best < least ? least : best;
}

const Rational quarter(1, 4);
const Rational third(1, 3);
const Rational half(1, 2);
const Rational two_thirds(2, 3);
const Rational three_quarters(3, 4);

} // namespace

Rational by_the_cup(const Rational& cups) {
  return nearest(cups, quarter, {quarter, third, half, two_thirds, three_quarters, 1});
}

Rational by_the_tablespoon(const Rational& tablespoons) {
  return nearest(tablespoons, half, {half, 1});
}

Rational by_the_teaspoon(const Rational& teaspoons) {
  const Rational smallest(1, 8);
  return teaspoons < 1 ? nearest(teaspoons, smallest, {smallest, quarter, half, three_quarters, 1})
                       : nearest(teaspoons, 1, {quarter, half, three_quarters, 1});
}

Rational by_the_piece(const Rational& pieces, Cut cut) {
  if (cut == Cut::whole) {
    return nearest(pieces, 1, {1});
  }
  constexpr int few = 3;
  if (cut == Cut::halves || pieces >= few) {
    return nearest(pieces, half, {half, 1});
  }
  return pieces < 1
             ? nearest(pieces, quarter, {quarter, third, half, two_thirds, three_quarters, 1})
             : nearest(pieces, 1, {quarter, half, three_quarters, 1});
}

} // namespace manciple::measure
