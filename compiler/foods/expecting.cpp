#include "foods/expecting.hpp"

#include "foods/food.hpp"
#include "foods/look_up.hpp"
#include "text/phrases.hpp"

#include <algorithm>
#include <array>

namespace manciple::foods {
namespace {

constexpr auto cautions = std::to_array<std::string_view>(
    {"high mercury", "high vitamin A", "soft cheese", "ready salad"});
static_assert(cautions.size() == static_cast<std::size_t>(Caution::ready_salad) + 1);

constexpr auto high_mercury_names = std::to_array<std::string_view>(
    {"swordfish", "shark", "king mackerel", "marlin", "orange roughy", "tilefish", "bigeye tuna"});
constexpr auto high_vitamin_a_names = std::to_array<std::string_view>({"liver", "liverwurst"});
constexpr auto soft_cheese_names = std::to_array<std::string_view>(
    {"brie", "camembert", "feta", "queso fresco", "blue cheese", "gorgonzola", "roquefort"});
constexpr auto cold_cut_names = std::to_array<std::string_view>(
    {"deli", "hot dog", "smoked salmon", "smoked trout", "prosciutto", "salami"});
constexpr auto sprout_names =
    std::to_array<std::string_view>({"alfalfa sprout", "bean sprout", "radish sprout"});

// What foods of a class are called that no record answers.
std::span<const std::string_view> names_of(Caution what) {
  switch (what) {
  case Caution::high_mercury:
    return high_mercury_names;
  case Caution::high_vitamin_a:
    return high_vitamin_a_names;
  case Caution::soft_cheese:
    return soft_cheese_names;
  case Caution::ready_salad:
    break;
  }
  return {};
}

std::span<const std::string_view> names_of(Class what) {
  return what == Class::cold_cut ? std::span<const std::string_view>(cold_cut_names)
         : what == Class::sprout ? std::span<const std::string_view>(sprout_names)
                                 : std::span<const std::string_view>();
}

bool is_called_one_of(const Food& food, std::span<const std::string_view> names) {
  return std::any_of(names.begin(), names.end(),
                     [&](std::string_view one) { return text::names(food.name, one); });
}

} // namespace

std::optional<Caution> parse_caution(std::string_view word) {
  return look_up<Caution>(cautions, word);
}

std::string_view name(Caution of) {
  return cautions.at(static_cast<std::size_t>(of));
}

std::span<const std::string_view> caution_words() {
  return cautions;
}

bool is(const Food& food, Caution what) {
  if (food.expecting) {
    const std::vector<Caution>& known = food.expecting->classes;
    return std::find(known.begin(), known.end(), what) != known.end();
  }
  return is_called_one_of(food, names_of(what));
}

bool may_be(const Food& food, Class what) {
  return is(food, what) || (!food.safety && is_called_one_of(food, names_of(what)));
}

} // namespace manciple::foods
