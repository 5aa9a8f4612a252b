#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::emit::page {
namespace {

std::string row(const Compiled& compiled, std::size_t l) {
  const purchase::Line& line = compiled.shopping.lines[l];
  std::string small;
  for (const std::string& note : notes_of(compiled, l)) {
    small += (small.empty() ? "" : "; ") + escape(note);
  }
  const std::string why = for_what(compiled, l);
  if (!why.empty()) {
    small += fmt::format("<span class=why>{}for {}</span>", small.empty() ? "" : "; ", name(why));
  }
  return fmt::format("<li id=l{}><label><input type=checkbox><span><b>{}</b> {}{}</span><data "
                     "value={}>{}</data></label></li>\n",
                     l, escape(count_of(compiled, line)), name(name_on_list(compiled, line)),
                     small.empty() ? "" : " <small>" + small + "</small>", line.cost.value_or(0),
                     cost_of(compiled, line));
}

std::string stop(const Compiled& compiled, std::size_t v) {
  const auto& shopping = compiled.shopping;
  std::string out;
  std::size_t count = 0;
  for (const purchase::Line& line : shopping.lines) {
    count += line.visit == v ? 1 : 0;
  }
  const purchase::StopMade& visit = shopping.visits[v];
  out +=
      fmt::format("<details class=stop id=stop{} open><summary><h4>{}</h4><span class=left>{} to "
                  "find{}</span></summary>\n<p class=basket></p>\n<div class=walk>\n",
                  v, name(compiled.kitchen.shop(visit.shop).name), count,
                  has_prices(compiled, v) ? ", " + escape(money(compiled, visit.paid())) : "");
  std::optional<foods::Department> last;
  for (std::size_t l = 0; l < shopping.lines.size(); ++l) {
    if (shopping.lines[l].visit != v) {
      continue;
    }
    const auto here = food_of(compiled, shopping.lines[l]).department;
    if (last != here) {
      out += fmt::format("{}<h5>{}</h5>\n<ul data-d={}>\n", last ? "</ul>" : "", foods::name(here),
                         static_cast<int>(here));
      last = here;
    }
    out += row(compiled, l);
  }
  out += last ? "</ul>\n" : "";
  return out + "</div></details>\n";
}

} // namespace

std::string list_section(const Compiled& compiled) {
  const auto& visits = compiled.shopping.visits;
  std::string out = "<section id=list aria-labelledby=list-h><h2 id=list-h>Shopping list</h2>\n";
  for (std::size_t v = 0; v < visits.size(); ++v) {
    if (v == 0 || visits[v].date != visits[v - 1].date) {
      kitchen::Cents paid = 0;
      for (const purchase::StopMade& visit : visits) {
        paid += visit.date == visits[v].date ? visit.paid() : 0;
      }
      const auto& budget = compiled.plan().trips[visits[v].trip].budget;
      out += fmt::format("<h3 class=trip id=trip{}>{} <small>{}{}</small></h3>\n", visits[v].trip,
                         text::print_day(visits[v].date),
                         paid > 0 || has_prices(compiled, v) ? escape(money(compiled, paid)) : "",
                         budget ? " of a budget of " + escape(money(compiled, *budget)) : "");
    }
    out += stop(compiled, v);
  }
  const std::vector<StillToFind> missing = still_to_find(compiled);
  if (!missing.empty()) {
    out += "<h3>Still to find</h3>\n<div class=walk><ul>\n";
    for (const StillToFind& one : missing) {
      out += fmt::format("<li><label><input type=checkbox><span>{}</span></label></li>\n",
                         escape(phrase(compiled, one)));
    }
    out += "</ul></div>\n";
  }
  const std::vector<std::string> enough = a_little_short(compiled);
  if (!enough.empty()) {
    out +=
        fmt::format("<p class=check><b>A little short, and enough</b> (the dishes can do without "
                    "so much): {}</p>\n",
                    escape(text::join(enough, ", ")));
  }
  const std::vector<StillToFind> optional = optional_ones(compiled);
  if (!optional.empty()) {
    std::vector<std::string> phrases;
    for (const StillToFind& one : optional) {
      phrases.push_back(escape(phrase(compiled, one)));
    }
    out += fmt::format("<p class=check><b>Optional, and not on the list</b>: {}</p>\n",
                       text::join(phrases, "; "));
  }
  const std::vector<std::string> check = to_check(compiled);
  if (!check.empty()) {
    std::vector<std::string> names;
    for (const std::string& one : check) {
      names.push_back(name(one));
    }
    out += fmt::format(
        "<p class=check><b>See that there is some</b> (used without an amount): {}</p>\n",
        text::join(names, ", "));
  }
  out += fmt::format("<p class=proof>{}</p>\n</section>\n", verdict(compiled));
  return out;
}

} // namespace manciple::emit::page
