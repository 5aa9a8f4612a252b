#include "kitchen/usual.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/known_appliances.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace manciple::kitchen {
namespace {

// "a, b and c".
std::string and_list(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  }
  return out;
}

// Days in the fridge. USDA FSIS, "Leftovers and Food Safety": 3 to 4 days.
constexpr int leftovers_keep = 3;

class Usual {
public:
  explicit Usual(Kitchen& kitchen) : kitchen_(kitchen), plan_(*kitchen.plan) {}

  std::vector<std::string> run() {
    eaters();
    leftovers();
    slots();
    appliances();
    trips();
    return std::move(said_);
  }

private:
  void eaters() {
    const auto as_written = [](const Dish& dish) {
      return dish.kind == Dish::Kind::cooked && !dish.servings;
    };
    const bool matters = std::any_of(plan_.meals.begin(), plan_.meals.end(), [&](const Meal& meal) {
      return std::any_of(meal.dishes.begin(), meal.dishes.end(), as_written);
    });
    if (kitchen_.household.people.empty()) {
      name_eaters();
    }
    if (kitchen_.household.people.empty() && matters) {
      said_.emplace_back("each dish is made for as many people as its recipe serves");
    }
    std::vector<std::string> unsaid;
    for (const Recipe& recipe : kitchen_.recipes) {
      if (!recipe.says_serves) {
        unsaid.push_back(recipe.name);
      }
    }
    if (!unsaid.empty()) {
      said_.push_back(
          fmt::format("{} {} 4", and_list(unsaid), unsaid.size() > 1 ? "serve" : "serves"));
    }
  }

  // Those whom the plan names.
  void name_eaters() {
    std::vector<std::string> names;
    const auto name = [&](const std::string& one) {
      if (std::find(names.begin(), names.end(), one) == names.end()) {
        names.push_back(one);
      }
    };
    for (const Meal& meal : plan_.meals) {
      for (const Dish& dish : meal.dishes) {
        std::for_each(dish.eaten_by.begin(), dish.eaten_by.end(), name);
      }
    }
    for (const Absence& absence : plan_.away) {
      name(absence.who);
    }
    for (const std::string& one : names) {
      Person person;
      person.name = one;
      kitchen_.household.people.push_back(std::move(person));
    }
    if (!names.empty()) {
      said_.push_back(fmt::format("{} {} here, and nobody else", and_list(names),
                                  names.size() > 1 ? "eat" : "eats"));
    }
  }

  // Of a recipe that does not say whether it keeps, and of which the plan has leftovers, or which
  // is packed the evening before.
  void leftovers() {
    std::vector<std::string> words;
    std::vector<std::string> packed;
    for (const Meal& meal : plan_.meals) {
      for (const Dish& dish : meal.dishes) {
        const bool kept = dish.kind == Dish::Kind::leftovers ||
                          kitchen_.household.slot(meal.slot)->is_packed(meal.date);
        if (!kept || dish.what.recipe() == nullptr) {
          continue;
        }
        Recipe& recipe = kitchen_.recipes[static_cast<std::size_t>(*dish.what.recipe())];
        if (!recipe.keeps_unfrozen() && !recipe.keeps_freezer) {
          recipe.keeps_fridge = leftovers_keep;
          (dish.kind == Dish::Kind::leftovers ? words : packed).push_back(recipe.name);
        }
      }
    }
    if (!packed.empty()) {
      said_.push_back(fmt::format("{}, packed, {} {} in the fridge", and_list(packed),
                                  packed.size() > 1 ? "keep" : "keeps",
                                  text::print_days(leftovers_keep)));
    }
    if (!words.empty()) {
      said_.push_back(fmt::format("leftovers of {} keep {} in the fridge", and_list(words),
                                  text::print_days(leftovers_keep)));
    }
  }

  void slots() {
    Household& household = kitchen_.household;
    if (household.says_slots) {
      std::vector<std::string> added;
      for (const std::string& name : household.added_slots) {
        added.push_back(fmt::format("{} at {}", name, text::print_clock(household.slot(name)->at)));
      }
      if (!added.empty()) {
        said_.push_back(and_list(added));
      }
      return;
    }
    std::set<std::string_view> used;
    for (const Meal& meal : plan_.meals) {
      used.insert(meal.slot);
    }
    std::erase_if(household.slots, [&](const Slot& slot) { return !used.contains(slot.name); });
    std::vector<std::string> words;
    for (const Slot& slot : household.slots) {
      words.push_back(fmt::format("{} at {}", slot.name, text::print_clock(slot.at)));
    }
    if (!words.empty()) {
      said_.push_back(and_list(words));
    }
  }

  void appliances() {
    Household& household = kitchen_.household;
    if (household.says_appliances) {
      return;
    }
    auto& have = household.appliances;
    bool matters = false;
    std::vector<std::string> words;
    for (const KnownAppliance& one : known_appliances()) {
      if (one.usual > 0) {
        words.emplace_back(one.usual_words);
      }
    }
    for (const Recipe& recipe : kitchen_.recipes) {
      for (const MethodStep& step : recipe.method) {
        const bool known = step.appliance.empty() || household.appliance(step.appliance) != nullptr;
        matters = matters || !step.appliance.empty();
        if (!known) {
          have.push_back({step.appliance, 1});
          words.push_back("one " + step.appliance);
        }
      }
    }
    std::sort(have.begin(), have.end(),
              [](const Appliance& a, const Appliance& b) { return a.name < b.name; });
    if (matters) {
      said_.push_back("the kitchen has " + and_list(words));
    }
  }

  void trips() {
    if (plan_.trips.empty()) {
      return;
    }
    if (!plan_.says_trips) {
      said_.push_back(fmt::format("shopping is on {}{}", text::print_day(plan_.trips.front().date),
                                  plan_.trips.size() > 1 ? " and every week from then on" : ""));
    }
    std::vector<std::string> words;
    for (const Shop& shop : kitchen_.shops) {
      const bool planned =
          std::any_of(plan_.trips.begin(), plan_.trips.end(), [&](const Trip& trip) {
            return std::any_of(trip.stops.begin(), trip.stops.end(),
                               [&](const Candidate& stop) { return stop.shop == shop.id; });
          });
      if (planned && !shop.has_file && shop.slug != any_shop) {
        words.push_back(shop.name);
      }
    }
    if (!words.empty()) {
      said_.push_back(
          fmt::format("{} {} everything", and_list(words), words.size() > 1 ? "have" : "has"));
    }
  }

  Kitchen& kitchen_;
  const Plan& plan_;
  std::vector<std::string> said_;
};

} // namespace

void settle_usual(Kitchen& kitchen, text::Diagnostics& diagnostics) {
  const std::vector<std::string> said =
      kitchen.plan ? Usual(kitchen).run() : std::vector<std::string>();
  if (!said.empty()) {
    diagnostics.remark(errors::taken_as_usual, kitchen.plan->at,
                       fmt::format("not stated, so assumed: {}", text::join(said, "; ")));
  }
}

} // namespace manciple::kitchen
