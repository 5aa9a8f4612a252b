#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::emit::page {
namespace {

std::string row(const Compiled& compiled, std::size_t l) {
  const purchase::Line& line = compiled.shopping.lines[l];
  std::vector<std::string> about;
  for (const std::string& note : notes_of(compiled, l)) {
    about.push_back(escape(note));
  }
  const std::string why = for_what(compiled, l);
  if (!why.empty()) {
    about.push_back(fmt::format("<span class=why>for {}</span>", name(why)));
  }
  const bool freezes =
      line.to_freeze > 0 && !about.empty() && about.front().find("freeze") != std::string::npos;
  const std::string cost = cost_of(compiled, line);
  return fmt::format(
      "<li id=l{}><label><input type=checkbox><b>{}</b> <span>{}{}</span></label> <button "
      "type=button class=price aria-expanded=false aria-label=\"{}: {}, more\"><data "
      "value={}>{}</data></button>{}</li>\n",
      l, escape(count_of(compiled, line)), name(name_on_list(compiled, line)),
      freezes ? " " + place_mark(foods::Place::freezer) : "", escape(name_on_list(compiled, line)),
      cost.empty() ? "no price known" : cost, line.cost.value_or(0), cost,
      about.empty() ? "" : fmt::format("<p class=about>{}</p>", text::join(about, "; ")));
}

std::string stop(const Compiled& compiled, std::size_t v) {
  const auto& shopping = compiled.shopping;
  const purchase::StopMade& visit = shopping.visits[v];
  std::size_t count = 0;
  for (const purchase::Line& line : shopping.lines) {
    count += line.visit == v ? 1 : 0;
  }
  std::string out = fmt::format(
      "<details class=stop id=stop{} open><summary><h4>{}</h4><span class=left>{} {}{}</span>"
      "</summary>\n",
      v, name(compiled.kitchen.shop(visit.shop).name), count, count == 1 ? "thing" : "things",
      has_prices(compiled, v) ? ", " + escape(money(compiled, visit.paid())) : "");
  std::string walk = "<div class=walk>\n";
  std::optional<foods::Department> last;
  for (std::size_t l = 0; l < shopping.lines.size(); ++l) {
    if (shopping.lines[l].visit != v) {
      continue;
    }
    const auto here = food_of(compiled, shopping.lines[l]).department;
    if (last != here) {
      walk += fmt::format("{}<section data-d={}><h5>{}</h5><ul>\n", last ? "</ul></section>" : "",
                          static_cast<int>(here), foods::name(here));
      last = here;
    }
    walk += row(compiled, l);
  }
  walk += last ? "</ul></section>\n" : "";
  return out + folded(walk + "</div>") + "</details>\n";
}

// What belongs to the list and to no stop.
std::string besides(const Compiled& compiled) {
  std::string out;
  const std::vector<StillToFind> missing = still_to_find(compiled);
  if (!missing.empty()) {
    out += "<h3>Still to find</h3>\n<div class=walk><ul class=plain>\n";
    for (const StillToFind& one : missing) {
      out += fmt::format("<li><label><input type=checkbox><span>{}</span></label></li>\n",
                         escape(phrase(compiled, one)));
    }
    out += "</ul></div>\n";
  }
  const auto say = [&](std::string_view head, std::string_view what) {
    out += fmt::format("<p class=check><b>{}</b> {}</p>\n", head, what);
  };
  if (const auto enough = a_little_short(compiled); !enough.empty()) {
    say("A little short, and enough:", escape(text::join(enough, ", ")));
  }
  if (const auto optional = optional_ones(compiled); !optional.empty()) {
    std::vector<std::string> phrases;
    for (const StillToFind& one : optional) {
      phrases.push_back(escape(phrase(compiled, one)));
    }
    say("Optional, and not on the list:", text::join(phrases, "; "));
  }
  if (const auto check = to_check(compiled); !check.empty()) {
    std::vector<std::string> names;
    for (const std::string& one : check) {
      names.push_back(name(one));
    }
    say("Check that you have some:", text::join(names, ", "));
  }
  return out;
}

// On paper a trip is a sheet: of few lines with the reasons beside them, of many in narrow columns.
std::string_view width_of(const Compiled& compiled, text::Date day) {
  constexpr std::ptrdiff_t few = 40;
  constexpr std::ptrdiff_t many = 70;
  const auto& lines = compiled.shopping.lines;
  const auto count = std::count_if(lines.begin(), lines.end(), [&](const purchase::Line& line) {
    return compiled.shopping.visits[line.visit].date == day;
  });
  return count <= few ? " short" : count > many ? " long" : "";
}

} // namespace

std::string shop_section(const Compiled& compiled) {
  const auto& visits = compiled.shopping.visits;
  std::string out = "<section id=shop aria-labelledby=shop-h><h2 id=shop-h>Shopping</h2>\n";
  for (std::size_t v = 0; v < visits.size(); ++v) {
    if (v == 0 || visits[v].date != visits[v - 1].date) {
      kitchen::Cents paid = 0;
      for (const purchase::StopMade& visit : visits) {
        paid += visit.date == visits[v].date ? visit.paid() : 0;
      }
      const kitchen::Trip& trip = compiled.plan().trips[visits[v].trip];
      const std::string sum =
          paid > 0 || has_prices(compiled, v) ? "; " + escape(money(compiled, paid)) : "";
      const std::string budget =
          trip.budget ? " of a budget of " + escape(money(compiled, *trip.budget)) : "";
      out += fmt::format("{}<section class=\"trip{}\" id=trip{} data-date={}><h3>{}</h3>\n",
                         v > 0 ? "</section>\n" : "", width_of(compiled, visits[v].date),
                         visits[v].trip, text::print_date(visits[v].date),
                         day_head(visits[v].date, fmt::format("{}{}; home by {}", sum, budget,
                                                              text::print_clock(trip.home))));
    }
    out += stop(compiled, v);
  }
  out += visits.empty() ? "" : "</section>\n";
  return out + "<div class=besides>" + besides(compiled) +
         fmt::format("<p class=proof>{}</p></div>\n</section>\n", verdict(compiled));
}

} // namespace manciple::emit::page
