#pragma once

#include "emit/compiled.hpp"

#include <string>
#include <string_view>

/// The parts of the page. Each section is whole without the script: it reads and prints; the script
/// opens the page where one stands, and adds what a finger does.
namespace manciple::emit::page {

/// The list by trip, stop and department, in the order in which one walks.
std::string shop_section(const Compiled& compiled);
/// The menu as a calendar of the month.
std::string menu_section(const Compiled& compiled);
/// What to do on each day, with times: take out and put away, cook, eat.
std::string days_section(const Compiled& compiled);
/// The sessions: cooks side by side along one axis of time, appliances as bars beside them; and by
/// day what is cooked between them.
std::string cook_section(const Compiled& compiled);
/// What people would rather look at than read: money, room, food by day.
std::string figures_section(const Compiled& compiled);
/// What is in what people eat, by day against the range; a part of the figures.
std::string nutrition_figure(const Compiled& compiled);
/// What is stuck on boxes and bags.
std::string labels_section(const Compiled& compiled);

/// What the script needs to know and the page does not say: prices, taxes, where a line goes when
/// it is not there. JSON that may stand inside a script element.
std::string data_json(const Compiled& compiled);
/// Each dish as it is cooked: read when one looks at a dish.
std::string dishes_json(const Compiled& compiled);

/// A day as it stands before what belongs to it: the number large, the words beside it, and below
/// them the month and `more` (HTML).
std::string day_head(text::Date day, std::string_view more = {});
/// The letter of a place: P pantry, F fridge, Z freezer.
char place_letter(foods::Place place);
/// A place as a mark: a letter in its colour, with its name for who cannot see it.
std::string place_mark(foods::Place place);
/// The same for what is hot, or has to be.
std::string heat_mark();
/// Where a making is opened as a dish to cook from.
std::string dish_link(const Compiled& compiled, const resolve::Making& making);

/// What the build embeds: the folder `style` in three pieces, and the folders `first` and `script`,
/// each joined. The frame is read before anything is painted, and small for that reason.
extern const std::string_view frame_style;
extern const std::string_view first_style;
extern const std::string_view style;
extern const std::string_view first_script;
extern const std::string_view script;
/// The library that draws a link as a square code, with its licence.
extern const std::string_view qr_library;

} // namespace manciple::emit::page
