#pragma once

#include "foods/food.hpp"
#include "foods/keys.hpp"
#include "text/fields.hpp"

#include <vector>

namespace manciple::foods {

/// A food and the place of its name in the file.
struct Defined {
  Food food;
  text::Span at;
};

/// One record. `base` is what is known already: a household's record changes the keys that it
/// names, and in a mapping of figures the figures that it names, and keeps the rest.
Food read_food(const text::Entry& entry, Food base, text::Diagnostics& diagnostics);

/// All records of a file; `base` gives the record that a name starts from, or null.
template <typename Base>
std::vector<Defined> read_foods(const text::Node& file, Base base, text::Diagnostics& diagnostics) {
  std::vector<Defined> out;
  for (const text::Entry* entry :
       text::entries_of(file, keys::file, "a file of foods", diagnostics)) {
    const Food* known = base(entry->key.scalar);
    out.push_back(
        {read_food(*entry, known != nullptr ? *known : Food{}, diagnostics), entry->key.span});
  }
  return out;
}

} // namespace manciple::foods
