#pragma once

#include "purchase/shopping.hpp"

#include <vector>

namespace manciple::purchase {

/// What an offer says of its own allergens counts for what is bought of it, and for nothing else.
/// The kitchen without offers that have what someone who eats of their food must not have; each is
/// told of in a remark, or a warning where no price list has another.
kitchen::Kitchen without_makers(kitchen::Kitchen kitchen, const resolve::Resolved& resolved,
                                text::Diagnostics& diagnostics);

/// The labels that are still to be read: all that the plan asks for but those of which every
/// purchase for that person says that it is free of it.
std::vector<resolve::LabelCheck> labels_to_read(const kitchen::Kitchen& kitchen,
                                                const resolve::Resolved& resolved,
                                                const Shopping& shopping);

} // namespace manciple::purchase
