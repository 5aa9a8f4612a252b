#include "prep/session_work.hpp"

#include "foods/classes.hpp"
#include "kitchen/food_code.hpp"
#include "measure/print.hpp"
#include "prep/batch.hpp"
#include "prep/by_products.hpp"
#include "prep/clean_first.hpp"
#include "prep/cooling.hpp"
#include "prep/method.hpp"
#include "prep/purpose.hpp"
#include "prep/work.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

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

Task wash_after_raw(std::string_view after) {
  Task wash;
  wash.kind = Task::Kind::wash;
  wash.what = fmt::format("Wash board, knife, bowls and hands after {}", after);
  return wash;
}

// A making that is being cooked.
struct InHand {
  const Making& making;
  std::optional<Cooling> cooled;       // how, if it has to be
  std::optional<std::size_t> last_hot; // job
  std::size_t first = 0;               // job
  bool cooling_said = false;           // by a step
  bool bagged = false;                 // by a step
};

class Building {
public:
  Building(const Kitchen& kitchen, const Resolved& resolved, const std::vector<Freezing>& freezing,
           const std::map<MakingId, CutBefore>& cut, std::size_t session)
      : kitchen_(kitchen), resolved_(resolved), freezing_(freezing), cut_(cut), index_(session) {}

  SessionWork run() {
    mise();
    portions();
    cooking();
    set_order(kitchen_, resolved_, index_, out_);
    clear_up();
    return std::move(out_);
  }

private:
  void mise();
  void portions();
  void cooking();
  void cook(const Making& making);
  void add_step(InHand& hand, StepWork step);
  void cool(const InHand& hand);
  void store(const Making& making, std::size_t last_hot, bool bagged);
  void keep_by_products(const Making& making);
  void clear_up();
  [[nodiscard]] std::string boxes(const Making& making, int& count) const;
  [[nodiscard]] const kitchen::Session& session() const { return kitchen_.plan->sessions[index_]; }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const std::vector<Freezing>& freezing_;
  const std::map<MakingId, CutBefore>& cut_;
  std::size_t index_;
  SessionWork out_;
};

void Building::mise() {
  std::vector<Mise> all = weighing(kitchen_, resolved_, index_);
  for (Mise& one : cutting(kitchen_, resolved_, index_)) {
    all.push_back(std::move(one));
  }
  for (Mise& one : all) {
    for (const MakingId id : one.before) {
      out_.before[id].push_back(out_.jobs.size());
    }
    if (one.for_today) {
      out_.cut_today.insert(out_.jobs.size());
    }
    SessionJob work;
    work.on_board = one.task.kind == Task::Kind::cut;
    work.harms = one.harms;
    work.add(std::move(one.task));
    out_.jobs.push_back(std::move(work));
  }
}

// What goes into the freezer on this day: what is ready to eat one by one, raw meat and fish as one
// piece of work with poultry at its end and a wash-up after it.
void Building::portions() {
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
    SessionJob work;
    work.on_board = true;
    work.harms = harm_of(kitchen_, freezing.food).has_value();
    work.add(std::move(task));
    out_.jobs.push_back(std::move(work));
  }
  if (raw.empty()) {
    return;
  }
  std::stable_sort(raw.begin(), raw.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  SessionJob work;
  work.on_board = true;
  for (auto& [how, task] : raw) {
    work.risk = std::max(work.risk, how);
    work.add(std::move(task));
  }
  Task wash = wash_after_raw("raw meat");
  wash.hands_on = thorough_wash;
  work.add(std::move(wash));
  out_.jobs.push_back(std::move(work));
}

