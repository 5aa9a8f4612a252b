// What is in what is eaten, for people and for spreadsheets.
#include "nutrition/nutrition.hpp"

#include "emit/emit.hpp"
#include "emit/nutrition_words.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace manciple::emit {
namespace {

using nutrition::Eater;
using nutrition::Nutrient;
using nutrition::Sum;

constexpr int days_a_week = 7;

// What most people ask about, first.
constexpr std::array shown_nutrients{
    Nutrient::energy,       Nutrient::protein,   Nutrient::fat,        Nutrient::saturated,
    Nutrient::carbohydrate, Nutrient::fiber,     Nutrient::sugars,     Nutrient::sodium,
    Nutrient::potassium,    Nutrient::calcium,   Nutrient::iron,       Nutrient::magnesium,
    Nutrient::zinc,         Nutrient::vitamin_c, Nutrient::vitamin_a,  Nutrient::vitamin_d,
    Nutrient::vitamin_b12,  Nutrient::folate,    Nutrient::cholesterol};

std::string person_part(const Compiled& compiled, const Eater& eater) {
  if (eater.days.empty()) {
    return {};
  }
  const char point = compiled.kitchen.household.system.point;
  const Sum mean = mean_day(eater);
  std::string out = fmt::format("\n## {}{}\n\n", escape_markdown(eater.name),
                                eater.heads > 1 ? fmt::format(" (each of {})", eater.heads) : "");
  int meals = 0;
  for (const nutrition::Day& day : eater.days) {
    meals += day.meals;
  }
  out += fmt::format("{} meals on {} days. There are figures for {}% of the weight.\n\n", meals,
                     eater.days.size(), percent_of(mean.coverage(Nutrient::energy)));
  out += "| | a day | a week | recommended a day | at most | |\n|---|---:|---:|---:|---:|---|\n";
  for (const Nutrient nutrient : shown_nutrients) {
    const auto& range = eater.intakes[static_cast<std::size_t>(nutrient)];
    const double coverage = mean.coverage(nutrient);
    const std::string thin = coverage + .05 < mean.coverage(Nutrient::energy)
                                 ? fmt::format(", figures for {}%", percent_of(coverage))
                                 : "";
    out += fmt::format("| {} | {} {} | {} | {} | {} | {}{} |\n", foods::in_words(nutrient),
                       rounded(mean[nutrient], point), unit_word(nutrient),
                       rounded(mean[nutrient] * days_a_week, point),
                       range ? recommended(*range, point) : "",
                       range && range->upper ? rounded(*range->upper, point) : "",
                       range ? against(mean[nutrient], *range) : "", thin);
  }
  if (eater.shares && mean[Nutrient::energy] > 0) {
    out += fmt::format("\nOf the energy, {}.\n", energy_words(mean, *eater.shares));
  } else if (!eater.shares) {
    out += "\nTheir age is not given or is under one year, so there is nothing to compare with.\n";
  }
  return out;
}

std::string servings_part(const Compiled& compiled) {
  const char point = compiled.kitchen.household.system.point;
  std::string out =
      "\n## A serving of each dish\n\n| | kcal | protein, g | fat, g | saturated, g | "
      "carbohydrate, g | fibre, g | sodium, mg | figures |\n"
      "|---|---:|---:|---:|---:|---:|---:|---:|---:|\n";
  for (const kitchen::Recipe* recipe : recipes_in_menu(compiled)) {
    const Sum sum = nutrition::of_serving(compiled.kitchen, *recipe);
    out += fmt::format("| {} ", escape_markdown(recipe->name));
    for (const Nutrient nutrient :
         {Nutrient::energy, Nutrient::protein, Nutrient::fat, Nutrient::saturated,
          Nutrient::carbohydrate, Nutrient::fiber, Nutrient::sodium}) {
      out += fmt::format("| {} ", rounded(sum[nutrient], point));
    }
    out += fmt::format("| {}% |\n", percent_of(sum.coverage(Nutrient::energy)));
  }
  return out;
}

std::string aims_part(const Compiled& compiled) {
  if (compiled.aims.empty()) {
    return {};
  }
  std::string out = "\n## Aims\n\n";
  for (const nutrition::AimMet& met : compiled.aims) {
    const std::string missed = nutrition::missed_by(compiled.kitchen, met);
    const std::string mend = nutrition::would_mend(compiled.kitchen, met);
    out +=
        missed.empty()
            ? fmt::format("- '{}' is met{}\n", escape_markdown(compiled.plan().aims[met.aim].text),
                          met.asked == 0 ? ": nobody eats such a meal" : " every time")
            : fmt::format("- {}{}\n", escape_markdown(missed),
                          mend.empty() ? "" : ". " + escape_markdown(mend));
  }
  return out;
}

std::string left_out_part(const Compiled& compiled) {
  const auto list = [](std::string_view what, const std::vector<std::string>& names) {
    return names.empty()
               ? std::string()
               : fmt::format("- {}: {}\n", what, escape_markdown(text::join(names, ", ")));
  };
  return "\n## Left out\n\n"
         "- what cooking destroys, except vitamin C and folate in vegetables and pulses that the "
         "tables list both raw and cooked: these lose as much as they do in the tables\n"
         "- fat that stays in the pan or the fryer, and water\n"
         "- staples and other purchases, because nothing says who eats them\n" +
         list("foods without figures", compiled.nutrition.without_figures) +
         list("foods without an amount in a recipe", compiled.nutrition.without_amount);
}

} // namespace

