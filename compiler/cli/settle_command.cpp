// A receipt beside the list.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/price_edit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "cli/settle_count.hpp"
#include "cli/write_file.hpp"
#include "foods/spoken.hpp"
#include "history/settled.hpp"
#include "kitchen/paths.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <filesystem>

namespace manciple::cli {
namespace {

struct SettleRequest {
  std::string file; ///< a receipt, or a later count
  std::string plan; ///< empty: the one that the day is in
  bool write = false;
};

using history::NewPrice;
using history::SettledLine;
using kitchen::Kitchen;

// What was read of a house, and where.
struct Read {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::optional<BesideList> found;
};

// With the plan that the receipt's day is in, or with the one that is said.
Read read(const std::string& path, const std::string& plan) {
  const std::string slug = std::filesystem::path(path).stem().string();
  const std::vector<std::string> plans =
      plan.empty() ? kitchen::plan_files(kitchen::root_of(path)) : std::vector<std::string>{plan};
  Read out;
  for (const std::string& one : plans) {
    out = Read();
    out.found = beside_list(one, slug, out.sources, out.diagnostics);
    if (out.found) {
      break;
    }
  }
  return out;
}

std::string amount(const Kitchen& kitchen, foods::FoodId food, const measure::Rational& amount) {
  return amount == 0 ? "" : foods::customary(kitchen.food(food), amount, kitchen.household.system);
}

std::string money(const Kitchen& kitchen, const std::optional<kitchen::Cents>& cents) {
  return cents ? kitchen.household.currency.figure(*cents) : "";
}

std::string fate(const Kitchen& kitchen, const SettledLine& line) {
  const kitchen::Currency& currency = kitchen.household.currency;
  switch (line.fate) {
  case SettledLine::Fate::as_planned:
    return "";
  case SettledLine::Fate::other_amount:
    return fmt::format("the list said {}", amount(kitchen, line.food, line.planned));
  case SettledLine::Fate::other_price: {
    const kitchen::Cents more = *line.till - *line.list;
    return fmt::format("{} {}", currency.figure(std::abs(more)), more > 0 ? "dearer" : "cheaper");
  }
  case SettledLine::Fate::not_planned:
    return line.instead_of.empty() ? "not on the list"
                                   : fmt::format("instead of {}", line.instead_of);
  case SettledLine::Fate::missing:
    return "on the list, not bought";
  }
  return "";
}

void say_lines(const Kitchen& kitchen, const history::Settled& settled) {
  const auto otherwise =
      std::count_if(settled.lines.begin(), settled.lines.end(),
                    [](const auto& line) { return line.fate != SettledLine::Fate::as_planned; });
  const auto same = static_cast<std::ptrdiff_t>(settled.lines.size()) - otherwise;
  if (same > 0) {
    say("{} {} as the list has {}.\n", same, same == 1 ? "line is" : "lines are",
        same == 1 ? "it" : "them");
  }
  if (otherwise > 0) {
    say("\n  {:<28} {:>12} {:>9} {:>9}\n", "", "bought", "list", "till");
  }
  for (const SettledLine& line : settled.lines) {
    if (line.fate == SettledLine::Fate::as_planned) {
      continue;
    }
    say("  {:<28} {:>12} {:>9} {:>9}  {}\n", kitchen.food(line.food).name,
        amount(kitchen, line.food, line.bought), money(kitchen, line.list),
        money(kitchen, line.till), fate(kitchen, line));
  }
}

void say_sums(const BesideList& beside, const history::Settled& settled) {
  const kitchen::Currency& currency = beside.kitchen.household.currency;
  const kitchen::Receipt& receipt = beside.receipt;
  std::string planned = "the list has no stop there";
  if (settled.planned) {
    const kitchen::Cents more = settled.paid - *settled.planned;
    planned = fmt::format("the list said {}{}", currency.print(*settled.planned),
                          more == 0 ? ""
                                    : fmt::format(", {} {}", currency.print(std::abs(more)),
                                                  more < 0 ? "more" : "less"));
  }
  say("{}, {}: {} paid; {}\n", beside.kitchen.shop(receipt.shop).name,
      text::print_day(receipt.date), currency.print(settled.paid), planned);
  if (settled.unaccounted) {
    say("The total is {} {} than its lines{}.\n", currency.print(std::abs(*settled.unaccounted)),
        *settled.unaccounted > 0 ? "more" : "less", receipt.tax ? " and tax" : "");
  }
}

void say_other_prices(const Kitchen& kitchen, const history::Settled& settled) {
  const kitchen::Currency& currency = kitchen.household.currency;
  for (const NewPrice& price : settled.prices) {
    const std::string name = kitchen.food(price.food).name;
    const std::string now = currency.figure(price.now);
    switch (price.why) {
    case NewPrice::Why::changed:
      break;
    case NewPrice::Why::sale:
      say("{}, {}: {} was a sale; the price list stays as it is\n", name, price.pack, now);
      break;
    case NewPrice::Why::much_less:
      say("{}, {}: {} is so much less than {} that it is assumed to be a sale; if it is now the "
          "usual price, write it into the price list\n",
          name, price.pack, now, money(kitchen, price.old));
      break;
    case NewPrice::Why::uneven:
      say("{}, {}: about {} each, but not all at one price; the price list stays as it is\n", name,
          price.pack, now);
      break;
    case NewPrice::Why::not_known:
      say("{}: '{}' is not in the price list, {}\n", name, price.pack, now);
      break;
    }
  }
}

int settle(const SettleRequest& request) {
  const auto& [path, plan, write] = request;
  const std::filesystem::path named(path);
  if (named.filename() == "on-hand.yaml" || named.parent_path().filename() == "on-hand") {
    return settle_count(path, plan);
  }
  const Read read = cli::read(path, plan);
  if (report(read.diagnostics, read.sources) != good) {
    return bad_input;
  }
  if (!read.found) {
    complain("manciple: '{}' is not a receipt for a day of {}\n", path,
             plan.empty() ? "any plan of the house" : plan);
    return bad_input;
  }
  const BesideList& beside = *read.found;
  const history::Settled settled = history::settle(beside.kitchen, beside.receipt, beside.list);
  say_sums(beside, settled);
  say_lines(beside.kitchen, settled);
  if (!settled.prices.empty()) {
    say("\n");
  }
  say_other_prices(beside.kitchen, settled);

  const kitchen::Shop& shop = beside.kitchen.shop(beside.receipt.shop);
  const std::string list =
      kitchen::in_root(kitchen::root_of(path), fmt::format("plans/stores/{}.yaml", shop.slug));
  const auto file = shop.has_file ? read.sources.find(list) : std::nullopt;
  if (!file) {
    return good;
  }
  const std::string_view text = read.sources.text(*file);
  const auto edits = price_edits(text, beside.kitchen, beside.receipt, settled);
  if (edits.empty()) {
    say("The price list already says the same.\n");
    return good;
  }
  say("{} has {} from the till:\n", list,
      edits.size() == 1 ? "a different price" : "different prices");
  for (const LineEdit& edit : edits) {
    say("{}:{}\n- {}\n+ {}\n", list, edit.line, text::trim(edit.before), text::trim(edit.after));
  }
  if (!write) {
    say("--write changes it.\n");
    return good;
  }
  return write_and_say(list, edited(text, edits), true);
}

} // namespace

void add_settle(CommandLine& to) {
  auto [command, asked] = to.add<SettleRequest>(
      "settle",
      "compare a receipt with the list, and show what the price list should say now; or "
      "compare a later count with what should have been there",
      settle);
  command
      .add_option(
          "FILE", asked.file,
          "for example plans/receipts/2027-03-06-corner.yaml or plans/on-hand/2027-03-10.yaml")
      ->required();
  command.add_option("--plan", asked.plan, "the plan (default: the one that the day is in)");
  take_write(command, asked.write, "into the price list");
}

} // namespace manciple::cli
