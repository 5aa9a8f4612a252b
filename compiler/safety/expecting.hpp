#pragma once

#include "safety/dishes.hpp"
#include "text/diagnostics.hpp"

namespace manciple::safety {

/// Warns of foods that authorities advise against for whoever is pregnant or nursing and eats the
/// dish: by what is in it, for how hot a dish gets and what a maker has done are not known.
/// Guidance, and not all of it: a doctor or a midwife comes first.
void check_expecting(const kitchen::Kitchen& kitchen, const Dishes& dishes,
                     text::Diagnostics& diagnostics);

} // namespace manciple::safety
