#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace manciple::text {

/// ASCII letters and digits, whatever the locale.
bool is_letter(char c);
bool is_digit(char c);

/// ASCII letters in lower case; other bytes stay.
std::string lower(std::string_view text);
/// "creme fraiche" of "crème fraîche": the letters of Latin-1 without what stands over or under
/// them.
std::string without_accents(std::string_view text);
/// With its first letter, if that is an ASCII one, in upper case.
std::string capitalized(std::string text);
/// Without spaces at either end.
std::string_view trim(std::string_view text);
/// Cut at each `separator`, parts trimmed.
std::vector<std::string_view> split(std::string_view text, char separator);
/// The first comma that is no decimal comma ("0,5 kg"), or npos.
std::size_t find_comma(std::string_view text);
std::string join(const std::vector<std::string>& parts, std::string_view separator);
/// "chili, soup, stew and 4 more": the first three, and how many there are besides.
std::string the_first_few(const std::vector<std::string>& all);

/// A name as a file is called: lower case, a hyphen for every run of other characters.
/// "Smoky lentil soup" is "smoky-lentil-soup".
std::string slug(std::string_view name);

/// The other way, as a heading: "smoky-lentil-soup" is "Smoky lentil soup".
std::string title(std::string_view slug);

/// English nouns, well enough for food names: "leaves" is "leaf", "berries" is "berry",
/// "tomatoes" is "tomato", "radishes" is "radish", "hummus" stays.
std::string singular(std::string_view noun);
/// The other way, for printing: "loaf" is "loaves".
std::string plural(std::string_view noun);

} // namespace manciple::text
