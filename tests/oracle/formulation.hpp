#pragma once

#include "oracle/mip.hpp"
#include "purchase/model.hpp"

namespace manciple::oracle {

/// The model of purchase/model.hpp as a mixed-integer program whose optimum is the least total in
/// Money. It is stated from the rules, not from how the solver works: flows from what is bought on
/// a day to demands, a pack at a time where packs are opened.
///
/// Without limits of room nothing is said about who serves whom: that the rule of use is the best
/// way to use what was bought is for the comparison to show. With limits of room, first bought
/// first used is required by rows of its own (binaries for who serves whom). Goods with
/// `keeps_opened` must not take room in a limited place.
Mip formulate(const purchase::Model& model);

} // namespace manciple::oracle
