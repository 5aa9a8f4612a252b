#include "kitchen/food_code.hpp"
#include "kitchen/hours.hpp"
#include "measure/print.hpp"
#include "prep/batch.hpp"
#include "prep/begun.hpp"
#include "prep/clean_first.hpp"
#include "prep/cutting.hpp"
#include "prep/eaten_hot.hpp"
#include "prep/errors.hpp"
#include "prep/method.hpp"
#include "prep/occupied.hpp"
#include "prep/parts.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using kitchen::Recipe;
using resolve::Making;
using resolve::Resolved;

// A hot dish may wait so long, covered. Common practice, no source.
constexpr int may_wait = 30; // minutes

// A dish, or the first part of one, that is cooked on a day.
struct ToCook {
  Cooking cooking;
  std::vector<StepWork> work;
  int stands = 0;           ///< minutes that it stands at least
  std::size_t before = 0;   ///< so many of the steps are done before it does
  bool stands_here = false; ///< on this day
};

class DayOfCooking {
public:
  DayOfCooking(const Kitchen& kitchen, const Resolved& resolved, const Occupied& occupied,
               std::vector<ToCook> dishes, const std::vector<CleanFirst>& clean)
      : kitchen_(kitchen),
        resolved_(resolved),
        workplace_(kitchen.household.appliances, occupied.cooks),
        occupied_(occupied),
        dishes_(std::move(dishes)),
        clean_(clean) {}

  std::vector<ToCook> run() {
    for (std::size_t d = 0; d < dishes_.size(); ++d) {
      add(d);
    }
    parts();
    clean_first();
    place();
    return std::move(dishes_);
  }

  // By how many minutes hot dishes are done too early in all.
  [[nodiscard]] static int early(const Kitchen& kitchen, const Resolved& resolved,
                                 const std::vector<ToCook>& dishes);

private:
  void add(std::size_t d) {
    ToCook& dish = dishes_[d];
    hot_.push_back(!dish.cooking.ahead &&
                   is_eaten_hot(kitchen_, kitchen_.recipe(recipe_of(dish.cooking.making))));
    jobs_of_.emplace_back();
    std::optional<std::size_t> last;
    const auto follow = [&](Job job) {
      const std::size_t here = jobs_.size();
      if (last) {
        job.after.push_back(*last);
        jobs_[*last].next = here;
      }
      jobs_.push_back(std::move(job));
      last = here;
      return here;
    };
    for (std::size_t s = 0; s < dish.work.size(); ++s) {
      if (dish.stands_here && s == dish.before && s > 0) {
        Job stand;
        stand.stretches.push_back({dish.stands, false});
        jobs_[*last].wait = 0;
        stands_[d] = follow(std::move(stand));
      }
      jobs_of_.back().push_back(follow(job_of(dish.work[s])));
    }
    if (last) {
      jobs_[*last].due = dish.cooking.ready;
    }
  }

  [[nodiscard]] kitchen::RecipeId recipe_of(MakingId making) const {
    return resolved_.making(making).recipe;
  }

  // A part is done before what it goes into begins, and so is what leaves something over for it.
  void parts() {
    const auto before = [&](std::size_t one, MakingId other) {
      for (std::size_t d = 0; d < dishes_.size(); ++d) {
        if (dishes_[d].cooking.making == other && !jobs_of_[one].empty() && !jobs_of_[d].empty()) {
          jobs_[jobs_of_[d].front()].after.push_back(jobs_of_[one].back());
        }
      }
    };
    for (std::size_t p = 0; p < dishes_.size(); ++p) {
      const MakingId making = dishes_[p].cooking.making;
      for (const resolve::ByProduct& one : resolved_.by_products) {
        for (const resolve::ByProduct::Part& part : one.parts) {
          if (one.of == making) {
            before(p, part.into);
          }
        }
      }
      for (const resolve::Consumer& consumer : resolved_.making(making).consumers) {
        if (const auto* into = std::get_if<MakingId>(&consumer.who)) {
          before(p, *into);
        }
      }
    }
  }

