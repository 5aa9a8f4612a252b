#include "purchase/to_go.hpp"

#include <algorithm>
#include <limits>

namespace manciple::purchase {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
/// Keeps the sums below the exact value in spite of rounding.
constexpr double rounding = 1 - 1e-12;

/// Least price of a micro-unit at the visit.
double unit_price(const Prepared& good, const Terms& terms, std::size_t v) {
  if (!is_possible(terms.charge[v]))
    return infinite;
  const double per_money =
      static_cast<double>(terms.per_money.empty() ? fine_per_money : terms.per_money[v]);
  double least = infinite;
  for (const OfferId id : good.visits[v].offers)
    least = std::min(least, good.least_unit_cost[id]);
  return least * per_money * rounding;
}

} // namespace

void ToGo::prepare(const Prepared& good, const Terms& terms) {
  const std::size_t visits = good.visits.size();
  good_ = &good;
  uses_ = good.uses.size();
  starts_.clear();
  stride_ = 0;
  for (const auto& group : good.groups) {
    starts_.push_back(stride_);
    stride_ += group.size() + 1;
  }
  unit_.assign((visits + 1) * uses_, infinite);
  after_.assign((visits + 1) * stride_, 0);
  gain_.assign(visits + 1, 0);
  for (std::size_t v = visits; v-- > 0;) {
    const Day day = good.visits[v].day;
    const double price = unit_price(good, terms, v);
    for (std::size_t u = 0; u < uses_; ++u) {
      const double later = unit_[(v + 1) * uses_ + u];
      const bool serves = good.uses[u].from <= day && day <= good.uses[u].day;
      unit_[v * uses_ + u] = serves ? std::min(price, later) : later;
    }
    gain_[v] = gain_[v + 1];
    if (good.kept_cap > 0 && good.kept(day))
      gain_[v] = std::max(gain_[v], static_cast<double>(good.good->salvage) - price);
  }
  for (std::size_t v = 0; v <= visits; ++v)
    for (std::size_t g = 0; g < good.groups.size(); ++g) {
      double* sums = &after_[v * stride_ + starts_[g]];
      for (std::size_t i = good.groups[g].size(); i-- > 0;) {
        const std::size_t use = good.groups[g][i];
        sums[i] = sums[i + 1] + static_cast<double>(good.uses[use].amount) * unit_[v * uses_ + use];
      }
    }
}

} // namespace manciple::purchase
