#include "purchase/shortage.hpp"

#include "purchase/bundle.hpp"
#include "purchase/subproblem.hpp"
#include "purchase/use.hpp"

namespace manciple::purchase {
namespace {

class ShortageSearch {
public:
  ShortageSearch(const Model& model, const Prepared& good, Workspace& workspace)
      : model_(model), good_(good), workspace_(workspace) {}

  std::optional<Shortage> find(GoodId id) {
    if (can_meet(good_.uses.size(), 0))
      return std::nullopt;
    // Who can meet a run of demands can meet its beginning.
    std::size_t met = 0;
    while (can_meet(met + 1, 0))
      ++met;
    const Use& use = good_.uses[met];
    Amount possible = 0;
    Amount too_much = use.amount;
    while (too_much - possible > 1) {
      const Amount middle = possible + (too_much - possible) / 2;
      (can_meet(met, middle) ? possible : too_much) = middle;
    }
    Shortage shortage;
    shortage.good = id;
    shortage.demand = use.demand;
    shortage.missing = use.amount - possible;
    for (const Visit& visit : good_.visits) {
      if (visit.day <= use.day)
        shortage.before = visit.stop;
      else if (!shortage.after)
        shortage.after = visit.stop;
    }
    shortage.why = why(use);
    return shortage;
  }

private:
  /// The first uses, and `more` of the next one, can be met.
  bool can_meet(std::size_t uses, Amount more) {
    Good good = *good_.good;
    good.demands.clear();
    for (std::size_t i = 0; i < uses; ++i)
      good.demands.push_back(good_.good->demands[good_.uses[i].demand]);
    if (more > 0) {
      good.demands.push_back(good_.good->demands[good_.uses[uses].demand]);
      good.demands.back().amount = more;
    }
    const Prepared prepared = prepare(model_, good);
    Terms terms;
    terms.charge.assign(prepared.visits.size(), Cost{});
    return is_possible(cheapest(prepared, terms, workspace_).cost);
  }

  Why why(const Use& use) const {
    if (good_.good->offers.empty())
      return Why::no_offer;
    bool before = false;
    bool would_keep_frozen = false;
    for (const Visit& visit : good_.visits) {
      if (visit.day > use.day)
        break;
      before = true;
      if (visit.day >= use.from)
        return Why::limit;
      would_keep_frozen = would_keep_frozen || (good_.good->keeps_frozen &&
                                                use.day - visit.day <= *good_.good->keeps_frozen);
    }
    if (!before)
      return Why::no_stop;
    return would_keep_frozen ? Why::must_be_fresh : Why::does_not_keep;
  }

  const Model& model_;
  const Prepared& good_;
  Workspace& workspace_;
};

} // namespace

std::vector<Shortage> shortages(const std::vector<Prepared>& goods, const Model& model) {
  std::vector<Shortage> result;
  Workspace workspace;
  for (GoodId id = 0; id < goods.size(); ++id)
    if (const auto shortage = ShortageSearch(model, goods[id], workspace).find(id))
      result.push_back(*shortage);
  return result;
}

std::vector<Shortage> room_shortage(const std::vector<Prepared>& goods, const Model& model,
                                    const Solution& solution) {
  const RoomSums taken = all_room_taken(model, goods, solution);
  std::int64_t worst = 0;
  Place where = Place::pantry;
  std::size_t when = 0;
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < taken[place].size(); ++night) {
      const std::int64_t over = taken[place][night] - model.room[place][night] * 1'000'000;
      if (over > worst) {
        worst = over;
        where = static_cast<Place>(place);
        when = night;
      }
    }
  Shortage shortage;
  shortage.why = Why::room;
  shortage.place = where;
  std::int64_t most = 0;
  for (GoodId id = 0; id < goods.size(); ++id) {
    const RoomTaken room = room_taken(goods[id], solution.goods[id]);
    const std::int64_t here = where == Place::freezer               ? room.frozen[when]
                              : where == goods[id].good->cool_place ? room.cool[when]
                                                                    : 0;
    if (here <= most)
      continue;
    most = here;
    shortage.good = id;
    shortage.demand = goods[id].uses.back().demand;
    for (const Use& use : goods[id].uses)
      if (use.day > static_cast<Day>(when)) {
        shortage.demand = use.demand;
        break;
      }
  }
  if (worst == 0)
    return {};
  const Volume unit = where == Place::freezer ? goods[shortage.good].good->room_frozen
                                              : goods[shortage.good].good->room_cool;
  shortage.missing = unit > 0 ? worst / unit : 0;
  return {shortage};
}

} // namespace manciple::purchase
