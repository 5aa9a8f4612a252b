#include "prep/ripening.hpp"

#include "foods/counted.hpp"
#include "foods/ripening.hpp"
#include "prep/purpose.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace manciple::prep {
namespace {

using foods::Food;
using foods::Rational;
using kitchen::Kitchen;
using purchase::Shopping;
using resolve::Resolved;
using resolve::Use;

// What is eaten some time in so many days is chosen in every state.
constexpr int of_every_kind = 2;

// The first day on which a use may want it, counted from a day.
int first_day(const Use& use, Date from) {
  return std::max(0, static_cast<int>((use.date - from).count()) - use.slack);
}

Ripeness chosen_for(const Food& food, const Use& use, Date bought) {
  const int days = first_day(use, bought);
  if (days > *foods::keeps_ripe(food)) {
    return Ripeness::hard;
  }
  if (use.slack >= of_every_kind) {
    return Ripeness::mixed;
  }
  return days <= 1 ? Ripeness::ripe : Ripeness::nearly_ripe;
}

// Nobody puts a part of a fruit out to ripen: it is one of those that ripen for another use.
bool is_scrap(const Food& food, const Rational& amount) {
  return food.count_as && !foods::pieces_in(food, amount);
}

class Ripening {
public:
  Ripening(const Kitchen& kitchen, const Resolved& resolved)
      : kitchen_(kitchen), resolved_(resolved) {}

  void add(foods::FoodId id, Date from, const Use& use, const Rational& amount) {
    const Food& food = kitchen_.food(id);
    const int ripens = food.ripens->value;
    const int held = food.keeps.hard ? food.keeps.hard->value : 0;
    const Date wanted = from + std::chrono::days(first_day(use, from));
    const Date out = std::max(
        from, std::min(wanted - std::chrono::days(ripens), from + std::chrono::days(held)));
    const Date ripe = out + std::chrono::days(ripens);
    const std::optional<std::string> what = purpose(kitchen_, resolved_, use);
    const std::string day = what ? fmt::format(" for {} on {}", *what, text::print_day(wanted))
                                 : fmt::format(" for {}", text::print_day(wanted));
    if (held > 0 && out > from) {
      add_to(out, id, "Take", fmt::format(" out of the fridge to ripen{}", day), amount);
    } else {
      add_to(out, id, "Leave", fmt::format(" on the counter to ripen{}", day), amount);
    }
    if (ripe < wanted && food.keeps.fridge) {
      add_to(ripe, id, "Put", fmt::format(", ripe by now, into the fridge{}", day), amount);
    }
  }

  [[nodiscard]] std::vector<Reminder> reminders() const {
    std::vector<Reminder> out;
    for (const auto& [task, amount] : tasks_) {
      const auto& [date, food, verb, rest] = task;
      if (is_scrap(kitchen_.food(food), amount)) {
        continue;
      }
      out.push_back({Reminder::Kind::ripen, date, std::nullopt,
                     fmt::format("{} {}{}", verb, in_pieces(kitchen_.food(food), amount), rest)});
    }
    return out;
  }

private:
  [[nodiscard]] std::string in_pieces(const Food& food, const Rational& amount) const {
    const auto pieces = foods::pieces_in(food, amount);
    return pieces ? fmt::format("{} {}", pieces->words,
                                pieces->several ? text::plural(food.name) : food.name)
                  : foods::as_seen(food, amount, kitchen_.household.system);
  }

  void add_to(Date date, foods::FoodId food, std::string_view verb, std::string rest,
              const Rational& amount) {
    tasks_[{date, food, std::string(verb), std::move(rest)}] += amount;
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  std::map<std::tuple<Date, foods::FoodId, std::string, std::string>, Rational> tasks_;
};

} // namespace

std::vector<Chosen> ripeness_of(const Kitchen& kitchen, const Resolved& resolved,
                                const Shopping& shopping, std::size_t line) {
  const Food& food = kitchen.food(shopping.lines[line].food);
  std::map<Ripeness, Rational> sums;
  if (foods::keeps_ripe(food)) {
    const Date bought = shopping.visits[shopping.lines[line].visit].date;
    for (const purchase::Supply& supply : shopping.supplies) {
      if (supply.line == line && !supply.frozen) {
        sums[chosen_for(food, resolved.uses[supply.use], bought)] += supply.amount;
      }
    }
  }
  std::vector<Chosen> out;
  for (const auto& [ripeness, amount] : sums) {
    if (sums.size() == 1 || !is_scrap(food, amount)) {
      out.push_back({ripeness, amount});
    }
  }
  return out;
}

std::vector<Reminder> ripening(const Kitchen& kitchen, const Resolved& resolved,
                               const Shopping& shopping) {
  Ripening out(kitchen, resolved);
  for (const purchase::Supply& supply : shopping.supplies) {
    const purchase::Line& line = shopping.lines[supply.line];
    const Food& food = kitchen.food(line.food);
    const Date bought = shopping.visits[line.visit].date;
    const Use& use = resolved.uses[supply.use];
    if (foods::keeps_ripe(food) && !supply.frozen &&
        chosen_for(food, use, bought) == Ripeness::hard) {
      out.add(line.food, bought, use, supply.amount);
    }
  }
  for (const purchase::StockUse& used : shopping.from_stock) {
    const kitchen::StockLot& lot = kitchen.on_hand.lots[used.lot];
    const foods::FoodId food = purchase::food_of(kitchen, used);
    if (lot.hard && !used.frozen && foods::keeps_ripe(kitchen.food(food))) {
      const Date from = std::max(*kitchen.on_hand.date, kitchen.plan->from);
      out.add(food, from, resolved.uses[used.use], used.amount);
    }
  }
  return out.reminders();
}

} // namespace manciple::prep
