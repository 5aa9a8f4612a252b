#include "buying/item/dominance.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

/// Slots of a summary's sums.
constexpr std::size_t pack_slots = 4;
constexpr std::array<std::size_t, 4> from_ranks{0, 1, 2, 4};
/// A label is compared with so many of those that are kept, the dearest of them first.
constexpr std::size_t most_looks = 128;
constexpr std::size_t looks_per_work = 16;
/// Comparing two labels in full takes so many times as long as by their summaries.
constexpr std::size_t looks_per_close_look = 8;

std::uint64_t key_hash(const Holding& held) {
  const auto day = [](Day of) { return static_cast<std::uint64_t>(of); };
  const std::uint64_t mixed = held.source + (day(held.until) << 8U) +
                              (day(held.frozen_until) << 24U) + (day(held.frozen_on) << 40U) +
                              (held.open ? 3U : 0U) + (held.thawed ? 7U : 0U);
  return mixed * 0x9e3779b97f4a7c15U; // 2^64 over the golden ratio
}

} // namespace

void Dominance::prune(std::vector<Label>& labels, std::int64_t& work) {
  std::sort(labels.begin(), labels.end(), [&](const Label& a, const Label& b) {
    if (a.cost != b.cost) {
      return a.cost < b.cost;
    }
    const auto more = [](const Holding& x, const Holding& y) {
      return x.key() != y.key() ? x.key() < y.key() : x.left > y.left;
    };
    if (std::lexicographical_compare(held(a.first), held(a.end), held(b.first), held(b.end),
                                     more)) {
      return true;
    }
    if (std::lexicographical_compare(held(b.first), held(b.end), held(a.first), held(a.end),
                                     more)) {
      return false;
    }
    return a.step < b.step;
  });
  std::vector<Label>& kept = memory_.kept;
  std::vector<Summary>& summaries = memory_.summaries;
  kept.clear();
  summaries.clear();
  for (const Label& label : labels) {
    const Summary summary = summary_of(label);
    const std::size_t looks = std::min(kept.size(), most_looks);
    bool dominated = false;
    std::size_t k = 0;
    for (; k < looks && !dominated; ++k) {
      const std::size_t at = kept.size() - 1 - k;
      if (summary.fits_into(summaries[at])) {
        looks_ += looks_per_close_look;
        dominated = dominates(kept[at], label);
      }
    }
    looks_ += k;
    if (!dominated) {
      kept.push_back(label);
      summaries.push_back(summary);
    }
  }
  labels.swap(kept);
  work += static_cast<std::int64_t>(looks_ / looks_per_work);
  looks_ %= looks_per_work;
}

/// Label a is no worse than b whatever follows: what it holds can stand in for all that b holds,
/// and what it may cost more (for it may be given back less for what gives, and have to keep what
/// it holds more) does not exceed what it is cheaper by.
bool Dominance::dominates(const Label& a, const Label& b) const {
  if (a.cost > b.cost) {
    return false;
  }
  Fine may_cost = 0;
  for (std::uint32_t j = b.first; j < b.end; ++j) {
    const Holding& other = pool_[j];
    if (is_loose(other) ? !stands_in(a, b, other) : !has_as_much(a, other, may_cost)) {
      return false;
    }
  }
  if (room_ != nullptr) {
    may_cost += staying(a, b);
  }
  may_cost += lent_less(a, b) + thrown_away(a, b);
  return may_cost == 0 || a.cost + Cost{may_cost, 0} <= b.cost;
}

bool Dominance::is_loose(const Holding& held) const {
  return !held.open && !item_.sources[held.source].comes_in_packs;
}

Dominance::Summary Dominance::summary_of(const Label& label) const {
  Summary out;
  for (std::uint32_t i = label.first; i < label.end; ++i) {
    const Holding& one = pool_[i];
    if (!is_loose(one)) {
      const std::uint64_t hash = key_hash(one);
      out.packs |= std::uint64_t{1} << (hash >> 58U);
      out.sums[(hash >> 58U) % pack_slots] += one.left;
      continue;
    }
    const Prepared::Standing standing = standing_[one.source];
    const std::size_t slots = pack_slots + standing.stands_in % 2 * from_ranks.size();
    for (std::size_t r = 0; r < from_ranks.size() && standing.rank >= from_ranks[r]; ++r) {
      out.sums[slots + r] += one.left;
    }
  }
  return out;
}

