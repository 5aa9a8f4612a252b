#include "kitchen/food_code.hpp"
#include "measure/print.hpp"
#include "prep/cooks.hpp"
#include "prep/cooling.hpp"
#include "prep/errors.hpp"
#include "prep/parts.hpp"
#include "prep/session_work.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using resolve::Making;
using resolve::Resolved;

class Session {
public:
  Session(const Kitchen& kitchen, const Resolved& resolved, SessionWork work,
          std::vector<Taken> taken, std::size_t index)
      : kitchen_(kitchen),
        resolved_(resolved),
        work_(std::move(work)),
        taken_(std::move(taken)),
        index_(index) {}

  SessionPlan run(text::Diagnostics& diagnostics);

private:
  [[nodiscard]] std::vector<Job> jobs(const std::set<MakingId>& without) const;
  [[nodiscard]] std::vector<bool> needed_today() const;
  [[nodiscard]] Placed placed(const std::set<MakingId>& without) const;
  [[nodiscard]] std::string what_to_move(int window) const;
  void tell_too_long(text::Diagnostics& diagnostics) const;
  void write_tasks(const Placed& placed);
  [[nodiscard]] const kitchen::Session& session() const { return kitchen_.plan->sessions[index_]; }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  SessionWork work_;
  std::vector<Taken> taken_; // by meals of the day, in minutes from the session's start
  std::size_t index_;
  SessionPlan out_;
};

std::vector<Job> Session::jobs(const std::set<MakingId>& without) const {
  std::vector<Job> out;
  for (const SessionJob& work : work_.jobs) {
    out.push_back(work.job);
    if (work.making && without.contains(*work.making)) {
      for (Stretch& stretch : out.back().stretches) {
        stretch.minutes = 0;
      }
    }
  }
  return out;
}

Placed Session::placed(const std::set<MakingId>& without) const {
  return place_early(jobs(without), Workplace(kitchen_.household.appliances, session().cooks),
                     taken_, needed_today());
}

// By job: whether it is for a meal of the day, or of what such a thing is made of.
std::vector<bool> Session::needed_today() const {
  std::vector<bool> out(work_.jobs.size(), false);
  if (taken_.empty()) {
    return out;
  }
  for (const auto& [id, steps] : work_.steps) {
    for (const resolve::Consumer& consumer : resolved_.making(id).consumers) {
      const auto* into = std::get_if<MakingId>(&consumer.who);
      const bool inside = into != nullptr && resolved_.making(*into).session == index_;
      for (std::size_t w = steps.first; w <= steps.second; ++w) {
        out[w] = out[w] || (consumer.date == session().date && !inside);
      }
    }
  }
  for (std::size_t i = 0; i < work_.jobs.size(); ++i) {
    out[i] = out[i] || work_.cut_today.contains(i);
  }
  for (std::size_t w = work_.jobs.size(); w-- > 0;) {
    for (const std::size_t before : work_.jobs[w].job.after) {
      out[before] = out[before] || (out[w] && !work_.jobs[w].on_board);
    }
  }
  return out;
}

// What could be made another time so that the rest fits: the batch with the least work that is
// enough alone, or else the one with the most.
std::string Session::what_to_move(int window) const {
  std::string most;
  int most_minutes = 0;
  std::string best;
  int best_minutes = 0;
  for (const auto& [id, steps] : work_.steps) {
    const Making& making = resolved_.making(id);
    int minutes = 0;
    for (const Task& task : out_.tasks) {
      minutes += task.making == id ? task.hands_on : 0;
    }
    const Date first =
        std::min_element(making.consumers.begin(), making.consumers.end(),
                         [](const auto& a, const auto& b) { return a.date < b.date; })
            ->date;
    const std::string name =
        fmt::format("'{}' ({}, first needed on {})", kitchen_.recipe(making.recipe).name,
                    text::print_minutes(minutes), text::print_day(first));
    if (minutes > most_minutes) {
      most_minutes = minutes;
      most = name;
    }
    const bool enough = placed({id}).length <= window;
    if (enough && (best.empty() || minutes < best_minutes)) {
      best_minutes = minutes;
      best = name;
    }
  }
  return !best.empty() ? fmt::format("it fits without {}", best)
         : !most.empty()
             ? fmt::format("moving a single batch is not enough; the most work is {}", most)
             : "the cutting and portioning alone take too long";
}

