// The list as a table for a spreadsheet.
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::emit {
namespace {

using kitchen::Cents;
using measure::Rational;
using purchase::Line;
using purchase::StopMade;

// Where money is written with a comma, spreadsheets take the comma for that of a number, and the
// semicolon for the end of a cell.
class Table {
public:
  explicit Table(const Compiled& compiled)
      : compiled_(compiled),
        separator_(compiled.kitchen.household.currency.point == ',' ? ';' : ',') {}

  void row(const std::vector<std::string>& cells) {
    for (std::size_t c = 0; c < cells.size(); ++c) {
      out_ += (c > 0 ? std::string(1, separator_) : "") + csv_cell(cells[c], separator_);
    }
    out_ += "\r\n";
  }
  // An amount of money as a number; nothing where there is none.
  [[nodiscard]] std::string money(std::optional<Cents> cents) const {
    return cents ? figure(compiled_, *cents) : "";
  }
  [[nodiscard]] std::string number(const Rational& number) const {
    return measure::print_decimal(number, 3, compiled_.kitchen.household.currency.point);
  }
  [[nodiscard]] const std::string& text() const { return out_; }

private:
  const Compiled& compiled_;
  char separator_;
  std::string out_;
};

std::string nothing_or(const Table& table, Cents cents) {
  return cents == 0 ? "" : table.money(cents);
}

void line_row(const Compiled& compiled, Table& table, std::size_t l) {
  const Line& line = compiled.shopping.lines[l];
  const StopMade& visit = compiled.shopping.visits[line.visit];
  const kitchen::Offer& offer = offer_of(compiled, line);
  const Rational weight = Rational(line.packs) / offer.steps_per_price;
  const auto each = offer.each(visit.date); // of a pack, or of a step of the scale
  table.row({"buy", text::print_date(visit.date), compiled.kitchen.shop(visit.shop).name,
             std::string(foods::name(food_of(compiled, line).department)),
             food_of(compiled, line).name, count_of(compiled, line),
             offer.by_weight ? "" : fmt::format("{}", line.packs),
             offer.by_weight ? table.number(weight) : "", offer.pack,
             each ? table.money(cents(*each * offer.steps_per_price)) : "", table.money(line.cost),
             nothing_or(table, line.tax), "", "", "",
             line.to_freeze > 0 ? amount_of(compiled, line.food, line.to_freeze, 0) : "",
             text::join(purposes_of(compiled, l), "; ")});
}

void total_row(Table& table, const StopMade& sums, const std::string& date,
               const std::string& shop) {
  table.row({"total", date, shop, "", "", "", "", "", "", "", table.money(sums.goods),
             nothing_or(table, sums.tax), nothing_or(table, sums.off),
             nothing_or(table, sums.credit), table.money(sums.paid()), "", ""});
}

} // namespace

std::string list_csv(const Compiled& compiled) {
  Table table(compiled);
  table.row({"row", "date", "shop", "department", "food", "buy", "packs", "weight", "pack or unit",
             "unit price", "cost", "tax", "reduction", "credit", "paid", "freeze", "for"});
  for (std::size_t l = 0; l < compiled.shopping.lines.size(); ++l) {
    line_row(compiled, table, l);
  }
  // What is still to be found has neither day nor shop.
  for (const StillToFind& one : still_to_find(compiled)) {
    const foods::Food& food = compiled.kitchen.food(one.food);
    table.row({"find", "", "", std::string(foods::name(food.department)), food.name,
               amount_of(compiled, one.food, one.amount), "", "", "", "", "", "", "", "", "", "",
               text::join(one.purposes, "; ")});
  }
  StopMade all;
  for (std::size_t v = 0; v < compiled.shopping.visits.size(); ++v) {
    const StopMade& visit = compiled.shopping.visits[v];
    if (!has_prices(compiled, v)) {
      continue;
    }
    all.goods += visit.goods;
    all.tax += visit.tax;
    all.off += visit.off;
    all.credit += visit.credit;
    total_row(table, visit, text::print_date(visit.date), compiled.kitchen.shop(visit.shop).name);
  }
  if (all.goods > 0) {
    total_row(table, all, "", "");
  }
  return table.text();
}

} // namespace manciple::emit
