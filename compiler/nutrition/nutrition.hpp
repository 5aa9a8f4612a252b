#pragma once

#include "nutrition/intakes.hpp"
#include "resolve/resolve.hpp"

#include <array>
#include <string>
#include <vector>

/// What is in what is eaten: by dish, by person and day.
namespace manciple::nutrition {

using foods::Nutrient;

/// Nutrients of some food, with how much of its weight they rest on.
struct Sum {
  std::array<double, foods::nutrient_count> of{};    ///< in each nutrient's unit
  std::array<double, foods::nutrient_count> known{}; ///< grams for which there is a figure
  double grams = 0;                                  ///< edible, as it comes, before cooking

  /// So many grams of what holds `per_100_g`; of nothing known, where that is null.
  void add(const foods::Nutrients* per_100_g, double amount);
  void add(const Sum& other, double times = 1);
  /// The same, but nothing of it more than in another.
  [[nodiscard]] Sum at_most(const Sum& other) const;
  [[nodiscard]] double operator[](Nutrient nutrient) const {
    return of[static_cast<std::size_t>(nutrient)];
  }
  /// The share of the weight for which there is a figure, of 1; 0 of nothing.
  [[nodiscard]] double coverage(Nutrient nutrient) const;
};

/// What one person eats on a day: of guests who come together, each.
struct Day {
  text::Date date;
  int meals = 0; ///< of the plan at which they sit
  Sum eaten;
};

struct Eater {
  std::string name;
  bool guest = false;
  int heads = 1;
  double portion = 1;    ///< of each, of an adult's serving
  std::vector<Day> days; ///< those on which they sit at a meal
  /// What is recommended for their age and sex, by nutrient; nothing where the tables say nothing
  /// or the age is not said.
  std::array<std::optional<Intake>, foods::nutrient_count> intakes;
  std::optional<EnergyShares> shares;
};

/// A dish of a meal.
struct DishSum {
  Sum whole;           ///< what all its eaters eat of it together
  double servings = 0; ///< an adult's
};

struct Nutrition {
  std::vector<std::vector<DishSum>> dishes; ///< by meal and dish of the plan
  std::vector<Eater> people;                ///< of the household, then guests
  std::vector<std::string> without_figures; ///< foods that are eaten and have none, by name
  std::vector<std::string> without_amount;  ///< foods that a recipe gives no amount of
};

/// Adds up what the plan's dishes hold. A food counts with its edible weight (refuse taken off,
/// what is drained poured away) and the figures of the food as it comes: raw where it is bought
/// raw. Of what a recipe cooks itself, vitamin C and folate are taken off as far as the tables have
/// the food cooked (`foods/retention`); what else cooking destroys or takes up is not. Water from
/// the tap, staples and what is bought besides belong to no meal and are left out.
Nutrition nutrition(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved);

/// What a serving of a recipe as written holds, through the recipes that it needs.
Sum of_serving(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe);

/// The form in which an ingredient is eaten: of a can that is poured off, what is drained.
foods::Form eaten_form(const kitchen::Ingredient& line);
/// The same of a use.
foods::Form eaten_form(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                       const resolve::Use& use);

/// What is eaten of a food as bought, in grams; nothing for what has no weight.
std::optional<double> eaten_grams(const foods::Food& food, foods::Form form,
                                  const measure::Rational& as_purchased);

/// The caution that stands wherever these figures do.
extern const std::string_view caution;

} // namespace manciple::nutrition
