#include "prep/placing.hpp"

#include "prep/one_by_one.hpp"

#include <algorithm>
#include <initializer_list>
#include <limits>

namespace manciple::prep {
namespace {

// Work of the search for one session or day, counted and not timed; and once something has been
// mended, when nobody asks for a bound: more makes sessions no shorter.
constexpr std::int64_t most_nodes = 2'000;
constexpr std::int64_t most_nodes_mended = 200;
// An oven stays hot so long for what comes next. Common practice, no source.
constexpr int stays_hot = 20; // minutes

// Jobs that follow each other without a break, with what heats the oven for them.
struct Group {
  std::vector<std::size_t> jobs;
  std::vector<int> offset; // of each job from the group's start
  std::vector<Stretch> minutes;
  std::vector<Row> rows; // by minute
};

// Where something stands in an oven.
struct InOven {
  int from = 0;
  int until = 0;
  std::size_t oven = 0; // the resource
  int places = 0;
  int fahrenheit = 0;
  std::size_t job = 0;
  bool warms = false;
};

// When a group has an oven with several places at a temperature.
struct AtHeat {
  std::size_t group = 0;
  std::size_t oven = 0; // the resource
  int fahrenheit = 0;
  std::vector<std::size_t> minutes; // of the group
};

class Placing {
public:
  Placing(std::vector<Job> jobs, const Workplace& workplace, std::vector<Taken> taken)
      : jobs_(std::move(jobs)),
        workplace_(workplace),
        taken_(std::move(taken)),
        led_(jobs_.size(), 0) {
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
      group_of_.push_back(j);
    }
    for (const Job& job : jobs_) {
      end_ = std::max(end_, job.due.value_or(0));
    }
  }

  Placed early(const std::vector<bool>& first);
  Placed late(const std::vector<int>& rank,
              const std::function<int(const std::vector<int>&)>& cost);

private:
  void gather();
  [[nodiscard]] scheduling::Project project(bool backwards);
  [[nodiscard]] std::vector<AtHeat> at_heat() const;
  void keep_heats_apart(std::vector<int>& capacity, std::vector<std::vector<Row>>& rows);
  void put_in_order(scheduling::Project& project, bool backwards) const;
  /// What is taken already, in the project's minutes.
  [[nodiscard]] std::vector<Row> in_use(const scheduling::Project& project, bool backwards) const;
  [[nodiscard]] std::vector<int> starts(const std::vector<int>& of_groups, bool backwards) const;
  /// Mends what is wrong with starts by job; false if nothing is.
  bool mend(const std::vector<int>& start, Placed& out);
  bool too_long_a_wait(const std::vector<int>& start);
  bool cold_ovens(const std::vector<int>& start, std::vector<int>& heat_up);
  bool fuse(std::size_t job, std::size_t next);
  [[nodiscard]] bool leads_to(std::size_t from, std::size_t to, std::size_t not_by) const;
  [[nodiscard]] std::vector<InOven> in_ovens(const std::vector<int>& start) const;

