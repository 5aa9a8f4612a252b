#include "resolve/limits.hpp"

#include "resolve/eaters.hpp"
#include "resolve/errors.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace manciple::resolve {
namespace {

using foods::FoodId;
using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Person;
using kitchen::Recipe;

// A line of a recipe that a dish needs, and the line by which that recipe gets into the dish: none
// for the dish's own.
struct Reached {
  const Ingredient* line = nullptr;
  const Recipe* of = nullptr; ///< the recipe whose line it is
  std::optional<std::size_t> through;
};

// All that goes into a dish, nearest first. Every recipe is looked into once, however often and
// deep it is used.
struct Dissected {
  std::vector<Reached> lines;
  std::vector<std::pair<const Recipe*, std::optional<std::size_t>>> recipes;

  // The lines from the dish to one of them.
  [[nodiscard]] std::vector<const Ingredient*> path(std::optional<std::size_t> line) const {
    std::vector<const Ingredient*> out;
    for (; line; line = lines[*line].through) {
      out.push_back(lines[*line].line);
    }
    std::reverse(out.begin(), out.end());
    return out;
  }
};

// Someone to whom a dish is served.
struct Plate {
  const kitchen::Meal& meal;
  const kitchen::Dish& dish;
  const Person& person;
  const Dissected& inside;
};

// A way longer than this is shown by its two ends.
constexpr std::size_t most_notes = 12;

// "whether it is vegetarian", "whether it is of 'no pork'".
std::string whether(const std::string& diet) {
  const bool own_word = diet.find(' ') != std::string::npos;
  return own_word ? fmt::format("whether it is fit for '{}'", diet)
                  : fmt::format("whether it is {}", diet);
}

// What is to be read or asked because of it, if anything is.
std::optional<LabelCheck> label_for(const Kitchen& kitchen, FoodId id, foods::Holds holds,
                                    const kitchen::Limit& limit, const Person& person) {
  switch (holds) {
  case foods::Holds::read_the_label:
    return LabelCheck{id, name_of(kitchen, limit), person.name, true};
  case foods::Holds::not_known:
    return LabelCheck{id, limit.diet.empty() ? name_of(kitchen, limit) : whether(limit.diet),
                      person.name, false};
  case foods::Holds::yes:
  case foods::Holds::no:
    break;
  }
  return std::nullopt;
}

class Check {
public:
  Check(const Kitchen& kitchen, text::Diagnostics& diagnostics)
      : kitchen_(kitchen), diagnostics_(diagnostics) {}

  std::vector<LabelCheck> run();

private:
  const Dissected& inside(const Recipe& recipe);
  void dish(const DishRef& ref);
  void tell_unknown(const std::vector<LabelCheck>& labels);
  void check(const Plate& plate);
  void check_food(const Plate& plate, std::size_t line, FoodId food);
  void check_limit(const Plate& plate, std::size_t line, FoodId food, const kitchen::Limit& limit);
  void check_said(const Plate& plate, const Recipe& recipe, std::optional<std::size_t> through);
  void refuse(const Plate& plate, std::optional<std::size_t> line, const kitchen::Limit& limit,
              const std::string& why);

  const Kitchen& kitchen_;
  text::Diagnostics& diagnostics_;
  std::map<kitchen::RecipeId, Dissected> known_;
  std::map<std::tuple<std::string, FoodId, std::string>, bool> labels_; // whether it is known
};

const Dissected& Check::inside(const Recipe& recipe) {
  const auto [place, fresh] = known_.try_emplace(recipe.id);
  Dissected& out = place->second;
  if (!fresh) {
    return out;
  }
  std::vector<bool> seen(kitchen_.recipes.size(), false);
  seen[static_cast<std::size_t>(recipe.id)] = true;
  out.recipes.emplace_back(&recipe, std::nullopt);
  for (std::size_t next = 0; next < out.recipes.size(); ++next) {
    const auto [of, through] = out.recipes[next];
    for (const Ingredient& line : of->ingredients) {
      const std::size_t index = out.lines.size();
      out.lines.push_back({&line, of, through});
      if (const kitchen::RecipeId* id = line.recipe();
          id != nullptr && !seen[static_cast<std::size_t>(*id)]) {
        seen[static_cast<std::size_t>(*id)] = true;
        out.recipes.emplace_back(&kitchen_.recipe(*id), index);
      }
    }
  }
  return out;
}

void Check::refuse(const Plate& plate, std::optional<std::size_t> line, const kitchen::Limit& limit,
                   const std::string& why) {
  auto& told = diagnostics_.error(
      errors::must_not_have, plate.dish.at,
      fmt::format("{} must not have {}{}: {}", plate.person.name, name_of(kitchen_, limit),
                  limit.diet.empty() ? "" : fmt::format(" ({})", limit.diet), why),
      fmt::format("say what {0} has instead with 'for: {{{0}: ... instead of ...}}', or leave {0} "
                  "out with 'eaten by: [...]'",
                  plate.person.name));
  const auto path = plate.inside.path(line);
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (path.size() > most_notes && i == most_notes / 2) {
      told.note({}, fmt::format("through {} more recipes", path.size() - most_notes));
      i = path.size() - most_notes / 2;
    }
    told.note(path[i]->at, fmt::format("through '{}'", path[i]->text));
  }
}

