#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"

#include <fmt/format.h>

#include <array>

namespace manciple::emit::page {

std::string day_head(text::Date day, std::string_view more) {
  static constexpr std::array<std::string_view, 12> months{
      "January", "February", "March",     "April",   "May",      "June",
      "July",    "August",   "September", "October", "November", "December"};
  const std::chrono::year_month_day ymd(day);
  return fmt::format("<b class=num>{}</b> <span>{} <small>{}{}</small></span>",
                     static_cast<unsigned>(ymd.day()), text::weekday_name(day),
                     months.at(static_cast<unsigned>(ymd.month()) - 1), more);
}

char place_letter(foods::Place place) {
  switch (place) {
  case foods::Place::freezer:
    return 'Z';
  case foods::Place::fridge:
    return 'F';
  case foods::Place::pantry:
    break;
  }
  return 'P';
}

std::string place_mark(foods::Place place) {
  return fmt::format("<i class=\"at {0}\" title={1}><span aria-hidden=true>{0}</span><span "
                     "class=vh>{1}</span></i>",
                     place_letter(place), foods::name(place));
}

std::string heat_mark() {
  return "<i class=\"at H\" title=heat><span aria-hidden=true>H</span><span "
         "class=vh>heat</span></i>";
}

std::string dish_link(const Compiled& compiled, const resolve::Making& making) {
  return fmt::format("<a href=#dish{}>{}</a>", static_cast<std::size_t>(making.id),
                     name(compiled.kitchen.recipe(making.recipe).name));
}

} // namespace manciple::emit::page
