#pragma once

#include "foods/classes.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::foods {

/// What a food is where it may harm a child before it is born, or while it is nursed, apart from
/// what the safety of a dish asks: cold cuts and sprouts.
enum class Caution : std::uint8_t {
  high_mercury,   ///< large fish that eat others
  high_vitamin_a, ///< liver
  soft_cheese,    ///< ripened by mould, or fresh and in brine
  ready_salad,    ///< made in a shop
};
std::optional<Caution> parse_caution(std::string_view word);
std::string_view name(Caution of);
std::span<const std::string_view> caution_words();

/// Of which of these a food is; none of them, where the list is empty.
struct Cautions {
  std::vector<Caution> classes;
  std::string source;
};

/// Whether a food is of a class: by its record, or where that does not speak of it, by its name.
bool is(const Food& food, Caution what);
/// The same of cold cuts and sprouts. Dangers to everybody go by what is known of them (`is`), what
/// is said to somebody who is expecting by what may be.
bool may_be(const Food& food, Class what);

} // namespace manciple::foods
