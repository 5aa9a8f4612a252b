#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::prep {

/// Two dishes of one meal or session: the first is for someone who must not have what is in the
/// other, and is made before that, with clean boards and knives, so that nothing is carried over.
/// FDA Food Code 2022, 3-302.11 (cross-contact with major food allergens) and annex 3.
struct CleanFirst {
  resolve::MakingId first{};
  resolve::MakingId then{};
  std::string why; ///< "Tilda must not have mushroom"
};

/// Of all makings for meals of the day on which they are made.
std::vector<CleanFirst> clean_first(const kitchen::Kitchen& kitchen,
                                    const resolve::Resolved& resolved);

/// The same of what a session makes, for whatever meals.
std::vector<CleanFirst> clean_first_in(const kitchen::Kitchen& kitchen,
                                       const resolve::Resolved& resolved, std::size_t session);

/// What of a food somebody of the household or a guest must not have, so that it may not touch what
/// is for them: "egg"; nothing where it harms nobody.
std::optional<std::string> harm_of(const kitchen::Kitchen& kitchen, foods::FoodId food);

} // namespace manciple::prep
