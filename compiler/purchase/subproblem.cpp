#include "purchase/subproblem.hpp"

#include <algorithm>
#include <stdexcept>
#include <tuple>

#include "purchase/lots.hpp"
#include "purchase/opened.hpp"

namespace manciple::purchase {

struct Workspace::Memory {
  std::tuple<LotMemory<1>, LotMemory<2>, LotMemory<4>, LotMemory<most_groups>> lots;
  OpenedMemory opened;
};

Workspace::Workspace() : memory_(std::make_unique<Memory>()) {}
Workspace::~Workspace() = default;
Workspace::Workspace(Workspace&&) noexcept = default;
Workspace& Workspace::operator=(Workspace&&) noexcept = default;

std::vector<Buy> buys_to(const std::vector<Step>& steps, std::int32_t last) {
  std::vector<Buy> buys;
  for (; last >= 0; last = steps[static_cast<std::size_t>(last)].parent) {
    const Step& step = steps[static_cast<std::size_t>(last)];
    const Buy buy{static_cast<std::size_t>(step.visit), static_cast<OfferId>(step.offer),
                  step.packs};
    const auto same = std::find_if(buys.begin(), buys.end(), [&](const Buy& other) {
      return other.visit == buy.visit && other.offer == buy.offer;
    });
    if (same == buys.end())
      buys.push_back(buy);
    else
      same->packs += buy.packs;
  }
  std::sort(buys.begin(), buys.end(), [](const Buy& a, const Buy& b) {
    return std::tie(a.visit, a.offer) < std::tie(b.visit, b.offer);
  });
  return buys;
}

namespace {

template <std::size_t groups>
Outcome cheapest_lots(const Prepared& good, const Terms& terms, Workspace::Memory& memory) {
  return Lots<groups>(good, terms, std::get<LotMemory<groups>>(memory.lots)).solve();
}

} // namespace

Outcome cheapest(const Prepared& good, const Terms& terms, Workspace& workspace) {
  if (good.barred)
    return {};
  if (good.opened())
    return cheapest_opened(good, terms, workspace.memory().opened);
  const std::size_t groups = good.groups.size();
  if (groups <= 1)
    return cheapest_lots<1>(good, terms, workspace.memory());
  if (groups <= 2)
    return cheapest_lots<2>(good, terms, workspace.memory());
  if (groups <= 4)
    return cheapest_lots<4>(good, terms, workspace.memory());
  return cheapest_lots<most_groups>(good, terms, workspace.memory());
}

} // namespace manciple::purchase
