#include "buying/item/label_setting.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <tuple>

#include "buying/item/completion_bound.hpp"
#include "buying/item/service.hpp"
#include "buying/item/weighing.hpp"

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
/// Slots of the sums.
constexpr std::size_t pack_slots = 4;
constexpr std::array<std::size_t, 4> from_ranks{0, 1, 2, 4};

/// How a label came about, after step `parent`: by buying, or (packs = 0) by choices in a block.
struct Step {
  std::int32_t parent = -1;
  std::uint32_t visit = 0;
  OfferId offer;
  std::int32_t packs = 0;
  std::uint32_t choices = 0, choices_end = 0;
};

/// What is held stands in a pool.
struct Label {
  Cost cost;
  std::uint32_t first = 0, end = 0;
  std::int32_t step = -1;
};

} // namespace

struct Workspace::Memory {
  std::vector<Label> front, base, kept;
  std::vector<Label> passing; ///< by a stop that has its price
  std::vector<Summary> summaries;
  std::vector<Holding> pool;
  std::vector<Step> steps;
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
        room_(terms.room != nullptr && !terms.room->free() ? terms.room : nullptr),
        standing_(room_ == nullptr ? item.standing : item.standing_apart),
        service_(item, room_ == nullptr ? Lots::together : Lots::apart),
        weighing_(item),
        work_(work),
        most_(most),
        enough_(enough) {
    find_most();
    memory_.bound.prepare(item, terms, most_packs_);
  }

