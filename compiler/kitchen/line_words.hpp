#pragma once

#include "foods/words.hpp"
#include "measure/units.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Words that cooks use around the name of a food.
namespace manciple::kitchen {

/// Says what kind is meant and changes no weight that the tables know: "ripe", "boneless".
bool is_descriptor(std::string_view word);
/// Whether a form is one in which a food is bought rather than one that a cook makes: "frozen".
bool is_kind(std::string_view word);
/// What a food is packed in: "can", "jar"; in the singular.
bool is_container(std::string_view word);
/// What is counted of a food of which no pieces are known: "bunch", "knob"; in the singular.
bool is_piece(std::string_view word);
/// A unit, or a word for a piece or a pack.
bool is_measure(std::string_view word, const measure::Customs& customs);
/// "diced", and the plural of a part: "yolks".
std::optional<foods::Form> form_of(const std::string& word);

/// The word of a line, a descriptor, a form, a container, a piece or a measure, that this one is a
/// slip of; see text::slip_of.
std::optional<std::string_view> slip_of_word(std::string_view word);

/// The form ("diced"), or "optional", "fresh" or "frozen", that a word is a slip of.
std::optional<std::string_view> slip_of_form(std::string_view word);

} // namespace manciple::kitchen
