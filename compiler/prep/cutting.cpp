#include "prep/cutting.hpp"

#include "foods/classes.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "prep/clean_first.hpp"
#include "prep/method.hpp"
#include "prep/work.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
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
    return "dice";
  case Form::minced:
    return "mince";
  case Form::sliced:
    return "slice";
  case Form::shredded:
    return "shred";
  case Form::grated:
    return "grate";
  case Form::cubed:
    return "cube";
  case Form::torn:
    return "tear";
  case Form::julienned:
    return "cut into strips";
  case Form::florets:
    return "cut into florets";
  default:
    return "chop";
  }
}

Rational edible(const Food& food, const Rational& amount) {
  const foods::Yield* yield = food.yield(Form::plain);
  return amount * (yield != nullptr ? yield->share : Rational(1));
}

// The session in which a use is cut by a task of its own, if it is.
std::optional<std::size_t> cut_in(const Resolved& resolved, const resolve::Use& use) {
  const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
  if (of == nullptr || !resolve::is_cut(use.form)) {
    return std::nullopt;
  }
  return use.cut_in ? use.cut_in : resolved.making(of->making).session;
}

// A food cut one way.
struct Cut {
  Rational amount;
  std::map<std::string, Rational> dishes; // what each takes of it
};

struct OfFood {
  FoodId food{};
  std::map<Form, Cut> cuts;
  std::set<MakingId> here;
  bool for_today = false;
};

Mise task_of(const Kitchen& kitchen, const OfFood& of) {
  const Food& food = kitchen.food(of.food);
  Mise out;
  out.task.kind = Task::Kind::cut;
  std::vector<std::string> what;
  std::vector<std::string> purposes;
  for (const auto& [form, cut] : of.cuts) {
    what.push_back(fmt::format("{} {}", verb(form),
                               foods::as_seen(food, cut.amount, kitchen.household.system)));
    std::vector<std::string> dishes;
    for (const auto& [name, amount] : cut.dishes) {
      dishes.push_back(
          cut.dishes.size() == 1 && of.cuts.size() == 1
              ? name
              : fmt::format("{} {}", name,
                            foods::amount_seen(food, amount, kitchen.household.system)));
    }
    const std::string all = text::join(dishes, ", ");
    purposes.push_back(of.cuts.size() == 1 ? all : fmt::format("{}: {}", foods::name(form), all));
    out.task.hands_on += cutting_minutes(form, edible(food, cut.amount));
  }
  out.task.what = text::capitalized(text::join(what, ", "));
  out.task.purpose = text::join(purposes, "; ");
  out.before.assign(of.here.begin(), of.here.end());
  out.for_today = of.for_today;
  return out;
}

} // namespace

std::vector<Mise> cutting(const Kitchen& kitchen, const Resolved& resolved, std::size_t session) {
  std::map<std::string, OfFood> foods;
  for (const resolve::Use& use : resolved.uses) {
    if (cut_in(resolved, use) != session) {
      continue;
    }
    const Making& making = resolved.making(std::get<resolve::OfMaking>(use.reason).making);
    OfFood& of = foods[kitchen.food(use.food).name];
    of.food = use.food;
    Cut& cut = of.cuts[use.form];
    cut.amount += use.amount;
    cut.dishes[kitchen.recipe(making.recipe).name] += use.amount;
    if (making.session == session) {
      of.here.insert(making.id);
    } else {
      of.for_today = of.for_today || making.date == kitchen.plan->sessions[session].date;
    }
  }
  std::vector<Mise> out;
  Mise small;
  std::vector<std::string> words;
  for (const auto& [name, of] : foods) {
    Mise one = task_of(kitchen, of);
    one.harms = harm_of(kitchen, of.food).has_value();
    if (one.task.hands_on >= worth_writing || one.harms) {
      one.task.hands_on = std::max(one.task.hands_on, worth_writing);
      out.push_back(std::move(one));
      continue;
    }
    small.for_today = small.for_today || one.for_today;
    small.task.hands_on += one.task.hands_on;
    words.push_back(fmt::format("{} for {}", one.task.what, one.task.purpose));
    small.before.insert(small.before.end(), one.before.begin(), one.before.end());
  }
  if (!words.empty()) {
    small.task.kind = Task::Kind::cut;
    small.task.what = text::join(words, "; ");
    small.task.hands_on = std::max(small.task.hands_on, worth_writing);
    out.push_back(std::move(small));
  }
  return out;
}

std::vector<Mise> weighing(const Kitchen& kitchen, const Resolved& resolved, std::size_t session) {
  std::map<std::string, std::map<MakingId, Rational>> shares;
  std::map<std::string, FoodId> ids;
  for (const resolve::Use& use : resolved.uses) {
    const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
    if (of == nullptr || resolved.making(of->making).session != session) {
      continue;
    }
    const Food& food = kitchen.food(use.food);
    const bool dry = food.department == foods::Department::baking &&
                     foods::basis(food) == measure::Dimension::mass &&
                     food.stored == foods::Place::pantry;
    if (dry) {
      shares[food.name][of->making] += use.amount;
      ids[food.name] = use.food;
    }
  }
  Mise out;
  out.task.kind = Task::Kind::weigh;
  std::vector<std::string> words;
  std::set<MakingId> before;
  for (const auto& [name, makings] : shares) {
    // A spoon of something is measured when it is used.
    constexpr int worth_the_scales = 100; // grams
    const bool much = std::any_of(makings.begin(), makings.end(),
                                  [&](const auto& one) { return one.second >= worth_the_scales; });
    if (makings.size() < 2 || !much) {
      continue;
    }
    const Food& food = kitchen.food(ids[name]);
    std::vector<std::string> parts;
    for (const auto& [id, amount] : makings) {
      parts.push_back(fmt::format("{} {}", kitchen.recipe(resolved.making(id).recipe).name,
                                  foods::amount_seen(food, amount, kitchen.household.system)));
      before.insert(id);
    }
    words.push_back(fmt::format("{} ({})", name, text::join(parts, ", ")));
    // Half a minute each, and the jar. Common practice, no source.
    out.task.hands_on += 1 + static_cast<int>(makings.size()) / 2;
  }
  if (words.empty()) {
    return {};
  }
  out.task.what = "Weigh out " + text::join(words, "; ");
  out.task.hands_on = std::max(out.task.hands_on, worth_writing);
  out.before.assign(before.begin(), before.end());
  return {out};
}

std::map<MakingId, CutBefore> cut_before(const Kitchen& kitchen, const Resolved& resolved) {
  std::map<MakingId, CutBefore> out;
  std::map<MakingId, std::set<std::size_t>> lines; // of its ingredients, those that are cut
  for (const resolve::Use& use : resolved.uses) {
    if (!cut_in(resolved, use)) {
      continue;
    }
    const auto& of = std::get<resolve::OfMaking>(use.reason);
    out[of.making].minutes += cutting_minutes(use.form, edible(kitchen.food(use.food), use.amount));
    lines[of.making].insert(of.ingredient);
  }
  for (auto& [id, cut] : out) {
    const kitchen::Recipe& recipe = kitchen.recipe(resolved.making(id).recipe);
    cut.all = true;
    for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
      const kitchen::Ingredient& line = recipe.ingredients[i];
      const bool left_out = line.optional && !lines[id].contains(i);
      cut.all = cut.all && (left_out || lines[id].contains(i) || !is_prepared(line));
    }
  }
  return out;
}

} // namespace manciple::prep
