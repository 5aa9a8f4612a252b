#include "purchase/worth.hpp"

#include "purchase/usual_price.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

using kitchen::Kitchen;
using resolve::Resolved;

// Money of which it is known what it is for.
class Sharing {
public:
  Sharing(const Kitchen& kitchen, const Resolved& resolved) : resolved_(resolved) {
    for (const kitchen::Meal& meal : kitchen.plan->meals) {
      parts.dishes.emplace_back(meal.dishes.size(), Rational(0));
    }
    parts.staples.assign(kitchen.plan->staples.size(), Rational(0));
    parts.extras.assign(kitchen.plan->extra.size(), Rational(0));
  }

  // A making's cost goes to the dishes that it ends up in.
  void add(const resolve::Use& use, const Rational& cost) {
    if (const auto* staple = std::get_if<resolve::OfStaple>(&use.reason)) {
      parts.staples[staple->staple] += cost;
    } else if (const auto* extra = std::get_if<resolve::OfExtra>(&use.reason)) {
      parts.extras[extra->extra] += cost;
    } else {
      Rational left = cost;
      for (const resolve::DishShare& of : resolved_.shares_of(use)) {
        parts.dishes[of.dish.meal][of.dish.dish] += cost * of.share;
        left -= cost * of.share;
      }
      parts.left_over += left;
    }
  }
  // What no use takes of something that costs so much.
  void add_rest(const Rational& cost, const Rational& kept, const Rational& wasted) {
    const Rational left = kept + wasted;
    const Rational thrown = left == 0 ? Rational(0) : Rational(cost * wasted / left);
    parts.wasted += thrown;
    parts.kept += cost - thrown;
  }

  Parts parts;

private:
  const Resolved& resolved_;
};

class Reckoning {
public:
  Reckoning(const Kitchen& kitchen, const Resolved& resolved, const Shopping& shopping)
      : kitchen_(kitchen),
        resolved_(resolved),
        shopping_(shopping),
        paid_(kitchen, resolved),
        replaced_(kitchen, resolved) {}

  Worth run() {
    values();
    bought();
    in_the_house();
    static_cast<Parts&>(out_) = std::move(paid_.parts);
    out_.replaced = std::move(replaced_.parts);
    return std::move(out_);
  }

private:
  // What an amount of a food would cost to buy again.
  std::optional<Rational> again(foods::FoodId food, const Rational& amount) {
    const auto [place, fresh] = prices_.try_emplace(food);
    if (fresh) {
      place->second = replacement_price(kitchen_, food);
    }
    return place->second ? std::optional<Rational>(*place->second * amount) : std::nullopt;
  }

  void values() {
    for (const Line& line : shopping_.lines) {
      out_.lines.push_back(line.cost ? std::optional<Rational>(*line.cost)
                                     : again(line.food, line.amount));
    }
    for (const kitchen::StockLot& lot : kitchen_.on_hand.lots) {
      out_.lots.push_back(again(lot.food(), lot.amount));
    }
    for (const kitchen::Meal& meal : kitchen_.plan->meals) {
      out_.unknown_in.emplace_back(meal.dishes.size());
    }
  }

  void not_known(const resolve::Use& use, foods::FoodId food) {
    out_.unknown.insert(food);
    for (const resolve::DishShare& of : resolved_.shares_of(use)) {
      out_.unknown_in[of.dish.meal][of.dish.dish].insert(food);
    }
  }

  void bought() {
    std::vector<Rational> taken(shopping_.lines.size(), Rational(0)); // of 1
    for (const Supply& supply : shopping_.supplies) {
      const Line& line = shopping_.lines[supply.line];
      const resolve::Use& use = resolved_.uses[supply.use];
      const Rational share = supply.amount / line.amount;
      taken[supply.line] += share;
      paid_.add(use, Rational(line.cost.value_or(0)) * share);
      const auto& value = out_.lines[supply.line];
      replaced_.add(use, value.value_or(0) * share);
      if (!value) {
        not_known(use, line.food);
      }
    }
    for (std::size_t l = 0; l < shopping_.lines.size(); ++l) {
      const Line& line = shopping_.lines[l];
      const Rational rest = 1 - taken[l];
      paid_.add_rest(Rational(line.cost.value_or(0)) * rest, line.kept, line.wasted);
      replaced_.add_rest(out_.lines[l].value_or(0) * rest, line.kept, line.wasted);
    }
  }

  void in_the_house() {
    const auto& lots = kitchen_.on_hand.lots;
    std::vector<Rational> left;
    for (const kitchen::StockLot& lot : lots) {
      left.push_back(lot.amount);
    }
    for (const StockUse& used : shopping_.from_stock) {
      const resolve::Use& use = resolved_.uses[used.use];
      left[used.lot] -= used.amount;
      const auto& value = out_.lots[used.lot];
      if (value) {
        replaced_.add(use, *value * used.amount / lots[used.lot].amount);
      } else {
        not_known(use, food_of(kitchen_, used));
      }
    }
    for (std::size_t l = 0; l < lots.size(); ++l) {
      const auto rest = std::find_if(shopping_.stock_left.begin(), shopping_.stock_left.end(),
                                     [&](const StockRest& one) { return one.lot == l; });
      const bool past = is_past(lots[l], *kitchen_.plan);
      const Rational kept = rest != shopping_.stock_left.end() ? rest->kept : past ? 0 : left[l];
      const Rational wasted = rest != shopping_.stock_left.end() ? rest->wasted
                              : past                             ? left[l]
                                                                 : 0;
      if (lots[l].amount > 0 && left[l] > 0) {
        replaced_.add_rest(out_.lots[l].value_or(0) * left[l] / lots[l].amount, kept, wasted);
        if (!out_.lots[l]) {
          out_.unknown.insert(lots[l].food());
        }
      }
    }
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const Shopping& shopping_;
  Sharing paid_;
  Sharing replaced_;
  std::map<foods::FoodId, std::optional<Rational>> prices_;
  Worth out_;
};

} // namespace

Rational Parts::total() const {
  Rational sum = left_over + kept + wasted;
  for (const auto& meal : dishes) {
    for (const Rational& dish : meal) {
      sum += dish;
    }
  }
  for (const auto* list : {&staples, &extras}) {
    for (const Rational& part : *list) {
      sum += part;
    }
  }
  return sum;
}

bool is_past(const kitchen::StockLot& lot, const kitchen::Plan& plan) {
  return lot.use_by && *lot.use_by <= plan.until;
}

Worth worth(const Kitchen& kitchen, const Resolved& resolved, const Shopping& shopping) {
  return Reckoning(kitchen, resolved, shopping).run();
}

} // namespace manciple::purchase
