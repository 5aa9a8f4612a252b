#pragma once

#include "kitchen/shop.hpp"

#include <optional>
#include <string_view>
#include <utility>

namespace manciple::kitchen {

/// The offers of one food of a price list, as "3 lb bag 2.99", "1.99/lb", "6 x 15 oz cans 5.99",
/// "500 g 2,49", "1.99/100 g" or "3 for 2.00"; a pack without a price ("400 g can ?") and a food
/// without any are offers whose price is not known. What cannot be read is left out, with its
/// error; a food that nobody knows is carried as it is written.
std::vector<Offer> read_offers(const text::Entry& entry, ShopId shop, const Household& household,
                               Names& names, text::Diagnostics& diagnostics);

/// "6 x 15 oz cans": how many are inside, and the rest.
std::optional<std::pair<int, std::string_view>> several_in_one(std::string_view pack);

} // namespace manciple::kitchen