std::string Building::boxes(const Making& making, int& count) const {
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

void Building::cooking() {
  for (const Making& making : resolved_.makings) {
    if (making.session == index_) {
      cook(making);
    }
  }
}

// Each step is a job; what is stored is cooled, and goes into its boxes, after the last hot one.
void Building::cook(const Making& making) {
  const Recipe& recipe = kitchen_.recipe(making.recipe);
  const auto cut = cut_.find(making.id);
  const std::vector<StepWork> steps =
      work_of(kitchen_, making, cut == cut_.end() ? CutBefore{} : cut->second);
  InHand hand{making, prep::cooling(kitchen_, making), {}, out_.jobs.size()};
  for (std::size_t s = 0; s < steps.size(); ++s) {
    hand.last_hot =
        recipe.method[steps[s].step].is_hot ? std::optional(hand.first + s) : hand.last_hot;
  }
  for (const StepWork& step : steps) {
    add_step(hand, step);
  }
  if (steps.empty()) {
    return;
  }
  if (hand.cooled && !hand.cooling_said && hand.last_hot) {
    cool(hand);
  }
  if (hand.cooled) {
    store(making, *hand.last_hot, hand.bagged);
  }
  out_.steps[making.id] = {hand.first, out_.jobs.size() - 1};
  keep_by_products(making);
}

void Building::add_step(InHand& hand, StepWork step) {
  const MakingId id = hand.making.id;
  const Recipe& recipe = kitchen_.recipe(hand.making.recipe);
  const kitchen::MethodStep& method = recipe.method[step.step];
  const std::size_t here = out_.jobs.size();
  Task task;
  task.what = fmt::format("{}: {}", recipe.name, step.what);
  const bool after_heat = hand.last_hot && here > *hand.last_hot;
  if (hand.cooled && after_heat && !hand.cooling_said && cools(method)) {
    hand.cooling_said = true;
    task.kind = Task::Kind::cool;
    task.what += fmt::format(" ({})", how_to_cool(*hand.cooled, false, kitchen_.household.system));
    step.then = std::max(step.then, hand.cooled->minutes);
    out_.cooled_after[here] = *hand.last_hot;
  }
  hand.bagged = hand.bagged || (after_heat && stores(method));
  static_cast<Effort&>(task) = effort_of(step);
  task.purpose = purposes(kitchen_, resolved_, id);
  task.making = id;
  task.step = step.step;
  SessionJob work;
  work.job = job_of(step);
  work.making = id;
  if (here > hand.first) {
    work.job.after = {here - 1};
    out_.jobs.back().job.next = here;
  } else {
    work.job.after = out_.before[id];
  }
  const int at = hands_begin(step);
  if (step.change > 0) {
    Task heat = heat_up(kitchen_, resolved_, id, step.appliance, *step.fahrenheit);
    heat.then = step.change;
    work.tasks.emplace_back(0, std::move(heat));
  }
  if (step.wash > 0) {
    Task wash = wash_after_raw(recipe.name);
    wash.making = id;
    wash.hands_on = step.wash;
    work.tasks.emplace_back(at + step.hands_on, std::move(wash));
  }
  work.tasks.emplace_back(at, std::move(task));
  out_.jobs.push_back(std::move(work));
}

// Cooling, where no step says it.
void Building::cool(const InHand& hand) {
  SessionJob work;
  Task task;
  task.kind = Task::Kind::cool;
  task.what = fmt::format("{}: cool {}", kitchen_.recipe(hand.making.recipe).name,
                          how_to_cool(*hand.cooled, hand.bagged, kitchen_.household.system));
  task.making = hand.making.id;
  task.hands_on = 2 + 2 * hand.cooled->pans; // to ladle it over; common practice, no source
  task.then = hand.cooled->minutes;
  work.job.after = {out_.jobs.size() - 1};
  out_.jobs.back().job.next = out_.jobs.size();
  out_.cooled_after[out_.jobs.size()] = *hand.last_hot;
  work.making = hand.making.id;
  work.add(task);
  work.job.stretches.push_back({task.then, false});
  out_.jobs.push_back(std::move(work));
}

// What was hot goes into the fridge and freezer as soon as the first stage of cooling is over.
void Building::store(const Making& making, std::size_t last_hot, bool bagged) {
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
  SessionJob work;
  work.job.after = {out_.jobs.size() - 1};
  out_.jobs.back().job.next = out_.jobs.size();
  out_.cooled_after[out_.jobs.size()] = last_hot;
  work.making = making.id;
  work.add(std::move(task));
  out_.jobs.push_back(std::move(work));
  // All of it together within the first stage.
  int busy = 0;
  for (std::size_t w = last_hot + 1; w < out_.jobs.size(); ++w) {
    busy += out_.jobs[w].job.minutes();
  }
  const auto gaps = static_cast<int>(out_.jobs.size() - last_hot - 1);
  for (std::size_t w = last_hot; w + 1 < out_.jobs.size(); ++w) {
    const int each = std::max(0, (kitchen::first_stage - busy) / gaps);
    out_.jobs[w].job.wait = std::min(each, out_.jobs[w].job.wait.value_or(each));
  }
}

// What it leaves over for other days is put away once its steps are done, beside the dish itself.
void Building::keep_by_products(const Making& making) {
  const std::vector<PutAway> puts = put_away(kitchen_, resolved_, making.id);
  if (puts.empty()) {
    return;
  }
  Task task;
  task.kind = Task::Kind::store;
  task.what = in_one_line(kitchen_, resolved_, puts);
  task.making = making.id;
  task.hands_on = 1 + static_cast<int>(puts.size()); // common practice, no source
  SessionJob work;
  work.making = making.id;
  work.job.after = {out_.last_of_method(making.id)};
  work.add(std::move(task));
  out_.jobs.push_back(std::move(work));
}

void Building::clear_up() {
  if (out_.steps.empty()) {
    return;
  }
  Task task;
  task.kind = Task::Kind::wash;
  task.what = "Wash up, wipe down and put away what is left";
  // Common practice, no source.
  constexpr int least = 6;
  constexpr int most = 20;
  task.hands_on = std::min(most, least + static_cast<int>(out_.steps.size()));
  SessionJob work;
  for (std::size_t i = 0; i < out_.jobs.size(); ++i) {
    work.job.after.push_back(i);
  }
  work.add(std::move(task));
  out_.jobs.push_back(std::move(work));
}

} // namespace