  std::vector<Job> jobs_;
  const Workplace& workplace_;
  std::vector<Taken> taken_;
  std::vector<std::vector<std::size_t>> apart_; // by what is taken: resources that keep others out
  std::vector<std::size_t> group_of_;           // by job: the first job of its group
  std::vector<int> led_; // by job: minutes of heating that belong to its group
  std::vector<Group> groups_;
  int end_ = 0;
};

std::optional<std::size_t> first_in_oven(const Job& job) {
  for (std::size_t s = 0; s < job.stretches.size(); ++s) {
    if (job.stretches[s].fahrenheit && !job.stretches[s].appliance.empty() &&
        job.stretches[s].minutes > 0) {
      return s;
    }
  }
  return std::nullopt;
}

int offset_of(const Job& job, std::size_t stretch) {
  int out = 0;
  for (std::size_t s = 0; s < stretch; ++s) {
    out += job.stretches[s].minutes;
  }
  return out;
}

void Placing::gather() {
  groups_.clear();
  std::vector<std::size_t> order; // by group, each in the order of its chain
  for (std::size_t first = 0; first < jobs_.size(); ++first) {
    if (group_of_[first] != first) {
      continue;
    }
    Group group;
    int length = 0;
    int lead = 0;
    struct Lead {
      int from;
      int until;
      Stretch stretch;
    };
    std::vector<Lead> leads;
    for (std::optional<std::size_t> j = first; j && group_of_[*j] == first; j = jobs_[*j].next) {
      group.jobs.push_back(*j);
      group.offset.push_back(length);
      if (led_[*j] > 0) {
        const std::size_t s = *first_in_oven(jobs_[*j]);
        Stretch heat = jobs_[*j].stretches[s];
        heat.hands = false;
        const int until = length + offset_of(jobs_[*j], s);
        leads.push_back({until - led_[*j], until, heat});
        lead = std::max(lead, led_[*j] - until);
      }
      length += jobs_[*j].minutes();
    }
    group.rows.assign(static_cast<std::size_t>(length) + static_cast<std::size_t>(lead),
                      Row(workplace_.capacity().size(), 0));
    const auto add = [&](int from, int until, const Stretch& stretch) {
      const Row takes = workplace_.takes(stretch);
      for (int m = from + lead; m < until + lead; ++m) {
        for (std::size_t r = 0; r < takes.size(); ++r) {
          group.rows[static_cast<std::size_t>(m)][r] += takes[r];
        }
      }
    };
    for (std::size_t i = 0; i < group.jobs.size(); ++i) {
      int at = group.offset[i];
      for (const Stretch& stretch : jobs_[group.jobs[i]].stretches) {
        add(at, at + stretch.minutes, stretch);
        at += stretch.minutes;
      }
      group.offset[i] += lead;
    }
    for (const Lead& one : leads) {
      add(one.from, one.until, one.stretch);
    }
    // What it has in the oven itself is not there twice.
    for (Row& row : group.rows) {
      for (std::size_t r = 0; r < row.size(); ++r) {
        row[r] = std::min(row[r], workplace_.capacity()[r]);
      }
    }
    groups_.push_back(std::move(group));
  }
}

// Pieces of the same takings, one after the other.
std::vector<scheduling::Piece> pieces(const std::vector<Row>& rows) {
  std::vector<scheduling::Piece> out;
  for (const Row& row : rows) {
    if (out.empty() || out.back().takes != row) {
      out.push_back({0, row});
    }
    ++out.back().minutes;
  }
  return out;
}

std::vector<AtHeat> Placing::at_heat() const {
  std::vector<AtHeat> out;
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const Group& group = groups_[g];
    for (std::size_t i = 0; i < group.jobs.size(); ++i) {
      int at = group.offset[i];
      for (const Stretch& stretch : jobs_[group.jobs[i]].stretches) {
        const auto oven = workplace_.resource(stretch.appliance);
        if (stretch.fahrenheit && oven && workplace_.capacity()[*oven] > 1) {
          AtHeat one{g, *oven, *stretch.fahrenheit, {}};
          const int lead = led_[group.jobs[i]];
          for (int m = std::max(0, at - lead); m < at + stretch.minutes; ++m) {
            one.minutes.push_back(static_cast<std::size_t>(m));
          }
          out.push_back(std::move(one));
        }
        at += stretch.minutes;
      }
    }
  }
  return out;
}

// Adds a resource of which there is one, and which these take in their minutes: so no two of them
// overlap.
void add_exclusion(std::initializer_list<const AtHeat*> takers, std::vector<int>& capacity,
                   std::vector<std::vector<Row>>& rows) {
  capacity.push_back(1);
  for (std::vector<Row>& of_group : rows) {
    for (Row& row : of_group) {
      row.push_back(0);
    }
  }
  for (const AtHeat* one : takers) {
    for (const std::size_t m : one->minutes) {
      rows[one->group][m].back() = 1;
    }
  }
}

