#pragma once

#include "purchase/model.hpp"

namespace manciple::purchase {

/// Throws std::invalid_argument, with the reason, for a model outside the ranges of model.hpp.
void validate(const Model& model);

} // namespace manciple::purchase