void Check::check_limit(const Plate& plate, std::size_t line, FoodId id,
                        const kitchen::Limit& limit) {
  const foods::Holds holds = holds_limit(kitchen_, id, limit);
  if (holds == foods::Holds::yes) {
    const foods::Food& food = kitchen_.food(id);
    const kitchen::RecipeId* dish = plate.dish.what.recipe();
    const Recipe* in = plate.inside.lines[line].of;
    refuse(plate, line, limit,
           fmt::format("{} on {} has {}{}",
                       dish != nullptr ? kitchen_.recipe(*dish).name : food.name,
                       text::print_day(plate.meal.date), food.name,
                       in != nullptr && in->id != *dish ? fmt::format(" in {}", in->name) : ""));
  } else if (const auto label = label_for(kitchen_, id, holds, limit, plate.person)) {
    labels_[{label->person, id, label->what}] = label->known;
  }
}

// One word a food and diet is enough: of beef stock a vegetarian need not hear that it is stock,
// too.
void Check::check_food(const Plate& plate, std::size_t line, FoodId id) {
  std::string refused;
  for (const kitchen::Limit& limit : plate.person.limits) {
    if (limit.diet.empty() || limit.diet != refused) {
      const std::size_t before = diagnostics_.errors();
      check_limit(plate, line, id, limit);
      refused = diagnostics_.errors() > before ? limit.diet : refused;
    }
  }
}

// What a recipe itself says that it may contain.
void Check::check_said(const Plate& plate, const Recipe& recipe,
                       std::optional<std::size_t> through) {
  for (const kitchen::Limit& limit : plate.person.limits) {
    if (may_contain(recipe, limit)) {
      refuse(plate, through, limit, fmt::format("{} may contain it", recipe.name));
    }
  }
}

void Check::check(const Plate& plate) {
  for (std::size_t i = 0; i < plate.inside.lines.size(); ++i) {
    if (const FoodId* food = plate.inside.lines[i].line->food()) {
      // What may be bought instead counts as being in it.
      for (const FoodId one : kitchen_.household.instead_of(*food)) {
        check_food(plate, i, one);
      }
    }
  }
  for (const auto& [recipe, through] : plate.inside.recipes) {
    check_said(plate, *recipe, through);
  }
}

void Check::dish(const DishRef& ref) {
  const kitchen::Meal& meal = kitchen_.plan->meals[ref.meal];
  const kitchen::Dish& dish = meal.dishes[ref.dish];
  const kitchen::RecipeId* recipe = dish.what.recipe();
  const Dissected plain{{{&dish.what, nullptr, {}}}, {}};
  for (const Person* person : eaters(kitchen_, ref)) {
    if (!person->limits.empty()) {
      check({meal, dish, *person, recipe != nullptr ? inside(kitchen_.recipe(*recipe)) : plain});
    }
  }
}

// A remark a person: foods that no record answers.
void Check::tell_unknown(const std::vector<LabelCheck>& labels) {
  std::map<std::string, std::vector<std::string>> foods_for;
  for (const LabelCheck& label : labels) {
    auto& names = foods_for[label.person];
    const std::string& name = kitchen_.food(label.food).name;
    if (!label.known && std::find(names.begin(), names.end(), name) == names.end()) {
      names.push_back(name);
    }
  }
  for (auto& [person, names] : foods_for) {
    if (!names.empty()) {
      std::sort(names.begin(), names.end());
      diagnostics_.remark(
          errors::read_the_label, {},
          fmt::format("what is in {} is not known; read the label before {} eats it",
                      text::the_first_few(names), person),
          "say what is in it in recipes/foods.yaml: 'classes' and 'allergens'");
    }
  }
}

