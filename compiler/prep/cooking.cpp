#include "kitchen/appliances.hpp"
#include "kitchen/contents.hpp"
#include "prep/errors.hpp"
#include "prep/parts.hpp"
#include "prep/workplace.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using kitchen::MethodStep;
using kitchen::Recipe;
using resolve::Making;
using resolve::Resolved;

// Work of the search for one day; a day is small.
constexpr std::int64_t most_nodes = 2'000;
// A hot dish may wait so long, covered. Common practice, no source.
constexpr int may_wait = 30; // minutes

// What is cooked on one day. Time runs backwards here, from the last meal of the day: the shortest
// schedule is then the one that begins latest.
class DayOfCooking {
public:
  DayOfCooking(const Kitchen& kitchen, std::vector<Cooking> cooking)
      : kitchen_(kitchen),
        out_(std::move(cooking)),
        workplace_(kitchen.household.appliances, 1),
        project_{workplace_.capacity(), {}} {
    for (const Cooking& cook : out_) {
      end_ = std::max(end_, cook.ready);
    }
  }

  std::vector<Cooking> run(const Resolved& resolved) {
    for (std::size_t c = 0; c < out_.size(); ++c) {
      const Recipe& recipe = kitchen_.recipe(resolved.making(out_[c].making).recipe);
      eaten_hot_.push_back(is_eaten_hot(kitchen_, recipe));
      add(c, recipe);
    }
    for (std::size_t part = 0; part < out_.size(); ++part) {
      for (const resolve::Consumer& consumer : resolved.making(out_[part].making).consumers) {
        const auto* into = std::get_if<MakingId>(&consumer.who);
        for (std::size_t c = 0; into != nullptr && c < out_.size(); ++c) {
          if (out_[c].making == *into && !activities_[c].empty()) {
            for (const std::size_t one : activities_[part]) {
              project_.activities[one].after.push_back(activities_[c].front());
            }
          }
        }
      }
    }
    keep_temperatures_apart(project_, heat_, kitchen_.household.appliances);
    place();
    return std::move(out_);
  }

private:
  // A dish's steps, and the time between its meal and the last one of the day.
  void add(std::size_t c, const Recipe& recipe) {
    activities_.emplace_back();
    const std::size_t until = project_.activities.size();
    project_.activities.push_back({{workplace_.on({}, end_ - out_[c].ready, false)}, {}});
    heat_.push_back({});
    for (const Cooking::Step& step : out_[c].steps) {
      const MethodStep& method = recipe.method[step.step];
      const std::size_t here = project_.activities.size();
      if (!activities_[c].empty()) {
        project_.activities.back().after.push_back(here);
      }
      project_.activities.push_back({{workplace_.on(method.appliance, step.then, false),
                                      workplace_.on(method.appliance, step.hands_on, true)},
                                     {}});
      heat_.push_back({method.appliance, method.fahrenheit});
      activities_[c].push_back(here);
    }
    if (!activities_[c].empty()) {
      project_.activities.back().after.push_back(until);
    }
  }

  // Of two ways the one in which dishes wait less for their meals.
  void place() {
    scheduling::Limits limits;
    limits.seconds = std::numeric_limits<double>::infinity();
    limits.nodes = most_nodes;
    const std::vector<int> shortest = one_by_one(scheduling::shortest(project_, limits).start);
    const std::vector<int> quick_last = one_by_one(lengths());
    const std::vector<int>& start = waiting(quick_last) < waiting(shortest) ? quick_last : shortest;
    for (std::size_t c = 0; c < out_.size(); ++c) {
      Cooking& cook = out_[c];
      cook.start = cook.done = cook.ready;
      for (std::size_t s = 0; s < cook.steps.size(); ++s) {
        const std::size_t activity = activities_[c][s];
        const int end = end_ - start[activity];
        cook.steps[s].start = std::max(0, end - project_.activities[activity].minutes());
        cook.start = s == 0 ? cook.steps[s].start : std::min(cook.start, cook.steps[s].start);
        cook.done = s == 0 ? end : std::max(cook.done, end);
      }
    }
  }

  // By activity: how long its dish takes, a day more for what is not eaten hot. What takes long is
  // done first, so that what is quick comes to the table from the pan.
  [[nodiscard]] std::vector<int> lengths() const {
    std::vector<int> out(project_.activities.size(), 0);
    for (std::size_t c = 0; c < out_.size(); ++c) {
      int length = eaten_hot_[c] ? 0 : text::minutes_a_day;
      for (const std::size_t one : activities_[c]) {
        length += project_.activities[one].minutes();
      }
      for (const std::size_t one : activities_[c]) {
        out[one] = length;
      }
    }
    return out;
  }

  [[nodiscard]] int waiting(const std::vector<int>& start) const {
    int sum = 0;
    for (std::size_t c = 0; c < out_.size(); ++c) {
      sum += activities_[c].empty() || !eaten_hot_[c]
                 ? 0
                 : start[activities_[c].back()] - (end_ - out_[c].ready);
    }
    return sum;
  }

