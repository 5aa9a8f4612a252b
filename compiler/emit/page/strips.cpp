#include "emit/page/strips.hpp"

#include "emit/page/html.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

namespace manciple::emit::page {
namespace {

using text::Date;

struct Days {
  std::set<int> used;
  std::set<int> bought;
};

// "1, 3, 10": days of the month, or with the month where the plan has several.
std::string said(const Compiled& compiled, const std::set<int>& days) {
  const std::chrono::year_month_day first(compiled.plan().from);
  const std::chrono::year_month_day last(compiled.plan().until);
  std::string out;
  for (const int d : days) {
    const Date day = compiled.plan().from + std::chrono::days(d);
    out += (out.empty() ? "" : ", ") +
           (first.month() == last.month()
                ? fmt::format("{}", static_cast<unsigned>(std::chrono::year_month_day(day).day()))
                : text::print_day(day));
  }
  return out;
}

std::string strip(const Compiled& compiled, std::string_view food, const Days& days) {
  const int length = static_cast<int>((compiled.plan().until - compiled.plan().from).count()) + 1;
  std::string used;
  for (const int d : days.used) {
    used += fmt::format("M{} 3h.9v7h-.9z", d);
  }
  std::string bought;
  for (const int d : days.bought) {
    bought += fmt::format("M{} 0h.9v2h-.9z", d);
  }
  return fmt::format("<li><span>{}</span><svg aria-hidden=true viewBox=\"0 0 {} 10\" "
                     "preserveAspectRatio=none><use href=#weeks /><path class=on d=\"{}\"/><path "
                     "class=buy d=\"{}\"/></svg><span "
                     "class=vh>used {}{}</span></li>\n",
                     name(food), length, used, bought, said(compiled, days.used),
                     days.bought.empty() ? "" : "; bought " + said(compiled, days.bought));
}

} // namespace

std::string food_strips(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  // By department, then by name.
  std::map<std::pair<foods::Department, std::string>, Days> strips;
  const auto place = [&](foods::FoodId id) {
    const foods::Food& food = compiled.kitchen.food(id);
    return std::pair(food.department, food.name);
  };
  const auto day = [&](Date date) { return static_cast<int>((date - plan.from).count()); };
  for (const resolve::Use& use : compiled.resolved.uses) {
    const bool dish = std::holds_alternative<resolve::OfMaking>(use.reason) ||
                      std::holds_alternative<resolve::OfDish>(use.reason);
    if (dish && use.date >= plan.from && use.date <= plan.until) {
      strips[place(use.food)].used.insert(day(use.date));
    }
  }
  for (const purchase::Line& line : compiled.shopping.lines) {
    const auto found = strips.find(place(line.food));
    if (found != strips.end()) {
      found->second.bought.insert(day(compiled.shopping.visits[line.visit].date));
    }
  }
  std::string out = "<figure class=strips><figcaption><h3>Which food is used when</h3></figcaption>"
                    "<ul class=legend><li><i class=\"key on\"></i> used in a dish</li><li><i "
                    "class=\"key buy\"></i> bought</li></ul>\n";
  // A line before every week, drawn once.
  std::string weeks;
  for (Date d = plan.from; d <= plan.until; d += std::chrono::days(1)) {
    if (compiled.kitchen.household.day_of_week(d) == 1) {
      weeks += fmt::format("M{} 0v10", day(d));
    }
  }
  out += fmt::format("<svg class=vh aria-hidden=true><defs><path id=weeks class=grid "
                     "vector-effect=non-scaling-stroke d=\"{}\"/></defs></svg>\n",
                     weeks);
  std::optional<foods::Department> last;
  for (const auto& [key, days] : strips) {
    if (last != key.first) {
      out += fmt::format("{}<h4>{}</h4><ul>\n", last ? "</ul>" : "", foods::name(key.first));
      last = key.first;
    }
    out += strip(compiled, key.second, days);
  }
  return out + (last ? "</ul>" : "") + "</figure>\n";
}

} // namespace manciple::emit::page