void SessionJob::add(Task task) {
  const int at = job.minutes();
  job.stretches.push_back({task.hands_on, true});
  tasks.emplace_back(at, std::move(task));
}

std::size_t SessionWork::last_where(MakingId id, const std::function<bool(const Task&)>& is) const {
  const auto& [first, end] = steps.at(id);
  std::size_t last = end;
  while (last > first && !is(jobs[last].tasks.back().second)) {
    --last;
  }
  return last;
}

std::size_t SessionWork::last_step(MakingId id) const {
  return last_where(id, [](const Task& task) {
    return task.kind != Task::Kind::store && task.kind != Task::Kind::cool;
  });
}

std::size_t SessionWork::last_of_method(MakingId id) const {
  return last_where(id, [](const Task& task) { return task.step.has_value(); });
}

Task heat_up(const Kitchen& kitchen, const Resolved& resolved, MakingId making,
             std::string_view oven, int fahrenheit) {
  Task task;
  task.kind = Task::Kind::preheat;
  task.what = fmt::format("Heat the {} to {} for {}", oven,
                          measure::print_on_dial(fahrenheit, kitchen.household.system),
                          kitchen.recipe(resolved.making(making).recipe).name);
  task.making = making;
  task.appliance = oven;
  task.fahrenheit = fahrenheit;
  return task;
}

SessionWork session_work(const Kitchen& kitchen, const Resolved& resolved,
                         const std::vector<Freezing>& freezing,
                         const std::map<MakingId, CutBefore>& cut, std::size_t session) {
  return Building(kitchen, resolved, freezing, cut, session).run();
}

} // namespace manciple::prep