  // Each as soon as it can (nearest to the meal), in the order of what is told, after what it waits
  // for.
  [[nodiscard]] std::vector<int> one_by_one(const std::vector<int>& order) const {
    constexpr int not_yet = -1;
    std::vector<int> out(order.size(), not_yet);
    std::vector<std::vector<int>> taken; // by minute and resource
    const auto may_follow = [&](std::size_t activity) {
      const auto& after = project_.activities[activity].after;
      return out[activity] == not_yet && std::all_of(after.begin(), after.end(), [&](auto before) {
               return out[before] != not_yet;
             });
    };
    for (std::size_t placed = 0; placed < order.size(); ++placed) {
      std::optional<std::size_t> next;
      for (std::size_t i = 0; i < order.size(); ++i) {
        if (may_follow(i) && (!next || order[i] < order[*next])) {
          next = i;
        }
      }
      const scheduling::Activity& what = project_.activities[*next];
      int at = 0;
      for (const std::size_t before : what.after) {
        at = std::max(at, out[before] + project_.activities[before].minutes());
      }
      while (!fits(taken, what, at)) {
        ++at;
      }
      out[*next] = at;
      take(taken, what, at);
    }
    return out;
  }
  [[nodiscard]] bool fits(const std::vector<std::vector<int>>& taken,
                          const scheduling::Activity& what, int at) const {
    auto minute = static_cast<std::size_t>(at);
    for (const scheduling::Piece& piece : what.pieces) {
      for (int m = 0; m < piece.minutes; ++m, ++minute) {
        for (std::size_t r = 0; minute < taken.size() && r < piece.takes.size(); ++r) {
          if (piece.takes[r] > 0 && taken[minute][r] + piece.takes[r] > project_.capacity[r]) {
            return false;
          }
        }
      }
    }
    return true;
  }
  void take(std::vector<std::vector<int>>& taken, const scheduling::Activity& what, int at) const {
    auto minute = static_cast<std::size_t>(at);
    for (const scheduling::Piece& piece : what.pieces) {
      for (int m = 0; m < piece.minutes; ++m, ++minute) {
        while (taken.size() <= minute) {
          taken.emplace_back(project_.capacity.size(), 0);
        }
        for (std::size_t r = 0; r < piece.takes.size(); ++r) {
          taken[minute][r] += piece.takes[r];
        }
      }
    }
  }

  const Kitchen& kitchen_;
  std::vector<Cooking> out_;
  int end_ = 0; // the last meal
  Workplace workplace_;
  scheduling::Project project_;
  std::vector<bool> eaten_hot_;                      // by dish
  std::vector<Heat> heat_;                           // by activity
  std::vector<std::vector<std::size_t>> activities_; // of each dish, in the order of its steps
};

// The makings of the day outside the sessions, with what is left to do of their methods.
std::vector<Cooking> to_cook(const Kitchen& kitchen, const Resolved& resolved) {
  // Whether a session has cut all of a making's food that is to be cut.
  std::map<MakingId, bool> all_cut;
  for (const resolve::Use& use : resolved.uses) {
    const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
    if (of != nullptr && resolve::is_cut(use.form)) {
      const auto known = all_cut.try_emplace(of->making, true).first;
      known->second = known->second && use.cut_in.has_value();
    }
  }
  std::vector<Cooking> out;
  for (const Making& making : resolved.makings) {
    if (making.session) {
      continue;
    }
    const auto cut = all_cut.find(making.id);
    Cooking cook;
    cook.making = making.id;
    cook.date = making.date;
    cook.ready = making.ready_by;
    const auto& method = kitchen.recipe(making.recipe).method;
    for (std::size_t s = 0; s < method.size(); ++s) {
      if (method[s].cuts && cut != all_cut.end() && cut->second) {
        continue;
      }
      cook.steps.push_back({s, 0, hands_on(method[s], making.times), method[s].then});
      cook.hands_on += cook.steps.back().hands_on;
    }
    out.push_back(std::move(cook));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Cooking& a, const Cooking& b) { return a.date < b.date; });
  return out;
}

void tell_early(const Kitchen& kitchen, const Resolved& resolved, const Cooking& cook,
                text::Diagnostics& diagnostics) {
  const Recipe& recipe = kitchen.recipe(resolved.making(cook.making).recipe);
  if (cook.steps.empty() || !is_eaten_hot(kitchen, recipe) || cook.ready - cook.done <= may_wait) {
    return;
  }
  diagnostics.remark(
      errors::done_early, recipe.at,
      fmt::format("{} is done at {} on {}, for {}: hands and appliances are needed for other "
                  "dishes after that",
                  recipe.name, text::print_clock(cook.done), text::print_day(cook.date),
                  text::print_clock(cook.ready)),
      "keep it hot (135 F or above), make it ahead, or choose another dish for that meal");
}

} // namespace

bool is_eaten_hot(const Kitchen& kitchen, const Recipe& recipe) {
  const bool cake =
      holds(kitchen, recipe, foods::Class::flour) && holds(kitchen, recipe, foods::Class::sugar);
  return !cake && (recipe.method.empty() || is_heated(recipe));
}

std::vector<Cooking> cooking(const Kitchen& kitchen, const Resolved& resolved,
                             text::Diagnostics& diagnostics) {
  std::vector<Cooking> out;
  std::vector<Cooking> all = to_cook(kitchen, resolved);
  for (auto day = all.begin(); day != all.end();) {
    const auto end =
        std::find_if(day, all.end(), [&](const Cooking& cook) { return cook.date != day->date; });
    for (Cooking& cook :
         DayOfCooking(kitchen, {std::make_move_iterator(day), std::make_move_iterator(end)})
             .run(resolved)) {
      tell_early(kitchen, resolved, cook, diagnostics);
      out.push_back(std::move(cook));
    }
    day = end;
  }
  std::stable_sort(out.begin(), out.end(), [](const Cooking& a, const Cooking& b) {
    return std::tuple(a.date, a.start) < std::tuple(b.date, b.start);
  });
  return out;
}

} // namespace manciple::prep
