#include "foods/classes.hpp"
#include "foods/counted.hpp"
#include "kitchen/appliances.hpp"
#include "measure/print.hpp"
#include "prep/batch.hpp"
#include "prep/by_products.hpp"
#include "prep/cooks.hpp"
#include "prep/cooling.hpp"
#include "prep/cutting.hpp"
#include "prep/errors.hpp"
#include "prep/method.hpp"
#include "prep/parts.hpp"
#include "prep/work.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

namespace manciple::prep {
namespace {

using foods::Food;
using kitchen::Kitchen;
using kitchen::Recipe;
using resolve::Making;
using resolve::Resolved;

// How careful one has to be: ready-to-eat first, raw poultry last.
int risk(const Food& food) {
  return foods::is(food, foods::Class::poultry) ? 2 : foods::is_raw_animal(food) ? 1 : 0;
}

// A job with the tasks that it consists of, and where in it each begins.
struct Work {
  Job job;
  std::vector<std::pair<int, Task>> tasks;
  std::optional<MakingId> making;
  int risk = 0;          // of what lies on the board
  bool on_board = false; // cut or portioned

  void add(Task task) {
    const int at = job.minutes();
    job.stretches.push_back({task.hands_on, true});
    tasks.emplace_back(at, std::move(task));
  }
};

Task wash_after_raw(std::string_view after) {
  Task wash;
  wash.kind = Task::Kind::wash;
  wash.what = fmt::format("Wash board, knife, bowls and hands after {}", after);
  return wash;
}

class Session {
public:
  Session(const Kitchen& kitchen, const Resolved& resolved, const std::vector<Freezing>& freezing,
          const std::map<MakingId, CutBefore>& cut, std::vector<Taken> taken, std::size_t index)
      : kitchen_(kitchen),
        resolved_(resolved),
        freezing_(freezing),
        cut_(cut),
        taken_(std::move(taken)),
        index_(index) {}

