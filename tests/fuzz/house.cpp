#include "fuzz.hpp"

#include "cli/compile.hpp"
#include "emit/emit.hpp"

namespace manciple::fuzz {

text::FilesInMemory house() {
  text::FilesInMemory files;
  files.texts["plans/household.yaml"] = R"(
people: [{name: Ada, avoids: [peanut]}, {name: Ben, portion: 1/2}]
meals: {lunch: "12:30", dinner: "18:30"}
storage: {fridge: 200 l, freezer: 60 l}
appliances: {burner: 4, oven: 1}
a stop costs: 2.00
budget: 200.00
member of: corner
buying: {onion: {prefer: corner}}
any of these: [{canned black beans: 1, canned pinto beans: 1}]
)";
  files.texts["plans/on-hand.yaml"] = R"(
date: 2027-02-28
on hand: ["2 lb onions, pantry", "1 lb ground beef, freezer, use by 2027-03-20", "2 lemons, freezer"]
)";
  files.texts["plans/stores/corner.yaml"] = R"(
shop: Corner
walk: [produce, meat]
tax: {produce: 2 %}
cash back: 1 %
reduction: {over: 30.00, off: 2.00}
prices:
  onion: [1.00/lb, {offer: 3 lb bag 2.50, deal: 2 for 4.00, limit: 3}]
  ground beef: {offer: 5.00/lb, sale: {price: 4.00, from: 2027-03-01, until: 2027-03-05}}
  egg: 12 large 3.00
  lemon: {offer: 0.60 each, member price: 0.50}
  canned black beans: 15 oz can 1.20
  canned pinto beans: 15 oz can 1.00
)";
  files.texts["plans/stores/market.yaml"] = R"(
shop: Market
store credit: 3.00
prices: {onion: 0.90/lb, whole milk: 1 gal 3.50, lemon: 3 for 1.50}
)";
  files.texts["recipes/stew.yaml"] = R"(
name: Stew
serves: 4
ingredients: [1 lb ground beef, "2 cups onion, chopped", 2 cups stock, "salt, to taste"]
method: [{do: Brown, hands on: 15 min, then: 40 min, on: burner}]
keeps: {fridge: 4 days, freezer: 3 months}
)";
  files.texts["recipes/stock.yaml"] = R"(
name: Stock
serves: 8
makes: 8 cups
ingredients: [3 onions, juice and zest of 1 lemon]
method: [{do: Simmer, hands on: 5 min, then: 2 h, on: burner}]
keeps: {fridge: 4 days, freezer: 6 months}
make ahead: yes
)";
  files.texts["plans/p.yaml"] = R"(
plan: P
from: 2027-03-01
until: 2027-03-10
meals:
  2027-03-02: {dinner: stew, lunch: 2 eggs}
  2027-03-04: {dinner: leftovers of stew}
  2027-03-07: {dinner: {dish: stew, eaten by: [Ada]}}
staples: [12 eggs per week, keep 1 gal whole milk]
extra: [{buy: 2 cans black beans, by: 2027-03-05, for: soup}]
trips:
  - {date: 2027-03-01, stops: [corner, {shop: market, always: yes}], budget: 60.00}
  - {every: Saturday, stops: [market]}
prep: [{date: 2027-03-01, from: "14:00", until: "17:00", cooks: 2}]
)";
  return files;
}

// Outputs take as long as all the rest: they are written for one input in so many.
constexpr std::size_t outputs_for_one_in = 4;

void compile(const text::FilesInMemory& files) {
  static std::size_t inputs = 0;
  text::Sources sources;
  text::Diagnostics diagnostics;
  purchase::Search search;
  search.effort = 0.01;
  const auto compiled = cli::compile("plans/p.yaml", sources, diagnostics, search, files);
  check_said(diagnostics, sources);
  require(compiled.has_value() == (diagnostics.errors() == 0), "no plan, and no error said");
  if (!compiled || inputs++ % outputs_for_one_in != 0) {
    return;
  }
  std::size_t bytes = 0;
  for (const emit::Output& output : emit::outputs(*compiled)) {
    bytes += output.content.size();
    const bool page = output.name.ends_with(".html") || output.name.ends_with(".ics") ||
                      output.name.ends_with(".csv"); // lines of their own kinds
    require(page || text::printable(output.content, true) == output.content,
            "an output holds what is no text");
  }
  require(bytes < std::size_t{20} << 20U, "outputs of more than 20 MB");
}

} // namespace manciple::fuzz
