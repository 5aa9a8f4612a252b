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
  Search(const Network& network, const Budget& budget, Schedule& schedule);
  void run();

private:
  void add_starts();
  void add_order();
  void add_twins();
  void add_clashes();
  void add_demands();

  bool begin();
  bool follow();
  bool follow_tables();
  bool follow_energy();
  Outcome look(int length, std::int64_t contradictions);
  bool learn();
  void keep();
  void back(int level);
  [[nodiscard]] std::vector<int> guide() const;
  [[nodiscard]] Bound at_most(int length) const { return {other(end_), -length}; }
  [[nodiscard]] bool spent();

  const Network& network_;
  const Budget& budget_;
  Schedule& schedule_;
  Trail trail_;
  Side end_ = 0; // of the whole
  struct Order { // is the second after (or before) the clash?
    std::size_t first = 0;
    std::size_t second = 0;
    Clash clash;
  };
  std::vector<Order> orders_; // a variable each, after the end
  Distances distances_;
  struct Resource {
    std::array<Demand, 2> demands; // forwards, backwards
    bool table_due = true;
    bool energy_due = true;
    int energy_wait = 0; // calls to pass over, as the last ones found nothing
    int energy_pause = 0;
  };
  std::vector<Resource> resources_;
  std::vector<std::vector<std::size_t>> on_; // by side: resources with a stretch there
  Timetable timetable_;
  Energy energy_;
  Clauses clauses_;
  Teacher teacher_;
  Branching branching_;
  std::size_t followed_ = 0; // entries of the trail
  std::int64_t ticks_ = 0;
  bool out_of_time_ = false;
};

Search::Search(const Network& network, const Budget& budget, Schedule& schedule)
    : network_(network), budget_(budget), schedule_(schedule), clauses_(0), branching_(0, {}) {
  add_starts();
  add_order();
  add_twins();
  add_clashes();
  distances_.close(trail_.sides());
  add_demands();
  clauses_ = Clauses(trail_.sides());
  branching_ = Branching(network_.steps.size(), guide());
}

void Search::add_starts() {
  const int longest = schedule_.length - 1;
  for (const Step& step : network_.steps) {
    trail_.add(step.head, longest - step.tail);
  }
  end_ = trail_.add(schedule_.bound, longest);
}

Side start_of(std::size_t step) {
  return static_cast<Side>(2 * step);
}

void Search::add_order() {
  for (std::size_t i = 0; i < network_.steps.size(); ++i) {
    for (const std::size_t before : network_.steps[i].before) {
      distances_.always(start_of(before), start_of(i), network_.steps[before].minutes);
    }
    distances_.always(start_of(i), end_, network_.steps[i].tail);
  }
}

// Of steps that are alike in everything, the first in the project goes first.
void Search::add_twins() {
  using Likeness = std::vector<std::size_t>;
  std::map<Likeness, std::size_t> last;
  for (std::size_t i = 0; i < network_.steps.size(); ++i) {
    const Step& step = network_.steps[i];
    Likeness likeness{static_cast<std::size_t>(step.minutes), step.parts.size(),
                      step.before.size()};
    for (const Part& part : step.parts) {
      likeness.insert(likeness.end(), {static_cast<std::size_t>(part.offset),
                                       static_cast<std::size_t>(part.minutes), part.takes.size()});
      for (const Taking& taking : part.takes) {
        likeness.insert(likeness.end(), {taking.resource, static_cast<std::size_t>(taking.amount)});
      }
    }
    likeness.insert(likeness.end(), step.before.begin(), step.before.end());
    likeness.insert(likeness.end(), step.after.begin(), step.after.end());
    const auto [twin, alone] = last.try_emplace(std::move(likeness), i);
    if (!alone) {
      distances_.always(start_of(twin->second), start_of(i), 0);
      twin->second = i;
    }
  }
}

void Search::add_clashes() {
  for (std::size_t i = 0; i < network_.steps.size(); ++i) {
    for (std::size_t j = i + 1; j < network_.steps.size(); ++j) {
      for (const Clash clash : clashes(network_.steps[i], network_.steps[j], network_.capacity)) {
        const Side order = trail_.add(0, 1);
        orders_.push_back({i, j, clash});
        distances_.when({order, 1}, start_of(i), start_of(j), clash.high);
        distances_.when({other(order), 0}, start_of(j), start_of(i), -clash.low);
      }
    }
  }
}

void Search::add_demands() {
  on_.resize(trail_.sides());
  for (std::size_t r = 0; r < network_.capacity.size(); ++r) {
    Demand demand;
    demand.capacity = network_.capacity[r];
    std::int64_t all = 0; // that could be taken at once
    for (std::size_t i = 0; i < network_.steps.size(); ++i) {
      int most = 0;
      for (const Part& part : network_.steps[i].parts) {
        for (const Taking& taking : part.takes) {
          if (taking.resource == r) {
            demand.stretches.push_back({start_of(i), part.offset, part.minutes, taking.amount});
            most = std::max(most, taking.amount);
          }
        }
      }
      all += most;
    }
    if (all <= demand.capacity) {
      continue;
    }
    // Neighbours that take the same of this resource are one stretch.
    std::vector<Stretch> joined;
    for (const Stretch& stretch : demand.stretches) {
      if (!joined.empty() && joined.back().side == stretch.side &&
          joined.back().take == stretch.take &&
          joined.back().offset + joined.back().minutes == stretch.offset) {
        joined.back().minutes += stretch.minutes;
      } else {
        joined.push_back(stretch);
      }
    }
    demand.stretches = std::move(joined);
    Demand mirror{demand.capacity, {}};
    for (const Stretch& stretch : demand.stretches) {
      mirror.stretches.push_back(backwards(stretch));
      for (const Side side : {stretch.side, other(stretch.side)}) {
        if (on_[side].empty() || on_[side].back() != resources_.size()) {
          on_[side].push_back(resources_.size());
        }
      }
    }
    resources_.push_back({{std::move(demand), std::move(mirror)}, true, true});
  }
}

