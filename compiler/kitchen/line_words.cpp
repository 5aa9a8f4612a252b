#include "kitchen/line_words.hpp"

#include "measure/units.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

constexpr auto descriptors = std::to_array<std::string_view>(
    {"ripe",    "fresh",    "freshly",  "finely",   "roughly", "coarsely", "thinly",
     "thickly", "lightly",  "firmly",   "cold",     "warm",    "hot",      "lukewarm",
     "chilled", "boneless", "skinless", "crusty",   "good",    "quality",  "softened",
     "heaping", "heaped",   "level",    "scant",    "bought",  "of",       "raw",
     "lean",    "the",      "plump",    "unpeeled", "trimmed", "washed",   "rinsed",
     "very",    "about",    "small",    "medium",   "large",   "big"});

constexpr auto containers = std::to_array<std::string_view>(
    {"can", "tin", "package", "pkg", "packet", "jar", "bottle", "box", "bag", "carton", "tub",
     "tube", "container", "block", "pouch", "pack", "roll", "pair"});

constexpr auto pieces = std::to_array<std::string_view>(
    {"bunch", "head",   "clove",  "stalk",   "rib",   "slice", "rasher", "sprig", "leaf",
     "stick", "fillet", "piece",  "handful", "knob",  "sheet", "cube",   "ear",   "loaf",
     "bulb",  "ball",   "dollop", "bar",     "strip", "wedge", "sachet"});

template <std::size_t n>
bool holds(const std::array<std::string_view, n>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

} // namespace

bool is_descriptor(std::string_view word) {
  return holds(descriptors, word);
}
bool is_kind(std::string_view word) {
  return word == "frozen" || word == "cooked" || word == "ground" || word == "dry";
}
bool is_container(std::string_view word) {
  return holds(containers, word);
}
bool is_piece(std::string_view word) {
  return holds(pieces, word);
}

bool is_measure(std::string_view word, const measure::Customs& customs) {
  return is_piece(word) || is_container(word) || measure::find_unit(word, customs).has_value();
}

std::optional<foods::Form> form_of(const std::string& word) {
  const std::string one = text::singular(word);
  if (one == "chunk") {
    return foods::Form::cubed;
  }
  if (one == "flaked") {
    return foods::Form::sliced; // almonds
  }
  const auto form = foods::parse_form(word);
  return form ? form : foods::parse_form(one);
}

std::optional<std::string_view> slip_of_word(std::string_view word) {
  std::vector<std::string_view> known(descriptors.begin(), descriptors.end());
  known.insert(known.end(), containers.begin(), containers.end());
  known.insert(known.end(), pieces.begin(), pieces.end());
  const auto forms = foods::form_words();
  known.insert(known.end(), forms.begin(), forms.end());
  for (const measure::UnitFacts& unit : measure::all_units()) {
    known.push_back(unit.name);
    known.push_back(unit.plural);
  }
  const std::string one = text::singular(word);
  const bool is_known = std::find(known.begin(), known.end(), one) != known.end();
  return is_known ? std::nullopt : text::slip_of(word, known);
}

std::optional<std::string_view> slip_of_form(std::string_view word) {
  // What is written after a comma and is like the name of a form.
  constexpr auto others =
      std::to_array<std::string_view>({"mixed", "cleaned", "cut", "sieved", "stirred", "salted",
                                       "rolled", "dried", "cored", "pared"});
  const auto forms = foods::form_words();
  std::vector<std::string_view> known(forms.begin(), forms.end());
  known.insert(known.end(), {"optional", "fresh"});
  const auto meant =
      holds(others, word) || is_descriptor(word) ? std::nullopt : text::slip_of(word, known);
  return meant && word.starts_with(*meant) ? std::nullopt : meant; // "juiced"
}

} // namespace manciple::kitchen