// An oven with several places has one temperature: two groups that need it at different ones never
// both have it, nor does a group have it while it is taken at another.
void Placing::keep_heats_apart(std::vector<int>& capacity, std::vector<std::vector<Row>>& rows) {
  const std::vector<AtHeat> all = at_heat();
  for (std::size_t a = 0; a < all.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      if (all[a].group != all[b].group && all[a].oven == all[b].oven &&
          !is_as_hot(all[a].fahrenheit, all[b].fahrenheit)) {
        add_exclusion({&all[a], &all[b]}, capacity, rows);
      }
    }
  }
  apart_.assign(taken_.size(), {});
  for (std::size_t t = 0; t < taken_.size(); ++t) {
    const Stretch& by = taken_[t].by;
    for (const AtHeat& one : all) {
      if (by.fahrenheit && workplace_.resource(by.appliance) == one.oven &&
          !is_as_hot(*by.fahrenheit, one.fahrenheit)) {
        apart_[t].push_back(capacity.size());
        add_exclusion({&one}, capacity, rows);
      }
    }
  }
}

// What follows what, by group; backwards, the rest of the day after its meal follows, too.
void Placing::put_in_order(scheduling::Project& project, bool backwards) const {
  std::vector<std::size_t> group(jobs_.size());
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    for (const std::size_t j : groups_[g].jobs) {
      group[j] = g;
    }
  }
  for (std::size_t j = 0; j < jobs_.size(); ++j) {
    for (const std::size_t before : jobs_[j].after) {
      if (group[before] != group[j]) {
        project.activities[backwards ? group[before] : group[j]].after.push_back(
            backwards ? group[j] : group[before]);
      }
    }
    if (backwards && jobs_[j].due && end_ > *jobs_[j].due) {
      project.activities[group[j]].after.push_back(project.activities.size());
      project.activities.push_back(
          {{scheduling::Piece{end_ - *jobs_[j].due, Row(project.capacity.size(), 0)}}, {}});
    }
  }
  for (scheduling::Activity& activity : project.activities) {
    std::sort(activity.after.begin(), activity.after.end());
    activity.after.erase(std::unique(activity.after.begin(), activity.after.end()),
                         activity.after.end());
  }
}

scheduling::Project Placing::project(bool backwards) {
  scheduling::Project out{workplace_.capacity(), {}};
  std::vector<std::vector<Row>> rows;
  for (const Group& group : groups_) {
    rows.push_back(group.rows);
  }
  keep_heats_apart(out.capacity, rows);
  for (std::vector<Row>& of_group : rows) {
    if (backwards) {
      std::reverse(of_group.begin(), of_group.end());
    }
    out.activities.push_back({pieces(of_group), {}});
  }
  put_in_order(out, backwards);
  return out;
}

std::vector<Row> Placing::in_use(const scheduling::Project& project, bool backwards) const {
  std::vector<Row> used;
  for (std::size_t t = 0; t < taken_.size(); ++t) {
    const Taken& one = taken_[t];
    Row takes = workplace_.takes(one.by);
    takes.resize(project.capacity.size(), 0);
    for (const std::size_t apart : apart_[t]) {
      takes[apart] = 1;
    }
    for (int m = one.from; m < one.until; ++m) {
      const int at = backwards ? end_ - m - 1 : m;
      for (std::size_t r = 0; at >= 0 && r < takes.size(); ++r) {
        row_at(used, project, static_cast<std::size_t>(at))[r] += takes[r];
      }
    }
  }
  return used;
}

std::vector<int> Placing::starts(const std::vector<int>& of_groups, bool backwards) const {
  std::vector<int> out(jobs_.size(), 0);
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const auto length = static_cast<int>(groups_[g].rows.size());
    const int start = backwards ? end_ - of_groups[g] - length : of_groups[g];
    for (std::size_t i = 0; i < groups_[g].jobs.size(); ++i) {
      out[groups_[g].jobs[i]] = start + groups_[g].offset[i];
    }
  }
  return out;
}

bool Placing::leads_to(std::size_t from, std::size_t to, std::size_t not_by) const {
  // Whether `to` waits for `from` through another job, with groups as one.
  std::vector<bool> seen(jobs_.size(), false);
  std::vector<std::size_t> open;
  const auto reach = [&](std::size_t group) {
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
      for (const std::size_t before : jobs_[j].after) {
        if (group_of_[before] == group && group_of_[j] != group && !seen[group_of_[j]]) {
          if (group == group_of_[from] && group_of_[j] == not_by) {
            continue;
          }
          seen[group_of_[j]] = true;
          open.push_back(group_of_[j]);
        }
      }
    }
  };
  reach(group_of_[from]);
  while (!open.empty()) {
    const std::size_t group = open.back();
    open.pop_back();
    if (group == group_of_[to]) {
      return true;
    }
    reach(group);
  }
  return false;
}

