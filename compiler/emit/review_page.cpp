#include "emit/review_page.hpp"

#include "emit/page/html.hpp"
#include "emit/words.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

namespace manciple::emit {
namespace {

using kitchen::Cents;
using measure::Rational;
using review::Month;
using review::PriceHistory;
using text::Date;

constexpr std::string_view review_style =
    ":root{--paper:#f6f4ee;--ink:#23211e;--soft:#5d5952;--rule:#d8d2c4}\n"
    "@media(prefers-color-scheme:dark){:root{--paper:#19191b;--ink:#ece8df;--soft:#b4aea3;"
    "--rule:#403e42}}\n"
    "body{margin:0 auto;padding:1rem;max-width:46rem;background:var(--paper);color:var(--ink);"
    "font:1rem/1.4 system-ui,sans-serif;font-variant-numeric:tabular-nums;overflow-wrap:anywhere}\n"
    "h1,h2,h3{font-family:Georgia,\"DejaVu Serif\",serif;line-height:1.2;margin:1.5rem 0 .5rem}\n"
    "h1,h2{font-size:1.375rem}h3{font-size:1rem;margin:0}\n"
    ".wide{overflow-x:auto}table{border-collapse:collapse;width:100%}\n"
    "th,td{padding:.25rem .5rem;text-align:right;border-bottom:1px solid var(--rule);"
    "vertical-align:baseline;white-space:nowrap}th:first-child{text-align:left;padding-left:0;"
    "white-space:normal;min-width:9rem}th small{display:block}\n"
    "thead th,small,.note,summary{color:var(--soft);font-weight:400;font-size:.875rem}\n"
    ".food{padding:.75rem 0;border-bottom:1px solid var(--rule);break-inside:avoid}\n"
    ".food svg{display:block;width:100%;height:6rem;overflow:visible;margin:.5rem 0}\n"
    ".food p{margin:.125rem 0}summary{min-height:48px;display:flex;align-items:center;"
    "cursor:pointer}\n"
    "svg text{font:700 .75rem system-ui,sans-serif;fill:currentColor;text-anchor:middle;"
    "dominant-baseline:central}svg .axis{font-weight:400;fill:var(--soft)}\n"
    "svg .end{text-anchor:end}svg .begin{text-anchor:start}\n"
    "svg circle{fill:var(--paper);stroke:currentColor;stroke-width:1}svg .least{stroke-width:3}\n"
    "svg .sale{stroke-dasharray:2 2}svg line{stroke:var(--soft);stroke-dasharray:6 4}\n"
    "@media print{:root{--paper:#fff;--ink:#000;--soft:#333}details{display:none}}\n";

// A letter for each shop of all months, by name.
std::map<std::string, char> letters(const std::vector<PriceHistory>& histories) {
  std::set<std::string> shops;
  for (const PriceHistory& of : histories) {
    for (const review::PricePoint& point : of.points) {
      shops.insert(point.shop);
    }
  }
  std::map<std::string, char> out;
  for (const std::string& shop : shops) {
    out.emplace(shop, static_cast<char>('A' + static_cast<int>(out.size() % 26)));
  }
  return out;
}

std::string cell(std::string_view content) {
  return fmt::format("<td>{}</td>", content);
}

std::string money_cell(const kitchen::Currency& currency, const Rational& amount,
                       bool is_signed = false) {
  const Cents sum = cents(amount);
  if (sum == 0) {
    return cell("");
  }
  const std::string figure = currency.figure(std::abs(sum));
  return cell(sum < 0 ? "−" + figure : (is_signed ? "+" : "") + figure);
}

std::string table(std::string_view head, std::string_view rows) {
  std::string heads;
  for (std::size_t from = 0; from <= head.size();) {
    const std::size_t end = std::min(head.find('|', from), head.size());
    heads += end == from ? std::string("<td></td>")
                         : fmt::format("<th scope=col>{}</th>", head.substr(from, end - from));
    from = end + 1;
  }
  return fmt::format("<div class=wide tabindex=0><table><thead><tr>{}</tr></thead>\n<tbody>{}"
                     "</tbody></table></div>\n",
                     heads, rows);
}

std::string months_table(const std::vector<Month>& months) {
  std::string rows;
  for (const Month& month : months) {
    const kitchen::Currency& currency = month.kitchen->household.currency;
    const auto budget =
        month.kitchen->plan->budget ? month.kitchen->plan->budget : month.kitchen->household.budget;
    rows += fmt::format("<tr><th scope=row>{} <small>{} to {}</small></th>{}{}{}{}</tr>\n",
                        page::name(month.kitchen->plan->name), text::print_day(month.review->from),
                        text::print_day(month.review->until - std::chrono::days(1)),
                        money_cell(currency, month.review->paid),
                        budget ? money_cell(currency, *budget) : cell(""),
                        money_cell(currency, month.review->thrown_away),
                        money_cell(currency, month.review->still_there));
  }
  return "<h2>What was spent</h2>\n" + table("|paid|budget|thrown away|still there", rows);
}

std::string shops_table(const std::vector<Month>& months) {
  std::string out = "<h2>What each shop saved</h2>\n<p class=note>Compared with buying the same on "
                    "the same day at the cheapest of the plan's other shops, in whole packs; what "
                    "would be left of those packs counts at what leftovers are worth to the "
                    "household. Foods that no other shop has are not compared.</p>\n";
  for (const Month& month : months) {
    const kitchen::Kitchen& kitchen = *month.kitchen;
    const kitchen::Currency& currency = kitchen.household.currency;
    std::string rows;
    for (const review::ShopSaving& of : month.review->savings) {
      const auto paid = month.review->by_shop.find(of.shop);
      rows += fmt::format(
          "<tr><th scope=row>{} <small>{} {}; {} foods compared, {} not</small></th>"
          "{}{}{}{}{}{}</tr>\n",
          page::name(kitchen.shop(of.shop).name), of.stops, of.stops == 1 ? "stop" : "stops",
          of.compared, of.only_here, money_cell(currency, paid->second.second),
          money_cell(currency, of.goods, true), money_cell(currency, of.cash_back, true),
          money_cell(currency, -of.stop_costs), money_cell(currency, -of.membership.value_or(0)),
          money_cell(currency, of.in_all(), true));
    }
    out += fmt::format("<h3>{}</h3>\n{}", page::name(kitchen.plan->name),
                       table("|paid|goods|cash back|stops|membership|in all", rows));
  }
  return out;
}

std::string thrown_list(const std::vector<Month>& months) {
  std::string out = "<h2>What was thrown away</h2>\n";
  for (const Month& month : months) {
    const kitchen::Kitchen& kitchen = *month.kitchen;
    std::string rows;
    for (const review::Thrown& one : month.review->thrown) {
      const foods::Food& food = kitchen.food(one.food);
      if (foods::is_more_than_scraps(food, one.amount)) {
        rows += fmt::format(
            "<tr><th scope=row>{}</th>{}</tr>\n",
            page::escape(foods::as_seen(food, one.amount, kitchen.household.system)),
            one.cost ? money_cell(kitchen.household.currency, *one.cost) : cell("not known"));
      }
    }
    out += rows.empty() ? ""
                        : fmt::format("<h3>{}</h3>\n{}", page::name(kitchen.plan->name),
                                      table("|paid for it", rows));
  }
  return out;
}

// Where in a range something stands, of 1.
double place(const Rational& at, const Rational& low, const Rational& high) {
  return high == low ? 0.5 : to_double((at - low) / (high - low));
}

// Dates from left to right, prices from below; zero is not in it, for what matters are differences.
std::string drawing(const PriceHistory& of, const std::map<std::string, char>& letter,
                    const kitchen::Currency& currency, Date first, Date last) {
  // To the cent: a finer difference is one of rounding.
  const auto shown = [](const Rational& unit) { return Rational(cents(unit)); };
  Rational low = shown(of.points.front().unit);
  Rational high = low;
  for (const review::PricePoint& point : of.points) {
    low = std::min(low, shown(point.unit));
    high = std::max(high, shown(point.unit));
  }
  // Room for the figures on the left and for the marks above and below.
  const auto x = [&](Date day) {
    return 0.16 + 0.8 * place(Rational((day - first).count()), 0, Rational((last - first).count()));
  };
  const auto y = [&](const Rational& unit) { return 0.8 - 0.65 * place(shown(unit), low, high); };
  const auto figure = [&](const Rational& unit) {
    return fmt::format("<text class=\"axis begin\" x=0 y=\"{}\">{}</text>", page::percent(y(unit)),
                       currency.figure(cents(unit)));
  };
  std::string out =
      fmt::format("<svg role=img aria-label=\"{}: {} to {} {}, usually {}\">",
                  page::escape(of.food), currency.figure(cents(low)), currency.figure(cents(high)),
                  page::escape(of.unit), currency.figure(cents(of.usual)));
  out += figure(high) + (low == high ? "" : figure(low));
  out += fmt::format("<line x1=\"16%\" x2=\"96%\" y1=\"{0}\" y2=\"{0}\" />",
                     page::percent(y(of.usual)));
  out += fmt::format("<text class=\"axis begin\" x=\"16%\" y=\"100%\">{}</text><text class=\"axis "
                     "end\" x=\"96%\" y=\"100%\">{}</text>",
                     text::print_day(first), text::print_day(last));
  for (std::size_t p = 0; p < of.points.size(); ++p) {
    const review::PricePoint& point = of.points[p];
    out += fmt::format("<circle cx=\"{0}\" cy=\"{1}\" r=9{2} /><text x=\"{0}\" y=\"{1}\" "
                       "aria-hidden=true>{3}</text>",
                       page::percent(x(point.date)), page::percent(y(point.unit)),
                       p == of.lowest ? " class=least"
                       : point.sale   ? " class=sale"
                                      : "",
                       letter.at(point.shop));
  }
  return out + "</svg>\n";
}

std::string food(const PriceHistory& of, const std::map<std::string, char>& letter,
                 const kitchen::Currency& currency, Date first, Date last) {
  const review::PricePoint& least = of.points[of.lowest];
  std::string rows;
  for (const review::PricePoint& point : of.points) {
    rows += fmt::format("<tr><th scope=row>{} <small>{}{}</small></th>{}{}{}</tr>\n",
                        text::print_day(point.date), page::name(point.shop),
                        point.sale ? ", on sale" : "", cell(page::escape(point.words)),
                        money_cell(currency, point.paid), money_cell(currency, point.unit));
  }
  return fmt::format(
      "<section class=food><h3>{}</h3>\n<p>Usually {}{}; lowest {}{} <small>({} for {}, {}, "
      "{}{})</small></p>\n{}<details><summary>All {} prices</summary>{}</details></section>\n",
      page::name(of.food), currency.figure(cents(of.usual)), page::escape(of.unit),
      currency.figure(cents(least.unit)), page::escape(of.unit), page::escape(least.words),
      currency.figure(least.paid), page::name(least.shop), text::print_day(least.date),
      least.sale ? ", on sale" : "", drawing(of, letter, currency, first, last), of.points.size(),
      table("|bought|paid|" + page::escape(of.unit.substr(of.unit.starts_with('/') ? 1 : 0)),
            rows));
}

std::string prices(const std::vector<Month>& months) {
  const auto histories = review::price_histories(months);
  const auto letter = letters(histories);
  std::string key;
  for (const auto& [shop, mark] : letter) {
    key += fmt::format("{}<b>{}</b> {}", key.empty() ? "" : ", ", mark, page::name(shop));
  }
  std::string out =
      fmt::format("<h2>Prices over time</h2>\n<p class=note>For what was bought more than once: "
                  "{}. The dashed line is the usual price, the median of all prices that were not "
                  "sales; the thick ring is the lowest price, a dotted ring is a sale. Each scale "
                  "begins at the lowest price, not at zero.</p>\n",
                  key);
  // All pictures have the same days.
  std::set<Date> days;
  for (const PriceHistory& of : histories) {
    for (const review::PricePoint& point : of.points) {
      days.insert(point.date);
    }
  }
  for (const PriceHistory& of : histories) {
    if (of.points.size() > 1) {
      out += food(of, letter, months.front().kitchen->household.currency, *days.begin(),
                  *days.rbegin());
    }
  }
  return out;
}

} // namespace

std::string review_html(const std::vector<Month>& months) {
  const std::string title =
      fmt::format("{} to {}: review", text::print_day(months.front().review->from),
                  text::print_day(months.back().review->until - std::chrono::days(1)));
  return fmt::format(
      "<!doctype html>\n<html lang=en>\n<head>\n<meta charset=utf-8>\n<meta name=viewport "
      "content=\"width=device-width, initial-scale=1\">\n<meta name=color-scheme content=\"light "
      "dark\">\n<title>{0}</title>\n<style>\n{1}</style>\n</head>\n<body>\n<main>\n<h1>{0}</"
      "h1>\n{2}"
      "{3}{4}{5}</main>\n</body>\n</html>\n",
      title, review_style, months_table(months), shops_table(months), thrown_list(months),
      prices(months));
}

} // namespace manciple::emit
