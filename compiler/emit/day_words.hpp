#pragma once

#include "emit/compiled.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Phrases about cooking and days that the schedule, the page and the calendar share.
namespace manciple::emit {

/// How much of a recipe is made: "the whole recipe", "3/4 of the recipe", "1 1/2 times the recipe".
std::string how_much(const Compiled& compiled, const resolve::Making& making);
/// Who eats a dish: "all four", "Ada and Ben", "all four and Sam"; or, where the plan says for how
/// many, "6".
std::string eaters_of(const Compiled& compiled, const resolve::DishRef& dish);
/// When a making is cooked, as the method's times have it: "from 17:40 (20 min hands-on)"; "for
/// 18:30" where the method has none.
std::string cooking_time(const Compiled& compiled, const prep::Cooking& cook);
/// Whether there is something to cook, and not only what a session has cut.
bool is_work(const Compiled& compiled, const prep::Cooking& cook);
/// The first day on which there is something to do: before the plan's first, where one shops,
/// thaws or soaks for it.
text::Date first_day_to_do(const Compiled& compiled);
/// What is left of a making: "2 servings", to the half; empty if it is less.
std::string left_of(const Compiled& compiled, const resolve::Making& making);
/// Who that cook of a session is: by name, or "cook 2"; and the same as a heading.
std::string cook_name(const kitchen::Session& session, std::size_t cook);
std::string cook_heading(const kitchen::Session& session, std::size_t cook);
/// The time so many minutes after a session's start; after midnight it goes on from 00:00.
std::string clock_in(const kitchen::Session& session, int minutes);
/// Of what is left of a making: ", good until Thu 4 Mar"; empty if that is not known.
std::string good_until(const resolve::Making& making);
/// What a reminder asks for: "thaw", "use up".
std::string_view word(prep::Reminder::Kind kind);
/// How a dish that was made before its day is made hot, from the fridge or the freezer: as the
/// recipe says, or as is usual. Nothing for what is made on the day, or is eaten cold.
std::optional<std::string> how_to_reheat(const Compiled& compiled, const resolve::DishRef& dish);
/// Of a making that goes first: "; made first, with clean boards and knives: Tilda must not have
/// mushroom".
std::string goes_first(const prep::Cooking& cook);
/// A temperature as the dial of an oven has it, in fives: "375 F", "200 °C".
std::string on_the_dial(const Compiled& compiled, int fahrenheit);
/// When an oven is turned on for a making, and to what: "the oven to 375 F, for Roast chicken".
std::vector<std::pair<int, std::string>> ovens_turned_on(const Compiled& compiled,
                                                         const prep::Cooking& cook);
/// How a batch is cooled and stored: "; cool in 1 shallow pan 2 in deep; store 3 boxes: 2 x 4 cups
/// (freezer), 2 cups (fridge)"; empty if it is eaten at once.
std::string boxes_of(const Compiled& compiled, resolve::MakingId making);
/// Who cooks a dish on its day: "Ada and Ben"; empty where nobody says.
std::string cooks_of(const prep::Cooking& cook);
/// The lowest safe temperature of what a recipe cooks: "165 F in the middle for chicken"; empty if
/// none of it has one.
std::string safe_temperature(const Compiled& compiled, const kitchen::Recipe& recipe);
/// The dishes of a meal and who eats them: "Minestrone and Cornbread for all four; 2 apples".
std::string dishes_of(const Compiled& compiled, std::size_t meal);

/// Said wherever something hot is to be stored.
std::string cooling(const Compiled& compiled);

} // namespace manciple::emit