void Session::tell_too_long(text::Diagnostics& diagnostics) const {
  const int window = session().until - session().from;
  if (out_.length > window) {
    diagnostics.warning(
        errors::too_short, session().at,
        fmt::format("the work of the session on {} takes {}, but the session lasts {}",
                    text::print_day(session().date), text::print_minutes(out_.length),
                    text::print_minutes(window)),
        fmt::format("start at {}, add a cook, or move something to another session; {}",
                    text::print_clock(std::max(0, session().until - out_.length)),
                    what_to_move(window)));
  }
}

// The tasks of all jobs, with their starts; each job's last one is waited for.
void Session::write_tasks(const Placed& placed) {
  std::vector<std::size_t> first(work_.jobs.size());
  std::vector<std::size_t> last(work_.jobs.size());
  for (std::size_t w = 0; w < work_.jobs.size(); ++w) {
    std::stable_sort(work_.jobs[w].tasks.begin(), work_.jobs[w].tasks.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    first[w] = out_.tasks.size();
    int ends = -1;
    for (auto& [at, task] : work_.jobs[w].tasks) {
      task.start = placed.start[w] + at;
      const int end = at + task.hands_on + task.then;
      if (end > ends) {
        ends = end;
        last[w] = out_.tasks.size();
      }
      if (const auto off = work_.cooled_after.find(w); off != work_.cooled_after.end()) {
        task.by = placed.start[off->second] + work_.jobs[off->second].job.minutes() +
                  kitchen::first_stage;
        const std::string by = text::print_clock((session().from + *task.by) % text::minutes_a_day);
        if (task.kind == Task::Kind::store) {
          task.what += fmt::format(
              ", by {}; at {} by {}", by,
              measure::print_at_most(kitchen::cold_enough.fahrenheit, kitchen_.household.system),
              text::print_clock((session().from + *task.by + kitchen::second_stage) %
                                text::minutes_a_day));
        }
      }
      out_.tasks.push_back(task);
    }
  }
  for (std::size_t w = 0; w < work_.jobs.size(); ++w) {
    for (const std::size_t before : work_.jobs[w].job.after) {
      out_.tasks[first[w]].after.push_back(last[before]);
    }
    if (placed.heat_up[w] > 0) {
      // What is heated has a stretch in an oven.
      const auto& stretches = work_.jobs[w].job.stretches;
      int at = placed.start[w];
      std::size_t oven = 0;
      for (; !stretches[oven].fahrenheit; ++oven) {
        at += stretches[oven].minutes;
      }
      Task task = heat_up(kitchen_, resolved_, *work_.jobs[w].making, stretches[oven].appliance,
                          *stretches[oven].fahrenheit);
      task.then = placed.heat_up[w];
      task.start = at - task.then;
      out_.tasks.push_back(std::move(task));
    }
  }
}

SessionPlan Session::run(text::Diagnostics& diagnostics) {
  out_.session = index_;
  if (!work_.jobs.empty()) {
    const Placed placed = this->placed({});
    out_.length = placed.length;
    out_.bound = placed.bound;
    write_tasks(placed);
    std::vector<OtherWork> meals; // who cooks them is said when they have been placed
    out_.tasks =
        assign_cooks(std::move(out_.tasks),
                     std::vector<int>(static_cast<std::size_t>(session().cooks), 0), meals);
    tell_too_long(diagnostics);
  }
  return std::move(out_);
}

} // namespace

std::vector<SessionPlan> sessions(const Kitchen& kitchen, const Resolved& resolved,
                                  const std::vector<Freezing>& freezing, const Meals& meals,
                                  text::Diagnostics& diagnostics) {
  const std::map<MakingId, CutBefore> cut = cut_before(kitchen, resolved);
  std::vector<SessionPlan> out;
  for (std::size_t i = 0; i < kitchen.plan->sessions.size(); ++i) {
    const auto taken = meals.find(i);
    SessionPlan plan = Session(kitchen, resolved, session_work(kitchen, resolved, freezing, cut, i),
                               taken == meals.end() ? std::vector<Taken>{} : taken->second, i)
                           .run(diagnostics);
    if (!plan.tasks.empty()) {
      out.push_back(std::move(plan));
    }
  }
  return out;
}

} // namespace manciple::prep
