#pragma once

#include "buying/item/plan.hpp"
#include "buying/item/terms.hpp"

#include <array>
#include <memory>

namespace manciple::buying {

/// Memory that one run after the other uses again, and the work that was done in it.
class Workspace {
public:
  Workspace();
  ~Workspace();
  Workspace(Workspace&&) noexcept;
  Workspace& operator=(Workspace&&) noexcept;
  struct Memory;
  Memory& memory() { return *memory_; }

private:
  std::unique_ptr<Memory> memory_;
};

/// Labels after which a run gives up looking for the very best plan.
constexpr std::size_t usual_labels = 100'000;
constexpr std::size_t few_labels = usual_labels / 32;
/// The search goes over everything with few first and then, where these proved nothing, with more.
constexpr std::array<std::size_t, 3> label_passes{usual_labels / 4, usual_labels, 8 * usual_labels};

/// The cheapest plan of an item: a shortest path over its visits by label setting. A label is what
/// is held after some purchases and uses, and what that has cost; of two labels, the one that holds
/// no less at no higher cost dominates. `impossible` only if the item's restriction bars every
/// plan: what cannot be had is missing.
///
/// A first, narrow pass gives an upper limit; in the second one a label goes when its cost and the
/// least cost of the rest exceed that. Where many labels remain, both are done again with a better
/// bound. `work` is raised by the labels made and looked at. After `most` of them, a narrow pass's
/// plan is all there is, with a bound that is less than its cost. Nor is more known of a plan that
/// costs more than `enough`, if a bound shows that at once. `many` begins with the better bound:
/// for an item that took many labels under other terms.
Outcome cheapest(const Prepared& item, const Terms& terms, Workspace& workspace, std::int64_t& work,
                 std::size_t most = usual_labels, Cost enough = impossible, bool many = false);

} // namespace manciple::buying
