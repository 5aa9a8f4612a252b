#include "prep/who_cooks.hpp"

#include "prep/cooks.hpp"
#include "prep/errors.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::prep {
namespace {

using kitchen::Cook;
using kitchen::Kitchen;
using resolve::Resolved;

// A step of a dish, by place in the list.
struct Work {
  Cooking* dish = nullptr;
  Cooking::Step* step = nullptr;
};

// One day of work with hands.
class Day {
public:
  Day(const Kitchen& kitchen, const Resolved& resolved, Date date, text::Diagnostics& diagnostics)
      : kitchen_(kitchen),
        resolved_(resolved),
        date_(date),
        shifts_(kitchen::shifts(kitchen, date)),
        diagnostics_(diagnostics) {}

  void session(SessionPlan& plan) {
    const kitchen::Session& window = kitchen_.plan->sessions[plan.session];
    kitchen::Shift all{window.from, window.from + plan.length, {}};
    for (const std::string& name : window.names) {
      all.cooks.push_back({name});
    }
    sessions_.push_back({std::move(all), &plan, false});
  }

  void run(std::vector<Work> all) {
    std::stable_sort(all.begin(), all.end(),
                     [](const Work& a, const Work& b) { return a.step->start < b.step->start; });
    const auto share_until = [&](int minute) {
      for (Running& running : sessions_) {
        if (!running.shared && running.shift.from <= minute) {
          share(running, all);
        }
      }
    };
    for (const Work& one : all) {
      share_until(one.step->start);
      work(one);
    }
    share_until(text::minutes_a_day);
  }

private:
  struct Running {
    kitchen::Shift shift;
    SessionPlan* plan = nullptr;
    bool shared = false; ///< its tasks and what is cooked meanwhile have their cooks
  };

  // So that nobody has to be at two things, though there are enough hands: who does a task of the
  // session is said anew, together with the dishes.
  void share(Running& running, const std::vector<Work>& all) {
    running.shared = true;
    const kitchen::Session& window = kitchen_.plan->sessions[running.plan->session];
    const int from = running.shift.from;
    std::vector<OtherWork> dishes;
    std::vector<const Cooking::Step*> steps;
    for (const Work& one : all) {
      const int minutes = one.step->hands_on + one.step->wash;
      if (minutes > 0 && &shift_at(one.step->start) == &running.shift) {
        const auto dish = static_cast<std::size_t>(one.dish->making);
        dishes.push_back({dish, one.step->start - from, one.step->start - from + minutes});
        steps.push_back(one.step);
      }
    }
    // A dish that is begun before the session may still have its cook's hands.
    std::vector<int> free_at(static_cast<std::size_t>(window.cooks), 0);
    for (std::size_t c = 0; c < std::min(free_at.size(), window.names.size()); ++c) {
      for (const auto& [begun, ended] : busy_[window.names[c]]) {
        free_at[c] = std::max(free_at[c], begun < from ? ended - from : 0);
      }
    }
    const bool all_free =
        std::all_of(free_at.begin(), free_at.end(), [](int minute) { return minute == 0; });
    if (!dishes.empty() || !all_free) {
      running.plan->tasks = assign_cooks(std::move(running.plan->tasks), free_at, dishes);
    }
    for (std::size_t i = 0; i < dishes.size(); ++i) {
      if (dishes[i].cook && *dishes[i].cook < window.names.size()) {
        shared_[steps[i]] = window.names[*dishes[i].cook];
      }
    }
    for (const Task& task : running.plan->tasks) {
      if (task.cook && *task.cook < window.names.size()) {
        busy_[window.names[*task.cook]].emplace_back(from + task.start,
                                                     from + task.start + task.hands_on);
      }
    }
  }

