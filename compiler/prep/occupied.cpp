#include "prep/occupied.hpp"

#include "prep/batch.hpp"
#include "prep/parts.hpp"

#include <algorithm>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using kitchen::Recipe;
using resolve::Resolved;

// What a dish takes on its day, in minutes from midnight.
std::vector<Taken> taken_by(const Recipe& recipe, const Cooking& cook) {
  std::vector<Taken> out;
  const auto add = [&](int from, int minutes, bool hands, const Cooking::Step* on, bool warms) {
    if (minutes > 0) {
      Stretch stretch{minutes, hands};
      if (on != nullptr) {
        stretch.appliance = recipe.method[on->step].appliance; // which outlives the cooking
        stretch.places = on->places;
        if (on->vessels > 0 && !warms) {
          stretch.vessel = vessel_of(recipe.method[on->step]);
          stretch.vessels = on->vessels;
        }
        stretch.fahrenheit = on->fahrenheit;
        stretch.warms = warms;
      }
      out.push_back({from, from + minutes, stretch});
    }
  };
  for (const Cooking::Step& step : cook.steps) {
    add(step.start - step.preheat, step.preheat, false, &step, true);
    add(step.start, step.hands_on, true, &step, false);
    add(step.start + step.hands_on, step.then, false, &step, false);
    add(step.start + step.hands_on, step.wash, true, nullptr, false);
  }
  return out;
}

} // namespace

Occupied occupied(const Kitchen& kitchen, const std::vector<SessionPlan>& sessions, Date date) {
  Occupied out;
  std::vector<int> cooks(text::minutes_a_day, 1);
  for (const kitchen::Shift& shift : kitchen::shifts(kitchen, date)) {
    for (int m = shift.from; m < shift.until; ++m) {
      cooks[static_cast<std::size_t>(m)] = shift.hands(m);
    }
  }
  const auto stretch = [](const Task& task, int minutes, bool hands) {
    Stretch one{minutes, hands, task.appliance, task.places, task.fahrenheit};
    one.warms = task.kind == Task::Kind::preheat;
    one.vessel = task.vessel;
    one.vessels = task.vessels;
    return one;
  };
  for (const SessionPlan& plan : sessions) {
    const kitchen::Session& session = kitchen.plan->sessions[plan.session];
    if (session.date != date) {
      continue;
    }
    for (int m = session.from; m < std::min(session.from + plan.length, text::minutes_a_day); ++m) {
      cooks[static_cast<std::size_t>(m)] = session.cooks;
    }
    for (const Task& task : plan.tasks) {
      const int at = session.from + task.start;
      const int free = at + task.hands_on;
      if (task.hands_on > 0) {
        out.taken.push_back({at, free, stretch(task, task.hands_on, true)});
      }
      if (task.then > 0) {
        out.taken.push_back({free, free + task.then, stretch(task, task.then, false)});
      }
    }
  }
  out.cooks = *std::max_element(cooks.begin(), cooks.end());
  // So many at most are there for a while.
  for (int away = 1; away < out.cooks; ++away) {
    for (int from = 0; from < text::minutes_a_day;) {
      const auto missing = [&](int m) {
        return m < text::minutes_a_day && out.cooks - cooks[static_cast<std::size_t>(m)] >= away;
      };
      int until = from;
      while (missing(until)) {
        ++until;
      }
      if (until > from) {
        out.taken.push_back({from, until, {until - from, true}});
      }
      from = until + 1;
    }
  }
  return out;
}

Meals meals_in_the_way(const Kitchen& kitchen, const Resolved& resolved,
                       const std::vector<SessionPlan>& sessions) {
  std::vector<SessionPlan> in_time;
  std::vector<const SessionPlan*> too_long;
  for (const SessionPlan& plan : sessions) {
    const kitchen::Session& session = kitchen.plan->sessions[plan.session];
    const int lasts = session.until - session.from;
    if (plan.length <= lasts) {
      in_time.push_back(plan);
      continue;
    }
    too_long.push_back(&plan);
    // Until it should have ended all hands are its own.
    SessionPlan all{plan.session, {}, lasts, lasts};
    for (int cook = 0; cook < session.cooks; ++cook) {
      Task task;
      task.hands_on = lasts;
      all.tasks.push_back(task);
    }
    in_time.push_back(std::move(all));
  }
  Meals out;
  if (too_long.empty()) {
    return out;
  }
  text::Diagnostics unsaid;
  for (const Cooking& cook : cooking(kitchen, resolved, in_time, unsaid)) {
    for (const SessionPlan* plan : too_long) {
      const kitchen::Session& session = kitchen.plan->sessions[plan->session];
      if (session.date != cook.date) {
        continue;
      }
      for (Taken taken : taken_by(kitchen.recipe(resolved.making(cook.making).recipe), cook)) {
        taken.from -= session.from;
        taken.until -= session.from;
        if (taken.until > 0) {
          taken.from = std::max(taken.from, 0);
          out[plan->session].push_back(taken);
        }
      }
    }
  }
  return out;
}

} // namespace manciple::prep
