#include "use_up/left.hpp"

#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "purchase/lives.hpp"
#include "purchase/usual_price.hpp"
#include "purchase/worth.hpp"
#include "resolve/by_products.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::use_up {
namespace {

using kitchen::Kitchen;
using purchase::Line;
using purchase::Shopping;

// What keeps longer is thought of in time anyway. Our own choice.
constexpr std::chrono::days soon{30};

class Collector {
public:
  Collector(const Kitchen& kitchen, const resolve::Resolved& resolved, const Shopping& shopping)
      : kitchen_(kitchen),
        resolved_(resolved),
        shopping_(shopping),
        days_(static_cast<int>((kitchen.plan->until - shopping.first).count()) + 1) {}

  std::vector<Left> run() {
    for (const purchase::Rest& rest : shopping_.rests) {
      rest.stock ? of_stock(rest) : of_line(rest);
    }
    untouched();
    by_products();
    std::stable_sort(out_.begin(), out_.end(), [&](const Left& a, const Left& b) {
      const auto key = [&](const Left& one) {
        return std::tuple(!one.until.has_value(), one.until.value_or(one.since),
                          std::string_view(kitchen_.food(one.food).name));
      };
      return key(a) < key(b);
    });
    return std::move(out_);
  }

private:
  void add(Left left) {
    const auto price = purchase::replacement_price(kitchen_, left.food);
    left.worth = price ? std::optional<Rational>(*price * left.amount) : std::nullopt;
    out_.push_back(std::move(left));
  }

  void of_stock(const purchase::Rest& rest) {
    Left left = of_lot(rest.of, rest.amount);
    left.until = rest.until && left.until ? std::min(*rest.until, *left.until) : left.until;
    left.opened = left.opened || rest.opened_on;
    add(std::move(left));
    seen_.push_back(rest.of);
  }

  void of_line(const purchase::Rest& rest) {
    const Line& line = shopping_.lines[rest.of];
    Left left;
    left.food = line.food;
    left.amount = std::min(rest.amount, line.amount);
    left.since = shopping_.visits[line.visit].date;
    left.frozen = rest.frozen;
    const auto keeping = purchase::keeping_of(kitchen_.food(line.food), days_);
    if (rest.frozen) {
      left.until = left.since + std::chrono::days(keeping.life.frozen.value_or(
                                    keeping.life.refrozen.value_or(keeping.life.cool)));
      left.opened = true;
    } else {
      left.until = rest.until ? rest.until
                   : keeping.known
                       ? std::optional(left.since + std::chrono::days(keeping.life.cool))
                       : std::nullopt;
      open(left, line, rest, keeping);
    }
    add(std::move(left));
  }

  // A pack that is begun keeps from the day on which it was, also where that makes no difference
  // to the plan.
  void open(Left& left, const Line& line, const purchase::Rest& rest,
            const purchase::Keeping& keeping) const {
    const kitchen::Offer& offer =
        kitchen_.shop(shopping_.visits[line.visit].shop).offers[line.offer];
    const foods::Food& food = kitchen_.food(line.food);
    const Rational pack = offer.size / offer.inside;
    const Rational packs = left.amount / pack;
    // What the model's rounding leaves of a pack is none.
    const bool whole = measure::round(packs * 1000) % 1000 == 0;
    if (offer.by_weight || whole || food.department == foods::Department::produce) {
      return;
    }
    // Eggs and rolls are no worse for others that were taken.
    left.opened = food.keeps.opened.has_value();
    std::optional<Date> on = rest.opened_on;
    if (!on && !keeping.life.opened) {
      on = begun(rest.of, line.packs * offer.inside > 1);
    }
    if (on && food.keeps.opened) {
      const Date last = *on + std::chrono::days(food.keeps.opened->value);
      left.until = std::min(left.until.value_or(last), last);
    }
  }

  // When a line was begun, or where it holds several packs, when something was last taken from it.
  [[nodiscard]] std::optional<Date> begun(std::size_t line, bool several) const {
    std::optional<Date> on;
    for (const purchase::Supply& supply : shopping_.supplies) {
      if (supply.line == line && !supply.frozen) {
        const Date used = resolved_.uses[supply.use].date;
        on = !on ? used : several ? std::max(*on, used) : std::min(*on, used);
      }
    }
    return on;
  }

  [[nodiscard]] Left of_lot(std::size_t index, const Rational& amount) const {
    const kitchen::StockLot& lot = kitchen_.on_hand.lots[index];
    Left left;
    left.food = lot.food();
    left.amount = std::min(amount, lot.amount);
    left.since = shopping_.first;
    left.until = lot.use_by;
    left.opened = lot.opened.has_value();
    left.frozen = lot.place == foods::Place::freezer;
    return left;
  }

  // What is on hand of foods that the plan does not use, or that was past its date before.
  void untouched() {
    for (std::size_t lot = 0; lot < kitchen_.on_hand.lots.size(); ++lot) {
      if (std::find(seen_.begin(), seen_.end(), lot) == seen_.end()) {
        const Rational rest = kitchen_.on_hand.lots[lot].amount - shopping_.taken_of_lot(lot);
        if (rest > 0) {
          add(of_lot(lot, rest));
        }
      }
    }
  }

  // What dishes leave over and no other takes: unfrozen, or where it does not keep so, frozen.
  void by_products() {
    for (const resolve::ByProduct& one : resolved_.by_products) {
      const foods::FoodId* food = resolve::given_as(kitchen_, resolved_, one).what.food();
      if (food == nullptr || one.left() <= 0) {
        continue;
      }
      Left left;
      left.food = *food;
      left.amount = one.left();
      left.since = one.date;
      left.frozen = (!one.good_until || *one.good_until <= one.date) && one.frozen_until;
      left.until = left.frozen ? one.frozen_until : one.good_until;
      add(std::move(left));
    }
  }

  const Kitchen& kitchen_;
  const resolve::Resolved& resolved_;
  const Shopping& shopping_;
  int days_;
  std::vector<std::size_t> seen_; ///< lots of which the shopping says what is left
  std::vector<Left> out_;
};

} // namespace

std::vector<Left> what_is_left(const Kitchen& kitchen, const resolve::Resolved& resolved,
                               const Shopping& shopping) {
  return Collector(kitchen, resolved, shopping).run();
}

bool is_worth_a_word(const foods::Food& food, const Rational& amount) {
  return !food.is_household() && !food.from_tap && food.department != foods::Department::spices &&
         foods::is_seen(food, amount) && foods::is_more_than_scraps(food, amount);
}

bool is_urgent(const Left& left, Date after) {
  return left.frozen || (left.until ? *left.until <= after + soon : left.opened);
}

} // namespace manciple::use_up
