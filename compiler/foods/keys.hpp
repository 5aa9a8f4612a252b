#pragma once

#include "text/keys.hpp"

/// The keys of a food record, as the reference and a household's foods.yaml have them.
namespace manciple::foods::keys {

extern const text::Keys food;
extern const text::Keys keeps;
extern const text::Keys allergens;
extern const text::Keys classes;
extern const text::Keys safety;
extern const text::Keys expecting;
extern const text::Keys nutrients;
/// A whole file: records by the names of foods.
extern const text::Value file;

} // namespace manciple::foods::keys
