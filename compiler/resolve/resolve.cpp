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
#include <tuple>

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

// What is left of what is in the house, as uses take of it.
class Stock {
public:
  explicit Stock(const std::vector<kitchen::StockLot>& lots) : lots_(lots) {
    for (std::size_t l = 0; l < lots.size(); ++l) {
      left_.push_back(lots[l].amount);
      order_.push_back(l);
    }
    // What dishes have left over last, for what takes nothing else; of the rest what goes off
    // first.
    const auto key = [&](std::size_t l) {
      return std::tuple(lots[l].given, lots[l].use_by.value_or(Date::max()));
    };
    std::stable_sort(order_.begin(), order_.end(),
                     [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  }

  // How much there is for a use of what dishes have left over.
  [[nodiscard]] Rational given(const Use& use) const {
    Rational out = 0;
    for (const std::size_t l : order_) {
      out += lots_[l].given && serves(lots_[l], use) ? left_[l] : Rational(0);
    }
    return out;
  }
  void take(const Use& use, bool only_given) {
    Rational wanted = use.amount;
    for (const std::size_t l : order_) {
      if (serves(lots_[l], use) && (lots_[l].given || !only_given)) {
        const Rational part = std::min(wanted, left_[l]);
        left_[l] -= part;
        wanted -= part;
      }
    }
  }

private:
  static bool serves(const kitchen::StockLot& lot, const Use& use) {
    const bool good = !lot.use_by || *lot.use_by >= use.date;
    const bool frozen = lot.place == foods::Place::freezer;
    return lot.food() == use.food && good && !(use.fresh && frozen);
  }

  const std::vector<kitchen::StockLot>& lots_;
  std::vector<Rational> left_;     // by lot
  std::vector<std::size_t> order_; // in which lots are taken
};

// What is optional is taken where a dish has left it over, and nothing that has to be there needs
// that; it is not bought for it.
void take_what_is_there(const kitchen::Kitchen& kitchen, std::vector<Use>& uses) {
  Stock stock(kitchen.on_hand.lots);
  for (const Use& use : uses) {
    if (!use.optional) {
      stock.take(use, false);
    }
  }
  for (Use& use : uses) {
    if (use.optional && stock.given(use) >= use.amount) {
      use.optional = false;
      stock.take(use, true);
    }
  }
}

} // namespace

bool is_packed(const kitchen::Kitchen& kitchen, const kitchen::Meal& meal) {
  return meal.date > kitchen.plan->from && kitchen.household.slot(meal.slot)->is_packed(meal.date);
}

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