  void clean_first() {
    for (const CleanFirst& one : clean_) {
      for (std::size_t a = 0; a < dishes_.size(); ++a) {
        for (std::size_t b = 0; b < dishes_.size(); ++b) {
          const bool pair = dishes_[a].cooking.making == one.first &&
                            dishes_[b].cooking.making == one.then && !dishes_[a].cooking.ahead &&
                            !dishes_[b].cooking.ahead && !jobs_of_[a].empty() &&
                            !jobs_of_[b].empty();
          // Where each is first for somebody, boards are washed between them all the same.
          const bool both = std::any_of(clean_.begin(), clean_.end(), [&](const CleanFirst& other) {
            return other.first == one.then && other.then == one.first;
          });
          if (pair && !both) {
            jobs_[jobs_of_[b].front()].after.push_back(jobs_of_[a].front());
            dishes_[a].cooking.first_for = one.why;
          }
        }
      }
    }
  }

  // What takes long is done first, so that what is quick comes to the table from the pan; what is
  // not eaten hot before all.
  [[nodiscard]] std::vector<int> lengths() const {
    std::vector<int> out(jobs_.size(), 0);
    for (std::size_t d = 0; d < dishes_.size(); ++d) {
      int length = hot_[d] ? 0 : text::minutes_a_day;
      for (const std::size_t job : jobs_of_[d]) {
        length += jobs_[job].minutes();
      }
      for (const std::size_t job : jobs_of_[d]) {
        out[job] = length;
      }
      if (const auto stand = stands_.find(d); stand != stands_.end()) {
        out[stand->second] = length;
      }
    }
    return out;
  }

  [[nodiscard]] int waiting(const std::vector<int>& start) const {
    int sum = 0;
    for (std::size_t d = 0; d < dishes_.size(); ++d) {
      if (!jobs_of_[d].empty() && hot_[d]) {
        const std::size_t last = jobs_of_[d].back();
        sum += dishes_[d].cooking.ready - start[last] - jobs_[last].minutes();
      }
    }
    return sum;
  }

  void place() {
    const Placed placed =
        place_late(jobs_, workplace_, occupied_.taken, lengths(),
                   [this](const std::vector<int>& start) { return waiting(start); });
    for (std::size_t d = 0; d < dishes_.size(); ++d) {
      Cooking& cook = dishes_[d].cooking;
      cook.start = cook.done = cook.ready;
      cook.steps.clear();
      cook.hands_on = 0;
      for (std::size_t s = 0; s < jobs_of_[d].size(); ++s) {
        const std::size_t job = jobs_of_[d][s];
        const StepWork& work = dishes_[d].work[s];
        Cooking::Step step;
        static_cast<Effort&>(step) = effort_of(work);
        step.step = work.step;
        step.what = work.what;
        step.start = std::max(0, placed.start[job] + hands_begin(work));
        step.preheat = std::max(work.change, placed.heat_up[job]);
        step.wash = work.wash;
        cook.start = s == 0 ? step.start : std::min(cook.start, step.start);
        const int end = placed.start[job] + jobs_[job].minutes();
        cook.done = s == 0 ? end : std::max(cook.done, end);
        cook.hands_on += step.hands_on + step.wash;
        cook.steps.push_back(std::move(step));
      }
      if (const auto stand = stands_.find(d); stand != stands_.end()) {
        cook.stands_from = std::max(0, placed.start[stand->second]);
      } else if (cook.ahead) {
        cook.stands_from = cook.done;
      }
    }
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  Workplace workplace_;
  const Occupied& occupied_;
  std::vector<ToCook> dishes_;
  const std::vector<CleanFirst>& clean_;
  std::vector<bool> hot_; // by dish
  std::vector<Job> jobs_;
  std::vector<std::vector<std::size_t>> jobs_of_; // by dish, in the order of its steps
  std::map<std::size_t, std::size_t> stands_;     // by dish: the job in which it stands
};

bool is_early(const Kitchen& kitchen, const Resolved& resolved, const Cooking& cook) {
  const Recipe& recipe = kitchen.recipe(resolved.making(cook.making).recipe);
  return !cook.steps.empty() && !cook.ahead && is_eaten_hot(kitchen, recipe) &&
         cook.ready - cook.done > may_wait;
}

int DayOfCooking::early(const Kitchen& kitchen, const Resolved& resolved,
                        const std::vector<ToCook>& dishes) {
  int sum = 0;
  for (const ToCook& dish : dishes) {
    sum += is_early(kitchen, resolved, dish.cooking) ? dish.cooking.ready - dish.cooking.done : 0;
  }
  return sum;
}

// All the days, the last one first: what stands overnight is begun on a day before.
class CookingDays {
public:
  CookingDays(const Kitchen& kitchen, const Resolved& resolved,
              const std::vector<SessionPlan>& sessions, text::Diagnostics& diagnostics)
      : kitchen_(kitchen),
        resolved_(resolved),
        sessions_(sessions),
        diagnostics_(diagnostics),
        clean_(clean_first(kitchen, resolved)) {
    const std::map<MakingId, CutBefore> cut = cut_before(kitchen, resolved);
    for (const Making& making : resolved.makings) {
      if (making.session || making.on_hand) {
        continue;
      }
      ToCook one;
      one.cooking.making = making.id;
      one.cooking.date = making.date;
      one.cooking.ready = making.ready_by;
      const auto known = cut.find(making.id);
      one.work = work_of(kitchen, making, known == cut.end() ? CutBefore{} : known->second);
      const Recipe& recipe = kitchen.recipe(making.recipe);
      one.stands = recipe.marinate.value_or(0);
      const std::size_t before = steps_before_the_wait(recipe);
      for (const StepWork& work : one.work) {
        one.before += recipe.marinate && work.step < before ? 1U : 0U;
      }
      days_[making.date].push_back(std::move(one));
    }
  }

