#include "emit/boxes.hpp"
#include "emit/page/figure.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"
#include "measure/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace manciple::emit::page {
namespace {

using kitchen::Cents;
using measure::Rational;
using text::Date;

// As many as the style has.
constexpr std::size_t fills = 6;

Date first_of_week(const Compiled& compiled, Date day) {
  return day - std::chrono::days(compiled.kitchen.household.day_of_week(day) - 1);
}

// The letter that stands on the pieces of each name: A, B, ...
char letter_of(std::size_t i) {
  return static_cast<char>('A' + static_cast<int>(i % 26));
}

// What each fill means, with its letter.
std::string legend(const std::vector<std::string>& names) {
  std::string out = "<ul class=legend>";
  for (std::size_t i = 0; i < names.size(); ++i) {
    out += fmt::format("<li><svg aria-hidden=true><rect class=\"piece f{}\" width=\"100%\" "
                       "height=\"100%\" /></svg><b>{}</b> {}</li>",
                       i % fills, letter_of(i), name(names[i]));
  }
  return out + "</ul>\n";
}

// Hatches, which can be told apart in grey and by whoever sees no colours.
constexpr std::string_view hatches =
    "<svg class=vh aria-hidden=true><defs><pattern id=fill1 width=6 height=6 "
    "patternUnits=userSpaceOnUse patternTransform=\"rotate(45)\"><rect width=2 height=6 "
    "fill=currentColor /></pattern><pattern id=fill3 width=6 height=6 "
    "patternUnits=userSpaceOnUse><circle cx=2 cy=2 r=1.2 fill=currentColor /></pattern><pattern "
    "id=fill5 width=6 height=6 patternUnits=userSpaceOnUse><path d=\"M0 0h6M0 0v6\" "
    "stroke=currentColor /></pattern></defs></svg>\n";

// Of a bar: less is too narrow for its letter.
constexpr double room_for_letter = 0.06;

// Meals of a day stand in narrow columns, which are stretched: plain greys.
std::size_t meal_fill(std::size_t slot) {
  constexpr std::array<std::size_t, 3> plain{0, 2, 4};
  return plain.at(slot % plain.size());
}

std::string meal_legend(const std::vector<std::string>& names) {
  std::string out = "<ul class=legend>";
  for (std::size_t i = 0; i < names.size(); ++i) {
    out += fmt::format("<li><svg aria-hidden=true><rect class=\"piece f{}\" width=\"100%\" "
                       "height=\"100%\" /></svg>{}</li>",
                       meal_fill(i), name(names[i]));
  }
  return out + "</ul>\n";
}

double share(const Rational& part, const Rational& whole) {
  return whole == 0 ? 0 : to_double(part / whole);
}

// A bar a week, a piece a shop.
std::string spend(const Compiled& compiled) {
  std::map<Date, std::vector<Cents>> weeks;
  std::vector<std::string> shops;
  for (const kitchen::Shop& shop : compiled.kitchen.shops) {
    shops.push_back(shop.name);
  }
  for (const purchase::StopMade& visit : compiled.shopping.visits) {
    auto& week = weeks[first_of_week(compiled, visit.date)];
    week.resize(shops.size());
    week[static_cast<std::size_t>(visit.shop)] += visit.paid();
  }
  Cents most = 0;
  for (const auto& [first, paid] : weeks) {
    Cents sum = 0;
    for (const Cents one : paid) {
      sum += one;
    }
    most = std::max(most, sum);
  }
  std::string bars;
  std::string table = "<table><thead><tr><th scope=col>Week of";
  for (const std::string& shop : shops) {
    table += "<th scope=col>" + name(shop);
  }
  table += "<th scope=col>All</tr></thead><tbody>\n";
  for (const auto& [first, paid] : weeks) {
    Cents sum = 0;
    double x = 0;
    std::string pieces;
    table += fmt::format("<tr><th scope=row>{}", text::print_day(first));
    for (std::size_t s = 0; s < paid.size(); ++s) {
      const double width = share(paid[s], most);
      if (paid[s] > 0) {
        pieces += fmt::format("<rect class=\"piece f{}\" x={} width={} height=26 />", s % fills,
                              percent(x), percent(width));
        if (width > room_for_letter) {
          pieces += fmt::format("<text class=\"mark m{}\" x={} dx=7 y=18>{}</text>", s % fills,
                                percent(x), letter_of(s));
        }
      }
      table += "<td>" + figure(compiled, paid[s]);
      x += width;
      sum += paid[s];
    }
    table += fmt::format("<td>{}</tr>\n", figure(compiled, sum));
    bars += fmt::format("<p class=bar>Week of {} <b>{}</b></p><svg aria-hidden=true width=\"100%\" "
                        "height=26>{}</svg>\n",
                        text::print_day(first), escape(money(compiled, sum)), pieces);
  }
  return figure("Spending by shop and week", legend(shops) + bars, table + "</tbody></table>");
}

std::string room(const Compiled& compiled) {
  const auto& household = compiled.kitchen.household;
  const std::array<std::pair<foods::Place, std::optional<Rational>>, 3> places{
      std::pair{foods::Place::fridge, household.fridge_litres},
      std::pair{foods::Place::freezer, household.freezer_litres},
      std::pair{foods::Place::pantry, household.pantry_litres}};
  const char point = household.system.point;
  const auto boxes = litres_of_boxes(compiled);
  std::string pictures;
  std::string head;
  std::vector<std::vector<double>> columns;
  for (const auto& [place, capacity] : places) {
    if (!capacity) {
      continue;
    }
    std::vector<double> taken;
    for (const Rational& night : compiled.shopping.litres.at(place)) {
      taken.push_back(to_double(night) + boxes.at(place)[taken.size()]);
    }
    const double top = to_double(*capacity);
    std::string path = fmt::format("M0 {}", tenth(top));
    for (std::size_t night = 0; night < taken.size(); ++night) {
      path += fmt::format("V{}H{}", tenth(std::max(0.0, top - taken[night])), night + 1);
    }
    path += fmt::format("V{}Z", tenth(top));
    const auto fullest = std::max_element(taken.begin(), taken.end());
    const Date when = compiled.plan().from + std::chrono::days(fullest - taken.begin());
    const std::string said =
        fmt::format("{}: at most {} l of {} l, on the night of {}", foods::name(place),
                    tenth(*fullest, point), decimal(compiled, *capacity, 1), text::print_day(when));
    pictures +=
        fmt::format("<p class=bar><span>{} {}</span></p>\n", place_mark(place), said) +
        over_days(compiled, said, top, fmt::format("{} l", tenth(top, point)),
                  fmt::format("<path class=\"area {}\" d=\"{}\"/>", place_letter(place), path));
    head += fmt::format("<th scope=col>{}, l", foods::name(place));
    columns.push_back(taken);
  }
  if (columns.empty()) {
    return {};
  }
  std::string table = "<table><thead><tr><th scope=col>Night of" + head + "</tr></thead><tbody>\n";
  for (std::size_t night = 0; night < columns.front().size(); ++night) {
    table += fmt::format("<tr><th scope=row>{}",
                         text::print_day(compiled.plan().from + std::chrono::days(night)));
    for (const auto& column : columns) {
      table += "<td>" + tenth(column[night], point);
    }
    table += "</tr>\n";
  }
  return figure("Room needed at home",
                pictures + "<p class=note>Food as bought, what was on hand, and boxes of cooked "
                           "food whose size is known.</p>\n",
                table + "</tbody></table>");
}

// A column a day, a piece a meal.
std::string meals(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::vector<std::string> slots;
  for (const kitchen::Slot& slot : compiled.kitchen.household.slots) {
    slots.push_back(slot.name);
  }
  std::vector<std::vector<Rational>> cost(days_of(compiled), std::vector<Rational>(slots.size()));
  std::string table =
      "<table><thead><tr><th scope=col>Day<th scope=col>Meal<th scope=col>Dishes<th "
      "scope=col>Cost</tr></thead><tbody>\n";
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    Rational sum = 0;
    std::string dishes;
    for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
      sum += compiled.worth.dishes[m][d];
      dishes += (d > 0 ? ", " : "") + name(dish_name(compiled, meal.dishes[d]));
    }
    const auto slot =
        static_cast<std::size_t>(std::find(slots.begin(), slots.end(), meal.slot) - slots.begin());
    cost[static_cast<std::size_t>((meal.date - plan.from).count())][slot] += sum;
    table +=
        fmt::format("<tr><th scope=row>{}<td>{}<td>{}<td>{}</tr>\n", text::print_day(meal.date),
                    escape(meal.slot), dishes, figure(compiled, cents(sum)));
  }
  Rational most = 0;
  std::size_t dearest = 0;
  for (std::size_t d = 0; d < cost.size(); ++d) {
    Rational sum = 0;
    for (const Rational& one : cost[d]) {
      sum += one;
    }
    if (sum > most) {
      most = sum;
      dearest = d;
    }
  }
  std::string columns;
  for (std::size_t d = 0; d < cost.size(); ++d) {
    Rational below = 0;
    for (std::size_t s = 0; s < slots.size(); ++s) {
      if (cost[d][s] > 0) {
        const double height = 100 * share(cost[d][s], most);
        columns += fmt::format("<rect class=\"piece f{}\" x={}.08 y={} width=.84 height={} />",
                               meal_fill(s), d, tenth(100 * share(most - below - cost[d][s], most)),
                               tenth(height));
        below += cost[d][s];
      }
    }
  }
  const std::string top = money(compiled, cents(most));
  return figure(
      "What meals cost",
      meal_legend(slots) +
          over_days(compiled,
                    fmt::format("Cost of each day's meals; the most expensive day is {} with {}",
                                text::print_day(plan.from + std::chrono::days(dearest)), top),
                    100, top, columns) +
          "<p class=note>What was bought for them, before tax; food that was in the house counts "
          "as nothing.</p>\n",
      table + "</tbody></table>");
}

} // namespace

std::string figures_section(const Compiled& compiled) {
  return "<section id=figures aria-labelledby=figures-h><h2 id=figures-h>Figures</h2>\n" +
         folded(std::string(hatches) + spend(compiled) + room(compiled) + meals(compiled) +
                nutrition_figure(compiled)) +
         "</section>\n";
}

} // namespace manciple::emit::page
