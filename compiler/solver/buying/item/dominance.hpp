#pragma once

#include "buying/item/holding.hpp"
#include "buying/item/room_rates.hpp"
#include "buying/model/money.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <vector>

namespace manciple::buying {

/// A state of label setting: what is held after some purchases and uses, and what that has cost.
struct Label {
  Cost cost;
  /// What is held, as a range of a pool.
  std::uint32_t first = 0, end = 0;
  /// The last step that led here.
  std::int32_t step = -1;
};

/// Leaves out labels that others dominate: of two, the one that holds no less at no higher cost.
class Dominance {
public:
  /// What a label holds, in short: enough to see in most cases that another does not dominate it.
  struct Summary {
    std::uint64_t packs = 0; ///< a bit for each pack, by its key
    /// Sums of what a label that dominates it has no less of: of packs, by their bits; of what is
    /// loose, by class and from some ranks on.
    std::array<Amount, 12> sums{};

    [[nodiscard]] bool fits_into(const Summary& other) const {
      return (packs & ~other.packs) == 0 &&
             std::equal(sums.begin(), sums.end(), other.sums.begin(), std::less_equal<>());
    }
  };
  /// Memory that is used again.
  struct Memory {
    std::vector<Label> kept;
    std::vector<Summary> summaries;
  };

  /// Where `room` costs nothing it is null. All must stay.
  Dominance(const Prepared& item, const RoomRates* room, const std::vector<Holding>& pool,
            Memory& memory)
      : item_(item),
        room_(room),
        standing_(room == nullptr ? item.standing : item.standing_apart),
        pool_(pool),
        memory_(memory) {}

  /// Leaves what no other label dominates, the cheapest first. `work` is raised by the comparisons.
  void prune(std::vector<Label>& labels, std::int64_t& work);

private:
  bool dominates(const Label& a, const Label& b) const;
  bool is_loose(const Holding& held) const;
  Summary summary_of(const Label& label) const;
  bool stands_in(const Label& a, const Label& b, const Holding& held) const;
  const Holding* find(const Label& label, const Holding& like) const;
  bool has_as_much(const Label& a, const Holding& held, Fine& may_cost) const;
  Fine lent_less(const Label& a, const Label& b) const;
  Fine thrown_away(const Label& a, const Label& b) const;
  Amount to_freeze(const Label& label) const;
  Fine staying(const Label& a, const Label& b) const;
  Amount of_class(const Label& label, std::size_t stands_in) const;
  bool same_size(const Holding& a, const Holding& b) const;
  const Holding* held(std::uint32_t at) const { return pool_.data() + at; }

  const Prepared& item_;
  const RoomRates* room_;
  const std::vector<Prepared::Standing>& standing_;
  const std::vector<Holding>& pool_;
  Memory& memory_;
  std::size_t looks_ = 0;
};

} // namespace manciple::buying
