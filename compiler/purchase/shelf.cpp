#include "purchase/shelf.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

double part_lost(Fine before, Fine after) {
  return after < before ? static_cast<double>(before - after) / static_cast<double>(before) : 0;
}

} // namespace

Drop drop(const Model& model, const Prices& from, const Prices& to) {
  Drop result;
  for (StopId stop = 0; stop < model.stops.size(); ++stop)
    result.stop.push_back(part_lost(per_money(model, from, stop), per_money(model, to, stop)));
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < from.room[place].size(); ++night)
      result.place[place] =
          std::max(result.place[place], part_lost(from.room[place][night], to.room[place][night]));
  return result;
}

/// Whatever a plan's cost is made of is dearer than this part of what it was, but for salvage,
/// which is the same and at most that of the cap.
Fine Shelved::beyond(const Drop& drop) const {
  if (longest == impossible.value)
    return longest;
  const Prepared& good = network.good();
  double lost = drop.place[static_cast<std::size_t>(good.good->cool_place)];
  if (good.good->keeps_frozen)
    lost = std::max(lost, drop.place[static_cast<std::size_t>(Place::freezer)]);
  for (const Visit& visit : good.visits)
    lost = std::max(lost, drop.stop[visit.stop]);
  if (lost == 0)
    return longest;
  const Fine salvage = value_of(good.kept_cap, good.good->salvage);
  return longest - static_cast<Fine>(lost * static_cast<double>(longest + salvage)) - rounding;
}

void Shelf::set_prices(Prices prices) {
  prices_ = std::move(prices);
  for (auto& of_good : shelved_)
    of_good.clear();
}

/// The good can have to do with room or with reductions.
bool Shelf::matters(const Prepared& good, const std::vector<bool>& made) const {
  const auto limited = [&](Place place) {
    return !model_.room[static_cast<std::size_t>(place)].empty();
  };
  return (good.good->room_cool > 0 && limited(good.good->cool_place)) ||
         (good.good->keeps_frozen && good.good->room_frozen > 0 && limited(Place::freezer)) ||
         std::any_of(good.visits.begin(), good.visits.end(), [&](const Visit& visit) {
           const Shop& shop = model_.shops[model_.stops[visit.stop].shop];
           return made[visit.stop] && (shop.off > 0 || shop.credit > 0);
         });
}

Shelf::Got Shelf::take(const std::vector<bool>& made, Fine slack, std::size_t most,
                       std::vector<const Shelved*>& taken) {
  taken.clear();
  for (GoodId good = 0; good < goods_.size(); ++good) {
    if (good % 16 == 0 && limits_.reached())
      return Got::gave_up;
    std::vector<bool> open;
    for (const Visit& visit : goods_[good].visits)
      open.push_back(made[visit.stop]);
    const bool counts = matters(goods_[good], made);
    auto it = shelved_[good].find(open);
    if (it == shelved_[good].end() || (counts && it->second.slack < slack)) {
      Shelved shelved{
          Network(model_, goods_[good], open, prices_, counts ? slack : 0, most, limits_), slack};
      const Network& network = shelved.network;
      if (!network.finished)
        return Got::gave_up;
      if (counts && !network.nodes.empty())
        shelved.longest = network.least + slack + rounding;
      it = shelved_[good].insert_or_assign(std::move(open), std::move(shelved)).first;
    }
    if (it->second.network.nodes.empty())
      return Got::cannot_be;
    taken.push_back(&it->second);
  }
  return Got::all;
}

} // namespace manciple::purchase