Sum mean_day(const Eater& eater) {
  Sum out;
  for (const nutrition::Day& day : eater.days) {
    out.add(day.eaten, 1 / static_cast<double>(eater.days.size()));
  }
  return out;
}

std::string rounded(double value, char point) {
  std::string out = value < 10    ? fmt::format("{:.1f}", value)
                    : value < 999 ? fmt::format("{:.0f}", value)
                                  : fmt::format("{:.0f}", std::round(value / 10) * 10);
  std::replace(out.begin(), out.end(), '.', point);
  return out;
}

int percent_of(double share) {
  return static_cast<int>(std::lround(share * 100));
}

std::string unit_word(Nutrient nutrient) {
  const std::string_view unit = foods::facts(nutrient).unit;
  return unit == "ug" ? "µg" : std::string(unit);
}

std::string recommended(const nutrition::Intake& range, char point) {
  return range.least == range.most
             ? rounded(range.least, point)
             : fmt::format("{} to {}", rounded(range.least, point), rounded(range.most, point));
}

std::string against(double value, const nutrition::Intake& range) {
  constexpr double near = .005;
  if (range.upper && value > *range.upper * (1 + near)) {
    return "above";
  }
  return value < range.least * (1 - near) ? "below" : "within";
}

std::string energy_words(const Sum& day, const nutrition::EnergyShares& shares) {
  constexpr double of_fat = 9; // kcal a gram: 21 CFR 101.9(c)(1)(i)
  constexpr double of_others = 4;
  const auto share = [&](Nutrient nutrient, double per_gram) {
    return percent_of(day[nutrient] * per_gram / day[Nutrient::energy]);
  };
  return fmt::format(
      "{}% is from fat ({:.0f} to {:.0f} is usual), {}% from carbohydrate ({:.0f} to "
      "{:.0f}), {}% from protein ({:.0f} to {:.0f})",
      share(Nutrient::fat, of_fat), shares.fat_least, shares.fat_most,
      share(Nutrient::carbohydrate, of_others), shares.carbohydrate_least, shares.carbohydrate_most,
      share(Nutrient::protein, of_others), shares.protein_least, shares.protein_most);
}

std::vector<const kitchen::Recipe*> recipes_in_menu(const Compiled& compiled) {
  std::vector<const kitchen::Recipe*> out;
  for (const kitchen::Meal& meal : compiled.plan().meals) {
    for (const kitchen::Dish& dish : meal.dishes) {
      const kitchen::RecipeId* id = dish.what.recipe();
      const kitchen::Recipe* recipe = id != nullptr ? &compiled.kitchen.recipe(*id) : nullptr;
      if (recipe != nullptr && std::find(out.begin(), out.end(), recipe) == out.end()) {
        out.push_back(recipe);
      }
    }
  }
  return out;
}

std::string nutrition_markdown(const Compiled& compiled) {
  std::string out =
      fmt::format("# Nutrition: {}\n\n{}\n\nFigures: USDA National Nutrient "
                  "Database for Standard Reference, Release 28. {}\n",
                  escape_markdown(compiled.plan().name), nutrition::caution, ranges_are_of);
  out += aims_part(compiled);
  for (const Eater& eater : compiled.nutrition.people) {
    out += person_part(compiled, eater);
  }
  return out + servings_part(compiled) + left_out_part(compiled);
}

std::string nutrition_csv(const Compiled& compiled) {
  std::string out = "date,person,meals,weight (g),figures for (%)";
  for (const Nutrient nutrient : foods::all_nutrients()) {
    out += fmt::format(",{} ({})", foods::facts(nutrient).name, foods::facts(nutrient).unit);
  }
  out += "\r\n";
  for (const Eater& eater : compiled.nutrition.people) {
    for (const nutrition::Day& day : eater.days) {
      out +=
          fmt::format("{},{},{},{:.0f},{}", text::print_date(day.date), csv_cell(eater.name),
                      day.meals, day.eaten.grams, percent_of(day.eaten.coverage(Nutrient::energy)));
      for (const Nutrient nutrient : foods::all_nutrients()) {
        out += fmt::format(",{:.2f}", day.eaten[nutrient]);
      }
      out += "\r\n";
    }
  }
  return out;
}

} // namespace manciple::emit