  SessionPlan run(text::Diagnostics& diagnostics);

private:
  void mise();
  void portions();
  [[nodiscard]] Task heat_up(MakingId making, std::string_view oven, int fahrenheit) const;
  void cooking();
  void store(const Making& making, std::size_t last_hot, bool bagged);
  void keep_by_products(const Making& making);
  [[nodiscard]] std::size_t last_where(MakingId id,
                                       const std::function<bool(const Task&)>& is) const;
  [[nodiscard]] std::size_t last_step(MakingId id) const;
  [[nodiscard]] std::size_t last_of_method(MakingId id) const;
  void order_parts();
  void clear_up();
  [[nodiscard]] std::vector<Job> jobs(const std::set<MakingId>& without) const;
  [[nodiscard]] std::vector<bool> needed_today() const;
  [[nodiscard]] Placed placed(const std::set<MakingId>& without) const;
  [[nodiscard]] std::string what_to_move(int window) const;
  void tell_too_long(text::Diagnostics& diagnostics) const;
  void write_tasks(const Placed& placed);
  [[nodiscard]] std::string boxes(const Making& making, int& count) const;
  [[nodiscard]] const kitchen::Session& session() const { return kitchen_.plan->sessions[index_]; }
  [[nodiscard]] bool has(std::string_view appliance) const {
    return std::any_of(kitchen_.household.appliances.begin(), kitchen_.household.appliances.end(),
                       [&](const auto& one) { return one.name == appliance; });
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const std::vector<Freezing>& freezing_;
  const std::map<MakingId, CutBefore>& cut_;
  std::vector<Taken> taken_; // by meals of the day, in minutes from the session's start
  std::size_t index_;
  SessionPlan out_;
  std::vector<Work> work_;
  std::map<MakingId, std::vector<std::size_t>> before_;           // jobs before its first step
  std::map<MakingId, std::pair<std::size_t, std::size_t>> steps_; // first and last job
  std::set<std::size_t> cut_today_;                 // jobs that cut for a meal of the day
  std::map<std::size_t, std::size_t> cooled_after_; // by job that cools: what came off the heat
};

void Session::mise() {
  std::vector<Mise> all = weighing(kitchen_, resolved_, index_);
  for (Mise& one : cutting(kitchen_, resolved_, index_)) {
    all.push_back(std::move(one));
  }
  for (Mise& one : all) {
    for (const MakingId id : one.before) {
      before_[id].push_back(work_.size());
    }
    if (one.for_today) {
      cut_today_.insert(work_.size());
    }
    Work work;
    work.on_board = one.task.kind == Task::Kind::cut;
    work.add(std::move(one.task));
    work_.push_back(std::move(work));
  }
}

Task Session::heat_up(MakingId making, std::string_view oven, int fahrenheit) const {
  Task task;
  task.kind = Task::Kind::preheat;
  // As a dial has it.
  task.what =
      fmt::format("Heat the {} to {} for {}", oven,
                  measure::print_at_least((fahrenheit + 2) / 5 * 5, kitchen_.household.system),
                  kitchen_.recipe(resolved_.making(making).recipe).name);
  task.making = making;
  task.appliance = oven;
  task.fahrenheit = fahrenheit;
  return task;
}

// What goes into the freezer on this day: what is ready to eat one by one, raw meat and fish as one
// piece of work with poultry at its end and a wash-up after it.
void Session::portions() {
  std::vector<std::pair<int, Task>> raw;
  for (const Freezing& freezing : freezing_) {
    const std::vector<Bag> today = freezing.on(session().date);
    if (today.empty()) {
      continue;
    }
    const Food& food = kitchen_.food(freezing.food);
    Task task;
    task.kind = Task::Kind::portion;
    task.what = into_freezer(kitchen_, food, today);
    task.hands_on = portioning_minutes(static_cast<int>(today.size()));
    if (food.keeps.frozen_juice) {
      task.hands_on += cutting_minutes(foods::Form::juice, amount_of(today));
    }
    if (const int how = risk(food); how > 0) {
      raw.emplace_back(how, std::move(task));
      continue;
    }
    Work work;
    work.on_board = true;
    work.add(std::move(task));
    work_.push_back(std::move(work));
  }
  if (raw.empty()) {
    return;
  }
  std::stable_sort(raw.begin(), raw.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  Work work;
  work.on_board = true;
  for (auto& [how, task] : raw) {
    work.risk = std::max(work.risk, how);
    work.add(std::move(task));
  }
  Task wash = wash_after_raw("raw meat");
  constexpr int thorough = 4; // minutes; common practice, no source
  wash.hands_on = thorough;
  work.add(std::move(wash));
  work_.push_back(std::move(work));
}

std::string Session::boxes(const Making& making, int& count) const {
  std::map<foods::Place, int> places;
  const Recipe& recipe = kitchen_.recipe(making.recipe);
  for (const resolve::Consumer& consumer : making.consumers) {
    if (consumer.date == making.date) {
      continue;
    }
    ++places[consumer.from_freezer ? foods::Place::freezer : recipe.cool_place()];
    ++count;
  }
  std::vector<std::string> words;
  for (const auto& [place, number] : places) {
    words.push_back(fmt::format("{} {} into the {}", number, number == 1 ? "box" : "boxes",
                                foods::name(place)));
  }
  return text::join(words, ", ");
}

void Session::cooking() {
  for (const Making& making : resolved_.makings) {
    if (making.session != index_) {
      continue;
    }
    const Recipe& recipe = kitchen_.recipe(making.recipe);
    const auto cut = cut_.find(making.id);
    const std::vector<StepWork> steps =
        work_of(kitchen_, making, cut == cut_.end() ? CutBefore{} : cut->second);
    const auto cooled = prep::cooling(kitchen_, making);
    std::optional<std::size_t> last_hot; // of the steps
    for (std::size_t s = 0; s < steps.size(); ++s) {
      last_hot = kitchen::heats(steps[s].appliance) ? std::optional(s) : last_hot;
    }
    std::vector<std::size_t> before = before_[making.id];
    const std::size_t first = work_.size();
    bool cooling_said = false;
    bool bagged = false;
    for (std::size_t s = 0; s < steps.size(); ++s) {
      StepWork step = steps[s];
      const kitchen::MethodStep& method = recipe.method[step.step];
      Task task;
      task.what = fmt::format("{}: {}", recipe.name, step.what);
      const bool after_heat = last_hot && s > *last_hot;
      if (cooled && after_heat && !cooling_said && cools(method)) {
        cooling_said = true;
        task.kind = Task::Kind::cool;
        task.what += fmt::format(" ({})", how_to_cool(*cooled, false, kitchen_.household.system));
        step.then = std::max(step.then, cooled->minutes);
      }
      bagged = bagged || (after_heat && stores(method));
      task.purpose = purposes(kitchen_, resolved_, making.id);
      task.making = making.id;
      task.step = step.step;
      task.hands_on = step.hands_on;
      task.then = step.then;
      task.appliance = step.appliance;
      task.places = step.places;
      task.vessel = step.vessel;
      task.vessels = step.vessels;
      task.fahrenheit = step.fahrenheit;
      Work work;
      work.job = job_of(step);
      work.job.after = std::exchange(before, {work_.size()});
      work.making = making.id;
      if (work_.size() > first) {
        work_.back().job.next = work_.size();
      }
      const int at = hands_begin(step);
      if (step.change > 0) {
        Task heat = heat_up(making.id, step.appliance, *step.fahrenheit);
        heat.then = step.change;
        work.tasks.emplace_back(0, std::move(heat));
      }
      if (step.wash > 0) {
        Task wash = wash_after_raw(recipe.name);
        wash.making = making.id;
        wash.hands_on = step.wash;
        work.tasks.emplace_back(at + step.hands_on, std::move(wash));
      }
      work.tasks.emplace_back(at, std::move(task));
      if (work.tasks.back().second.kind == Task::Kind::cool) {
        cooled_after_[work_.size()] = first + *last_hot;
      }
      work_.push_back(std::move(work));
    }
    if (work_.size() == first) {
      continue;
    }
    if (cooled && !cooling_said && last_hot) {
      Work work;
      Task task;
      task.kind = Task::Kind::cool;
      task.what = fmt::format("{}: cool {}", recipe.name,
                              how_to_cool(*cooled, bagged, kitchen_.household.system));
      task.making = making.id;
      task.hands_on = 2 + 2 * cooled->pans; // to ladle it over; common practice, no source
      task.then = cooled->minutes;
      work.job.after = {work_.size() - 1};
      work_.back().job.next = work_.size();
      cooled_after_[work_.size()] = first + *last_hot;
      work.making = making.id;
      work.add(task);
      work.job.stretches.push_back({task.then, false});
      work_.push_back(std::move(work));
    }
    if (cooled) {
      store(making, first + *last_hot, bagged);
    }
    steps_[making.id] = {first, work_.size() - 1};
    keep_by_products(making);
  }
}

// What was hot goes into the fridge and freezer as soon as it has cooled to 70 F.
void Session::store(const Making& making, std::size_t last_hot, bool bagged) {
  int count = 0;
  const std::string where = boxes(making, count);
  if (count == 0) {
    return;
  }
  Task task;
  task.kind = Task::Kind::store;
  task.what = fmt::format("{}: {}", kitchen_.recipe(making.recipe).name,
                          bagged ? where : "portion and label; " + where);
  task.making = making.id;
  task.hands_on = bagged ? 1 + (count + 1) / 2 : 2 + count; // common practice, no source
  Work work;
  work.job.after = {work_.size() - 1};
  work_.back().job.next = work_.size();
  cooled_after_[work_.size()] = last_hot;
  work.making = making.id;
  work.add(std::move(task));
  work_.push_back(std::move(work));
  // All of it together in the two hours of the first stage.
  int busy = 0;
  for (std::size_t w = last_hot + 1; w < work_.size(); ++w) {
    busy += work_[w].job.minutes();
  }
  const auto gaps = static_cast<int>(work_.size() - last_hot - 1);
  for (std::size_t w = last_hot; w + 1 < work_.size(); ++w) {
    const int each = std::max(0, (first_stage - busy) / gaps);
    work_[w].job.wait = std::min(each, work_[w].job.wait.value_or(each));
  }
}

// What it leaves over for other days is put away once its steps are done, beside the dish itself.
void Session::keep_by_products(const Making& making) {
  const std::vector<PutAway> puts = put_away(kitchen_, resolved_, making.id);
  if (puts.empty()) {
    return;
  }
  Task task;
  task.kind = Task::Kind::store;
  task.what = in_one_line(kitchen_, resolved_, puts);
  task.making = making.id;
  task.hands_on = 1 + static_cast<int>(puts.size()); // common practice, no source
  Work work;
  work.making = making.id;
  work.job.after = {last_of_method(making.id)};
  work.add(std::move(task));
  work_.push_back(std::move(work));
}

// The last job of a making whose last task is such a one; its first, if none is.
std::size_t Session::last_where(MakingId id, const std::function<bool(const Task&)>& is) const {
  const auto& [first, end] = steps_.at(id);
  std::size_t last = end;
  while (last > first && !is(work_[last].tasks.back().second)) {
    --last;
  }
  return last;
}

// The job after which a making can be used: it need not be cooled and put away before that.
std::size_t Session::last_step(MakingId id) const {
  return last_where(id, [](const Task& task) {
    return task.kind != Task::Kind::store && task.kind != Task::Kind::cool;
  });
}

// What a making leaves over is there when the last step of its method is done, cooling or not.
std::size_t Session::last_of_method(MakingId id) const {
  return last_where(id, [](const Task& task) { return task.step.has_value(); });
}

// Recipes that are part of recipes made in the same session; and the board: ready-to-eat first.
void Session::order_parts() {
  for (const Making& making : resolved_.makings) {
    for (const resolve::Consumer& consumer : making.consumers) {
      const auto* parent = std::get_if<MakingId>(&consumer.who);
      if (parent == nullptr || !steps_.contains(making.id) || !steps_.contains(*parent)) {
        continue;
      }
      work_[steps_[*parent].first].job.after.push_back(last_step(making.id));
    }
  }
  for (const resolve::ByProduct& one : resolved_.by_products) {
    for (const resolve::ByProduct::Part& part : one.parts) {
      if (steps_.contains(one.of) && steps_.contains(part.into)) {
        work_[steps_[part.into].first].job.after.push_back(last_of_method(one.of));
      }
    }
  }
  for (std::size_t later = 0; later < work_.size(); ++later) {
    for (std::size_t earlier = 0; earlier < work_.size(); ++earlier) {
      if (work_[later].on_board && work_[earlier].on_board &&
          work_[earlier].risk < work_[later].risk) {
        work_[later].job.after.push_back(earlier);
      }
    }
  }
}

void Session::clear_up() {
  if (steps_.empty()) {
    return;
  }
  Task task;
  task.kind = Task::Kind::wash;
  task.what = "Wash up, wipe down and put away what is left";
  // Common practice, no source.
  constexpr int least = 6;
  constexpr int most = 20;
  task.hands_on = std::min(most, least + static_cast<int>(steps_.size()));
  Work work;
  for (std::size_t i = 0; i < work_.size(); ++i) {
    work.job.after.push_back(i);
  }
  work.add(std::move(task));
  work_.push_back(std::move(work));
}

std::vector<Job> Session::jobs(const std::set<MakingId>& without) const {
  std::vector<Job> out;
  for (const Work& work : work_) {
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
  std::vector<bool> out(work_.size(), false);
  if (taken_.empty()) {
    return out;
  }
  for (const auto& [id, steps] : steps_) {
    for (const resolve::Consumer& consumer : resolved_.making(id).consumers) {
      const auto* into = std::get_if<MakingId>(&consumer.who);
      const bool inside = into != nullptr && resolved_.making(*into).session == index_;
      for (std::size_t w = steps.first; w <= steps.second; ++w) {
        out[w] = out[w] || (consumer.date == session().date && !inside);
      }
    }
  }
  for (std::size_t i = 0; i < work_.size(); ++i) {
    out[i] = out[i] || cut_today_.contains(i);
  }
  for (std::size_t w = work_.size(); w-- > 0;) {
    for (const std::size_t before : work_[w].job.after) {
      out[before] = out[before] || (out[w] && !work_[w].on_board);
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
  for (const auto& [id, steps] : steps_) {
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
             ? fmt::format("moving no single batch makes it fit; the most work is {}", most)
             : "the cutting and portioning alone takes too long";
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
  std::vector<std::size_t> first(work_.size());
  std::vector<std::size_t> last(work_.size());
  for (std::size_t w = 0; w < work_.size(); ++w) {
    std::stable_sort(work_[w].tasks.begin(), work_[w].tasks.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    first[w] = out_.tasks.size();
    int ends = -1;
    for (auto& [at, task] : work_[w].tasks) {
      task.start = placed.start[w] + at;
      const int end = at + task.hands_on + task.then;
      if (end > ends) {
        ends = end;
        last[w] = out_.tasks.size();
      }
      if (const auto off = cooled_after_.find(w); off != cooled_after_.end()) {
        task.by = placed.start[off->second] + work_[off->second].job.minutes() + first_stage;
        const std::string by = text::print_clock((session().from + *task.by) % text::minutes_a_day);
        if (task.kind == Task::Kind::store) {
          task.what += fmt::format(
              ", by {}; at {} by {}", by, measure::print_at_most(cold, kitchen_.household.system),
              text::print_clock((session().from + *task.by + second_stage) % text::minutes_a_day));
        }
      }
      out_.tasks.push_back(task);
    }
  }
  for (std::size_t w = 0; w < work_.size(); ++w) {
    for (const std::size_t before : work_[w].job.after) {
      out_.tasks[first[w]].after.push_back(last[before]);
    }
    if (placed.heat_up[w] > 0) {
      int at = placed.start[w];
      const Stretch* oven = nullptr;
      for (const Stretch& stretch : work_[w].job.stretches) {
        if (stretch.fahrenheit) {
          oven = &stretch;
          break;
        }
        at += stretch.minutes;
      }
      Task task = heat_up(*work_[w].making, oven->appliance, *oven->fahrenheit);
      task.then = placed.heat_up[w];
      task.start = at - task.then;
      out_.tasks.push_back(std::move(task));
    }
  }
}

SessionPlan Session::run(text::Diagnostics& diagnostics) {
  out_.session = index_;
  mise();
  portions();
  cooking();
  order_parts();
  clear_up();
  if (!work_.empty()) {
    const Placed placed = this->placed({});
    out_.length = placed.length;
    out_.bound = placed.bound;
    write_tasks(placed);
    out_.tasks = assign_cooks(std::move(out_.tasks), session().cooks);
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
    SessionPlan plan = Session(kitchen, resolved, freezing, cut,
                               taken == meals.end() ? std::vector<Taken>{} : taken->second, i)
                           .run(diagnostics);
    if (!plan.tasks.empty()) {
      out.push_back(std::move(plan));
    }
  }
  return out;
}

} // namespace manciple::prep
