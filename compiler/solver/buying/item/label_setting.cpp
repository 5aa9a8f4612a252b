#include "buying/item/label_setting.hpp"

#include "buying/item/completion_bound.hpp"
#include "buying/item/dominance.hpp"
#include "buying/item/most_packs.hpp"
#include "buying/item/service.hpp"
#include "buying/item/weighing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <tuple>

namespace manciple::buying {
namespace {

/// Adds up the priced room of a branch.
struct PricedTrack : BlankTrack {
  const RoomRates* rates = nullptr;
  Fine room = 0;

  void stay(const Stay& stay) {
    if (rates != nullptr) {
      room += rates->of(stay);
    }
  }
};

using PricedBranch = Branch<PricedTrack>;

/// How a label came about, after step `parent`: by buying, or (packs = 0) by choices in a block.
struct PathStep {
  std::int32_t parent = -1;
  std::uint32_t visit = 0;
  OfferId offer;
  std::int32_t packs = 0;
  std::uint32_t choices = 0, choices_end = 0;
};

} // namespace

struct Workspace::Memory {
  std::vector<Label> front, base, kept;
  std::vector<Label> passing; ///< by a stop that has its price
  Dominance::Memory dominance;
  std::vector<Holding> pool;
  std::vector<PathStep> steps;
  std::vector<std::uint32_t> choices;
  std::vector<std::pair<Cost, std::size_t>> ranks;
  CompletionBound bound;
  PricedBranch branch;
};

Workspace::Workspace() : memory_(std::make_unique<Memory>()) {}
Workspace::~Workspace() = default;
Workspace::Workspace(Workspace&&) noexcept = default;
Workspace& Workspace::operator=(Workspace&&) noexcept = default;

namespace {

class LabelSetting {
public:
  LabelSetting(const Prepared& item, const Terms& terms, Workspace::Memory& memory,
               std::int64_t& work, std::size_t most, Cost enough)
      : item_(item),
        terms_(terms),
        memory_(memory),
        room_(terms.priced_room()),
        dominance_(item, room_, memory.pool, memory.dominance),
        service_(item, room_ == nullptr ? Lots::together : Lots::apart),
        weighing_(item),
        work_(work),
        most_(most),
        enough_(enough),
        most_packs_(most_packs(item, terms)) {
    memory_.bound.prepare(item, terms, most_packs_);
  }

  /// With `many`, the item is known to take many labels.
  Outcome run(bool many) {
    Outcome out = search(many);
    out.took_many = strong_;
    return out;
  }

private:
  Outcome search(bool many) {
    Outcome quick; // the best of the narrow passes
    Outcome exact;
    for (std::size_t a = many ? 1 : 0; a < attempts.size(); ++a) {
      width_ = attempts[a].width;
      if (a > 0) {
        memory_.bound.strengthen();
        strong_ = true;
      }
      if (strong_ || item_.visits.size() > few_visits || item_.demands.size() > few_demands) {
        Outcome better = narrow_pass();
        if (better.cost < quick.cost) {
          quick = std::move(better);
        }
        if (is_too_dear(quick)) {
          return quick;
        }
      }
      const std::size_t labels = std::min(attempts[a].labels, most_);
      exact = exact_pass(quick.cost, labels);
      if (!gave_up_ || labels == most_) {
        break;
      }
    }
    if (gave_up_) {
      if (!is_possible(quick.cost)) {
        buys_nothing_ = true;
        quick = exact_pass(impossible, most_);
      }
      quick.bound = std::min(quick.cost, std::max(least(), reached_));
      return quick;
    }
    const Cost quick_cost = quick.cost;
    if (quick.cost <= exact.cost) {
      exact = std::move(quick);
    }
    // What costs more than `enough` was not followed.
    exact.bound = is_possible(quick_cost) ? std::min(exact.cost, enough_) : exact.cost;
    return exact;
  }

  /// Before anything is bought or used.
  Cost least() const {
    const double rest = memory_.bound.rest(0, 0, start_held_);
    return {start_cost_ + static_cast<Fine>(rest) - 1, 0};
  }
  /// Sets the plan's bound if that is enough.
  bool is_too_dear(Outcome& quick) const {
    if (!is_possible(quick.cost) || least() <= enough_) {
      return false;
    }
    quick.bound = std::min(quick.cost, least());
    return true;
  }

