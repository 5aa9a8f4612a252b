#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::foods {

/// What a food is where it may harm a child before it is born, or while it is nursed.
enum class Caution : std::uint8_t {
  high_mercury,   ///< large fish that eat others
  high_vitamin_a, ///< liver
  ready_meat,     ///< sliced, cured and smoked meat and fish, eaten as it is bought
  soft_cheese,    ///< ripened by mould, or fresh and in brine
  sprout,
  ready_salad, ///< made in a shop
};
std::optional<Caution> parse_caution(std::string_view word);
std::string_view name(Caution of);
std::span<const std::string_view> caution_words();

/// Of which of these a food is; none of them, where the list is empty.
struct Cautions {
  std::vector<Caution> classes;
  std::string source;
};

struct Food;

/// Whether a food is of a class: by its record, or where that does not speak of it, by its name.
bool is(const Food& food, Caution what);

} // namespace manciple::foods
