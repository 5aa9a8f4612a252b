#include "emit/emit.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"

#include <fmt/format.h>

namespace manciple::emit {

std::string page_html(const Compiled& compiled) {
  using namespace page;
  const auto& plan = compiled.plan();
  std::string out = fmt::format(
      "<!doctype html>\n<html lang=en>\n<head>\n<meta charset=utf-8>\n<meta name=viewport "
      "content=\"width=device-width, initial-scale=1\">\n<meta name=color-scheme content=\"light "
      "dark\">\n<title>{}: list, menu and work</title>\n<style>\n{}</style>\n</head>\n<body>\n",
      escape(plan.name), style);
  out += fmt::format("<header><h1>{}</h1><p>{} to {}</p></header>\n", name(plan.name),
                     text::print_day(plan.from), text::print_day(plan.until));
  out += "<nav aria-label=\"Parts of the page\"><a href=#list>List</a><a href=#menu>Menu</a><a "
         "href=#days>Days</a><a href=#prep>Prep</a><a href=#pictures>Pictures</a><a "
         "href=#labels>Labels</a></nav>\n<main>\n";
  out += list_section(compiled);
  out += menu_section(compiled);
  out += days_section(compiled);
  out += prep_section(compiled);
  out += pictures_section(compiled);
  out += labels_section(compiled);
  out += fmt::format("</main>\n<div id=purse role=region aria-label=Sums hidden></div>\n<p id=said "
                     "class=vh role=status></p>\n"
                     "<footer><p>{}</p></footer>\n<script type=application/json "
                     "id=data>{}</script>\n<script>\n{}</script>\n</body>\n</html>\n",
                     escape(caution), data_json(compiled), script);
  return out;
}

} // namespace manciple::emit
