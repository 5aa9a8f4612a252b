#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::emit {
namespace {

using purchase::Line;
using purchase::StopMade;

// Nothing where no price is known of what is bought there.
std::string visit_sums(const Compiled& compiled, const StopMade& visit) {
  const auto index = static_cast<std::size_t>(&visit - compiled.shopping.visits.data());
  if (!has_prices(compiled, index)) {
    return "";
  }
  std::string out = money(compiled, visit.goods);
  if (visit.tax != 0) {
    out += fmt::format(" + tax {}", money(compiled, visit.tax));
  }
  if (visit.off != 0) {
    out += fmt::format(" - reduction {}", money(compiled, visit.off));
  }
  if (visit.credit != 0) {
    out += fmt::format(" - store credit {}", money(compiled, visit.credit));
  }
  if (visit.paid() != visit.goods) {
    out += fmt::format(" = {}", money(compiled, visit.paid()));
  }
  if (visit.cash_back != 0) {
    out += fmt::format(" ({} cash back)", money(compiled, visit.cash_back));
  }
  return out;
}

// Walks through the list: `stop` for each visit, `department` for each part of it, `line` for each
// line.
template <typename Stop, typename Department, typename Each>
void walk(const Compiled& compiled, Stop stop, Department department, Each each) {
  const auto& shopping = compiled.shopping;
  for (std::size_t v = 0, l = 0; v < shopping.visits.size(); ++v) {
    stop(shopping.visits[v]);
    std::optional<foods::Department> last;
    for (; l < shopping.lines.size() && shopping.lines[l].visit == v; ++l) {
      const auto here = food_of(compiled, shopping.lines[l]).department;
      if (last != here) {
        department(here);
        last = here;
      }
      each(l);
    }
  }
}

std::string lines(std::size_t count) {
  return fmt::format("{} {}", count, count == 1 ? "line" : "lines");
}

} // namespace

std::string list_text(const Compiled& compiled) {
  std::string out = fmt::format("{}: shopping list\n", compiled.plan().name);
  const bool priced = without_price(compiled) < compiled.shopping.lines.size();
  walk(
      compiled,
      [&](const StopMade& visit) {
        const std::string sums = visit_sums(compiled, visit);
        out += fmt::format("\n{}, {}{}{}\n", text::print_day(visit.date),
                           compiled.kitchen.shop(visit.shop).name, sums.empty() ? "" : ": ", sums);
      },
      [&](foods::Department department) { out += fmt::format("  {}\n", foods::name(department)); },
      [&](std::size_t l) {
        const Line& line = compiled.shopping.lines[l];
        const std::string notes = text::join(notes_of(compiled, l), "; ");
        std::string row = priced
                              ? fmt::format("    {:<24} {:<30} {:>8}", count_of(compiled, line),
                                            name_on_list(compiled, line), cost_of(compiled, line))
                              : fmt::format("    {:<18} {:<30}", count_of(compiled, line),
                                            name_on_list(compiled, line));
        row += notes.empty() ? "" : "  " + notes;
        out += row.substr(0, row.find_last_not_of(' ') + 1) + "\n";
      });
  const std::vector<std::string> check = to_check(compiled);
  if (!check.empty()) {
    out += fmt::format("\nUsed without an amount; check that you have some: {}\n",
                       text::join(check, ", "));
  }
  std::vector<std::string> optional;
  for (const StillToFind& one : optional_ones(compiled)) {
    optional.push_back(phrase(compiled, one));
  }
  if (!optional.empty()) {
    out += fmt::format("\nOptional, and not on the list: {}\n", text::join(optional, "; "));
  }
  return out + "\n" + summary(compiled);
}

