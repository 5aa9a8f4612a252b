#include "scheduling/search.hpp"

#include "scheduling/branching.hpp"
#include "scheduling/conflict_analysis.hpp"
#include "scheduling/edge_finding.hpp"
#include "scheduling/precedences.hpp"
#include "scheduling/timetable.hpp"

#include <array>
#include <map>
#include <utility>

namespace manciple::scheduling {
namespace {

enum class Outcome {
  found,      // a schedule that short
  refuted,    // none is that short
  impossible, // none is shorter than the one we have
  restart,
  spent
};

// The sequence of Luby, Sinclair and Zuckerman 1993: 1 1 2 1 1 2 4 ...
std::int64_t luby(std::int64_t i) {
  std::int64_t size = 1;
  while (size < i + 1) {
    size = 2 * size + 1;
  }
  while (size - 1 != i) {
    size = (size - 1) / 2;
    i %= size;
  }
  return (size + 1) / 2;
}

class Search {
public:
  Search(const ActivityNetwork& network, const Budget& budget, Schedule& schedule);
  void run();

private:
  void add_starts();
  void add_order();
  void break_symmetry();
  void add_disjunctions();
  void add_resources();

  bool begin();
  bool propagate();
  bool propagate_timetables();
  bool propagate_edge_finding();
  Outcome solve_within(int length, std::int64_t conflicts);
  bool learn();
  void take_incumbent();
  void back(int level);
  [[nodiscard]] std::vector<int> guide() const;
  [[nodiscard]] Bound at_most(int length) const { return {other(end_), -length}; }
  [[nodiscard]] bool spent();

