#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

namespace manciple::purchase {

/// The kitchen in which the shops that the plan may stop at also have what they are likely to have,
/// as offers without a price: a food that no price list has, wherever its department is, and at a
/// shop of which no prices are known all that is needed of its departments. A shop has the
/// departments that it is walked through; one of which that is not known has all, but is the less
/// likely for a food the less is known to be of its department.
///
/// They come in the amounts that one buys: by the piece, the can or the weight that the food is
/// shopped in. What is not priced counts as a quarter more than the least price that is known for
/// it elsewhere, or as food costs as a rule, so that prices that are known decide. *Our own
/// choice.*
kitchen::Kitchen with_likely_offers(kitchen::Kitchen kitchen, const resolve::Resolved& resolved);

} // namespace manciple::purchase
