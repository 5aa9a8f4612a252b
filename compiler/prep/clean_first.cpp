#include "prep/clean_first.hpp"

#include "foods/diets.hpp"
#include "resolve/eaters.hpp"
#include "resolve/limits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using kitchen::Person;

// A vegetarian is not harmed by a knife that has cut ham; whoever avoids nuts, or gluten, may be.
bool is_harmful(const kitchen::Limit& limit) {
  return limit.diet.empty() || !foods::without(limit.diet).empty();
}

// What a person must not have and may be in it; empty if nothing is.
std::string harm(const Kitchen& kitchen, const resolve::Inside& inside, const Person& person) {
  for (const kitchen::Limit& limit : person.limits) {
    const auto is_in = [&](foods::FoodId food) {
      return resolve::holds_limit(kitchen, food, limit) == foods::Holds::yes;
    };
    const auto may_be_in = [&](kitchen::RecipeId recipe) {
      return resolve::may_contain(kitchen.recipe(recipe), limit);
    };
    if (is_harmful(limit) &&
        (std::any_of(inside.foods.begin(), inside.foods.end(), is_in) ||
         std::any_of(inside.recipes.begin(), inside.recipes.end(), may_be_in))) {
      return resolve::name_of(kitchen, limit);
    }
  }
  return {};
}

// What may be in recipes, each looked into once.
class Contents {
public:
  explicit Contents(const Kitchen& kitchen) : kitchen_(kitchen) {}

  std::string harmful(kitchen::RecipeId recipe, const Person& person) {
    const auto [place, fresh] = known_.try_emplace(recipe);
    if (fresh) {
      place->second.add(kitchen_, recipe);
    }
    return harm(kitchen_, place->second, person);
  }

private:
  const Kitchen& kitchen_;
  std::map<kitchen::RecipeId, resolve::Inside> known_;
};

bool avoids_something(const Person& person) {
  return std::any_of(person.limits.begin(), person.limits.end(), is_harmful);
}

// Something made, and who eats of it.
struct Served {
  resolve::MakingId making;
  std::vector<const Person*> eaters;
};

// Of what is made together, which has to be made before which.
void order(const resolve::Resolved& resolved, const std::vector<Served>& together,
           Contents& contents, std::vector<CleanFirst>& out) {
  for (const Served& mine : together) {
    for (const Person* person : mine.eaters) {
      for (const Served& other : together) {
        if (!avoids_something(*person) || other.making == mine.making) {
          continue;
        }
        const std::string what = contents.harmful(resolved.making(other.making).recipe, *person);
        if (!what.empty()) {
          out.push_back(
              {mine.making, other.making, fmt::format("{} must not have {}", person->name, what)});
        }
      }
    }
  }
}

} // namespace

std::vector<CleanFirst> clean_first(const Kitchen& kitchen, const resolve::Resolved& resolved) {
  std::map<std::size_t, std::vector<Served>> meals;
  for (const resolve::Making& making : resolved.makings) {
    for (const resolve::Consumer& consumer : making.consumers) {
      const auto* dish = std::get_if<resolve::DishRef>(&consumer.who);
      if (dish != nullptr && !making.session && consumer.date == making.date) {
        meals[dish->meal].push_back({making.id, resolve::eaters(kitchen, *dish)});
      }
    }
  }
  Contents contents(kitchen);
  std::vector<CleanFirst> out;
  for (const auto& [meal, dishes] : meals) {
    order(resolved, dishes, contents, out);
  }
  return out;
}

std::vector<CleanFirst> clean_first_in(const Kitchen& kitchen, const resolve::Resolved& resolved,
                                       std::size_t session) {
  std::vector<Served> together;
  for (const resolve::Making& making : resolved.makings) {
    if (making.session != session) {
      continue;
    }
    Served& one = together.emplace_back(Served{making.id, {}});
    for (const resolve::DishShare& share : resolved.shares_of(making.id)) {
      for (const Person* person : resolve::eaters(kitchen, share.dish)) {
        if (std::find(one.eaters.begin(), one.eaters.end(), person) == one.eaters.end()) {
          one.eaters.push_back(person);
        }
      }
    }
  }
  Contents contents(kitchen);
  std::vector<CleanFirst> out;
  order(resolved, together, contents, out);
  return out;
}

std::optional<std::string> harm_of(const Kitchen& kitchen, foods::FoodId food) {
  std::vector<const Person*> all;
  for (const Person& person : kitchen.household.people) {
    all.push_back(&person);
  }
  for (const kitchen::Guest& guest : kitchen.plan->guests) {
    all.push_back(&guest.person);
  }
  for (const Person* person : all) {
    if (std::string what = harm(kitchen, {{food}, {}}, *person); !what.empty()) {
      return what;
    }
  }
  return std::nullopt;
}

} // namespace manciple::prep