  /// A narrow pass of some width, and an exact one that gives up after so many labels.
  struct Attempt {
    std::size_t width;
    std::size_t labels;
  };
  /// After the first, a better bound saves what it takes; after the second, a wider narrow pass.
  static constexpr std::array<Attempt, 3> attempts{
      {{1, 512}, {1, 16'384}, {8, std::numeric_limits<std::size_t>::max()}}};
  static constexpr std::size_t narrow_labels = 8;
  /// In the first pass, more than this are not carried on within a visit.
  static constexpr std::size_t few_in_visit = 32;
  /// With so few, an upper limit does not save what it costs.
  static constexpr std::size_t few_visits = 1;
  static constexpr std::size_t few_demands = 2;

  const Holding* held(std::uint32_t at) const { return memory_.pool.data() + at; }

  Outcome narrow_pass() {
    narrow_ = true;
    may_make_ = std::numeric_limits<std::size_t>::max();
    return pass();
  }
  /// Gives up after `most` labels.
  Outcome exact_pass(Cost limit, std::size_t most) {
    narrow_ = false;
    limit_ = is_possible(limit) ? std::min(limit, enough_) : limit; // some plan is always known
    may_make_ = most;
    return pass();
  }

  Outcome pass() {
    memory_.pool.clear();
    memory_.steps.clear();
    memory_.choices.clear();
    memory_.front.clear();
    made_ = 0;
    gave_up_ = false;
    PricedBranch start = service_.start();
    start.track.rates = room_;
    start_held_ = memory_.bound.held(0, start.held.data(), start.held.data() + start.held.size());
    start_cost_ =
        start.cost - memory_.bound.refund(start.held.data(), start.held.data() + start.held.size());
    memory_.pool = start.held;
    memory_.front.push_back(
        {Cost{start.cost, 0}, 0, static_cast<std::uint32_t>(start.held.size()), -1});
    serve(0);
    for (std::size_t v = 0; v < item_.visits.size() && !gave_up_; ++v) {
      note_reached(v);
      visit(v);
    }
    return gave_up_ ? Outcome{} : best();
  }

  /// Whatever is not followed costs more than the limit, and all else comes of a label of these.
  void note_reached(std::size_t v) {
    if (narrow_) {
      return;
    }
    Cost least = limit_;
    for (const Label& label : memory_.front) {
      least = std::min(least, estimate(label, v, item_.first_served[v]));
    }
    reached_ = std::max(reached_, least);
  }

  using DemandRange = Service<PricedTrack>::DemandRange;

  /// Goes through demands of a block from a label's state; makes a label of each way.
  void serve(PricedBranch& branch, std::size_t block, const DemandRange& demands, Cost cost,
             std::int32_t step) {
    branch.cost = 0;
    branch.track.room = 0;
    branch.choices.clear();
    service_.run(branch, demands, [&](const PricedBranch& way) {
      Label label{cost, static_cast<std::uint32_t>(memory_.pool.size()), 0, step};
      label.cost.value += way.cost + way.track.room;
      memory_.pool.insert(memory_.pool.end(), way.held.begin(), way.held.end());
      label.end = static_cast<std::uint32_t>(memory_.pool.size());
      if (!demands.last && too_dear(label, block, demands.end)) {
        memory_.pool.resize(label.first);
        return;
      }
      if (!way.choices.empty()) {
        const auto begin = static_cast<std::uint32_t>(memory_.choices.size());
        memory_.choices.insert(memory_.choices.end(), way.choices.begin(), way.choices.end());
        memory_.steps.push_back(
            {step, 0, {}, 0, begin, static_cast<std::uint32_t>(memory_.choices.size())});
        label.step = static_cast<std::int32_t>(memory_.steps.size()) - 1;
      }
      add(label);
    });
  }

  void add(const Label& label) {
    memory_.front.push_back(label);
    ++work_;
    gave_up_ = gave_up_ || ++made_ > may_make_;
  }

  /// A lower bound on the cost of what the label leads to if the demands before `demand` are served
  /// and all that is still bought is bought at `visit` or later.
  Cost estimate(const Label& label, std::size_t visit, std::size_t demand) const {
    const Holding* const begin = held(label.first);
    const Holding* const end = held(label.end);
    const double rest = memory_.bound.rest(visit, demand, memory_.bound.held(visit, begin, end));
    Cost result = label.cost;
    result.value += static_cast<Fine>(std::floor(rest)) - 1 - memory_.bound.refund(begin, end);
    return result;
  }
  /// Before a demand of a block, or before the visit of the same number. The first pass has no
  /// limit.
  bool too_dear(const Label& label, std::size_t block, std::size_t demand) const {
    return !narrow_ && estimate(label, block, demand) > limit_;
  }

  void visit(std::size_t v) {
    const bool required = item_.required && item_.required->visit == v;
    enter(v);
    if (terms_.is_open(v)) {
      memory_.passing.clear();
      if (terms_.charge[v] != Cost{}) {
        if (!required) {
          memory_.passing = memory_.front;
        }
        for (Label& label : memory_.front) {
          label.cost += terms_.charge[v];
        }
      }
      for (const OfferId offer : item_.visits[v].offers) {
        extend(v, offer, required && offer == item_.required->offer);
      }
      memory_.front.insert(memory_.front.end(), memory_.passing.begin(), memory_.passing.end());
      dominance_.prune(memory_.front, work_);
    } else if (required) {
      memory_.front.clear();
    }
    serve(v + 1);
    if (narrow_) {
      narrow(v + 1, item_.first_served[v + 1], narrow_labels * width_);
    }
  }

  /// Puts together what has become the same.
  void enter(std::size_t v) {
    PricedBranch& branch = memory_.branch;
    for (Label& label : memory_.front) {
      if (!service_.changes(held(label.first), held(label.end), v)) {
        continue;
      }
      branch.held.assign(held(label.first), held(label.end));
      service_.enter(branch, v);
      label.first = static_cast<std::uint32_t>(memory_.pool.size());
      memory_.pool.insert(memory_.pool.end(), branch.held.begin(), branch.held.end());
      label.end = static_cast<std::uint32_t>(memory_.pool.size());
    }
  }

  /// Goes through the demands of a block, one by one, so that what is dominated does not branch
  /// again.
  void serve(std::size_t block) {
    const DemandRange all = service_.block(block);
    DemandRange one{all.begin, std::min(all.begin + 1, all.end), false};
    do {
      one.last = all.last && one.end == all.end;
      serve(block, one);
      if (narrow_ && one.end < all.end) {
        narrow(block, one.end, few_in_visit * width_);
      }
      one = {one.end, one.end + 1, false};
    } while (one.begin < all.end && !gave_up_);
  }

  void serve(std::size_t block, const DemandRange& demands) {
    memory_.base.swap(memory_.front);
    memory_.front.clear();
    PricedBranch& branch = memory_.branch;
    branch.track.rates = room_;
    for (std::size_t i = 0; i < memory_.base.size() && !gave_up_; ++i) {
      const Label label = memory_.base[i];
      branch.held.assign(held(label.first), held(label.end));
      serve(branch, block, demands, label.cost, label.step);
    }
    dominance_.prune(memory_.front, work_);
  }

  /// Buys packs of an offer after what every label has bought: none or more; with `at_least_one`,
  /// one or more.
  void extend(std::size_t v, OfferId offer, bool at_least_one) {
    const Visit& visit = item_.visits[v];
    const auto o = static_cast<std::size_t>(
        std::find(visit.offers.begin(), visit.offers.end(), offer) - visit.offers.begin());
    const std::size_t source = visit.sources[o];
    const int most = buys_nothing_ ? (at_least_one ? 1 : 0) : most_packs_[source];
    const std::size_t labels = memory_.front.size();
    for (std::size_t i = 0; i < labels && !gave_up_; ++i) {
      extend(memory_.front[i], v, source, offer, most, at_least_one);
    }
    if (at_least_one) {
      memory_.front.erase(memory_.front.begin(),
                          memory_.front.begin() + static_cast<std::ptrdiff_t>(labels));
    }
    dominance_.prune(memory_.front, work_);
    if (narrow_ && memory_.front.size() > few_in_visit * width_) {
      if (strong_) {
        narrow(v, item_.first_served[v], few_in_visit * width_);
      } else {
        narrow_after_service(v + 1);
      }
    }
  }

  /// In the middle of a visit many labels look alike: what they lack until the next one tells.
  void narrow_after_service(std::size_t block) {
    std::vector<Label> front;
    front.swap(memory_.front);
    auto& ranks = memory_.ranks;
    std::vector<std::pair<Cost, std::size_t>> ahead;
    const std::size_t pool = memory_.pool.size();
    const std::size_t steps = memory_.steps.size();
    for (std::size_t i = 0; i < front.size() && !gave_up_; ++i) {
      const std::size_t made = made_;
      memory_.front.assign(1, front[i]);
      serve(block);
      made_ = made;
      Cost least = impossible;
      for (const Label& label : memory_.front) {
        least = std::min(least, block < item_.visits.size()
                                    ? estimate(label, block, item_.first_served[block])
                                    : label.cost);
      }
      ahead.emplace_back(least, i);
      memory_.pool.resize(pool);
      memory_.steps.resize(steps);
    }
    memory_.front.clear();
    ranks = std::move(ahead);
    std::sort(ranks.begin(), ranks.end());
    for (std::size_t k = 0; k < std::min(few_in_visit / 4, ranks.size()); ++k) {
      memory_.front.push_back(front[ranks[k].second]);
    }
  }

  void extend(const Label before, std::size_t v, std::size_t source, OfferId offer, int most,
              bool required) {
    if (item_.item->offers[offer].by_weight) {
      weigh(before, v, source, offer, required);
      return;
    }
    const std::size_t demand = item_.first_served[v];
    const Holding* const begin = held(before.first);
    const Holding* const end = held(before.end);
    const CompletionBound::Held before_it = memory_.bound.held(v, begin, end);
    const CompletionBound::Held pack = memory_.bound.pack(v, source);
    const Fine refund = memory_.bound.refund(begin, end);
    const bool few_numbers = narrow_ && most > static_cast<int>(few_in_visit);
    if (few_numbers) {
      find_likely_numbers(v, source, before_it.reach, most);
    }
    for (int n = 1; n <= most && !gave_up_; ++n) {
      if (few_numbers && !std::binary_search(likely_.begin(), likely_.end(), n)) {
        continue;
      }
      Label label = before;
      label.cost += terms_.of(item_, v, offer, n);
      if (!narrow_) {
        CompletionBound::Held with = before_it;
        const double rest = memory_.bound.rest(v, demand, with.add(pack, n));
        Cost least = label.cost;
        least.value += static_cast<Fine>(std::floor(rest)) - 1 - refund;
        if (least > limit_) {
          // Once all is served, more packs only cost more (but for those that make a deal full).
          const bool all = with.reach - pack.reach >= static_cast<double>(item_.wanted);
          if (all && !item_.item->offers[offer].cost.has_deal()) {
            break;
          }
          continue;
        }
      }
      add_bought(before, label, v, source, {n, item_.sources[source].bought() * n});
    }
  }

  void weigh(const Label& before, std::size_t v, std::size_t source, OfferId offer, bool required) {
    const std::vector<Weighing::Weighed>& choices =
        weighing_.choices(held(before.first), held(before.end), v, source, required);
    for (const Weighing::Weighed& weighed : choices) {
      if (gave_up_ || buys_nothing_) {
        return;
      }
      Label label = before;
      label.cost += terms_.of(item_, v, offer, weighed.steps);
      add_bought(before, label, v, source, weighed);
      Label& bought = memory_.front.back();
      if (!narrow_ && estimate(bought, v, item_.first_served[v]) > limit_) {
        memory_.front.pop_back();
      }
    }
  }

  /// Adds a label that holds more than the one before it.
  void add_bought(const Label& before, Label label, std::size_t v, std::size_t source,
                  const Weighing::Weighed& bought) {
    Holdings& now = memory_.branch.held;
    now.assign(held(before.first), held(before.end));
    const Holding more = service_.bought(v, source, bought.amount);
    label.cost.value += service_.wasted(more);
    put(now, more);
    label.first = static_cast<std::uint32_t>(memory_.pool.size());
    memory_.pool.insert(memory_.pool.end(), now.begin(), now.end());
    label.end = static_cast<std::uint32_t>(memory_.pool.size());
    memory_.steps.push_back({before.step, static_cast<std::uint32_t>(v),
                             item_.sources[source].offer, bought.steps, 0, 0});
    label.step = static_cast<std::int32_t>(memory_.steps.size()) - 1;
    add(label);
  }

  /// Numbers of packs that serve everything up to some demand, just so or not quite.
  void find_likely_numbers(std::size_t v, std::size_t source, double reach, int most) {
    likely_.clear();
    const double pack =
        static_cast<double>(item_.sources[source].bought()) * item_.sources[source].reach;
    for (std::size_t d = item_.first_served[v]; d < item_.end_of_use[source]; ++d) {
      reach -= static_cast<double>(item_.demands[d].amount);
      const double packs = std::ceil(-reach / pack);
      for (const double n : {packs - 1, packs, packs + 1}) {
        if (n >= 1 && n <= most) {
          likely_.push_back(static_cast<int>(n));
        }
      }
    }
    std::sort(likely_.begin(), likely_.end());
  }

  /// Leaves the most promising labels, before a demand or the next visit.
  void narrow(std::size_t visit, std::size_t demand, std::size_t labels) {
    std::vector<Label>& front = memory_.front;
    if (front.size() <= labels) {
      return;
    }
    auto& ranks = memory_.ranks;
    ranks.clear();
    for (std::size_t i = 0; i < front.size(); ++i) {
      ranks.emplace_back(estimate(front[i], visit, demand), i);
    }
    std::partial_sort(ranks.begin(), ranks.begin() + static_cast<std::ptrdiff_t>(labels),
                      ranks.end());
    memory_.kept.clear();
    for (std::size_t k = 0; k < labels; ++k) {
      memory_.kept.push_back(front[ranks[k].second]);
    }
    front.swap(memory_.kept);
  }

  Outcome best() const {
    Outcome result;
    std::int32_t last = -1;
    for (const Label& label : memory_.front) {
      if (label.cost < result.cost) {
        result.cost = label.cost;
        last = label.step;
      }
    }
    if (!is_possible(result.cost)) {
      return result;
    }
    result.plan.apart = room_ != nullptr;
    std::vector<std::int32_t> path;
    for (; last >= 0; last = memory_.steps[static_cast<std::size_t>(last)].parent) {
      path.push_back(last);
    }
    std::reverse(path.begin(), path.end());
    for (const std::int32_t at : path) {
      const PathStep& step = memory_.steps[static_cast<std::size_t>(at)];
      if (step.packs > 0) {
        result.plan.buys.push_back({step.visit, step.offer, step.packs});
      }
      result.plan.choices.insert(result.plan.choices.end(), memory_.choices.begin() + step.choices,
                                 memory_.choices.begin() + step.choices_end);
    }
    return result;
  }

  const Prepared& item_;
  const Terms& terms_;
  Workspace::Memory& memory_;
  const RoomRates* room_;
  Dominance dominance_;
  Service<PricedTrack> service_;
  Weighing weighing_;
  std::int64_t& work_;
  std::size_t most_;
  Cost enough_;
  std::size_t may_make_ = 0;
  std::vector<int> most_packs_;
  bool narrow_ = false;
  bool strong_ = false;
  std::size_t width_ = 1;
  bool gave_up_ = false;
  bool buys_nothing_ = false;
  std::vector<int> likely_;
  std::size_t made_ = 0;
  Cost limit_ = impossible;
  CompletionBound::Held start_held_;
  Fine start_cost_ = 0;
  /// The best bound of passes that were not finished.
  Cost reached_{std::numeric_limits<Fine>::min() / 4, 0};
};

} // namespace

Outcome cheapest(const Prepared& item, const Terms& terms, Workspace& workspace, std::int64_t& work,
                 std::size_t most, Cost enough, bool many) {
  if (item.barred) {
    return {};
  }
  return LabelSetting(item, terms, workspace.memory(), work, most, enough).run(many);
}

} // namespace manciple::buying
