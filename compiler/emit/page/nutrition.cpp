#include "emit/nutrition_words.hpp"
#include "emit/page/figure.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::emit::page {
namespace {

using nutrition::Eater;
using nutrition::Nutrient;

constexpr std::array drawn{Nutrient::energy, Nutrient::protein, Nutrient::fiber, Nutrient::sodium};
constexpr std::array told{Nutrient::energy,    Nutrient::protein,      Nutrient::fat,
                          Nutrient::saturated, Nutrient::carbohydrate, Nutrient::fiber,
                          Nutrient::sugars,    Nutrient::sodium,       Nutrient::potassium,
                          Nutrient::calcium,   Nutrient::iron,         Nutrient::vitamin_c};

constexpr double height = 100; // of a strip, in its own unit

// A column a day before the band of the range: grey on white, so that it can be read without
// colour.
std::string strip(const Compiled& compiled, const Eater& eater, Nutrient nutrient) {
  const char point = compiled.kitchen.household.system.point;
  const auto& range = eater.intakes[static_cast<std::size_t>(nutrient)];
  double top = range ? range->upper.value_or(range->most) : 0;
  for (const nutrition::Day& day : eater.days) {
    top = std::max(top, day.eaten[nutrient]);
  }
  if (top <= 0) {
    return {};
  }
  const auto y = [&](double value) { return height * (1 - std::min(value / top, 1.0)); };
  const std::size_t days = days_of(compiled);
  std::string inside;
  if (range) {
    const double high = range->upper ? y(*range->upper) : 0;
    inside += fmt::format("<rect class=band x=0 y={} width={} height={} />", tenth(high), days,
                          tenth(y(range->least) - high));
  }
  std::string path;
  for (const nutrition::Day& day : eater.days) {
    const auto at = (day.date - compiled.plan().from).count();
    path += fmt::format("M{}.15 {}V{}h.7V{}", at, tenth(height), tenth(y(day.eaten[nutrient])),
                        tenth(height));
  }
  inside += fmt::format("<path class=ate d=\"{}\"/>", path);
  const double mean = mean_day(eater)[nutrient];
  const std::string said = fmt::format(
      "{}: {} {} a day{}", foods::in_words(nutrient), rounded(mean, point), unit_word(nutrient),
      !range
          ? std::string()
          : fmt::format(", range from {}{}", recommended(*range, point),
                        range->upper ? " up to " + rounded(*range->upper, point) : std::string()));
  return fmt::format("<p class=bar>{}</p><svg role=img aria-label=\"{} of {}, by day\" "
                     "width=\"100%\" height=40 viewBox=\"0 0 {} {}\" preserveAspectRatio=none "
                     "class=intake>{}</svg>\n",
                     escape(said), escape(said), escape(eater.name), days, tenth(height), inside);
}

std::string table_of(const Compiled& compiled) {
  const char point = compiled.kitchen.household.system.point;
  std::string out = "<table><thead><tr><th scope=col>A day";
  for (const Eater& eater : compiled.nutrition.people) {
    if (!eater.days.empty()) {
      out += "<th scope=col>" + name(eater.name);
    }
  }
  out += "</tr></thead><tbody>\n";
  for (const Nutrient nutrient : told) {
    out += fmt::format("<tr><th scope=row>{}, {}", foods::in_words(nutrient), unit_word(nutrient));
    for (const Eater& eater : compiled.nutrition.people) {
      if (eater.days.empty()) {
        continue;
      }
      const auto& range = eater.intakes[static_cast<std::size_t>(nutrient)];
      out += fmt::format("<td>{}", rounded(mean_day(eater)[nutrient], point));
      if (range) {
        out += fmt::format("<br><small>{}{}</small>", recommended(*range, point),
                           range->upper ? " up to " + rounded(*range->upper, point) : "");
      }
    }
    out += "</tr>\n";
  }
  out += "<tr><th scope=row>weight with figures";
  for (const Eater& eater : compiled.nutrition.people) {
    if (!eater.days.empty()) {
      out += fmt::format("<td>{}%", percent_of(mean_day(eater).coverage(Nutrient::energy)));
    }
  }
  return out + "</tr></tbody></table>";
}

} // namespace

std::string nutrition_figure(const Compiled& compiled) {
  std::string strips;
  for (const Eater& eater : compiled.nutrition.people) {
    if (eater.days.empty()) {
      continue;
    }
    strips += fmt::format("<h4>{}</h4>\n", name(eater.name));
    for (const Nutrient nutrient : drawn) {
      strips += strip(compiled, eater, nutrient);
    }
  }
  if (strips.empty()) {
    return {};
  }
  strips += fmt::format("<p class=note>The band is the range, where there is one for the person's "
                        "age. {} {}</p>\n",
                        escape(nutrition::caution), escape(ranges_are_of));
  return figure("Nutrition by day", strips, table_of(compiled));
}

} // namespace manciple::emit::page
