#include "buying/item/completion_bound.hpp"
#include "buying/item/service.hpp"
#include "buying/item/weighing.hpp"
#include "buying/network/network.hpp"
#include "buying/network/state_table.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace manciple::buying {
namespace {

/// Notes where things stay, and adds up the priced room.
struct StayTrack : BlankTrack {
  const RoomRates* rates = nullptr;
  Fine room = 0;
  std::vector<Stay> stays;

  void stay(const Stay& stay) {
    if (stay.amount > 0 && stay.until > stay.from) {
      stays.push_back(stay);
      room += rates->of(stay);
    }
  }
};

using StayBranch = Branch<StayTrack>;

} // namespace

/// Goes through what can be held, purchase by purchase, and leaves out what the least cost of the
/// rest shows to be too dear.
class NetworkBuilder {
public:
  NetworkBuilder(const Model& model, const std::vector<bool>& open, const Multipliers& at,
                 std::size_t most, WorkBudget& budget, Network& network)
      : model_(model),
        item_(network.item()),
        facts_(*item_.item),
        most_(most),
        budget_(budget),
        lots_(item_.takes_room ? Lots::apart : Lots::together),
        service_(item_, lots_),
        weighing_(item_),
        room_(room_rates(model, at, facts_)),
        any_number_(item_.sources.size(), 1),
        network_(network) {
    terms_.room = &room_;
    for (std::size_t v = 0; v < open.size(); ++v) {
      terms_.charge.push_back(open[v] ? Cost{} : impossible);
      terms_.discount.push_back(discount(model, at, item_.visits[v].stop));
      for (std::size_t o = 0; open[v] && o < item_.visits[v].offers.size(); ++o) {
        stages_.push_back({v, o});
      }
    }
    bound_.prepare(item_, terms_, any_number_);
    bound_.strengthen();
    for (std::size_t v = 0; v < item_.visits.size(); ++v) {
      for (std::size_t s = 0; s < item_.sources.size(); ++s) {
        of_use_.push_back(most_of_use(v, s));
      }
    }
  }

  void build(Fine slack, std::optional<Cost> known) {
    if (item_.barred) {
      return;
    }
    Workspace workspace;
    const Cost least = known ? *known : cheapest(item_, terms_, workspace, budget_.work()).cost;
    if (!is_possible(least)) {
      return;
    }
    slack = std::min(slack, impossible.value / 8);
    limit_ = least.value + slack + 2 * rounding;
    lay_out();
    if (!network_.finished_) {
      return;
    }
    const Cost length = network_.to_end(lengths_).front();
    if (!is_possible(length) || network_.edges_.empty()) {
      network_.finished_ = false; // there is always a plan
      return;
    }
    const Fine shortest = length.value;
    network_.least_ = shortest;
    network_.shrink(lengths_, shortest + slack + rounding);
    network_.add_arcs(model_.stops.size());
  }

private:
  /// An offer at a visit.
  struct Stage {
    std::size_t visit = 0;
    std::size_t offer = 0;
  };

  OfferId offer_of(const Stage& stage) const {
    return item_.visits[stage.visit].offers[stage.offer];
  }

  void lay_out() {
    network_.nodes_.assign(1, {});
    from_start_.assign(1, 0);
    next_first_ = 1;
    // First what happens before anything is bought.
    StayBranch start = service_.start();
    start.track.rates = &room_;
    serve(start, 0, 0, {}, Cost{start.cost, 0});
    network_.nodes_[0].edges_end = network_.edges_.size();
    for (std::size_t stage = 0; stage < stages_.size() && network_.finished_; ++stage) {
      std::swap(layer_, next_layer_);
      next_layer_.clear();
      const std::size_t first = next_first_;
      next_first_ = network_.nodes_.size();
      for (std::size_t i = 0; i < layer_.size() && network_.finished_; ++i) {
        Network::Node& node = network_.nodes_[first + i];
        node.edges = network_.edges_.size();
        node.stop = item_.visits[stages_[stage].visit].stop;
        add_edges(stage, first + i, layer_.begin(i), layer_.end(i));
        network_.nodes_[first + i].edges_end = network_.edges_.size();
      }
    }
    close_dead_ends();
  }

  /// Nodes without edges count as ends: what leads to one before the last stage is barred.
  void close_dead_ends() {
    std::vector<bool> alive(network_.nodes_.size(), false);
    for (std::size_t node = network_.nodes_.size(); node-- > 0;) {
      alive[node] = node >= next_first_;
      for (std::size_t e = network_.nodes_[node].edges; e < network_.nodes_[node].edges_end; ++e) {
        if (alive[network_.edges_[e].to]) {
          alive[node] = true;
        } else {
          lengths_[e] = impossible;
        }
      }
    }
  }

