#pragma once

#include "resolve/resolve.hpp"
#include "text/diagnostics.hpp"

namespace manciple::safety {

/// Warns of foods that authorities advise against for whoever is pregnant or nursing and eats the
/// dish: by the names of foods, for how hot a dish gets and what a maker has done are not known.
/// Guidance, and not all of it: a doctor or a midwife comes first. Of what was cooked before the
/// plan nothing is said.
void check_expecting(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                     text::Diagnostics& diagnostics);

} // namespace manciple::safety
