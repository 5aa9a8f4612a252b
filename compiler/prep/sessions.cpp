#include "foods/classes.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "prep/errors.hpp"
#include "prep/parts.hpp"
#include "prep/work.hpp"
#include "prep/workplace.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace manciple::prep {
namespace {

using foods::Food;
using foods::FoodId;
using foods::Form;
using kitchen::Kitchen;
using resolve::Making;
using resolve::Resolved;

// What cutting to a form is called.
std::string_view verb(Form form) {
  switch (form) {
  case Form::diced:
    return "Dice";
  case Form::minced:
    return "Mince";
  case Form::sliced:
    return "Slice";
  case Form::shredded:
    return "Shred";
  case Form::grated:
    return "Grate";
  case Form::cubed:
    return "Cube";
  case Form::torn:
    return "Tear";
  case Form::julienned:
    return "Cut into strips";
  case Form::florets:
    return "Cut into florets";
  default:
    return "Chop";
  }
}

// How careful one has to be: ready-to-eat first, raw poultry last.
int risk(const Food& food) {
  return foods::is(food, foods::Class::poultry) ? 2 : foods::is_raw_animal(food) ? 1 : 0;
}

class Session {
public:
  Session(const Kitchen& kitchen, const Resolved& resolved, const std::vector<Freezing>& freezing,
          std::size_t index)
      : kitchen_(kitchen), resolved_(resolved), freezing_(freezing), index_(index) {}

  SessionPlan run(text::Diagnostics& diagnostics);

private:
  void cuts();
  void portions();
  void cooking();
  void order_parts();
  /// The session's tasks, those of some batches taking no time.
  [[nodiscard]] scheduling::Project project(const std::set<MakingId>& without) const;
  [[nodiscard]] std::string what_to_move(int window) const;
  void schedule(text::Diagnostics& diagnostics);
  void assign_cooks();
  [[nodiscard]] const kitchen::Session& session() const { return kitchen_.plan->sessions[index_]; }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const std::vector<Freezing>& freezing_;
  std::size_t index_;
  SessionPlan out_;
  std::vector<int> risks_;                                        // by task
  std::map<MakingId, std::vector<std::size_t>> cuts_of_making_;   // tasks before its first step
  std::map<MakingId, std::pair<std::size_t, std::size_t>> steps_; // first and last step
  std::map<std::size_t, std::optional<int>> temperatures_;        // by task
};

// One task for a food and a cut, however many dishes it is for.
void Session::cuts() {
  struct Cut {
    Rational amount;
    std::set<std::string> dishes;
    std::vector<MakingId> here;
  };
  std::map<std::tuple<std::string, Form>, std::pair<FoodId, Cut>> cuts;
  for (const resolve::Use& use : resolved_.uses) {
    const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
    if (of == nullptr || !resolve::is_cut(use.form)) {
      continue;
    }
    const Making& making = resolved_.making(of->making);
    const bool ahead = use.cut_in == index_;
    if (!ahead && making.session != index_) {
      continue;
    }
    auto& [food, cut] = cuts[{kitchen_.food(use.food).name, use.form}];
    food = use.food;
    cut.amount += use.amount;
    cut.dishes.insert(kitchen_.recipe(making.recipe).name);
    if (!ahead) {
      cut.here.push_back(making.id);
    }
  }
  for (const auto& [key, value] : cuts) {
    const auto& [food_id, cut] = value;
    const Food& food = kitchen_.food(food_id);
    const foods::Yield* edible = food.yield(Form::plain);
    const Rational grams = cut.amount * (edible != nullptr ? edible->share : Rational(1));
    Task task;
    task.kind = Task::Kind::cut;
    task.what = fmt::format("{} {}", verb(std::get<1>(key)),
                            foods::as_seen(food, cut.amount, kitchen_.household.system));
    task.purpose = text::join({cut.dishes.begin(), cut.dishes.end()}, ", ");
    task.hands_on = cutting_minutes(std::get<1>(key), grams);
    for (const MakingId id : cut.here) {
      cuts_of_making_[id].push_back(out_.tasks.size());
    }
    risks_.push_back(risk(food));
    out_.tasks.push_back(std::move(task));
  }
}

// What goes into the freezer on this day.
void Session::portions() {
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
      task.hands_on += cutting_minutes(Form::juice, amount_of(today));
    }
    risks_.push_back(risk(food));
    out_.tasks.push_back(std::move(task));
  }
}

void Session::cooking() {
  for (const Making& making : resolved_.makings) {
    if (making.session != index_) {
      continue;
    }
    const kitchen::Recipe& recipe = kitchen_.recipe(making.recipe);
    std::vector<std::size_t> before = cuts_of_making_[making.id];
    const std::size_t first = out_.tasks.size();
    for (const kitchen::MethodStep& step : recipe.method) {
      if (step.cuts && !before.empty()) {
        continue; // the cutting tasks stand for it
      }
      Task task;
      temperatures_[out_.tasks.size()] = step.fahrenheit;
      task.what = fmt::format("{}: {}", recipe.name, step.what);
      task.purpose = purposes(kitchen_, resolved_, making.id);
      task.making = making.id;
      task.hands_on = hands_on(step, making.times);
      task.then = step.then;
      task.appliance = step.appliance;
      task.after = std::exchange(before, {out_.tasks.size()});
      risks_.push_back(0);
      out_.tasks.push_back(std::move(task));
    }
    if (out_.tasks.size() > first) {
      steps_[making.id] = {first, out_.tasks.size() - 1};
    }
  }
}

