#include "emit/emit.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"

#include <fmt/format.h>

namespace manciple::emit {
namespace {

// The header and the bars are painted before any script runs, which takes a slow phone a moment to
// begin with. So the page is laid out for one that runs, and this is for where none does: all parts
// stand one below the other, with the bars in their places.
constexpr std::string_view all_parts = "main > section { display: block; }\n"
                                       ".roomy :is(nav, #foot) { position: static; }\n"
                                       ".roomy body { padding-bottom: 1rem; }\n";

// Where the script cannot run to its end (a browser that is too old), the page is as it is without
// one. A script of its own, for a browser may be too old to read the next one at all.
constexpr std::string_view without_ready =
    "addEventListener('error',()=>{const e=document.documentElement;"
    "if(e.dataset.ready===undefined){e.className='';"
    "document.querySelectorAll('noscript').forEach(n=>n.outerHTML=n.textContent)}})";

// Of a file with a mark at its beginning, a browser does not guess in which letters it is written.
const std::string byte_order_mark = "\xEF\xBB\xBF";

constexpr std::string_view without_script =
    "<noscript><p class=warn>This browser does not run scripts here. You can read and print "
    "everything, but ticks are not kept, totals do not follow them, and the steps of each dish, "
    "timers, notes on what was bought and the links for a second phone are "
    "missing.</p></noscript>\n";

// The places of the page, at the lower edge of a phone.
constexpr std::string_view places =
    "<nav aria-label=\"Parts of the page\"><a href=#days>Today</a><a href=#shop>Shop</a><a "
    "href=#menu>Menu</a><a href=#cook>Cook</a><a href=#more>More</a></nav>\n";

constexpr std::string_view more =
    "<section id=more aria-labelledby=more-h><h2 id=more-h>More</h2>\n<ul class=ways><li><a "
    "href=#labels>Labels</a> for boxes and bags</li><li><a href=#figures>Figures</a>: money, room, "
    "nutrition</li></ul>\n<p class=key><span>Places:</span> <i class=\"at P\">P</i> pantry <i "
    "class=\"at F\">F</i> fridge <i class=\"at Z\">Z</i> freezer <i class=\"at H\">H</i> "
    "heat</p>\n</section>\n";

} // namespace

std::string page_html(const Compiled& compiled) {
  using namespace page;
  const auto& plan = compiled.plan();
  std::string out = fmt::format(
      "<!doctype html>\n<html lang=en class=roomy>\n<head>\n<meta charset=utf-8>\n<meta "
      "name=viewport "
      "content=\"width=device-width, initial-scale=1, viewport-fit=cover\">\n<meta "
      "name=color-scheme content=\"light dark\">\n<title>{}: list, menu and "
      "schedule</title>\n<style>\n{}</style>\n<noscript><style>\n{}</style></noscript>\n<noscript "
      "class=style><style>\n{}</style></noscript>\n<noscript "
      "class=style><style>\n{}</style></noscript>\n</head>\n<body>\n",
      escape(plan.name), frame_style, all_parts, first_style, style);
  out += fmt::format("<header><h1>{}</h1><p>{} to {}</p></header>\n", name(plan.name),
                     text::print_day(plan.from), text::print_day(plan.until));
  out += without_script;
  out += places;
  out += "<main>\n<div id=dayhead></div>\n";
  out += shop_section(compiled);
  out += days_section(compiled);
  out += fmt::format("<script>{}</script>\n<script>\n{}</script>\n", without_ready,
                     script_in_ascii(first_script));
  out += menu_section(compiled);
  out += cook_section(compiled);
  out += more;
  out += labels_section(compiled);
  out += figures_section(compiled);
  out += fmt::format(
      "</main>\n<div id=foot><div id=purse role=region aria-label=\"This stop\" "
      "hidden></div></div>\n"
      "<p id=said class=vh role=status></p>\n<footer><p>{}</p></footer>\n"
      "<script type=application/json id=data>{}</script>\n<script type=application/json "
      "id=dishes-data>{}</script>\n<script type=text/plain id=qr>\n{}</script>\n"
      "<script type=text/plain id=script-of-the-rest>{}</script>\n</body>\n</html>\n",
      escape(caution), data_json(compiled), dishes_json(compiled), script_in_ascii(qr_library),
      script_in_ascii(script));
  return byte_order_mark + in_ascii(out);
}

} // namespace manciple::emit
