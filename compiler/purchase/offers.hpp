#pragma once

#include "resolve/resolve.hpp"

namespace manciple::purchase {

/// The kitchen with the offers that a list may choose from: what price lists have, without what a
/// maker makes unsafe for those who eat of it (`without_makers`), and then, so that what is left
/// without an offer may still be found, what shops are likely to have (`with_likely_offers`).
kitchen::Kitchen with_offers(kitchen::Kitchen kitchen, const resolve::Resolved& resolved,
                             text::Diagnostics& diagnostics);

} // namespace manciple::purchase
