#include "emit/page/figure.hpp"

#include "emit/page/html.hpp"

#include <fmt/format.h>

#include <cmath>

namespace manciple::emit::page {

using text::Date;

std::size_t days_of(const Compiled& compiled) {
  return static_cast<std::size_t>((compiled.plan().until - compiled.plan().from).count()) + 1;
}

std::string figure(std::string_view title, std::string_view content, std::string_view table) {
  // The table may be wider than a phone; then it moves within its frame, by finger and by keys.
  const std::string figures =
      fmt::format("<details><summary>The figures</summary><div class=table role=region tabindex=0 "
                  "aria-label=\"{}: the figures\">\n{}</div></details>\n",
                  title, table);
  return fmt::format("<figure><figcaption><h3>{}</h3></figcaption>\n{}{}</figure>\n", title,
                     content, figures);
}

// To a tenth; a whole number stays whole.
std::string tenth(double value, char point) {
  const auto tenths = std::llround(value * 10);
  return tenths % 10 == 0 ? fmt::format("{}", tenths / 10)
                          : fmt::format("{}{}{}", tenths / 10, point, tenths % 10);
}

// A drawing over the days of the plan: what `inside` draws stretches to the width, the labels do
// not.
std::string over_days(const Compiled& compiled, std::string_view label, double top,
                      std::string_view top_label, std::string_view inside) {
  const std::size_t days = days_of(compiled);
  std::string axis;
  for (std::size_t d = 0; d < days; ++d) {
    const Date day = compiled.plan().from + std::chrono::days(d);
    if (compiled.kitchen.household.day_of_week(day) == 1) {
      axis += fmt::format("<text class=axis-text x={} y=158>{}</text>",
                          percent(static_cast<double>(d) / static_cast<double>(days)),
                          static_cast<unsigned>(std::chrono::year_month_day(day).day()));
    }
  }
  return fmt::format(
      "<svg role=img aria-label=\"{}\" width=\"100%\" height=164><svg y=18 "
      "height=124 width=\"100%\" viewBox=\"0 0 {} {}\" preserveAspectRatio=none>"
      "{}</svg><line class=grid x1=0 x2=\"100%\" y1=18 y2=18 /><text class=axis-text x=0 "
      "y=13>{}</text>{}</svg>\n",
      escape(label), days, tenth(top), inside, escape(top_label), axis);
}

} // namespace manciple::emit::page