// Recipes that are part of recipes made in the same session; and the board: ready-to-eat first.
void Session::order_parts() {
  for (const Making& making : resolved_.makings) {
    for (const resolve::Consumer& consumer : making.consumers) {
      const auto* parent = std::get_if<MakingId>(&consumer.who);
      if (parent != nullptr && steps_.contains(making.id) && steps_.contains(*parent)) {
        out_.tasks[steps_[*parent].first].after.push_back(steps_[making.id].second);
      }
    }
  }
  for (std::size_t later = 0; later < out_.tasks.size(); ++later) {
    for (std::size_t earlier = 0; earlier < out_.tasks.size(); ++earlier) {
      const bool by_hand = out_.tasks[later].kind != Task::Kind::cook &&
                           out_.tasks[earlier].kind != Task::Kind::cook;
      if (by_hand && risks_[earlier] < risks_[later]) {
        out_.tasks[later].after.push_back(earlier);
      }
    }
  }
}

scheduling::Project Session::project(const std::set<MakingId>& without) const {
  const Workplace workplace(kitchen_.household.appliances, session().cooks);
  scheduling::Project project{workplace.capacity(), {}};
  for (const Task& task : out_.tasks) {
    const bool gone = task.making && without.contains(*task.making);
    project.activities.push_back({{workplace.on(task.appliance, gone ? 0 : task.hands_on, true),
                                   workplace.on(task.appliance, gone ? 0 : task.then, false)},
                                  task.after});
  }
  std::vector<Heat> heat;
  for (std::size_t i = 0; i < out_.tasks.size(); ++i) {
    const auto at = temperatures_.find(i);
    heat.push_back(
        {out_.tasks[i].appliance, at == temperatures_.end() ? std::nullopt : at->second});
  }
  keep_temperatures_apart(project, heat, kitchen_.household.appliances);
  return project;
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
    const bool enough = scheduling::shortest(project({id})).length <= window;
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

void Session::schedule(text::Diagnostics& diagnostics) {
  const scheduling::Schedule schedule = scheduling::shortest(project({}));
  out_.length = schedule.length;
  out_.bound = schedule.bound;
  for (std::size_t i = 0; i < out_.tasks.size(); ++i) {
    out_.tasks[i].start = schedule.start[i];
  }
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

// By start; each task goes to the first cook who is free.
void Session::assign_cooks() {
  std::vector<std::size_t> order(out_.tasks.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    order[i] = i;
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return out_.tasks[a].start < out_.tasks[b].start;
  });
  std::vector<int> free_at(static_cast<std::size_t>(session().cooks), 0);
  std::vector<std::size_t> place(order.size());
  std::vector<Task> sorted;
  for (std::size_t i = 0; i < order.size(); ++i) {
    place[order[i]] = i;
    Task& task = out_.tasks[order[i]];
    for (std::size_t c = 0; task.hands_on > 0 && c < free_at.size(); ++c) {
      if (free_at[c] <= task.start) {
        free_at[c] = task.start + task.hands_on;
        task.cook = c;
        break;
      }
    }
    sorted.push_back(std::move(task));
  }
  for (Task& task : sorted) {
    for (std::size_t& before : task.after) {
      before = place[before];
    }
    std::sort(task.after.begin(), task.after.end());
    task.after.erase(std::unique(task.after.begin(), task.after.end()), task.after.end());
  }
  out_.tasks = std::move(sorted);
}

SessionPlan Session::run(text::Diagnostics& diagnostics) {
  out_.session = index_;
  cuts();
  portions();
  cooking();
  order_parts();
  if (!out_.tasks.empty()) {
    schedule(diagnostics);
    assign_cooks();
  }
  return std::move(out_);
}

} // namespace

int hands_on(const kitchen::MethodStep& step, const Rational& times) {
  if (times <= 1) {
    return step.hands_on;
  }
  return static_cast<int>(measure::to_int64(measure::ceil(times * step.hands_on)));
}

std::vector<SessionPlan> sessions(const Kitchen& kitchen, const Resolved& resolved,
                                  const std::vector<Freezing>& freezing,
                                  text::Diagnostics& diagnostics) {
  std::vector<SessionPlan> out;
  for (std::size_t i = 0; i < kitchen.plan->sessions.size(); ++i) {
    SessionPlan plan = Session(kitchen, resolved, freezing, i).run(diagnostics);
    if (!plan.tasks.empty()) {
      out.push_back(std::move(plan));
    }
  }
  return out;
}

} // namespace manciple::prep