std::vector<LabelCheck> Check::run() {
  for (std::size_t m = 0; m < kitchen_.plan->meals.size(); ++m) {
    for (std::size_t d = 0; d < kitchen_.plan->meals[m].dishes.size(); ++d) {
      dish({m, d});
    }
  }
  std::vector<LabelCheck> out;
  for (const auto& [key, known] : labels_) {
    const auto& [person, food, what] = key;
    out.push_back({food, what, person, known});
  }
  tell_unknown(out);
  sort_labels(kitchen_, out);
  return out;
}

} // namespace

std::vector<LabelCheck> check_limits(const Kitchen& kitchen, text::Diagnostics& diagnostics) {
  return Check(kitchen, diagnostics).run();
}

std::string name_of(const Kitchen& kitchen, const kitchen::Limit& limit) {
  const auto* of = std::get_if<foods::AnyClass>(&limit.what);
  return of != nullptr ? std::string(foods::name(*of))
                       : kitchen.food(std::get<FoodId>(limit.what)).name;
}

foods::Holds holds_limit(const Kitchen& kitchen, FoodId id, const kitchen::Limit& limit) {
  const foods::Food& food = kitchen.food(id);
  const FoodId* avoided = std::get_if<FoodId>(&limit.what);
  if (avoided == nullptr) {
    return foods::holds(food, std::get<foods::AnyClass>(limit.what));
  }
  const std::string within = fmt::format(" {} ", foods::normal_name(food.name));
  const std::string name = fmt::format(" {} ", kitchen.food(*avoided).name);
  return id == *avoided || (food.as_written && within.find(name) != std::string::npos)
             ? foods::Holds::yes
             : foods::Holds::no;
}

bool may_contain(const kitchen::Recipe& recipe, const kitchen::Limit& limit) {
  const auto* of = std::get_if<foods::AnyClass>(&limit.what);
  return of != nullptr &&
         std::any_of(recipe.may_contain.begin(), recipe.may_contain.end(),
                     [&](foods::Allergen allergen) { return *of == foods::AnyClass(allergen); });
}

void Inside::add(const Kitchen& kitchen, const kitchen::Target& what) {
  std::vector<kitchen::Target> open{what};
  while (!open.empty()) {
    const kitchen::Target at = open.back();
    open.pop_back();
    if (const auto* food = std::get_if<FoodId>(&at)) {
      for (const FoodId one : kitchen.household.instead_of(*food)) {
        foods.insert(one);
      }
    } else if (const auto id = std::get<kitchen::RecipeId>(at); recipes.insert(id).second) {
      for (const Ingredient& line : kitchen.recipe(id).ingredients) {
        open.push_back(line.target);
      }
    }
  }
}

Fit fit_for(const Kitchen& kitchen, const Inside& inside, const Person& person) {
  Fit out;
  const auto refuse = [&](const kitchen::Limit& limit, const std::string& why) {
    if (!out.forbidden) {
      out.forbidden =
          fmt::format("{} must not have {}: {}", person.name, name_of(kitchen, limit), why);
    }
  };
  for (const kitchen::Limit& limit : person.limits) {
    for (const FoodId id : inside.foods) {
      const foods::Food& food = kitchen.food(id);
      if (food.from_tap) {
        continue;
      }
      const foods::Holds holds = holds_limit(kitchen, id, limit);
      if (holds == foods::Holds::yes) {
        refuse(limit, fmt::format("{} is in it", food.name));
      } else if (auto label = label_for(kitchen, id, holds, limit, person)) {
        out.labels.push_back(std::move(*label));
      }
    }
    for (const kitchen::RecipeId id : inside.recipes) {
      if (may_contain(kitchen.recipe(id), limit)) {
        refuse(limit, fmt::format("{} may contain it", kitchen.recipe(id).name));
      }
    }
  }
  return out;
}

void sort_labels(const Kitchen& kitchen, std::vector<LabelCheck>& labels) {
  std::stable_sort(labels.begin(), labels.end(), [&](const LabelCheck& a, const LabelCheck& b) {
    return std::tuple(std::string_view(kitchen.food(a.food).name), a.what) <
           std::tuple(std::string_view(kitchen.food(b.food).name), b.what);
  });
}

} // namespace manciple::resolve
