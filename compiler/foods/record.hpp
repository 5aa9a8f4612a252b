#pragma once

#include "foods/food.hpp"

#include <string>
#include <string_view>

/// Food records as bytes, so that the reference can be embedded in the binary and a build pays only
/// for the foods that it uses. The bytes are made and read by one version of the program.
namespace manciple::foods {

std::string to_bytes(const Food& food);
Food from_bytes(std::string_view bytes);

} // namespace manciple::foods
