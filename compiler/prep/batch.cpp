#include "prep/batch.hpp"

#include "kitchen/appliances.hpp"
#include "prep/cooling.hpp"
#include "prep/method.hpp"
#include "text/phrases.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using kitchen::MethodStep;
using kitchen::Recipe;

// Minutes to wash board, knife, bowl and hands. Common practice, no source.
constexpr int washing = 3;

// What holds what a step works on: a pot for what simmers, or the machine itself.
std::string_view vessel(const MethodStep& step) {
  const bool pot = step.appliance == "burner" || step.appliance == "hob";
  return !pot ? std::string_view(step.appliance)
         : text::says(step.what, {"simmer~", "boil~", "poach~", "stock", "soup"})
             ? std::string_view("pot")
             : std::string_view();
}

// How many of what holds it a step fills when the recipe is made so many times.
int filled(const Kitchen& kitchen, const Recipe& recipe, const MethodStep& step,
           const Rational& times) {
  const auto holds = kitchen.household.holds.find(vessel(step));
  const auto amount = millilitres_of(kitchen, recipe);
  if (holds == kitchen.household.holds.end() || !amount) {
    return 1;
  }
  // As it is written it fits: a recipe knows its pot.
  const auto needed = measure::to_int64(measure::ceil(*amount * times / holds->second));
  const auto written = measure::to_int64(measure::ceil(*amount / holds->second));
  return static_cast<int>(std::clamp<std::int64_t>(needed - written + 1, 1, 50));
}

int places_of(const Kitchen& kitchen, std::string_view appliance) {
  for (const kitchen::Appliance& one : kitchen.household.appliances) {
    if (one.name == appliance) {
      return std::max(1, one.count);
    }
  }
  return 1;
}

} // namespace

std::vector<StepWork> work_of(const Kitchen& kitchen, const resolve::Making& making,
                              const CutBefore& cut) {
  const Recipe& recipe = kitchen.recipe(making.recipe);
  std::vector<StepWork> out;
  int done = cut.minutes; // of the recipe's own time for cutting
  for (std::size_t s = 0; s < recipe.method.size(); ++s) {
    const MethodStep& step = recipe.method[s];
    StepWork work;
    work.step = s;
    work.what = step.what;
    work.appliance = step.appliance;
    work.fahrenheit = step.fahrenheit;
    work.wait = longest_wait(step);
    if (cut.all && only_prepares(recipe, step) && cuts(step)) {
      continue;
    }
    const int many = filled(kitchen, recipe, step, making.times);
    const int beside =
        vessel(step) == "pot" ? std::min(many, places_of(kitchen, step.appliance)) : 1;
    const int runs = (many + beside - 1) / beside;
    work.places = beside;
    work.hands_on = runs * hands_on(step, making.times / runs);
    work.then = runs * alone(kitchen, recipe, step, making.times / runs);
    if (cuts(step) && done > 0) {
      // What was cut before is not cut again; what it is cut for takes its time.
      constexpr int least = 2;
      const int left = std::max(std::min(least, work.hands_on), work.hands_on - done);
      done -= work.hands_on - left;
      work.hands_on = left;
      work.what = cut.all ? without_cutting(recipe, step) : step.what;
    }
    work.what += beside > 1 ? fmt::format(", in {} pots", beside) : "";
    work.what += runs > 1 ? fmt::format(", in {} runs", runs) : "";
    work.wash = handles_raw(kitchen, recipe, s) && work.hands_on > 0 ? washing : 0;
    if (!out.empty() && out.back().fahrenheit && work.fahrenheit &&
        out.back().appliance == work.appliance &&
        !is_as_hot(*out.back().fahrenheit, *work.fahrenheit)) {
      work.change = heating_minutes(*out.back().fahrenheit, *work.fahrenheit);
    }
    out.push_back(std::move(work));
  }
  return out;
}

Job job_of(const StepWork& work) {
  Job job;
  const auto add = [&](int minutes, bool hands, bool on, bool warms = false) {
    if (minutes > 0) {
      Stretch stretch{minutes, hands, {}, 1, {}, warms};
      if (on) {
        stretch.appliance = work.appliance;
        stretch.places = work.places;
        stretch.fahrenheit = work.fahrenheit;
      }
      job.stretches.push_back(stretch);
    }
  };
  add(work.change, false, true, true);
  add(work.hands_on, true, true);
  add(std::min(work.wash, work.then), true, true);
  add(work.wash - std::min(work.wash, work.then), true, false);
  add(work.then - std::min(work.wash, work.then), false, true);
  job.wait = work.wait;
  return job;
}

} // namespace manciple::prep