  /// Most packs worth considering: what can be used, and what it takes to reach a reduction.
  int most_packs(const Stage& stage) const {
    const std::size_t source = item_.visits[stage.visit].sources[stage.offer];
    const Offer& offer = facts_.offers[offer_of(stage)];
    const int useful = item_.useful_packs[source];
    const Shop& shop = model_.shops[model_.stops[item_.visits[stage.visit].stop].shop];
    const bool must = item_.required && item_.required->visit == stage.visit &&
                      item_.required->offer == offer_of(stage);
    Wide most = must ? std::max(useful, 1) : useful;
    if (shop.off > 0) {
      // Packs of no use cost all that they cost, within the slack.
      const Money till = std::max<Money>(
          1, offer.till.packs.has_deal() ? offer.till.packs.deal / offer.till.packs.deal_packs
                                         : offer.till.packs.each);
      most += (shop.over + offer.till.less) / till + 1 + offer.cost.deal_packs;
    }
    return static_cast<int>(std::min<Wide>(most, offer.limit));
  }

  /// From a visit on, no more of a source than this can be used or is worth anything if it is kept.
  Amount most_of_use(std::size_t visit, std::size_t s) const {
    const Source& source = item_.sources[s];
    const bool weighed = !source.stock && facts_.offers[source.offer].by_weight;
    const bool freezes_to_keep = item_.keeps(s) && !item_.keeps_cool(s);
    if (weighed || freezes_to_keep || (item_.keeps(s) && item_.takes_room)) {
      return std::numeric_limits<Amount>::max();
    }
    const Amount kept = item_.keeps(s) && facts_.salvage > 0 ? facts_.salvage_cap : 0;
    const Amount one = source.bought();
    const int packs = item_.packs_for(s, item_.first_served[visit], item_.demands.size());
    return (packs + (kept + one - 1) / one) * one;
  }

  /// What is held beyond that is let go of, so that states which differ in nothing else are one.
  /// Returns what it was counted for as waste and is not.
  Fine let_go(StayBranch& branch, std::size_t visit) const {
    Fine refund = 0;
    for (Holding& held : branch.held) {
      const Amount most = of_use_[visit * item_.sources.size() + held.source];
      const Amount more = held.open ? 0 : held.free() - std::min(held.free(), most);
      held.left -= more;
      refund += item_.keeps(held.source) ? value_of(more, facts_.waste) : 0;
    }
    std::erase_if(branch.held, [](const Holding& held) { return held.left == 0; });
    return refund;
  }

  void add_edges(std::size_t at, std::size_t node, const Holding* begin, const Holding* end) {
    const Stage& stage = stages_[at];
    const std::size_t source = item_.visits[stage.visit].sources[stage.offer];
    const OfferId id = offer_of(stage);
    const Offer& offer = facts_.offers[id];
    const int most = most_packs(stage);
    const bool must =
        item_.required && item_.required->visit == stage.visit && item_.required->offer == id;
    const CompletionBound::Held before_it = bound_.held(stage.visit, begin, end);
    const CompletionBound::Held pack = bound_.pack(stage.visit, source);
    const Fine refund = bound_.refund(begin, end);
    const Holdings before(begin, end);
    if (offer.by_weight) {
      const std::size_t ahead = item_.demands.size() - item_.first_served[stage.visit];
      count(1 + static_cast<std::int64_t>(ahead)); // it is served twice, without a choice
      weighed_ = weighing_.choices(begin, end, stage.visit, source, must);
    }
    auto next_weighed = weighed_.begin();
    for (int n = must ? 1 : 0; n <= most && network_.finished_; ++n) {
      Amount amount = n * offer.pack;
      if (n > 0 && offer.by_weight) {
        if (next_weighed == weighed_.end()) {
          break;
        }
        n = next_weighed->steps;
        amount = next_weighed++->amount;
      }
      const Cost paid = n == 0 ? Cost{} : terms_.of(item_, stage.visit, id, n);
      CompletionBound::Held with = before_it;
      with.add(pack, n);
      const Fine so_far = from_start_[node] + paid.value;
      const double least = static_cast<double>(so_far - refund) +
                           bound_.rest(stage.visit, item_.first_served[stage.visit], with);
      if (least > static_cast<double>(limit_) + 1) {
        // Once all is served, more packs only cost more (but for those that make a deal full).
        const bool all = with.reach >= static_cast<double>(item_.wanted);
        if (all && !offer.cost.has_deal()) {
          break;
        }
        continue;
      }
      count(1);
      StayBranch branch;
      branch.held = before;
      branch.track.rates = &room_;
      Cost cost{fine(n == 0 ? 0 : offer.cost.of(n)), paid.ties};
      if (n > 0) {
        const Holding bought = service_.bought(stage.visit, source, amount);
        cost.value += service_.wasted(bought);
        put(branch.held, bought);
        cost.value -= let_go(branch, stage.visit);
      }
      std::optional<Network::Paid> till;
      if (n > 0) {
        till =
            Network::Paid{item_.visits[stage.visit].stop, offer.till.of(n), {stage.visit, id, n}};
      }
      const bool last_of_visit = at + 1 == stages_.size() || stages_[at + 1].visit != stage.visit;
      if (last_of_visit) {
        serve(branch, stage.visit + 1, node, till, cost);
      } else {
        add_edge(node, branch, stage.visit, till, cost);
      }
    }
  }

