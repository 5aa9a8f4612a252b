#include "resolve/resolve.hpp"

#include "resolve/by_products.hpp"
#include "resolve/dates.hpp"
#include "resolve/eaters.hpp"
#include "resolve/graph.hpp"
#include "resolve/limits.hpp"
#include "resolve/makings.hpp"
#include "resolve/shares.hpp"
#include "resolve/uses.hpp"

#include <algorithm>
#include <map>

namespace manciple::resolve {
namespace {

void repeat(const text::Diagnostics& said, text::Diagnostics& diagnostics) {
  for (const text::Diagnostic& one : said.all()) {
    auto& again = one.severity == text::Severity::error
                      ? diagnostics.error(one.code, one.at, one.what, one.fix)
                  : one.severity == text::Severity::warning
                      ? diagnostics.warning(one.code, one.at, one.what, one.fix)
                      : diagnostics.remark(one.code, one.at, one.what, one.fix);
    again.notes = one.notes;
  }
}

// What is made, and what it leaves over to other makings. What turns out not to be fit for what
// took it is barred from it, and all is made again: it may then be needed elsewhere.
void make(const kitchen::Kitchen& kitchen, const std::vector<RecipeId>& order, Resolved& out,
          text::Diagnostics& diagnostics) {
  constexpr int rounds = 20; // of which the first does in nearly every kitchen
  Barred barred;
  text::Diagnostics why;
  for (int round = 0;; ++round) {
    barred.all = round == rounds;
    text::Diagnostics said;
    Made made = makings(kitchen, out.servings, order, barred, said);
    out.makings = std::move(made.makings);
    out.by_products = std::move(made.by_products);
    if (said.errors() == 0) {
      date_makings(kitchen, out.makings, out.by_products);
      out.shares = shares(out.makings);
      std::set<Barred::One> more = not_fit(kitchen, out, why);
      if (!more.empty()) {
        barred.ones.merge(more);
        continue;
      }
    }
    repeat(said, diagnostics);
    repeat(why, diagnostics);
    return;
  }
}

// What is optional is taken where a dish has left it over; it is not bought for that.
void take_what_is_there(const kitchen::Kitchen& kitchen, std::vector<Use>& uses) {
  std::map<foods::FoodId, Rational> taken;
  for (Use& use : uses) {
    Rational there = 0;
    for (const kitchen::StockLot& lot : kitchen.on_hand.lots) {
      const bool good = !lot.use_by || *lot.use_by >= use.date;
      const bool frozen = lot.place == foods::Place::freezer;
      there += lot.given && *lot.what.food() == use.food && good && !(use.fresh && frozen)
                   ? lot.amount
                   : Rational(0);
    }
    if (use.optional && there - taken[use.food] >= use.amount) {
      use.optional = false;
      taken[use.food] += use.amount;
    }
  }
}

} // namespace

Resolved resolve(const kitchen::Kitchen& kitchen, text::Diagnostics& diagnostics) {
  Resolved out;
  const std::vector<RecipeId> order = order_of_need(kitchen, diagnostics);
  if (order.size() != kitchen.recipes.size()) {
    return out; // a circle: nothing below would come to an end
  }
  out.labels = check_limits(kitchen, diagnostics);
  out.servings = servings(kitchen, diagnostics);
  make(kitchen, order, out, diagnostics);
  if (diagnostics.errors() > 0) {
    return out;
  }
  out.uses = uses(kitchen, out.makings, out.by_products);
  if (!kitchen.household.buys_optional) {
    take_what_is_there(kitchen, out.uses);
    const auto optional = std::stable_partition(out.uses.begin(), out.uses.end(),
                                                [](const Use& use) { return !use.optional; });
    out.left_out.assign(optional, out.uses.end());
    out.uses.erase(optional, out.uses.end());
  }
  add_labels(kitchen, out);
  return out;
}

} // namespace manciple::resolve
