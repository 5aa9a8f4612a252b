#include "foods/food.hpp"

#include "text/words.hpp"

#include <algorithm>

namespace manciple::foods {

const std::optional<Sourced<int>>& Keeps::in(Place place) const {
  switch (place) {
  case Place::fridge:
    return fridge;
  case Place::freezer:
    return freezer ? freezer : frozen_juice;
  case Place::pantry:
    break;
  }
  return pantry;
}

Place Keeps::best_place(Place stored) const {
  const bool cooler =
      stored == Place::pantry && fridge && (!pantry || fridge->value > pantry->value);
  return cooler ? Place::fridge : stored;
}

int Keeps::once_cut() const {
  constexpr int worth_cutting_ahead = 2; // days
  if (cut) {
    return opened ? std::min(cut->value, opened->value) : cut->value;
  }
  return opened && opened->value >= worth_cutting_ahead ? opened->value : 0;
}

const VolumeWeight* Food::volume(Form form) const {
  const auto found = std::find_if(volumes.begin(), volumes.end(),
                                  [&](const VolumeWeight& v) { return v.form == form; });
  return found == volumes.end() ? nullptr : &*found;
}

const Piece* Food::piece(std::string_view word) const {
  const std::string one = text::singular(text::lower(word));
  const auto found =
      std::find_if(pieces.begin(), pieces.end(), [&](const Piece& p) { return p.name == one; });
  return found == pieces.end() ? nullptr : &*found;
}

const Yield* Food::yield(Form form) const {
  const auto found =
      std::find_if(yields.begin(), yields.end(), [&](const Yield& y) { return y.form == form; });
  return found == yields.end() ? nullptr : &*found;
}

const Nutrients* Food::nutrients_of(Form form) const {
  const auto found = std::find_if(usda_forms.begin(), usda_forms.end(),
                                  [&](const UsdaForm& u) { return u.form == form; });
  if (found != usda_forms.end() && found->nutrients) {
    return &*found->nutrients;
  }
  return nutrients ? &*nutrients : nullptr;
}

std::string normal_name(std::string_view name) {
  std::string spaced;
  for (const char c : text::lower(text::without_accents(text::trim(name)))) {
    const bool space = c == ' ' || c == '\t' || c == '-';
    if (!space) {
      spaced += c;
    } else if (!spaced.empty() && spaced.back() != ' ') {
      spaced += ' ';
    }
  }
  return text::singular(spaced);
}

} // namespace manciple::foods
