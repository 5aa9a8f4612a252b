#include "purchase/ranges.hpp"

#include "purchase/errors.hpp"
#include "purchase/lower.hpp"

#include <fmt/format.h>

namespace manciple::purchase {
namespace {

const Rational most_units = 100'000'000;
constexpr Cents most_cents = 1'000'000'000;
const Rational most_litres = 1'000'000;
constexpr int most_packs_of_a_deal = 1000;

class Ranges {
public:
  Ranges(const kitchen::Kitchen& kitchen, text::Diagnostics& diagnostics)
      : kitchen_(kitchen), diagnostics_(diagnostics) {}

  void uses(const resolve::Resolved& resolved) {
    for (const resolve::Use& use : resolved.uses) {
      if (use.amount * kitchen_.household.in_terms_of(use.food).worth > most_units) {
        complain(
            place_of(kitchen_, resolved, use),
            fmt::format("this comes to more {} than can be handled", kitchen_.food(use.food).name));
      }
    }
  }

  void stock() {
    for (const kitchen::StockLot& lot : kitchen_.on_hand.lots) {
      if (lot.amount * kitchen_.household.in_terms_of(lot.food()).worth > most_units) {
        complain(lot.what.at, "this is more on hand than can be handled");
      }
    }
  }

  void shops() {
    for (const kitchen::Shop& shop : kitchen_.shops) {
      for (const kitchen::Offer& offer : shop.offers) {
        const bool deal = offer.deal && (offer.deal->price > most_cents ||
                                         offer.deal->packs > most_packs_of_a_deal);
        if (offer.price.value_or(0) > most_cents || deal) {
          complain(offer.at, "this price is too large");
        } else if (offer.size * kitchen_.household.in_terms_of(offer.food).worth > most_units) {
          complain(offer.at, "this pack is too large");
        }
      }
      const bool reduction =
          shop.reduction && (shop.reduction->over > most_cents || shop.reduction->off > most_cents);
      if (reduction || shop.credit > most_cents || shop.stop_cost.value_or(0) > most_cents) {
        complain(kitchen_.plan->at,
                 fmt::format("{} has an amount of money that is too large", shop.name));
      }
    }
  }

  void household() {
    const auto& household = kitchen_.household;
    for (const auto& litres :
         {household.pantry_litres, household.fridge_litres, household.freezer_litres}) {
      if (litres && *litres > most_litres) {
        complain(kitchen_.plan->at, "the household has more storage than can be handled");
      }
    }
    if (household.stop_cost > most_cents) {
      complain(kitchen_.plan->at, "a stop costs more than can be handled");
    }
  }

private:
  void complain(text::Span at, std::string what) {
    diagnostics_.error(errors::too_much, at, std::move(what), "check for an extra digit");
  }

  const kitchen::Kitchen& kitchen_;
  text::Diagnostics& diagnostics_;
};

} // namespace

void check_ranges(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                  text::Diagnostics& diagnostics) {
  Ranges ranges(kitchen, diagnostics);
  ranges.uses(resolved);
  ranges.stock();
  ranges.shops();
  ranges.household();
}

} // namespace manciple::purchase