// What follows from the bounds that the variables began with: no entry of the trail says so.
bool Search::begin() {
  for (Side side = 0; side < trail_.sides(); ++side) {
    if (!distances_.follow(trail_, side)) {
      return false;
    }
  }
  return true;
}

// All conclusions, the cheap ones first.
bool Search::follow() {
  do {
    for (; followed_ < trail_.size(); ++followed_) {
      const Side side = trail_.entry(followed_).side;
      if (side < on_.size()) {
        for (const std::size_t r : on_[side]) {
          resources_[r].table_due = resources_[r].energy_due = true;
        }
      }
      if (!distances_.follow(trail_, side) || !clauses_.follow(trail_, side)) {
        return false;
      }
    }
    if (!follow_tables()) {
      return false;
    }
    if (followed_ == trail_.size() && !follow_energy()) {
      return false;
    }
  } while (followed_ < trail_.size());
  return true;
}

bool Search::follow_tables() {
  const std::size_t before = trail_.size();
  for (Resource& resource : resources_) {
    if (std::exchange(resource.table_due, false)) {
      for (const Demand& demand : resource.demands) {
        if (!timetable_.follow(trail_, demand)) {
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
bool Search::follow_energy() {
  const std::size_t before = trail_.size();
  for (Resource& resource : resources_) {
    if (!std::exchange(resource.energy_due, false)) {
      continue;
    }
    if (resource.energy_wait > 0) {
      --resource.energy_wait;
      continue;
    }
    for (const Demand& demand : resource.demands) {
      if (!energy_.follow(trail_, demand)) {
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
  followed_ = trail_.size();
  for (Resource& resource : resources_) {
    resource.table_due = resource.energy_due = false;
  }
}

// False if the contradiction does not depend on any assumption.
bool Search::learn() {
  if (trail_.level() == 0) {
    return false;
  }
  const Lesson lesson = teacher_.teach(trail_, clauses_);
  if (lesson.bounds.empty()) {
    return false;
  }
  branching_.met(teacher_.met());
  branching_.fade();
  clauses_.fade();
  back(lesson.level);
  return clauses_.add(trail_, lesson);
}

std::vector<int> Search::guide() const {
  std::vector<int> out = schedule_.start;
  out.push_back(schedule_.length);
  for (const Order& order : orders_) {
    const int between = schedule_.start[order.second] - schedule_.start[order.first];
    out.push_back(between >= order.clash.high ? 1 : 0);
  }
  return out;
}

void Search::keep() {
  for (std::size_t i = 0; i < network_.steps.size(); ++i) {
    schedule_.start[i] = trail_.at(start_of(i));
  }
  schedule_.length = trail_.at(end_);
  branching_.guide(guide());
}

bool Search::spent() {
  if (++ticks_ % 64 == 0 && std::chrono::steady_clock::now() >= budget_.deadline) {
    out_of_time_ = true;
  }
  return out_of_time_ || schedule_.nodes >= budget_.nodes;
}

// A schedule of at most that length, or a proof that there is none, within some contradictions.
Outcome Search::look(int length, std::int64_t contradictions) {
  const Bound wish = at_most(length);
  while (true) {
    if (spent()) {
      return Outcome::spent;
    }
    if (!follow()) {
      if (!learn()) {
        return Outcome::impossible;
      }
      --contradictions;
      continue;
    }
    if (trail_.level() == 0 && trail_.fails(wish)) {
      return Outcome::refuted;
    }
    if (contradictions <= 0) {
      return Outcome::restart;
    }
    Bound choice = wish;
    if (trail_.holds(wish) && !branching_.next(trail_, choice)) {
      keep();
      return Outcome::found;
    }
    ++schedule_.nodes;
    trail_.decide(choice);
  }
}

// Turns about: is there a schedule as short as the bound? Is there one shorter than ours? The first
// raises the bound or ends the search, the second shortens the schedule or ends the search.
void Search::run() {
  constexpr std::int64_t unit = 100; // contradictions
  std::size_t room_for_lessons = 2000;
  bool open = begin();
  for (std::int64_t round = 0; open && !schedule_.proven(); ++round) {
    const int length = round % 2 == 0 ? schedule_.bound : schedule_.length - 1;
    const Outcome outcome = look(length, unit * luby(round / 2));
    if (outcome == Outcome::impossible) {
      break;
    }
    back(0);
    open = outcome != Outcome::found || trail_.set(at_most(schedule_.length - 1), {});
    open = open && follow();
    if (!open) {
      break;
    }
    schedule_.bound = std::max(schedule_.bound, trail_.at(end_));
    if (outcome == Outcome::spent) {
      return;
    }
    if (clauses_.size() > room_for_lessons) {
      open = clauses_.forget(trail_);
      room_for_lessons += room_for_lessons / 10;
    }
  }
  schedule_.bound = schedule_.length;
}

} // namespace

void improve(const Network& network, const Budget& budget, Schedule& schedule) {
  Search(network, budget, schedule).run();
}

} // namespace manciple::scheduling
