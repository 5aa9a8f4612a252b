#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"

#include <fmt/format.h>

namespace manciple::emit::page {
namespace {

// So many characters of a name fit on a label in its usual size.
constexpr std::size_t usual_name = 24;

} // namespace

std::string labels_section(const Compiled& compiled) {
  std::string out = fmt::format(
      "<p>{} labels, in "
      "the order in which they are made.</p>\n<form class=grid><label>Paper <select "
      "name=paper><option value=A4>A4<option value=letter>US Letter</select></label> <label>Across "
      "<input name=cols type=number inputmode=numeric min=1 max=6 value=3></label> <label>Down "
      "<input name=rows type=number inputmode=numeric min=2 max=16 value=8></label> <span "
      "id=sheets></span></form>\n<div class=labels>\n",
      compiled.prep.labels.size());
  for (const prep::BoxLabel& label : compiled.prep.labels) {
    out += fmt::format(
        "<div class=label><b{}>{}</b><span>{}{}</span>{}<span class=dates>{} {}, use by "
        "<b>{}</b></span>{}</div>\n",
        label.name.size() > usual_name ? " class=long" : "", name(label.name),
        place_mark(label.place) + " ", name(label.amount),
        label.purpose.empty() ? "" : "<span class=for>for " + name(label.purpose) + "</span>",
        label.making ? "made" : "bought", text::print_day(label.made),
        text::print_day(label.use_by),
        label.reheat.empty() ? "" : "<span class=then>" + name(label.reheat) + "</span>");
  }
  return "<section id=labels aria-labelledby=labels-h><h2 id=labels-h>Labels</h2>\n" +
         folded(out + "</div>") + "</section>\n";
}

} // namespace manciple::emit::page
