#pragma once

#include "resolve/resolve.hpp"

namespace manciple::resolve {

/// Under 0 where `to` is earlier.
inline int gap_in_days(Date from, Date to) {
  return static_cast<int>((to - from).count());
}

/// Sets until when makings and by-products are good, counted from the oldest of their parts: food
/// that is combined is as old as its oldest part (FDA Food Code 2022, 3-501.17). What comes from
/// the freezer or the pantry does not count.
void date_makings(const kitchen::Kitchen& kitchen, std::vector<Making>& makings,
                  std::vector<ByProduct>& by_products);

/// By making: the last day on which it is eaten unfrozen, in whatever it went into.
std::vector<Date> last_eaten(const std::vector<Making>& makings);

} // namespace manciple::resolve
