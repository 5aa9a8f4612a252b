#pragma once

#include "emit/compiled.hpp"

#include <string>
#include <vector>

/// Phrases that several outputs share.
namespace manciple::emit {

const foods::Food& food_of(const Compiled& compiled, const purchase::Line& line);

/// Its name after what is bought of it: "7 onions", "3 lb bag onions", "1 lb loaf rye bread".
std::string name_on_list(const Compiled& compiled, const purchase::Line& line);
const kitchen::Offer& offer_of(const Compiled& compiled, const purchase::Line& line);

/// What to put in the cart: "2 x 3 lb bag", "2.3 lb", "6".
std::string count_of(const Compiled& compiled, const purchase::Line& line);
/// So much of a food as purchased, in its basis, as a shopper says it: "2.3 lb". `decimals` is how
/// fine a part of a piece is told.
std::string amount_of(const Compiled& compiled, foods::FoodId food, const measure::Rational& amount,
                      int decimals = 1);
/// The cost of a line, or nothing where no price is known: "12.50".
std::string cost_of(const Compiled& compiled, const purchase::Line& line);
/// How many lines have no known price.
std::size_t without_price(const Compiled& compiled);
/// Whether a price is known of something bought on a visit.
bool has_prices(const Compiled& compiled, std::size_t visit);
/// "0.75", "0,75": as the house writes it, without zeros at the end.
std::string decimal(const Compiled& compiled, const measure::Rational& number, int places);
/// "$12.50", "12,50 €".
std::string money(const Compiled& compiled, kitchen::Cents cents);
/// The same without the sign, for tables: "12.50".
std::string figure(const Compiled& compiled, kitchen::Cents cents);
/// The nearest cent.
kitchen::Cents cents(const measure::Rational& amount);

/// What a use is for, in a few words: "Smoky lentil soup", "lunch", "staple", a reason.
std::string purpose_of(const Compiled& compiled, const resolve::Use& use);
/// The purposes of a line, each once, in the order of the uses.
std::vector<std::string> purposes_of(const Compiled& compiled, std::size_t line);
/// The same as one phrase: the first few, and how many more there are.
std::string for_what(const Compiled& compiled, std::size_t line);
/// Notes for a line: what to freeze, whose label to read.
std::vector<std::string> notes_of(const Compiled& compiled, std::size_t line);

/// Foods of recipe lines without an amount, each once: to have a look at before shopping.
std::vector<std::string> to_check(const Compiled& compiled);

/// What the plan needs and nothing on hand or on sale in time gives, by food: what a shopper is to
/// look out for.
struct StillToFind {
  foods::FoodId food{};
  measure::Rational amount;
  std::vector<std::string> purposes; ///< each once, in the order of the uses
};
std::vector<StillToFind> still_to_find(const Compiled& compiled);
/// What recipes call optional and the house does not buy for their sake.
std::vector<StillToFind> optional_ones(const Compiled& compiled);
/// One of them as a phrase: "1 lb onion, for Stew and 2 more".
std::string phrase(const Compiled& compiled, const StillToFind& one);
/// Of each food, what its uses lack within what the dishes can do without, if that can be seen:
/// "2 oz onion".
std::vector<std::string> a_little_short(const Compiled& compiled);
/// What is proven of the list, in a sentence.
std::string verdict(const Compiled& compiled);

/// What a dish is called on lists and sheets: the recipe's name, or a food as the plan writes it.
std::string dish_name(const Compiled& compiled, const kitchen::Dish& dish);

/// A cell of a table for a spreadsheet; RFC 4180 (where another `separator` stands for its comma),
/// and no formula.
std::string csv_cell(std::string_view text, char separator = ',');
/// Text that Markdown would take for markup, made harmless.
std::string escape_markdown(std::string_view text);

} // namespace manciple::emit