  std::vector<Cooking> run() {
    while (!days_.empty()) {
      auto last = std::prev(days_.end());
      const Date date = last->first;
      std::vector<ToCook> dishes = std::move(last->second);
      days_.erase(last);
      day(date, std::move(dishes));
    }
    std::stable_sort(out_.begin(), out_.end(), [](const Cooking& a, const Cooking& b) {
      return std::tuple(a.date, a.start, a.making) < std::tuple(b.date, b.start, b.making);
    });
    return std::move(out_);
  }

private:
  std::vector<ToCook> placed(const Occupied& occupied, std::vector<ToCook> dishes) const {
    return DayOfCooking(kitchen_, resolved_, occupied, std::move(dishes), clean_).run();
  }

  void day(Date date, std::vector<ToCook> dishes) {
    const Occupied occupied = prep::occupied(kitchen_, sessions_, date);
    // What stands begins on the day itself, unless that would be in the night.
    for (ToCook& dish : dishes) {
      dish.stands_here = dish.before > 0 && dish.before < dish.work.size() && dish.stands > 0 &&
                         dish.stands < dish.cooking.ready;
    }
    std::vector<ToCook> done = placed(occupied, dishes);
    // What goes to a day before makes room, in which the rest is placed anew.
    while (split_what_begins_at_night(dishes, done)) {
      done = placed(occupied, dishes);
    }
    for (std::size_t d = 0; d < dishes.size(); ++d) {
      if (const auto ahead = ahead_.find(dishes[d].cooking.making);
          ahead != ahead_.end() && !dishes[d].cooking.ahead) {
        begin_before(done[d].cooking, std::move(ahead->second));
        ahead_.erase(ahead);
      }
    }
    tell(occupied, dishes, done);
    for (ToCook& dish : done) {
      out_.push_back(std::move(dish.cooking));
    }
  }

  // Whether any dish had to be split: each is at most once.
  bool split_what_begins_at_night(std::vector<ToCook>& dishes, const std::vector<ToCook>& done) {
    bool any = false;
    for (std::size_t d = 0; d < dishes.size(); ++d) {
      ToCook& dish = dishes[d];
      dish.stands_here = dish.stands_here && done[d].cooking.start >= kitchen::getting_up;
      if (dish.before > 0 && !dish.stands_here) {
        split(dish);
        any = true;
      }
    }
    return any;
  }