  /// Goes on until the next visit that is open, or the end.
  void serve(StayBranch& branch, std::size_t block, std::size_t node,
             const std::optional<Network::Paid>& till, Cost cost) {
    branch.cost = 0;
    service_at(block).run(branch, service_.block(block), [&](const StayBranch& way) {
      if (!network_.finished_) {
        return;
      }
      count(1 + static_cast<std::int64_t>(item_.first_served[block] / demands_per_work));
      Cost then = cost;
      then.value += way.cost;
      if (block == item_.visits.size()) {
        add_edge(node, way, block, till, then);
        return;
      }
      StayBranch next = way;
      service_.enter(next, block);
      then.value -= let_go(next, block);
      if (terms_.is_open(block)) {
        add_edge(node, next, block, till, then);
      } else {
        serve(next, block + 1, node, till, then);
      }
    });
  }

  /// A service that is not in the middle of another block.
  Service<StayTrack>& service_at(std::size_t block) {
    while (services_.size() <= block) {
      services_.emplace_back(item_, lots_);
    }
    return services_[block];
  }

  void add_edge(std::size_t node, const StayBranch& way, std::size_t visit,
                const std::optional<Network::Paid>& till, Cost cost) {
    Network::Edge edge;
    edge.cost = cost;
    Fine length = cost.value + way.track.room;
    if (till) {
      length -= till->till * terms_.discount_at(till->buy.visit);
    }
    const Fine so_far = from_start_[node] + length;
    const Holding* const begin = way.held.data();
    const Holding* const end = begin + way.held.size();
    double to_come = 0;
    if (visit < item_.visits.size()) {
      to_come = bound_.rest(visit, item_.first_served[visit], bound_.held(visit, begin, end)) -
                static_cast<double>(bound_.refund(begin, end));
    }
    if (static_cast<double>(so_far) + to_come > static_cast<double>(limit_) + 1) {
      return;
    }
    edge.paid = network_.paid_.size();
    if (till) {
      network_.paid_.push_back(*till);
    }
    edge.paid_end = network_.paid_.size();
    edge.stays = network_.stays_.size();
    network_.stays_.insert(network_.stays_.end(), way.track.stays.begin(), way.track.stays.end());
    edge.stays_end = network_.stays_.size();
    edge.choices = network_.choices_.size();
    network_.choices_.insert(network_.choices_.end(), way.choices.begin(), way.choices.end());
    edge.choices_end = network_.choices_.size();
    edge.to = next_first_ + next_layer_.add(way.held);
    if (edge.to == network_.nodes_.size()) {
      network_.nodes_.emplace_back();
      from_start_.push_back(impossible.value);
    }
    from_start_[edge.to] = std::min(from_start_[edge.to], so_far);
    network_.edges_.push_back(edge);
    lengths_.push_back({length, 0});
    count(works_to_keep);
    if (network_.edges_.size() > most_) {
      network_.finished_ = false;
    }
  }

  /// Of what is tried much is too dear to become an edge.
  void count(std::int64_t work) {
    budget_.add(work);
    counted_ += work;
    if (counted_ > works_per_edge * static_cast<std::int64_t>(most_) ||
        (counted_ / 1024 != (counted_ - work) / 1024 && budget_.spent())) {
      network_.finished_ = false;
    }
  }
  static constexpr std::int64_t works_per_edge = 8;
  static constexpr std::size_t demands_per_work = 4;
  static constexpr std::int64_t works_to_keep = 6;

  const Model& model_;
  const Prepared& item_;
  const Item& facts_;
  std::size_t most_;
  WorkBudget& budget_;
  std::int64_t counted_ = 0;
  Lots lots_;
  Service<StayTrack> service_;
  Weighing weighing_;
  std::vector<Weighing::Weighed> weighed_;
  std::deque<Service<StayTrack>> services_;
  RoomRates room_;
  std::vector<int> any_number_;
  /// By visit and source.
  std::vector<Amount> of_use_;
  Terms terms_;
  CompletionBound bound_;
  std::vector<Stage> stages_;
  /// The states of a stage, whose nodes follow one another, and of the next stage.
  StateTable layer_;
  StateTable next_layer_;
  std::size_t next_first_ = 0;
  Fine limit_ = 0;
  std::vector<Fine> from_start_;
  std::vector<Cost> lengths_;
  Network& network_;
};

Network::Network(const Model& model, const Prepared& item, const std::vector<bool>& open,
                 const Multipliers& at, Fine slack, std::size_t most, WorkBudget& budget,
                 std::optional<Cost> least_known)
    : item_(&item) {
  NetworkBuilder(model, open, at, most, budget, *this).build(slack, least_known);
}

} // namespace manciple::buying