  Outcome run() {
    Outcome quick;
    if (item_.visits.size() > few_visits || item_.demands.size() > few_demands) {
      quick = narrow_pass();
      if (is_too_dear(quick)) {
        return quick;
      }
    }
    Outcome exact = exact_pass(quick.cost, std::min(most_, many_labels));
    std::size_t tried = many_labels;
    for (const std::size_t labels : {very_many_labels, most_}) {
      if (!gave_up_ || most_ <= tried) {
        break;
      }
      tried = labels;
      // A better bound first; then a better list to compare with, too.
      width_ = strong_ ? wide : 1;
      memory_.bound.strengthen();
      strong_ = true;
      Outcome better = narrow_pass();
      if (better.cost < quick.cost) {
        quick = std::move(better);
      }
      if (is_too_dear(quick)) {
        return quick;
      }
      exact = exact_pass(quick.cost, std::min(labels, most_));
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

private:
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

  static constexpr std::size_t narrow_labels = 8;
  /// After so many a better bound saves what it takes.
  static constexpr std::size_t many_labels = 512;
  /// And after so many more, a first pass that is so many times as wide.
  static constexpr std::size_t very_many_labels = 32 * many_labels;
  static constexpr std::size_t wide = 8;
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

  using Stretch = Service<PricedTrack>::Stretch;

  /// Goes through demands of a block from a label's state; makes a label of each way.
  void serve(PricedBranch& branch, std::size_t block, const Stretch& stretch, Cost cost,
             std::int32_t step) {
    branch.cost = 0;
    branch.track.room = 0;
    branch.choices.clear();
    service_.run(branch, stretch, [&](const PricedBranch& way) {
      Label label{cost, static_cast<std::uint32_t>(memory_.pool.size()), 0, step};
      label.cost.value += way.cost + way.track.room;
      memory_.pool.insert(memory_.pool.end(), way.held.begin(), way.held.end());
      label.end = static_cast<std::uint32_t>(memory_.pool.size());
      if (!stretch.last && too_dear(label, block, stretch.end)) {
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
      prune(memory_.front);
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
    const Stretch all = service_.block(block);
    Stretch one{all.begin, std::min(all.begin + 1, all.end), false};
    do {
      one.last = all.last && one.end == all.end;
      serve(block, one);
      if (narrow_ && one.end < all.end) {
        narrow(block, one.end, few_in_visit * width_);
      }
      one = {one.end, one.end + 1, false};
    } while (one.begin < all.end && !gave_up_);
  }

  void serve(std::size_t block, const Stretch& stretch) {
    memory_.base.swap(memory_.front);
    memory_.front.clear();
    PricedBranch& branch = memory_.branch;
    branch.track.rates = room_;
    for (std::size_t i = 0; i < memory_.base.size() && !gave_up_; ++i) {
      const Label label = memory_.base[i];
      branch.held.assign(held(label.first), held(label.end));
      serve(branch, block, stretch, label.cost, label.step);
    }
    prune(memory_.front);
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
    prune(memory_.front);
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

  /// Label a is no worse than b whatever follows: what it holds can stand in for all that b holds,
  /// and what it may cost more (for it may be given back less for what gives, and have to keep what
  /// it holds more) does not exceed what it is cheaper by.
  bool dominates(const Label& a, const Label& b) const {
    if (a.cost > b.cost) {
      return false;
    }
    Fine may_cost = 0;
    for (std::uint32_t j = b.first; j < b.end; ++j) {
      const Holding& other = memory_.pool[j];
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

  bool is_loose(const Holding& held) const {
    return !held.open && !item_.sources[held.source].comes_in_packs;
  }

  Summary summary_of(const Label& label) const {
    Summary out;
    for (std::uint32_t i = label.first; i < label.end; ++i) {
      const Holding& one = memory_.pool[i];
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
  static std::uint64_t key_hash(const Holding& held) {
    const auto day = [](Day of) { return static_cast<std::uint64_t>(of); };
    const std::uint64_t mixed = held.source + (day(held.until) << 8U) +
                                (day(held.frozen_until) << 24U) + (day(held.frozen_on) << 40U) +
                                (held.open ? 3U : 0U) + (held.thawed ? 7U : 0U);
    return mixed * 0x9e3779b97f4a7c15U; // 2^64 over the golden ratio
  }

  /// Of loose things that can stand in for this one, a holds no less than b.
  bool stands_in(const Label& a, const Label& b, const Holding& held) const {
    const Prepared::Standing standing = standing_[held.source];
    const auto sum = [&](const Label& label) {
      Amount amount = 0;
      for (std::uint32_t i = label.first; i < label.end; ++i) {
        const Holding& one = memory_.pool[i];
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

  const Holding* find(const Label& label, const Holding& like) const {
    for (std::uint32_t i = label.first; i < label.end; ++i) {
      if (memory_.pool[i].key() == like.key()) {
        return &memory_.pool[i];
      }
    }
    return nullptr;
  }

  /// Of packs, opened or not, the very same.
  bool has_as_much(const Label& a, const Holding& held, Fine& may_cost) const {
    const Holding* const same = find(a, held);
    if (same == nullptr || same->left < held.left || !same_size(*same, held)) {
      return false;
    }
    may_cost += value_of(std::max<Amount>(0, held.lent - same->lent), item_.item->lacking);
    return true;
  }

  /// What gives, of what is loose.
  Fine lent_less(const Label& a, const Label& b) const {
    const auto sum = [&](const Label& label) {
      Amount lent = 0;
      for (std::uint32_t i = label.first; i < label.end; ++i) {
        lent += is_loose(memory_.pool[i]) ? memory_.pool[i].lent : 0;
      }
      return lent;
    };
    return value_of(std::max<Amount>(0, sum(b) - sum(a)), item_.item->lacking);
  }

  /// What is left for the freezer of a label that has less of it may be too little for a bag.
  Fine thrown_away(const Label& a, const Label& b) const {
    const Item& facts = *item_.item;
    if (facts.least_frozen == 0 || to_freeze(a) >= to_freeze(b)) {
      return 0;
    }
    return value_of(facts.least_frozen, facts.salvage + facts.waste);
  }
  Amount to_freeze(const Label& label) const {
    Amount sum = 0;
    for (std::uint32_t i = label.first; i < label.end; ++i) {
      const Holding& one = memory_.pool[i];
      sum += service_.is_frozen_to_keep(one) ? one.free() : 0;
    }
    return sum;
  }

  /// What a holds more than b may have to be kept, and is used first where it goes off first, while
  /// others wait: the priced room of so much from the day on which the oldest came home, to the
  /// end.
  Fine staying(const Label& a, const Label& b) const {
    Fine sum = 0;
    for (std::uint32_t i = a.first; i < a.end; ++i) {
      const Holding& held = memory_.pool[i];
      const Source& from = item_.sources[held.source];
      const Holding* const same = find(b, held);
      Amount more = held.left - (same == nullptr ? 0 : same->left);
      if (is_loose(held)) {
        // The oldest of its class counts for all of it.
        const std::size_t stands_in = standing_[held.source].stands_in;
        const bool first = std::none_of(
            memory_.pool.begin() + a.first, memory_.pool.begin() + i, [&](const Holding& other) {
              return is_loose(other) && standing_[other.source].stands_in == stands_in;
            });
        more = first ? of_class(a, stands_in) - of_class(b, stands_in) : 0;
      }
      if (more > 0) {
        // Together with what is held anyway it may be enough for the freezer.
        if (item_.item->least_frozen > 0 && service_.is_frozen_to_keep(held)) {
          more += item_.item->least_frozen;
        }
        const Day end = item_.last_day + 1;
        sum += room_->of({more, from.place, false, from.home, end}) +
               room_->of({more, Place::freezer, true, from.home, end});
      }
    }
    return sum;
  }

  Amount of_class(const Label& label, std::size_t stands_in) const {
    Amount sum = 0;
    for (std::uint32_t i = label.first; i < label.end; ++i) {
      const Holding& one = memory_.pool[i];
      sum += is_loose(one) && standing_[one.source].stands_in == stands_in ? one.left : 0;
    }
    return sum;
  }

  /// What was weighed is one pack, which is to be opened as a whole.
  bool same_size(const Holding& a, const Holding& b) const {
    const Source& source = item_.sources[a.source];
    const bool one_pack = !a.open && source.comes_in_packs && !source.stock &&
                          item_.item->offers[source.offer].by_weight;
    return !one_pack || a.left == b.left;
  }

  /// Leaves what no other label dominates, the cheapest first.
  void prune(std::vector<Label>& labels) {
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
    work_ += static_cast<std::int64_t>(looks_ / looks_per_work);
    looks_ %= looks_per_work;
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

  /// By source: so many packs need be bought there at most. For they must be of use, and another
  /// visit may do as well.
  ///
  /// If an earlier visit sells the same offer under the same terms, and what is bought there can do
  /// the same from this visit on, all of it may be bought there, unless room costs something. If a
  /// later one does, and spoils no sooner, only what is needed before that need be bought here
  /// (where room costs something, only if it does just the same: what keeps longer may have to stay
  /// longer). Either goes for offers without a limit, at visits that are open and free to use.
  void find_most() {
    most_packs_ = item_.useful_packs;
    if (item_.required) {
      const Visit& visit = item_.visits[item_.required->visit];
      for (std::size_t o = 0; o < visit.offers.size(); ++o) {
        if (visit.offers[o] == item_.required->offer) {
          most_packs_[visit.sources[o]] = std::max(most_packs_[visit.sources[o]], 1);
        }
      }
      return;
    }
    // How much is weighed out depends on what has been bought before (see Weighing).
    if (std::any_of(item_.item->offers.begin(), item_.item->offers.end(),
                    [](const Offer& offer) { return offer.by_weight; })) {
      return;
    }
    const bool earlier = room_ == nullptr && !item_.item->buy_late;
    if (earlier && may_stint()) {
      return; // early if it is all the same, late if not
    }
    for (std::size_t v = 0; v < item_.visits.size(); ++v) {
      const Visit& visit = item_.visits[v];
      for (std::size_t o = 0; o < visit.offers.size(); ++o) {
        const Offer& offer = item_.item->offers[visit.offers[o]];
        if (offer.limit < std::numeric_limits<int>::max() || !is_free(v)) {
          continue;
        }
        // More lines count for less at the till.
        const bool divides = !offer.cost.has_deal() && offer.life.ready == 0 &&
                             (offer.till.less == 0 || terms_.discount_at(v) == 0);
        if (earlier && has_earlier_twin(v, o)) {
          most_packs_[visit.sources[o]] = 0;
        } else if (!earlier && divides) {
          cap_by_later_twin(v, o);
        }
      }
    }
  }

  /// What is there serves a demand rather than that something lent is taken back for it. So it may
  /// be better to have it later: the demand does with what was lent, which is eaten otherwise.
  bool may_stint() const {
    return std::any_of(item_.demands.begin(), item_.demands.end(),
                       [](const Demand& demand) { return demand.give > 0; }) &&
           std::any_of(item_.sources.begin(), item_.sources.end(),
                       [](const Source& source) { return source.comes_in_packs || source.stock; });
  }

  bool is_free(std::size_t v) const { return terms_.charge[v] == Cost{}; }

  bool has_earlier_twin(std::size_t v, std::size_t o) const {
    const Visit& visit = item_.visits[v];
    for (std::size_t u = 0; u < v; ++u) {
      const Visit& other = item_.visits[u];
      const auto same = std::find(other.offers.begin(), other.offers.end(), visit.offers[o]);
      if (same == other.offers.end() || !is_free(u) ||
          terms_.discount_at(u) != terms_.discount_at(v)) {
        continue;
      }
      const std::size_t twin = other.sources[static_cast<std::size_t>(same - other.offers.begin())];
      if (item_.same_as(v, twin) == item_.same_as(v, visit.sources[o])) {
        return true;
      }
    }
    return false;
  }

  void cap_by_later_twin(std::size_t v, std::size_t o) {
    const Visit& visit = item_.visits[v];
    const std::size_t source = visit.sources[o];
    for (std::size_t u = v + 1; u < item_.visits.size(); ++u) {
      const Visit& other = item_.visits[u];
      const auto same = std::find(other.offers.begin(), other.offers.end(), visit.offers[o]);
      if (same == other.offers.end() || !is_free(u) ||
          terms_.discount_at(u) != terms_.discount_at(v)) {
        continue;
      }
      const std::size_t twin = other.sources[static_cast<std::size_t>(same - other.offers.begin())];
      if (room_ != nullptr && item_.same_as(u, twin) != item_.same_as(u, source)) {
        continue;
      }
      most_packs_[source] =
          std::min(most_packs_[source],
                   item_.packs_for(source, item_.first_served[v], item_.first_served[u]));
      return;
    }
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
      const Step& step = memory_.steps[static_cast<std::size_t>(at)];
      if (step.packs > 0) {
        result.plan.buys.push_back({step.visit, step.offer, step.packs});
      }
      result.plan.choices.insert(result.plan.choices.end(), memory_.choices.begin() + step.choices,
                                 memory_.choices.begin() + step.choices_end);
    }
    return result;
  }

  static constexpr std::size_t most_looks = 128;
  static constexpr std::size_t looks_per_work = 16;
  /// Comparing two labels in full takes so many times as long as by their summaries.
  static constexpr std::size_t looks_per_close_look = 8;

  const Prepared& item_;
  const Terms& terms_;
  Workspace::Memory& memory_;
  const RoomRates* room_;
  const std::vector<Prepared::Standing>& standing_;
  Service<PricedTrack> service_;
  Weighing weighing_;
  std::int64_t& work_;
  std::size_t most_;
  Cost enough_;
  std::size_t may_make_ = 0;
  std::size_t looks_ = 0;
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
                 std::size_t most, Cost enough) {
  if (item.barred) {
    return {};
  }
  return LabelSetting(item, terms, workspace.memory(), work, most, enough).run();
}

} // namespace manciple::buying