/// Of loose things that can stand in for this one, a holds no less than b.
bool Dominance::stands_in(const Label& a, const Label& b, const Holding& held) const {
  const Prepared::Standing standing = standing_[held.source];
  const auto sum = [&](const Label& label) {
    Amount amount = 0;
    for (std::uint32_t i = label.first; i < label.end; ++i) {
      const Holding& one = pool_[i];
      const Prepared::Standing other = standing_[one.source];
      amount +=
          is_loose(one) && other.stands_in == standing.stands_in && other.rank >= standing.rank
              ? one.left
              : 0;
    }
    return amount;
  };
  return sum(a) >= sum(b);
}

const Holding* Dominance::find(const Label& label, const Holding& like) const {
  for (std::uint32_t i = label.first; i < label.end; ++i) {
    if (pool_[i].key() == like.key()) {
      return &pool_[i];
    }
  }
  return nullptr;
}

/// Of packs, opened or not, the very same.
bool Dominance::has_as_much(const Label& a, const Holding& held, Fine& may_cost) const {
  const Holding* const same = find(a, held);
  if (same == nullptr || same->left < held.left || !same_size(*same, held)) {
    return false;
  }
  may_cost += value_of(std::max<Amount>(0, held.lent - same->lent), item_.item->lacking);
  return true;
}

/// What gives, of what is loose.
Fine Dominance::lent_less(const Label& a, const Label& b) const {
  const auto sum = [&](const Label& label) {
    Amount lent = 0;
    for (std::uint32_t i = label.first; i < label.end; ++i) {
      lent += is_loose(pool_[i]) ? pool_[i].lent : 0;
    }
    return lent;
  };
  return value_of(std::max<Amount>(0, sum(b) - sum(a)), item_.item->lacking);
}

/// What is left for the freezer of a label that has less of it may be too little for a bag.
Fine Dominance::thrown_away(const Label& a, const Label& b) const {
  const Item& facts = *item_.item;
  if (facts.least_frozen == 0 || to_freeze(a) >= to_freeze(b)) {
    return 0;
  }
  return value_of(facts.least_frozen, facts.salvage + facts.waste);
}
Amount Dominance::to_freeze(const Label& label) const {
  Amount sum = 0;
  for (std::uint32_t i = label.first; i < label.end; ++i) {
    const Holding& one = pool_[i];
    sum += is_frozen_to_keep(item_, one) ? one.free() : 0;
  }
  return sum;
}

/// What a holds more than b may have to be kept, and is used first where it goes off first, while
/// others wait: the priced room of so much from the day on which the oldest came home, to the
/// end.
Fine Dominance::staying(const Label& a, const Label& b) const {
  Fine sum = 0;
  for (std::uint32_t i = a.first; i < a.end; ++i) {
    const Holding& held = pool_[i];
    const Source& from = item_.sources[held.source];
    const Holding* const same = find(b, held);
    Amount more = held.left - (same == nullptr ? 0 : same->left);
    if (is_loose(held)) {
      // The oldest of its class counts for all of it.
      const std::size_t stands_in = standing_[held.source].stands_in;
      const bool first =
          std::none_of(pool_.begin() + a.first, pool_.begin() + i, [&](const Holding& other) {
            return is_loose(other) && standing_[other.source].stands_in == stands_in;
          });
      more = first ? of_class(a, stands_in) - of_class(b, stands_in) : 0;
    }
    if (more > 0) {
      // Together with what is held anyway it may be enough for the freezer.
      if (item_.item->least_frozen > 0 && is_frozen_to_keep(item_, held)) {
        more += item_.item->least_frozen;
      }
      const Day end = item_.last_day + 1;
      sum += room_->of({more, from.place, false, from.home, end}) +
             room_->of({more, Place::freezer, true, from.home, end});
    }
  }
  return sum;
}

Amount Dominance::of_class(const Label& label, std::size_t stands_in) const {
  Amount sum = 0;
  for (std::uint32_t i = label.first; i < label.end; ++i) {
    const Holding& one = pool_[i];
    sum += is_loose(one) && standing_[one.source].stands_in == stands_in ? one.left : 0;
  }
  return sum;
}

/// What was weighed is one pack, which is to be opened as a whole.
bool Dominance::same_size(const Holding& a, const Holding& b) const {
  const Source& source = item_.sources[a.source];
  const bool one_pack = !a.open && source.comes_in_packs && !source.stock &&
                        item_.item->offers[source.offer].by_weight;
  return !one_pack || a.left == b.left;
}

} // namespace manciple::buying
