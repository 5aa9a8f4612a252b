#pragma once

#include "purchase/shopping.hpp"

namespace manciple::purchase {

/// What an offer says of its own allergens counts for what is bought of it, and for nothing else.
/// One that has what someone who eats of its food must not have is left out, with a remark, or a
/// warning where no price list has another.
void leave_out_makers(kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                      text::Diagnostics& diagnostics);

/// A label that was to be read needs no reading where every purchase for that person says that it
/// is free of it.
void drop_labels_said(const kitchen::Kitchen& kitchen, resolve::Resolved& resolved,
                      const Shopping& shopping);

} // namespace manciple::purchase
