// A stop as a receipt.
#include "emit/emit.hpp"
#include "emit/receipt_text.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "history/written.hpp"
#include "measure/scan.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::emit {
namespace {

using measure::Rational;

// YAML takes what is in such quotes as it stands.
std::string in_quotes(std::string_view text) {
  std::string out = "'";
  for (const char c : text) {
    out += c == '\'' ? "''" : std::string(1, c);
  }
  return out + "'";
}

bool needs_quotes(std::string_view text) {
  return text.find_first_of("#:{}[]&*!|>'\"%@`") != std::string_view::npos;
}

// As the list says it, where that is the same but for what nobody weighs; else exactly.
std::string amount_frozen(const Compiled& compiled, const purchase::Line& line) {
  const foods::Food& food = food_of(compiled, line);
  const measure::Writing writing = compiled.kitchen.household.system;
  const std::string words = foods::customary(food, line.to_freeze, writing, 0);
  measure::Cursor cursor{words};
  const auto number = measure::scan_number(cursor);
  const auto unit = measure::find_unit(text::trim(cursor.rest()), measure::Customs{writing, {}});
  const foods::Measure counted{measure::Unit::each, foods::counted_by(food)};
  const auto read =
      number ? foods::as_purchased(
                   food, {*number, cursor.done()
                                       ? counted
                                       : foods::Measure{unit.value_or(measure::Unit::each), {}}})
             : tl::unexpected(foods::NoConversion{});
  // A little more is frozen with it; next to nothing less goes unnoticed.
  const Rational share = read ? read->amount / line.to_freeze : Rational(0);
  const bool near = share >= Rational(999, 1000) && share <= Rational(104, 100);
  return near ? words : history::exactly(compiled.kitchen, line.food, line.to_freeze);
}

std::string line_of(const Compiled& compiled, const purchase::Line& line) {
  const ReceiptText text = receipt_text(compiled, line);
  std::string out = filled(text, text.each * line.packs);
  out += line.cost ? ", " + figure(compiled, *line.cost) : "";
  if (line.to_freeze > 0) {
    out += line.to_freeze == line.amount ? ", freeze all"
                                         : ", freeze " + amount_frozen(compiled, line);
  }
  return needs_quotes(out) ? in_quotes(out) : out;
}

} // namespace

std::string receipt_yaml(const Compiled& compiled, std::size_t v) {
  const purchase::StopMade& visit = compiled.shopping.visits[v];
  const kitchen::Shop& shop = compiled.kitchen.shop(visit.shop);
  std::string out = fmt::format("# As on the list; correct whatever was different.\n"
                                "shop: {}\ndate: {}\nlines:\n",
                                shop.slug, text::print_date(visit.date));
  bool all_known = true;
  for (const purchase::Line& line : compiled.shopping.lines) {
    if (line.visit == v) {
      out += "  - " + line_of(compiled, line) + "\n";
      all_known = all_known && line.cost.has_value();
    }
  }
  if (all_known) {
    out += visit.tax > 0 ? fmt::format("tax: {}\n", figure(compiled, visit.tax)) : "";
    out += visit.off > 0 ? fmt::format("off: {}\n", figure(compiled, visit.off)) : "";
    out += visit.credit > 0 ? fmt::format("credit: {}\n", figure(compiled, visit.credit)) : "";
    out += fmt::format("total: {}\n", figure(compiled, visit.paid()));
  }
  return out;
}

} // namespace manciple::emit