// The next job begins as soon as this one ends. Not where something else has to be done between.
bool Placing::fuse(std::size_t job, std::size_t next) {
  if (group_of_[job] == group_of_[next] || leads_to(job, next, group_of_[next])) {
    return false;
  }
  const std::size_t old = group_of_[next];
  const std::size_t into = group_of_[job];
  for (std::size_t& group : group_of_) {
    group = group == old ? into : group;
  }
  return true;
}

bool Placing::too_long_a_wait(const std::vector<int>& start) {
  bool mended = false;
  for (std::size_t j = 0; j < jobs_.size(); ++j) {
    const auto next = jobs_[j].next;
    if (next && jobs_[j].wait && start[*next] - start[j] - jobs_[j].minutes() > *jobs_[j].wait) {
      mended = fuse(j, *next) || mended;
    }
  }
  return mended;
}

std::vector<InOven> Placing::in_ovens(const std::vector<int>& start) const {
  std::vector<InOven> out;
  const auto add = [&](int from, int until, const Stretch& stretch, std::size_t job) {
    const auto oven = workplace_.resource(stretch.appliance);
    if (stretch.fahrenheit && oven && until > from) {
      out.push_back({from, until, *oven, stretch.places, *stretch.fahrenheit, job, stretch.warms});
    }
  };
  for (std::size_t j = 0; j < jobs_.size(); ++j) {
    int at = start[j];
    for (const Stretch& stretch : jobs_[j].stretches) {
      add(at, at + stretch.minutes, stretch, j);
      at += stretch.minutes;
    }
  }
  for (const Taken& one : taken_) {
    add(one.from, one.until, one.by, jobs_.size());
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const InOven& a, const InOven& b) { return a.from < b.from; });
  return out;
}

// Fills in when ovens are turned on. Where there is no time for it, the time is made, and it says
// so.
bool Placing::cold_ovens(const std::vector<int>& start, std::vector<int>& heat_up) {
  std::vector<InOven> all = in_ovens(start);
  heat_up = led_;
  for (std::size_t j = 0; j < jobs_.size(); ++j) {
    if (led_[j] > 0) {
      const std::size_t s = *first_in_oven(jobs_[j]);
      const int at = start[j] + offset_of(jobs_[j], s);
      const Stretch& stretch = jobs_[j].stretches[s];
      all.push_back({at - led_[j], at, *workplace_.resource(stretch.appliance), stretch.places,
                     *stretch.fahrenheit, j, true});
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const InOven& a, const InOven& b) { return a.from < b.from; });
  bool mended = false;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const InOven one = all[i];
    if (one.job == jobs_.size() || one.warms) {
      continue;
    }
    const int lead = led_[one.job]; // of heating that its group has already
    bool hot = false;
    bool in_use = false;          // up to then, and as hot
    const InOven* last = nullptr; // what was in it before, at another temperature
    for (const InOven& other : all) {
      const bool before = other.from < one.from || (other.from == one.from && other.job < one.job);
      if (&other == &all[i] || other.oven != one.oven || !before ||
          other.until < one.from - lead - stays_hot ||
          (other.warms && other.job == one.job && lead > 0) ||
          (other.warms && other.until > one.from)) { // it is not hot yet
        continue;
      }
      if (is_as_hot(other.fahrenheit, one.fahrenheit)) {
        hot = true;
        // What goes in at the same time may be counting on what this one heats.
        const bool by_itself = other.from < one.from || heat_up[other.job] > 0;
        in_use = in_use || (!other.warms && other.job != one.job &&
                            other.until >= one.from - stays_hot && by_itself);
      } else if (last == nullptr || other.until > last->until) {
        last = &other;
      }
    }
    if (hot) {
      const std::size_t s = *first_in_oven(jobs_[one.job]);
      if (in_use && one.from == start[one.job] + offset_of(jobs_[one.job], s)) {
        heat_up[one.job] = 0; // time was made for it when something else came before
      }
      continue;
    }
    const int minutes =
        heating_minutes(last == nullptr ? cold_oven : last->fahrenheit, one.fahrenheit);
    if (minutes <= lead) {
      continue;
    }
    const bool free = lead == 0 && one.from - minutes >= 0 &&
                      std::none_of(all.begin(), all.end(), [&](const InOven& other) {
                        return &other != &all[i] && other.oven == one.oven &&
                               other.until > one.from - minutes && other.from < one.from &&
                               (!is_as_hot(other.fahrenheit, one.fahrenheit) ||
                                workplace_.capacity()[one.oven] == 1);
                      });
    if (!free) {
      led_[one.job] = minutes;
      // The step before it goes on while the oven heats.
      for (std::size_t j = 0; j < jobs_.size(); ++j) {
        if (jobs_[j].next == one.job) {
          fuse(j, one.job);
        }
      }
      mended = true;
      continue;
    }
    heat_up[one.job] = minutes;
    all.push_back(
        {one.from - minutes, one.from, one.oven, one.places, one.fahrenheit, one.job, true});
  }
  return mended;
}

