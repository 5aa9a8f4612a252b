#include "buying/item/pile_bound.hpp"

#include "buying/item/least_of_pack.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace manciple::buying {
namespace {

constexpr double nothing_known = -std::numeric_limits<double>::infinity();

double hard(const Demand& demand) {
  return static_cast<double>(demand.amount - demand.give);
}

/// The last day on which any part of it can be good, opened or not.
Day lasts_until(const Source& source) {
  Day last = source.cool_until;
  if (source.frozen_until != never) {
    last = std::max(last, source.frozen_until + (source.comes_in_packs ? source.opened : 0));
  }
  return source.refrozen ? std::max(last, source.cool_until + *source.refrozen) : last;
}

} // namespace

void PileBound::prepare(const Prepared& item, const Terms& terms, const std::vector<int>& most) {
  item_ = &item;
  const std::size_t visits = item.visits.size();
  const double cap = item.item->salvage > 0 ? static_cast<double>(item.item->salvage_cap) : 0;
  double needed = 0;
  std::vector<double> before{0}; // by demand
  for (const Demand& demand : item.demands) {
    needed += hard(demand);
    before.push_back(needed);
  }
  step_ = std::max(1.0, (needed + cap) / static_cast<double>(steps - 2));

  // What is in the house by then lasts so long at most.
  lasts_.assign(visits, 0);
  std::size_t end = 0;
  bool keeps = false;
  const auto add = [&](std::size_t source) {
    const Day last = lasts_until(item.sources[source]);
    for (std::size_t d = item.demands.size(); d > end; --d) {
      if (item.demands[d - 1].day - item.demands[d - 1].slack <= last) {
        end = d;
      }
    }
    keeps = keeps || last >= item.item->kept_day;
  };
  for (std::size_t s = 0; s < item.sources.size() && item.sources[s].stock; ++s) {
    add(s);
  }
  for (std::size_t v = 0; v < visits; ++v) {
    for (const std::size_t source : item.visits[v].sources) {
      if (terms.is_open(v) && most[source] > 0) {
        add(source);
      }
    }
    const std::size_t next = item.first_served[v + 1];
    lasts_[v] = (end > next ? before[end] - before[next] : 0) + (keeps ? cap : 0);
  }
  least_.assign((visits + 1) * steps, 0);
  now_.assign(steps, 0);
  for (std::size_t k = 0; keeps && k < steps; ++k) {
    now_[k] =
        -std::min(cap, static_cast<double>(k) * step_) * static_cast<double>(item.item->salvage);
  }
  std::copy(now_.begin(), now_.end(), least_.end() - steps);
  for (std::size_t v = visits; v-- > 0;) {
    pass_time(v);
    if (terms.is_open(v) && !buy(terms, most, v)) {
      std::fill(least_.begin(), least_.end(), nothing_known);
      return;
    }
    std::copy(now_.begin(), now_.end(), least_.begin() + static_cast<std::ptrdiff_t>(v * steps));
  }
}

std::size_t PileBound::steps_up(double amount) const {
  return std::min(steps - 1, static_cast<std::size_t>(std::ceil(std::max(0.0, amount) / step_)));
}

/// From after the purchases at a visit to the next one: the demands between are served, or missing,
/// the largest first, so that as few as can be are.
void PileBound::pass_time(std::size_t visit) {
  const Item& facts = *item_->item;
  needs_.clear();
  double needed = 0;
  for (std::size_t d = item_->first_served[visit]; d < item_->first_served[visit + 1]; ++d) {
    needs_.push_back(hard(item_->demands[d]));
    needed += needs_.back();
  }
  std::sort(needs_.begin(), needs_.end(), std::greater<>());
  const auto served = static_cast<std::size_t>(needed / step_);
  const std::size_t lasts = steps_up(lasts_[visit]);
  const double* const after = least_.data() + (visit + 1) * steps;
  for (std::size_t k = served; k < steps; ++k) {
    now_[k] = after[std::min(k - served, lasts)];
  }
  std::size_t demands = 0;
  double most = 0; // that so many demands can lack
  for (std::size_t k = std::min(served, steps); k-- > 0;) {
    const double missing = static_cast<double>(served - k) * step_;
    while (demands < needs_.size() && most < missing * rounded_down) {
      most += needs_[demands++];
    }
    now_[k] =
        after[0] + missing * static_cast<double>(facts.missing) +
        static_cast<double>(demands) * static_cast<double>(fine(facts.missing_once)) * rounded_down;
  }
}

/// False if a pack costs less than nothing.
bool PileBound::buy(const Terms& terms, const std::vector<int>& most, std::size_t visit) {
  const Visit& here = item_->visits[visit];
  for (std::size_t o = 0; o < here.offers.size(); ++o) {
    const std::size_t s = here.sources[o];
    if (most[s] == 0) {
      continue;
    }
    const Offer& offer = item_->item->offers[here.offers[o]];
    const Source& source = item_->sources[s];
    const double cost = least_of_pack(offer, terms.discount_at(visit));
    if (cost < 0) {
      return false;
    }
    const double pack = static_cast<double>(source.bought()) * source.reach;
    // What is smaller than a step is bought by the step.
    const std::size_t size = std::max<std::size_t>(1, steps_up(pack));
    const double price = pack < step_ ? cost * step_ / pack * rounded_down : cost;
    for (std::size_t k = steps; k-- > 0;) {
      now_[k] = std::min(now_[k], price + now_[std::min(steps - 1, k + size)]);
    }
  }
  return true;
}

double PileBound::rest(std::size_t visit, double reach) const {
  // What is kept may be worth most at an amount between two steps.
  return least_[visit * steps + steps_up(reach)] -
         step_ * static_cast<double>(item_->item->salvage);
}

} // namespace manciple::buying
