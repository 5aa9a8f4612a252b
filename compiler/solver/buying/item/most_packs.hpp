#pragma once

#include "buying/item/terms.hpp"

#include <vector>

namespace manciple::buying {

/// By source: so many packs need be bought there at most. For they must be of use, and another
/// visit may do as well.
///
/// If an earlier visit sells the same offer under the same terms, and what is bought there can do
/// the same from this visit on, all of it may be bought there, unless room costs something. If a
/// later one does, and spoils no sooner, only what is needed before that need be bought here
/// (where room costs something, only if it does just the same: what keeps longer may have to stay
/// longer). Either goes for offers without a limit, at visits that are open and free to use.
std::vector<int> most_packs(const Prepared& item, const Terms& terms);

} // namespace manciple::buying
