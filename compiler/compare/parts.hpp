#pragma once

#include "compare/changes.hpp"

/// What changed, part by part, each in an order of its own; and words that they share.
namespace manciple::compare {

/// Lines by food: added, dropped, more, less, of another pack, at another stop or price.
std::vector<Change> list_changes(const Result& before, const Result& after);
/// Dishes by day and meal.
std::vector<Change> meal_changes(const Result& before, const Result& after);
/// What is made ahead: in another session, on another day, in another amount.
std::vector<Change> prep_changes(const Result& before, const Result& after);
/// What is taken out, soaked and put away.
std::vector<Change> day_changes(const Result& before, const Result& after);
/// What is paid by stop, and what is left of the budget.
std::vector<Change> money_changes(const Result& before, const Result& after);

/// "$1.00 more", "$1.00 less".
std::string more_or_less(const kitchen::Currency& currency, Cents before, Cents after);
/// A number in parts of 1 as a cook says it: 1.52 in halves is "1 1/2".
std::string parts(double number, int of_one);
/// "The market Sun 3 Jan".
std::string at_stop(const Stop& stop);

} // namespace manciple::compare