bool Placing::mend(const std::vector<int>& start, Placed& out) {
  const bool waits = too_long_a_wait(start);
  const bool ovens = cold_ovens(start, out.heat_up);
  return waits || ovens;
}

Placed Placing::early(const std::vector<bool>& first) {
  Placed out;
  scheduling::Limits limits;
  limits.seconds = std::numeric_limits<double>::infinity();
  for (bool relaxed = true;; relaxed = false) {
    limits.nodes = relaxed ? most_nodes : most_nodes_mended;
    gather();
    const scheduling::Project project = this->project(false);
    const scheduling::Schedule schedule = scheduling::shortest(project, limits);
    // What is asked for besides makes it only longer.
    out.bound = relaxed ? schedule.bound : out.bound;
    std::vector<int> order = schedule.start;
    for (std::size_t g = 0; !taken_.empty() && g < groups_.size(); ++g) {
      const bool early = std::any_of(groups_[g].jobs.begin(), groups_[g].jobs.end(),
                                     [&](std::size_t job) { return first[job]; });
      order[g] += early ? 0 : schedule.length + 1;
    }
    out.start = starts(one_by_one(project, order, in_use(project, false)), false);
    if (!mend(out.start, out)) {
      break;
    }
  }
  for (std::size_t j = 0; j < jobs_.size(); ++j) {
    out.length = std::max(out.length, out.start[j] + jobs_[j].minutes());
  }
  return out;
}

Placed Placing::late(const std::vector<int>& rank,
                     const std::function<int(const std::vector<int>&)>& cost) {
  Placed out;
  scheduling::Limits limits;
  limits.seconds = std::numeric_limits<double>::infinity();
  limits.nodes = most_nodes;
  do {
    gather();
    const scheduling::Project project = this->project(true);
    std::vector<int> by_rank(project.activities.size(), 0);
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      by_rank[g] = rank[groups_[g].jobs.back()];
    }
    const auto placed = [&](const std::vector<int>& order) {
      return starts(one_by_one(project, order, in_use(project, true)), true);
    };
    out.start = placed(scheduling::shortest(project, limits).start);
    if (std::vector<int> other = placed(by_rank); cost(other) < cost(out.start)) {
      out.start = std::move(other);
    }
  } while (mend(out.start, out));
  return out;
}

} // namespace

int Job::minutes() const {
  int out = 0;
  for (const Stretch& stretch : stretches) {
    out += stretch.minutes;
  }
  return out;
}

Placed place_early(std::vector<Job> jobs, const Workplace& workplace,
                   const std::vector<Taken>& taken, std::vector<bool> first) {
  first.resize(jobs.size(), false);
  return jobs.empty() ? Placed{} : Placing(std::move(jobs), workplace, taken).early(first);
}

Placed place_late(std::vector<Job> jobs, const Workplace& workplace,
                  const std::vector<Taken>& taken, const std::vector<int>& rank,
                  const std::function<int(const std::vector<int>&)>& cost) {
  return jobs.empty() ? Placed{} : Placing(std::move(jobs), workplace, taken).late(rank, cost);
}

} // namespace manciple::prep
