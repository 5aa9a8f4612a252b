#pragma once

#include "emit/compiled.hpp"
#include "purchase/other_offers.hpp"

#include <string>
#include <vector>

/// Renders a compiled plan. Nothing is decided here.
namespace manciple::emit {

/// A file of the output folder.
struct Output {
  std::string name;
  std::string content;
};

/// Every file that `build` writes, in a fixed order. `calendar_before` is the calendar.ics that was
/// there before, or nothing.
std::vector<Output> outputs(const Compiled& compiled, std::string_view calendar_before = {});

/// A receipt of a stop as the list has it, to be corrected: a file for plans/receipts.
std::string receipt_yaml(const Compiled& compiled, std::size_t visit);

/// What the list comes to, for the terminal: the stops with their sums and the total.
std::string summary(const Compiled& compiled);

/// The list as plain text, by trip, stop and department.
std::string list_text(const Compiled& compiled);
std::string list_markdown(const Compiled& compiled);
/// A row a purchase, one for each thing still to be found, then the sum of each stop and of all;
/// RFC 4180, and safe to open in a spreadsheet: a cell that would be run as a formula has an
/// apostrophe before it. Where the household writes money with a comma, numbers have one, and a
/// semicolon stands between cells.
std::string list_csv(const Compiled& compiled);
std::string menu_markdown(const Compiled& compiled);
std::string prep_markdown(const Compiled& compiled);
std::string days_markdown(const Compiled& compiled);
std::string labels_markdown(const Compiled& compiled);
std::string money_markdown(const Compiled& compiled);
/// What is left at the end, what was wasted, what is still on hand.
std::string left_markdown(const Compiled& compiled);
/// What is in what is eaten: by person a mean day and a week against the ranges, a serving of each
/// dish, the aims, and what is left out.
std::string nutrition_markdown(const Compiled& compiled);
/// The same by day and person, a line each; RFC 4180.
std::string nutrition_csv(const Compiled& compiled);
/// Trips, prep sessions, what is cooked and eaten, and reminders with their alarms, for a calendar;
/// RFC 5545. Revisions are counted on from those of the calendar that was there `before`.
std::string calendar_ics(const Compiled& compiled, std::string_view before = {});
/// The whole month as one page for a phone and for paper, with all that it needs inside.
std::string page_html(const Compiled& compiled);
/// The whole result, as described by result.schema.json.
std::string result_json(const Compiled& compiled);

/// One day, for the terminal: what to shop, thaw, soak, cook and eat.
std::string day_text(const Compiled& compiled, text::Date day);
/// The sessions, for the terminal: who does what when, and a drawing of cooks and appliances with a
/// character for every five minutes.
std::string sessions_text(const Compiled& compiled);

/// Why a food is on the list: what is bought, what it is used for, down to the meals, and what it
/// would come to if it were bought in other ways.
std::string why_text(const Compiled& compiled, foods::FoodId food,
                     const std::vector<purchase::OtherWay>& other_ways);

/// The usual caution that goes on every schedule.
extern const std::string_view caution;

} // namespace manciple::emit
