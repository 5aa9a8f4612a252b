// Proves the least total of a month without our solver: `by_parts MODEL`. In one piece a month is
// beyond cbc and glpsol. But room apart, foods have only the stops in common: GLPK solves each food
// alone for the stops that are open, and a search over sets of stops adds them up. Closing a stop
// makes no food cheaper, which bounds the sets that are not looked at. Leaving out room, and taking
// each shop's credit as gained in full, allows more than the model does: a list of ours that costs
// the same is proven. Not for reductions, which depend on all that is spent in a visit.

#include <cmath>
#include <fstream>
#include <iostream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "bench/model_text.hpp"
#include "oracle/formulation.hpp"

namespace {

using namespace manciple;
using purchase::GoodId;
using purchase::Model;
using purchase::StopId;

/// Seconds for one food and one set of stops.
constexpr int patience = 60;

using Stops = std::vector<bool>;

class Parts {
public:
  explicit Parts(const Model& model) : model_(model), known_(model.goods.size()) {
    for (purchase::Shop& shop : model_.shops) {
      if (shop.off > 0)
        throw std::runtime_error("a reduction depends on all foods of a visit");
      credit_ += static_cast<double>(shop.credit);
      shop.credit = 0;
    }
    for (auto& room : model_.room)
      room.clear();
  }

  /// Nothing costs less than this, or than `below`.
  double least(double below) {
    best_ = below;
    Stops open(model_.stops.size(), true);
    search(open, 0, 0);
    return best_;
  }

  std::size_t sets = 0;
  std::size_t programs = 0;

private:
  /// The stops before `next` are decided, those of them that are open cost `stops` in all.
  void search(Stops& open, StopId next, double stops) {
    ++sets;
    const double bound = stops + goods(open) - credit_;
    if (bound >= best_ - 0.5) // half a hundredth of a cent
      return;
    if (next == open.size()) {
      best_ = bound;
      return;
    }
    search(open, next + 1, stops + static_cast<double>(model_.stops[next].cost));
    if (model_.stops[next].always)
      return;
    open[next] = false;
    search(open, next + 1, stops);
    open[next] = true;
  }

  double goods(const Stops& open) {
    double sum = 0;
    for (GoodId good = 0; good < model_.goods.size(); ++good)
      sum += cost(good, open);
    return sum;
  }

  /// The least cost of one food, `infinite` if it is not to be had.
  double cost(GoodId id, const Stops& open) {
    const purchase::Good& good = model_.goods[id];
    Stops of_use = open;
    for (StopId stop = 0; stop < open.size(); ++stop) {
      bool sold = false;
      for (const purchase::Offer& offer : good.offers)
        sold = sold || offer.shop == model_.stops[stop].shop;
      of_use[stop] = open[stop] && sold;
    }
    const auto [it, is_new] = known_[id].try_emplace(of_use, 0);
    if (!is_new)
      return it->second;
    ++programs;
    Model alone;
    alone.last_day = model_.last_day;
    alone.shops = model_.shops;
    for (StopId stop = 0; stop < open.size(); ++stop)
      if (of_use[stop])
        alone.stops.push_back({model_.stops[stop].day, model_.stops[stop].shop, 0, true});
    alone.goods.push_back(good);
    const oracle::MipResult result = oracle::solve_with_glpk(oracle::formulate(alone), patience);
    if (result.state == oracle::MipResult::State::infeasible)
      it->second = oracle::infinite;
    else if (result.state == oracle::MipResult::State::optimal)
      it->second = result.objective;
    else
      throw std::runtime_error(fmt::format("GLPK did not prove the least cost of food {}", id));
    return it->second;
  }

  Model model_;
  double credit_ = 0;
  double best_ = 0;
  std::vector<std::map<Stops, double>> known_;
};

} // namespace

int main(int count, char** arguments) {
  if (count != 2) {
    std::cerr << "usage: by_parts MODEL\n";
    return 2;
  }
  try {
    std::ifstream file(arguments[1]);
    const Model model = purchase::read_model(file);
    const purchase::Solution solution = purchase::solve(model);
    const double ours = static_cast<double>(solution.total_fine) / 1e9;
    Parts parts(model);
    const double least = parts.least(ours + 100); // a cent more, so that it has to find ours
    const bool same = std::abs(least - ours) <= 0.5;
    fmt::print("in parts: {} sets of stops, {} programs of one food by GLPK: least {:.4f}, ours "
               "{:.4f}, {}\n",
               parts.sets, parts.programs, least / 10000, ours / 10000,
               same ? "the same" : "NOT THE SAME");
    return same ? 0 : 1;
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
