#include "purchase/worth.hpp"

namespace manciple::purchase {
namespace {

using kitchen::Kitchen;
using resolve::MakingId;
using resolve::Resolved;

// A making's cost goes to the dishes that it ends up in.
void share_out(const Resolved& resolved, MakingId id, const Rational& cost, Worth& out) {
  Rational left = cost;
  for (const resolve::DishShare& of : resolved.shares_of(id)) {
    out.dishes[of.dish.meal][of.dish.dish] += cost * of.share;
    left -= cost * of.share;
  }
  out.left_over += left;
}

} // namespace

Rational Worth::total() const {
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

Worth worth(const Kitchen& kitchen, const Resolved& resolved, const Shopping& shopping) {
  const auto& plan = *kitchen.plan;
  Worth out;
  for (const kitchen::Meal& meal : plan.meals) {
    out.dishes.emplace_back(meal.dishes.size(), Rational(0));
  }
  out.staples.assign(plan.staples.size(), Rational(0));
  out.extras.assign(plan.extra.size(), Rational(0));
  std::vector<Rational> open; // cents of each line that no use takes
  for (const Line& line : shopping.lines) {
    open.emplace_back(line.cost.value_or(0));
  }
  for (const Supply& supply : shopping.supplies) {
    const Line& line = shopping.lines[supply.line];
    const Rational cost = Rational(line.cost.value_or(0)) * supply.amount / line.amount;
    open[supply.line] -= cost;
    const resolve::Reason& reason = resolved.uses[supply.use].reason;
    if (const auto* making = std::get_if<resolve::OfMaking>(&reason)) {
      share_out(resolved, making->making, cost, out);
    } else if (const auto* dish = std::get_if<resolve::OfDish>(&reason)) {
      out.dishes[dish->dish.meal][dish->dish.dish] += cost;
    } else if (const auto* staple = std::get_if<resolve::OfStaple>(&reason)) {
      out.staples[staple->staple] += cost;
    } else {
      out.extras[std::get<resolve::OfExtra>(reason).extra] += cost;
    }
  }
  for (std::size_t l = 0; l < shopping.lines.size(); ++l) {
    const Line& line = shopping.lines[l];
    const Rational left = line.kept + line.wasted;
    const Rational wasted = left == 0 ? Rational(0) : Rational(open[l] * line.wasted / left);
    out.wasted += wasted;
    out.kept += open[l] - wasted;
  }
  return out;
}

} // namespace manciple::purchase
