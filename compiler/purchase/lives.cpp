#include "purchase/lives.hpp"

#include "foods/ripening.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

using buying::Place;
using foods::Food;
using measure::Rational;

// Packaged food without a figure of its own takes about a millilitre and a half a gram.
// Common practice, no source.
const Rational default_ml_per_gram{3, 2};

Rational ml_per_unit(const Food& food) {
  switch (foods::basis(food)) {
  case measure::Dimension::volume:
    return 1;
  case measure::Dimension::count:
    return 0; // household things stand where there is room
  case measure::Dimension::mass:
    break;
  }
  const foods::VolumeWeight* weight = food.volume(foods::Form::plain);
  if (weight == nullptr && !food.volumes.empty()) {
    weight = food.volumes.data();
  }
  return weight == nullptr ? default_ml_per_gram
                           : Rational(measure::facts(weight->unit).factor / weight->grams);
}

// What a household freezes: meat, fish, bread and the dairy that stands it, citrus as cubes of
// juice, herbs in oil or water. Other fruit and vegetables come out of a freezer fit for cooking
// only, and are not frozen.
std::optional<int> home_frozen(const Food& food) {
  using foods::Department;
  const bool freezes = food.department == Department::meat || food.department == Department::fish ||
                       food.department == Department::bakery ||
                       food.department == Department::dairy || food.freezes_for_cooking;
  if (freezes && food.stored != foods::Place::freezer && food.freezes.value_or(false) &&
      food.keeps.freezer) {
    return food.keeps.freezer->value;
  }
  if (food.keeps.frozen_juice) {
    return food.keeps.frozen_juice->value;
  }
  return std::nullopt;
}

// What is left of an opened pack may be frozen in portions, whatever it is, if it bears that:
// broth, tomato paste by the spoonful, coconut milk.
std::optional<int> opened_and_frozen(const Food& food) {
  return food.stored != foods::Place::freezer && food.freezes.value_or(false) && food.keeps.freezer
             ? std::optional(food.keeps.freezer->value)
             : std::nullopt;
}

// Opening starts a clock for what comes in one pack, not for a bag of onions, and only if it ends
// before the plan does. Raw meat and fish have none: they keep as long opened as not.
std::optional<int> once_opened(const Food& food, int sealed, int days) {
  using foods::Department;
  const bool one_pack = food.department != Department::produce && !food.is_household();
  if (one_pack && food.keeps.opened && food.keeps.opened->value < std::min(sealed, days)) {
    return food.keeps.opened->value;
  }
  return std::nullopt;
}

} // namespace

Place in_model(foods::Place place) {
  switch (place) {
  case foods::Place::fridge:
    return Place::fridge;
  case foods::Place::freezer:
    return Place::freezer;
  case foods::Place::pantry:
    break;
  }
  return Place::pantry;
}

Keeping keeping_of(const Food& food, int days) {
  Keeping result{in_model(food.stored), {}};
  result.life.cool = longer_than_any_plan;
  if (food.is_household()) {
    return result;
  }
  const foods::Place place = food.keeps.best_place(food.stored);
  result.place = in_model(place);
  const auto& best = food.keeps.in(place);
  if (!best) {
    result.known = false;
    return result;
  }
  result.life.cool = *foods::keeps_from_shop(food);
  result.life.frozen = home_frozen(food);
  result.life.opened = once_opened(food, best->value, days);
  if (result.life.opened) {
    result.life.refrozen = opened_and_frozen(food);
  }
  return result;
}

std::optional<Keeping> keeping_of(const kitchen::StockLot& lot, const Food& food, text::Date first,
                                  int days) {
  const int until =
      lot.use_by ? static_cast<int>((*lot.use_by - first).count()) : longer_than_any_plan;
  if (until < 0) {
    return std::nullopt;
  }
  Keeping result{in_model(lot.place), {}};
  result.life.cool = until;
  if (lot.place == foods::Place::freezer) {
    if (food.stored != foods::Place::freezer) {
      result.life.frozen = until; // taken out by the portion
    }
    return result;
  }
  if (!lot.thawed) {
    result.life.frozen = home_frozen(food);
  }
  // What is open already goes by its date.
  result.life.opened = lot.opened ? std::nullopt : keeping_of(food, days).life.opened;
  if (result.life.opened) {
    result.life.refrozen = lot.thawed ? std::nullopt : opened_and_frozen(food);
  }
  return result;
}

buying::Volume room_cool(const Food& food) {
  return measure::to_int64(measure::ceil(Rational(ml_per_unit(food) * 1000)));
}

buying::Volume room_frozen(const Food& food) {
  const foods::Yield* juice = food.yield(foods::Form::juice);
  const bool squeezed = food.keeps.frozen_juice && juice != nullptr && !food.keeps.freezer;
  return measure::to_int64(
      measure::ceil(Rational(ml_per_unit(food) * 1000 * (squeezed ? juice->share : Rational(1)))));
}

} // namespace manciple::purchase
