#pragma once

#include "purchase/shopping.hpp"

namespace manciple::purchase {

/// What an offer says of its own allergens counts for what is bought of it, and for nothing else.
/// Where it has what someone who eats of it must not have, that is an error at the offer; a label
/// that was to be read is not, where every purchase for that person says what is in it.
void check_makers(const kitchen::Kitchen& kitchen, resolve::Resolved& resolved,
                  const Shopping& shopping, text::Diagnostics& diagnostics);

} // namespace manciple::purchase
