#include "prep/batch.hpp"

#include "kitchen/known_appliances.hpp"
#include "prep/cooling.hpp"
#include "prep/method.hpp"
#include "text/phrases.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using kitchen::MethodStep;
using kitchen::Recipe;

// Minutes to wash board, knife, bowl and hands. Common practice, no source.
constexpr int washing = 3;

// Whether it is put on or into the appliance, so that several stand side by side.
bool stands_on(const MethodStep& step) {
  return vessel_of(step) != step.appliance;
}

constexpr int most_vessels = 50;

// How many of what holds it a step fills when the recipe is made so many times.
int filled(const Kitchen& kitchen, const Recipe& recipe, const MethodStep& step,
           const Rational& times) {
  if (step.fits) {
    const auto made = recipe.made_in_terms_of(step.fits->measure);
    const auto loads = measure::to_int64(measure::ceil(*made * times / step.fits->number));
    return static_cast<int>(std::clamp<std::int64_t>(loads, 1, most_vessels));
  }
  const auto holds = kitchen.household.holds.find(vessel_of(step));
  const auto amount = millilitres_of(kitchen, recipe);
  if (holds == kitchen.household.holds.end() || !amount) {
    return 1;
  }
  // As it is written it fits: a recipe knows its pot.
  const auto needed = measure::to_int64(measure::ceil(*amount * times / holds->second));
  const auto written = measure::to_int64(measure::ceil(*amount / holds->second));
  return static_cast<int>(std::clamp<std::int64_t>(needed - written + 1, 1, most_vessels));
}

// How many the house has of an appliance or a vessel; nothing if it does not say.
std::optional<int> how_many(const Kitchen& kitchen, std::string_view name) {
  const kitchen::Appliance* own = kitchen.household.appliance(name);
  return own == nullptr ? std::nullopt : std::optional(std::max(1, own->count));
}

// Of so many that are filled, how many are used at once: as there is room on the appliance, and as
// the house has them. A machine does one after the other.
int beside(const Kitchen& kitchen, const MethodStep& step, int many) {
  if (!stands_on(step)) {
    return 1;
  }
  const int room = step.appliance.empty() ? many : how_many(kitchen, step.appliance).value_or(1);
  return std::min({many, room, how_many(kitchen, vessel_of(step)).value_or(many)});
}

// "2 pots", "1 tray".
std::string counted(std::string_view name, int many) {
  return fmt::format("{} {}", many, many == 1 ? std::string(name) : text::plural(name));
}

} // namespace

std::string_view vessel_of(const MethodStep& step) {
  if (!step.vessel.empty()) {
    return step.vessel;
  }
  return !kitchen::known_appliance(step.appliance).takes_pots ? std::string_view(step.appliance)
         : text::says(step.what, {"simmer~", "boil~", "poach~", "stock", "soup"})
             ? std::string_view("pot")
             : std::string_view();
}

std::vector<StepWork> work_of(const Kitchen& kitchen, const resolve::Making& making,
                              const CutBefore& cut) {
  const Recipe& recipe = kitchen.recipe(making.recipe);
  std::vector<StepWork> out;
  const auto add = [&](std::size_t step, StepWork work) {
    work.wash = handles_raw(kitchen, recipe, step) && work.hands_on > 0 ? washing : 0;
    if (!out.empty() && out.back().fahrenheit && work.fahrenheit &&
        out.back().appliance == work.appliance &&
        !is_as_hot(*out.back().fahrenheit, *work.fahrenheit)) {
      work.change = heating_minutes(*out.back().fahrenheit, *work.fahrenheit);
    }
    out.push_back(std::move(work));
  };
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
    const int at_once = beside(kitchen, step, many);
    const int loads = (many + at_once - 1) / at_once;
    work.vessel = stands_on(step) ? vessel_of(step) : std::string_view();
    work.vessels = work.vessel.empty() ? 0 : at_once;
    work.places = work.appliance.empty() ? 1 : at_once;
    if (step.fits) {
      for (int load = 0; load < loads; ++load) {
        StepWork one = work;
        one.vessels = std::min(at_once, many - load * at_once);
        one.places = work.appliance.empty() ? 1 : one.vessels;
        one.hands_on = one.vessels * step.hands_on;
        one.then = step.then;
        one.what +=
            one.vessels > 1 || loads > 1
                ? fmt::format(", {}{}", counted(work.vessel, one.vessels),
                              loads > 1 ? fmt::format(", load {} of {}", load + 1, loads) : "")
                : "";
        add(s, std::move(one));
      }
      continue;
    }
    work.hands_on = loads * hands_on(step, making.times / loads);
    work.then = loads * alone(kitchen, recipe, step, making.times / loads);
    if (cuts(step) && done > 0) {
      // What was cut before is not cut again; what it is cut for takes its time.
      constexpr int least = 2;
      const int left = std::max(std::min(least, work.hands_on), work.hands_on - done);
      done -= work.hands_on - left;
      work.hands_on = left;
      work.what = cut.all ? without_cutting(recipe, step) : step.what;
    }
    work.what += at_once > 1 ? ", in " + counted(work.vessel, at_once) : "";
    work.what += loads > 1 ? fmt::format(", in {} runs", loads) : "";
    add(s, std::move(work));
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
        stretch.vessel = warms ? std::string_view() : work.vessel;
        stretch.vessels = work.vessels;
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

Effort effort_of(const StepWork& work) {
  return {work.hands_on,
          work.then,
          std::string(work.appliance),
          work.places,
          std::string(work.vessel),
          work.vessels,
          work.fahrenheit};
}

} // namespace manciple::prep
