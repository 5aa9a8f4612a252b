#include "purchase/offers.hpp"

#include "purchase/likely.hpp"
#include "purchase/makers.hpp"

#include <utility>

namespace manciple::purchase {

kitchen::Kitchen with_offers(kitchen::Kitchen kitchen, const resolve::Resolved& resolved,
                             text::Diagnostics& diagnostics) {
  return with_likely_offers(without_makers(std::move(kitchen), resolved, diagnostics), resolved);
}

} // namespace manciple::purchase
