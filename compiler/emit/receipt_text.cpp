#include "emit/receipt_text.hpp"

#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "foods/spoken.hpp"
#include "kitchen/offer.hpp"
#include "measure/print.hpp"
#include "measure/scan.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::emit {
namespace {

using measure::Rational;
using measure::Unit;

// Of these, one keeps and uses whole ones: they stay packs on a receipt.
bool is_counted_container(std::string_view word) {
  constexpr std::array<std::string_view, 2> counted{"can", "jar"};
  const std::string one = text::singular((word));
  return std::find(counted.begin(), counted.end(), one) != counted.end();
}

// What is counted by its boxes, as bags for the freezer are.
bool is_box(std::string_view word) {
  constexpr std::array<std::string_view, 3> boxes{"box", "roll", "packet"};
  return std::find(boxes.begin(), boxes.end(), word) != boxes.end();
}

// What a shop means by one of a food: "# heads garlic", "# limes".
ReceiptText by_pieces(const foods::Food& food, std::string_view piece, const Rational& each) {
  constexpr std::array<std::string_view, 4> sizes{"small", "medium", "large", "each"};
  const std::string plural = food.as_written ? food.name : text::plural(food.name);
  if (piece.empty() || piece == "each") {
    return {"# " + plural, each, "# " + food.name};
  }
  if (std::find(sizes.begin(), sizes.end(), piece) != sizes.end()) {
    return {fmt::format("# {} {}", piece, plural), each, fmt::format("# {} {}", piece, food.name)};
  }
  const std::string one = text::singular(piece);
  return {fmt::format("# {} {}", text::plural(one), food.name), each,
          fmt::format("# {} {}", one, food.name)};
}

} // namespace

ReceiptText receipt_text(const Compiled& compiled, const purchase::Line& line) {
  const foods::Food& food = food_of(compiled, line);
  const kitchen::Offer& offer = offer_of(compiled, line);
  const measure::Customs customs = compiled.kitchen.household.customs();
  if (offer.by_weight && measure::find_unit(offer.pack, customs)) {
    return {fmt::format("# {} {}", offer.pack, foods::name_of(food, line.amount)),
            1 / offer.steps_per_price};
  }
  if (offer.by_weight) { // a likely one, of which no price is known
    const bool volume = foods::basis(food) == measure::Dimension::volume;
    return {fmt::format("# {} {}", volume ? "ml" : "g", food.name), offer.size};
  }
  if (offer.pack == "each" || offer.pack.empty()) {
    return by_pieces(food, food.sold_as.value_or(""), 1);
  }
  measure::Cursor cursor{offer.pack};
  std::string_view pack = offer.pack;
  int times = 1;
  if (const auto several = kitchen::several_in_one(pack)) { // "6 x 15 oz cans"
    times = several->first;
    pack = several->second;
    cursor = measure::Cursor{pack};
  }
  const bool opened_one_by_one = line.packs * offer.inside > 1 && food.keeps.opened;
  const std::string name = foods::name_of(food, offer.size * line.packs);
  if (const auto size = measure::scan_quantity(cursor, customs); size && size->unit != Unit::each) {
    const std::string_view rest = text::trim(cursor.rest());
    const std::string_view container = rest.substr(rest.rfind(' ') + 1);
    const std::string_view one = text::trim(pack.substr(0, cursor.at));
    if (!is_counted_container(container) && opened_one_by_one) {
      return {fmt::format("# ({}) packs {}", one, name), times};
    }
    if (is_counted_container(container)) {
      // "2 cans diced tomatoes", not "2 cans canned diced tomato".
      constexpr std::string_view said_already = "canned ";
      std::string_view inside = name;
      inside.remove_prefix(inside.starts_with(said_already) ? said_already.size() : 0);
      const std::string word = text::singular(container);
      return {fmt::format("# ({}) {} {}", one, text::plural(word), inside), times,
              fmt::format("# ({}) {} {}", one, word, inside)};
    }
    return {fmt::format("# {} {}", measure::facts(size->unit).name, name), size->amount * times};
  }
  measure::Cursor counted{pack};
  const Rational number = measure::scan_number(counted).value_or(1);
  const std::string_view rest = text::trim(counted.rest());
  const bool closed_ones = offer.inside > times; // the cans of an "8 pack"
  if (opened_one_by_one && number > 1 && !closed_ones) {
    return {fmt::format("# ({}) packs {}", pack, name), times};
  }
  if (const auto unit = measure::find_unit(rest, customs); unit && *unit != Unit::each) {
    return {fmt::format("# {} {}", measure::facts(*unit).name, name), number * times};
  }
  const std::string piece = text::singular(customs.meaning(rest));
  const bool known = food.piece(piece) != nullptr;
  const std::string in_it = (number > 1 ? food.in_packs : food.sold_as)
                                .value_or(closed_ones ? food.count_as.value_or("") : std::string());
  if (!known && in_it.empty() && is_box(piece)) {
    return {fmt::format("# {} {}", text::plural(piece), food.name), number * times,
            fmt::format("# {} {}", piece, food.name)};
  }
  return by_pieces(food, known ? piece : in_it, number * times);
}

std::string filled(const ReceiptText& text, const Rational& number) {
  std::string out = number == 1 ? text.one : text.text;
  return out.replace(out.find('#'), 1, measure::print_decimal(number, 3, '.'));
}

} // namespace manciple::emit
