#include "emit/boxes.hpp"

#include "measure/units.hpp"

#include <algorithm>

namespace manciple::emit {
namespace {

constexpr double per_litre = 1000; // millilitres, or grams

// What one making of a recipe as it is written fills, in litres.
double litres_of(const Compiled& compiled, const resolve::Making& making,
                 const std::vector<double>& done) {
  const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
  for (const kitchen::Makes& makes : recipe.makes) {
    if (makes.measure.piece.empty() &&
        measure::facts(makes.measure.unit).dimension == measure::Dimension::volume) {
      return to_double(makes.number * measure::facts(makes.measure.unit).factor) / per_litre;
    }
  }
  double out = 0;
  for (const resolve::Use& use : compiled.resolved.uses) {
    const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
    const bool counted = foods::basis(compiled.kitchen.food(use.food)) == measure::Dimension::count;
    if (of != nullptr && of->making == making.id && !counted) {
      out += to_double(use.amount / making.times) / per_litre;
    }
  }
  for (std::size_t m = 0; m < done.size(); ++m) {
    for (const resolve::Consumer& consumer : compiled.resolved.makings[m].consumers) {
      const auto* into = std::get_if<resolve::MakingId>(&consumer.who);
      if (into != nullptr && *into == making.id) {
        out += done[m] * to_double(consumer.times / making.times);
      }
    }
  }
  return out;
}

} // namespace

std::map<foods::Place, std::vector<double>> litres_of_boxes(const Compiled& compiled) {
  const kitchen::Plan& plan = compiled.plan();
  const auto nights = static_cast<std::size_t>((plan.until - plan.from).count()) + 1;
  std::map<foods::Place, std::vector<double>> out;
  for (const foods::Place place : foods::all_places) {
    out[place].assign(nights, 0);
  }
  std::vector<double> each; // what is made stands before what it goes into
  for (const resolve::Making& making : compiled.resolved.makings) {
    each.push_back(litres_of(compiled, making, each));
    const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
    for (const resolve::Consumer& consumer : making.consumers) {
      std::vector<double>& place =
          out.at(consumer.from_freezer ? foods::Place::freezer : recipe.cool_place());
      const auto first = std::max(making.date, plan.from);
      for (auto day = first; day < consumer.date && day <= plan.until;
           day += std::chrono::days(1)) {
        place[static_cast<std::size_t>((day - plan.from).count())] +=
            each.back() * to_double(consumer.times);
      }
    }
  }
  return out;
}

} // namespace manciple::emit
