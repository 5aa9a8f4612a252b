#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <string>

/// What something is for.
namespace manciple::prep {

/// What a use is for: the dish or the meal; nothing of what is eaten when anybody likes.
std::optional<std::string> purpose(const kitchen::Kitchen& kitchen,
                                   const resolve::Resolved& resolved, const resolve::Use& use);

/// The dishes that a making ends up in, through makings of makings: "Chili, Taco bowls".
std::string purposes(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                     resolve::MakingId making);

} // namespace manciple::prep