  const ActivityNetwork& network_;
  const Budget& budget_;
  Schedule& incumbent_;
  Trail trail_;
  Side end_ = 0; // of the whole
  struct Order { // is the second after (or before) the first?
    std::size_t first = 0;
    std::size_t second = 0;
    Disjunction disjunction;
  };
  std::vector<Order> orders_; // a variable each, after the end
  Precedences precedences_;
  struct Resource {
    std::array<Cumulative, 2> constraints; // forwards, backwards
    bool table_due = true;
    bool energy_due = true;
    int energy_wait = 0; // calls to pass over, as the last ones found nothing
    int energy_pause = 0;
  };
  std::vector<Resource> resources_;
  std::vector<std::vector<std::size_t>> on_; // by side: resources with an interval there
  Timetable timetable_;
  EdgeFinding edge_finding_;
  LearntClauses clauses_;
  ConflictAnalysis analysis_;
  Branching branching_;
  std::size_t propagated_ = 0; // entries of the trail
  std::int64_t ticks_ = 0;
  bool out_of_time_ = false;
};

Search::Search(const ActivityNetwork& network, const Budget& budget, Schedule& schedule)
    : network_(network), budget_(budget), incumbent_(schedule), clauses_(0), branching_(0, {}) {
  add_starts();
  add_order();
  break_symmetry();
  add_disjunctions();
  precedences_.close(trail_.sides());
  add_resources();
  clauses_ = LearntClauses(trail_.sides());
  branching_ = Branching(network_.tasks.size(), guide());
}

void Search::add_starts() {
  const int longest = incumbent_.length - 1;
  for (const Interval& task : network_.tasks) {
    trail_.add(task.head, longest - task.tail);
  }
  end_ = trail_.add(incumbent_.bound, longest);
}

Side start_of(std::size_t task) {
  return static_cast<Side>(2 * task);
}

void Search::add_order() {
  for (std::size_t i = 0; i < network_.tasks.size(); ++i) {
    for (const std::size_t before : network_.tasks[i].before) {
      precedences_.always(start_of(before), start_of(i), network_.tasks[before].minutes);
    }
    precedences_.always(start_of(i), end_, network_.tasks[i].tail);
  }
}

// Breaks symmetry: of tasks that are alike in everything, the first in the project goes first.
void Search::break_symmetry() {
  using Likeness = std::vector<std::size_t>;
  std::map<Likeness, std::size_t> last;
  for (std::size_t i = 0; i < network_.tasks.size(); ++i) {
    const Interval& task = network_.tasks[i];
    Likeness likeness{static_cast<std::size_t>(task.minutes), task.parts.size(),
                      task.before.size()};
    for (const Part& part : task.parts) {
      likeness.insert(likeness.end(), {static_cast<std::size_t>(part.offset),
                                       static_cast<std::size_t>(part.minutes), part.takes.size()});
      for (const Requirement& requirement : part.takes) {
        likeness.insert(likeness.end(),
                        {requirement.resource, static_cast<std::size_t>(requirement.amount)});
      }
    }
    likeness.insert(likeness.end(), task.before.begin(), task.before.end());
    likeness.insert(likeness.end(), task.after.begin(), task.after.end());
    const auto [last_alike, alone] = last.try_emplace(std::move(likeness), i);
    if (!alone) {
      precedences_.always(start_of(last_alike->second), start_of(i), 0);
      last_alike->second = i;
    }
  }
}

void Search::add_disjunctions() {
  for (std::size_t i = 0; i < network_.tasks.size(); ++i) {
    for (std::size_t j = i + 1; j < network_.tasks.size(); ++j) {
      for (const Disjunction disjunction :
           disjunctions(network_.tasks[i], network_.tasks[j], network_.capacity)) {
        const Side order = trail_.add(0, 1);
        orders_.push_back({i, j, disjunction});
        precedences_.when({order, 1}, start_of(i), start_of(j), disjunction.high);
        precedences_.when({other(order), 0}, start_of(j), start_of(i), -disjunction.low);
      }
    }
  }
}

void Search::add_resources() {
  on_.resize(trail_.sides());
  for (std::size_t r = 0; r < network_.capacity.size(); ++r) {
    Cumulative constraint;
    constraint.capacity = network_.capacity[r];
    std::int64_t all = 0; // that could be taken at once
    for (std::size_t i = 0; i < network_.tasks.size(); ++i) {
      int most = 0;
      for (const Part& part : network_.tasks[i].parts) {
        for (const Requirement& requirement : part.takes) {
          if (requirement.resource == r) {
            constraint.intervals.push_back(
                {start_of(i), part.offset, part.minutes, requirement.amount});
            most = std::max(most, requirement.amount);
          }
        }
      }
      all += most;
    }
    if (all <= constraint.capacity) {
      continue;
    }
    // Neighbours that take the same of this resource are one interval.
    std::vector<TaskInterval> joined;
    for (const TaskInterval& interval : constraint.intervals) {
      if (!joined.empty() && joined.back().side == interval.side &&
          joined.back().take == interval.take &&
          joined.back().offset + joined.back().minutes == interval.offset) {
        joined.back().minutes += interval.minutes;
      } else {
        joined.push_back(interval);
      }
    }
    constraint.intervals = std::move(joined);
    Cumulative mirror{constraint.capacity, {}};
    for (const TaskInterval& interval : constraint.intervals) {
      mirror.intervals.push_back(mirrored(interval));
      for (const Side side : {interval.side, other(interval.side)}) {
        if (on_[side].empty() || on_[side].back() != resources_.size()) {
          on_[side].push_back(resources_.size());
        }
      }
    }
    resources_.push_back({{std::move(constraint), std::move(mirror)}, true, true});
  }
}

// What follows from the bounds that the variables began with: no entry of the trail says so.
bool Search::begin() {
  for (Side side = 0; side < trail_.sides(); ++side) {
    if (!precedences_.propagate(trail_, side)) {
      return false;
    }
  }
  return true;
}

// Propagates to the fixed point, the cheap constraints first.
bool Search::propagate() {
  do {
    for (; propagated_ < trail_.size(); ++propagated_) {
      const Side side = trail_.entry(propagated_).side;
      if (side < on_.size()) {
        for (const std::size_t r : on_[side]) {
          resources_[r].table_due = resources_[r].energy_due = true;
        }
      }
      if (!precedences_.propagate(trail_, side) || !clauses_.propagate(trail_, side)) {
        return false;
      }
    }
    if (!propagate_timetables()) {
      return false;
    }
    if (propagated_ == trail_.size() && !propagate_edge_finding()) {
      return false;
    }
  } while (propagated_ < trail_.size());
  return true;
}

bool Search::propagate_timetables() {
  const std::size_t before = trail_.size();
  for (Resource& resource : resources_) {
    if (std::exchange(resource.table_due, false)) {
      for (const Cumulative& constraint : resource.constraints) {
        if (!timetable_.propagate(trail_, constraint)) {
          return false;
        }
      }
      if (trail_.size() > before) {
        return true;
      }
    }
  }
  return true;
}

// Costs more and often finds nothing, depending on the project: the longer it has found nothing,
// the less often it is asked.
bool Search::propagate_edge_finding() {
  const std::size_t before = trail_.size();
  for (Resource& resource : resources_) {
    if (!std::exchange(resource.energy_due, false)) {
      continue;
    }
    if (resource.energy_wait > 0) {
      --resource.energy_wait;
      continue;
    }
    for (const Cumulative& constraint : resource.constraints) {
      if (!edge_finding_.propagate(trail_, constraint)) {
        resource.energy_pause = 0;
        return false;
      }
    }
    if (trail_.size() > before) {
      resource.energy_pause = 0;
      return true;
    }
    constexpr int longest_pause = 31;
    resource.energy_pause = std::min(longest_pause, 2 * resource.energy_pause + 1);
    resource.energy_wait = resource.energy_pause;
  }
  return true;
}

// A level is left only when all conclusions are drawn, so on coming back there are none to draw.
void Search::back(int level) {
  trail_.back(level);
  branching_.back(level);
  propagated_ = trail_.size();
  for (Resource& resource : resources_) {
    resource.table_due = resource.energy_due = false;
  }
}

// False if the conflict does not depend on any assumption.
bool Search::learn() {
  if (trail_.level() == 0) {
    return false;
  }
  const LearntClause learnt = analysis_.analyse(trail_, clauses_);
  if (learnt.bounds.empty()) {
    return false;
  }
  branching_.bump_met(analysis_.bump_met());
  branching_.decay();
  clauses_.decay();
  back(learnt.level);
  return clauses_.add(trail_, learnt);
}

std::vector<int> Search::guide() const {
  std::vector<int> out = incumbent_.start;
  out.push_back(incumbent_.length);
  for (const Order& order : orders_) {
    const int between = incumbent_.start[order.second] - incumbent_.start[order.first];
    out.push_back(between >= order.disjunction.high ? 1 : 0);
  }
  return out;
}

void Search::take_incumbent() {
  for (std::size_t i = 0; i < network_.tasks.size(); ++i) {
    incumbent_.start[i] = trail_.at(start_of(i));
  }
  incumbent_.length = trail_.at(end_);
  branching_.guide(guide());
}

bool Search::spent() {
  if (++ticks_ % 64 == 0 && std::chrono::steady_clock::now() >= budget_.deadline) {
    out_of_time_ = true;
  }
  return out_of_time_ || incumbent_.nodes >= budget_.nodes;
}

// A schedule of at most that length, or a proof that there is none, within some conflicts.
Outcome Search::solve_within(int length, std::int64_t conflicts) {
  const Bound assumption = at_most(length);
  while (true) {
    if (spent()) {
      return Outcome::spent;
    }
    if (!propagate()) {
      if (!learn()) {
        return Outcome::impossible;
      }
      --conflicts;
      continue;
    }
    if (trail_.level() == 0 && trail_.fails(assumption)) {
      return Outcome::refuted;
    }
    if (conflicts <= 0) {
      return Outcome::restart;
    }
    Bound choice = assumption;
    if (trail_.holds(assumption) && !branching_.next(trail_, choice)) {
      take_incumbent();
      return Outcome::found;
    }
    ++incumbent_.nodes;
    trail_.decide(choice);
  }
}

// Turns about: is there a schedule as short as the bound? Is there one shorter than ours? The first
// raises the bound or ends the search, the second shortens the schedule or ends the search.
void Search::run() {
  constexpr std::int64_t unit = 100; // conflicts
  std::size_t room_for_clauses = 2000;
  bool open = begin();
  for (std::int64_t round = 0; open && !incumbent_.proven(); ++round) {
    const int length = round % 2 == 0 ? incumbent_.bound : incumbent_.length - 1;
    const Outcome outcome = solve_within(length, unit * luby(round / 2));
    if (outcome == Outcome::impossible) {
      break;
    }
    back(0);
    open = outcome != Outcome::found || trail_.set(at_most(incumbent_.length - 1), {});
    open = open && propagate();
    if (!open) {
      break;
    }
    incumbent_.bound = std::max(incumbent_.bound, trail_.at(end_));
    if (outcome == Outcome::spent) {
      return;
    }
    if (clauses_.size() > room_for_clauses) {
      open = clauses_.reduce(trail_);
      room_for_clauses += room_for_clauses / 10;
    }
  }
  incumbent_.bound = incumbent_.length;
}

} // namespace

void improve(const ActivityNetwork& network, const Budget& budget, Schedule& schedule) {
  Search(network, budget, schedule).run();
}

} // namespace manciple::scheduling