  // Takes what is done before it stands out of a dish; it is put on a day before.
  void split(ToCook& dish) {
    ToCook first;
    first.cooking = dish.cooking;
    first.cooking.ahead = true;
    first.stands = dish.stands;
    const auto middle = dish.work.begin() + static_cast<std::ptrdiff_t>(dish.before);
    first.work.assign(dish.work.begin(), middle);
    dish.work.erase(dish.work.begin(), middle);
    dish.before = 0;
    ahead_[dish.cooking.making] = std::move(first);
  }

  // It must have stood long enough when cooking starts; begun by day, or in the evening before.
  void begin_before(const Cooking& cook, ToCook first) {
    const Begun begun = begun_by_day(cook.start - first.stands);
    // On the day itself the hands are taken: the evening before it has time.
    const int days = std::max(1, begun.days_before);
    first.cooking.date = cook.date - std::chrono::days(days);
    first.cooking.ready = begun.days_before == 0 ? kitchen::evening : begun.clock;
    days_[first.cooking.date].push_back(std::move(first));
  }

  // What cannot be hot for its meal, and which dish would make room for it.
  void tell(const Occupied& occupied, const std::vector<ToCook>& dishes,
            const std::vector<ToCook>& done) {
    const int early = DayOfCooking::early(kitchen_, resolved_, done);
    if (early == 0) {
      return;
    }
    std::string ahead;
    std::string elsewhere;
    for (std::size_t d = 0; d < dishes.size(); ++d) {
      std::vector<ToCook> rest = dishes;
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(d));
      if (dishes[d].work.empty() || dishes[d].cooking.ahead ||
          DayOfCooking::early(kitchen_, resolved_, placed(occupied, std::move(rest))) > 0) {
        continue;
      }
      const Recipe& recipe = kitchen_.recipe(resolved_.making(dishes[d].cooking.making).recipe);
      (recipe.keeps_unfrozen().value_or(0) > 0 ? ahead : elsewhere) = recipe.name;
    }
    for (const ToCook& dish : done) {
      const Cooking& cook = dish.cooking;
      if (!is_early(kitchen_, resolved_, cook)) {
        continue;
      }
      const Recipe& recipe = kitchen_.recipe(resolved_.making(cook.making).recipe);
      const std::string what =
          !ahead.empty()
              ? fmt::format("make {} the day before or in a session, and everything else is on "
                            "time",
                            ahead)
          : !elsewhere.empty()
              ? fmt::format("move {} to another day, and everything else is on time", elsewhere)
              : std::string("make it ahead, or choose another dish for that meal");
      diagnostics_.remark(errors::done_early, recipe.at,
                          fmt::format("{} is done at {} on {}, for {}, because hands and "
                                      "appliances are needed for other dishes after that",
                                      recipe.name, text::print_clock(std::max(0, cook.done)),
                                      text::print_day(cook.date), text::print_clock(cook.ready)),
                          fmt::format("{}; or keep it hot ({} or above)", what,
                                      measure::print_at_most(kitchen::hot_enough.fahrenheit,
                                                             kitchen_.household.system)));
    }
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const std::vector<SessionPlan>& sessions_;
  text::Diagnostics& diagnostics_;
  std::vector<CleanFirst> clean_;
  std::map<Date, std::vector<ToCook>> days_; // still to be placed
  std::map<MakingId, ToCook> ahead_;         // of the day that is being placed
  std::vector<Cooking> out_;
};

} // namespace

std::vector<Cooking> cooking(const Kitchen& kitchen, const Resolved& resolved,
                             const std::vector<SessionPlan>& sessions,
                             text::Diagnostics& diagnostics) {
  return CookingDays(kitchen, resolved, sessions, diagnostics).run();
}

} // namespace manciple::prep