std::string summary(const Compiled& compiled) {
  const auto& shopping = compiled.shopping;
  std::string out;
  const bool past = compiled.past && !compiled.kitchen.receipts.empty();
  if (past) {
    const std::size_t receipts = compiled.kitchen.receipts.size();
    out += fmt::format(
        "{:<36} {:>10}\n",
        fmt::format("Paid before, {} {}", receipts, receipts == 1 ? "receipt" : "receipts"),
        money(compiled, compiled.past->paid));
  }
  for (std::size_t v = 0; v < shopping.visits.size(); ++v) {
    const StopMade& visit = shopping.visits[v];
    const std::string& shop = compiled.kitchen.shop(visit.shop).name;
    out += has_prices(compiled, v)
               ? fmt::format("{:<11} {:<24} {:>10}\n", text::print_day(visit.date), shop,
                             money(compiled, visit.paid()))
               : fmt::format("{:<11} {}\n", text::print_day(visit.date), shop);
  }
  const std::size_t open = without_price(compiled);
  const std::size_t priced = shopping.lines.size() - open;
  if (priced > 0 || open == 0) {
    out += fmt::format("{:<36} {:>10}\n",
                       fmt::format("{}, {}", past ? "Still to pay" : "Total to pay", lines(priced)),
                       money(compiled, shopping.paid));
  }
  if (open > 0) {
    out += fmt::format("{}, {}\n", priced > 0 ? "No price known" : "To buy", lines(open));
  }
  const kitchen::Cents back =
      shopping.cash_back + (compiled.past ? compiled.past->cash_back : kitchen::Cents{0});
  if (back != 0) {
    out += fmt::format("{:<36} {:>10}\n", "Cash back later", money(compiled, back));
  }
  const auto budget =
      compiled.plan().budget ? compiled.plan().budget : compiled.kitchen.household.budget;
  if (budget) {
    out += fmt::format("{:<36} {:>10}\n",
                       shopping.paid <= *budget ? "Left in the budget" : "Over the budget",
                       money(compiled, *budget > shopping.paid ? *budget - shopping.paid
                                                               : shopping.paid - *budget));
  }
  for (const StillToFind& one : still_to_find(compiled)) {
    out += fmt::format("Still to find: {}\n", phrase(compiled, one));
  }
  return out + verdict(compiled) + "\n";
}

std::string list_markdown(const Compiled& compiled) {
  std::string out = fmt::format("# Shopping list: {}\n", escape_markdown(compiled.plan().name));
  walk(
      compiled,
      [&](const StopMade& visit) {
        const std::string sums = visit_sums(compiled, visit);
        out += fmt::format("\n## {}: {}\n{}", text::print_day(visit.date),
                           escape_markdown(compiled.kitchen.shop(visit.shop).name),
                           sums.empty() ? "" : fmt::format("\n{}\n", escape_markdown(sums)));
      },
      [&](foods::Department department) {
        out += fmt::format("\n### {}\n\n", foods::name(department));
      },
      [&](std::size_t l) {
        const Line& line = compiled.shopping.lines[l];
        out += fmt::format("- [ ] {} **{}**{}", escape_markdown(count_of(compiled, line)),
                           escape_markdown(name_on_list(compiled, line)),
                           line.cost ? " " + cost_of(compiled, line) : "");
        for (const std::string& note : notes_of(compiled, l)) {
          out += fmt::format("; {}", escape_markdown(note));
        }
        const std::string why = for_what(compiled, l);
        out += fmt::format("{}\n", why.empty() ? "" : " (for " + escape_markdown(why) + ")");
      });
  const std::vector<StillToFind> missing = still_to_find(compiled);
  if (!missing.empty()) {
    out += "\n## Still to find\n\nNot sold in time by any shop in the plan.\n\n";
    for (const StillToFind& one : missing) {
      out += fmt::format("- [ ] {}\n", escape_markdown(phrase(compiled, one)));
    }
  }
  const std::vector<StillToFind> optional = optional_ones(compiled);
  if (!optional.empty()) {
    out += "\n## Optional\n\nNot on the list above; buy it if you like.\n\n";
    for (const StillToFind& one : optional) {
      out += fmt::format("- [ ] {}\n", escape_markdown(phrase(compiled, one)));
    }
  }
  const std::vector<std::string> check = to_check(compiled);
  if (!check.empty()) {
    out += "\n## Check that you have some\n\nUsed without an amount, so not on the list above.\n\n";
    for (const std::string& name : check) {
      out += fmt::format("- [ ] {}\n", escape_markdown(name));
    }
  }
  return out + (compiled.shopping.proven() ? "" : fmt::format("\n{}\n", verdict(compiled)));
}

} // namespace manciple::emit