  [[nodiscard]] const kitchen::Shift& shift_at(int minute) const {
    const auto in = [&](const kitchen::Shift& one) {
      return one.from <= minute && minute < one.until;
    };
    const auto session = std::find_if(sessions_.begin(), sessions_.end(),
                                      [&](const Running& one) { return in(one.shift); });
    if (session != sessions_.end()) {
      return session->shift;
    }
    const auto shift = std::find_if(shifts_.begin(), shifts_.end(), in);
    return shift == shifts_.end() ? shifts_.back() : *shift;
  }

  [[nodiscard]] bool is_free(const std::string& name, int from, int until) const {
    const auto known = busy_.find(name);
    return known == busy_.end() ||
           std::none_of(known->second.begin(), known->second.end(),
                        [&](const auto& one) { return one.first < until && from < one.second; });
  }

  void work(const Work& one) {
    const int from = one.step->start;
    const int until = from + one.step->hands_on + one.step->wash;
    const kitchen::Shift& shift = shift_at(from);
    if (until == from || shift.cooks.empty()) {
      return;
    }
    const auto has_time = [&](const Cook& cook) { return cook.from <= from && from < cook.until; };
    if (std::none_of(shift.cooks.begin(), shift.cooks.end(), has_time)) {
      tell(one, shift.cooks.front());
    }
    const Cook* best = nullptr;
    std::tuple<bool, bool, bool, bool> least; // what speaks against somebody, the gravest first
    const auto shared = shared_.find(one.step);
    for (const Cook& cook : shift.cooks) {
      const std::tuple<bool, bool, bool, bool> against{
          shared != shared_.end() && shared->second != cook.name, !is_free(cook.name, from, until),
          !has_time(cook), last_[one.dish] != cook.name};
      if (best == nullptr || against < least) {
        best = &cook;
        least = against;
      }
    }
    one.step->who = best->name;
    last_[one.dish] = best->name;
    busy_[best->name].emplace_back(from, until);
    std::vector<std::string>& cooks = one.dish->cooks;
    if (std::find(cooks.begin(), cooks.end(), best->name) == cooks.end()) {
      cooks.push_back(best->name);
    }
  }

  // Once a dish.
  void tell(const Work& one, const Cook& cook) {
    if (one.step != &one.dish->steps.front()) {
      return;
    }
    const kitchen::Recipe& recipe = kitchen_.recipe(resolved_.making(one.dish->making).recipe);
    const bool early = one.step->start < cook.from;
    diagnostics_.remark(
        errors::nobody_there, recipe.at,
        fmt::format("{} has to be started at {} on {}, but {} only has time {} {}", recipe.name,
                    text::print_clock(one.step->start), text::print_day(date_), cook.name,
                    early ? "from" : "until", text::print_clock(early ? cook.from : cook.until)),
        "choose a quicker dish, make it ahead in a session, or say who else cooks: 'cooks' in the "
        "plan");
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  Date date_;
  std::vector<kitchen::Shift> shifts_;
  std::vector<Running> sessions_;
  std::map<const Cooking::Step*, std::string> shared_; // who does it beside a session
  std::map<std::string, std::vector<std::pair<int, int>>> busy_;
  std::map<const Cooking*, std::string> last_; // who did the step before
  text::Diagnostics& diagnostics_;
};

} // namespace

void name_cooks(const Kitchen& kitchen, const Resolved& resolved,
                std::vector<SessionPlan>& sessions, std::vector<Cooking>& cooking,
                text::Diagnostics& diagnostics) {
  std::map<Date, std::vector<Work>> days;
  for (Cooking& cook : cooking) {
    for (Cooking::Step& step : cook.steps) {
      days[cook.date].push_back({&cook, &step});
    }
  }
  for (auto& [date, work] : days) {
    Day day(kitchen, resolved, date, diagnostics);
    for (SessionPlan& plan : sessions) {
      if (kitchen.plan->sessions[plan.session].date == date) {
        day.session(plan);
      }
    }
    day.run(std::move(work));
  }
}

} // namespace manciple::prep
