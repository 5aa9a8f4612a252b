#pragma once

#include "emit/compiled.hpp"

#include <string>
#include <string_view>

/// The parts of the page. Each section is whole without the script: it reads and prints; the script
/// adds what a finger does.
namespace manciple::emit::page {

/// The list by trip, stop and department, in the order in which one walks.
std::string list_section(const Compiled& compiled);
/// The menu as a calendar of the month.
std::string menu_section(const Compiled& compiled);
/// What to do on each day, with times.
std::string days_section(const Compiled& compiled);
/// The prep sessions: who and what is busy when, as a drawing, and a sheet for each cook.
std::string prep_section(const Compiled& compiled);
/// What people would rather look at than read: money, room, food by day.
std::string pictures_section(const Compiled& compiled);
/// What is in what people eat, by day against the range; a part of the pictures.
std::string nutrition_figure(const Compiled& compiled);
/// What is stuck on boxes and bags.
std::string labels_section(const Compiled& compiled);

/// What the script needs to know and the page does not say: prices, taxes, where a line goes when
/// it is not there. JSON that may stand inside a script element.
std::string data_json(const Compiled& compiled);

/// A stop or a line by what it is and not by its place, so that a plan that is compiled again finds
/// what was ticked.
std::string stop_key(const Compiled& compiled, std::size_t visit);

/// The files beside this one, as the build embeds them.
extern const std::string_view style;
extern const std::string_view script;

} // namespace manciple::emit::page
