#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <string>
#include <vector>

namespace manciple::prep {

/// Two dishes of one meal: the first is for someone who must not have what is in the other, and is
/// made before that, with clean boards and knives, so that nothing is carried over. FDA Food Code
/// 2022, 3-302.11 (cross-contact with major food allergens) and annex 3.
struct CleanFirst {
  resolve::MakingId first{};
  resolve::MakingId then{};
  std::string why; ///< "Tilda must not have mushroom"
};

/// Of all makings for meals of the day on which they are made.
std::vector<CleanFirst> clean_first(const kitchen::Kitchen& kitchen,
                                    const resolve::Resolved& resolved);

} // namespace manciple::prep
