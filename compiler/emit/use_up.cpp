#include "emit/use_up.hpp"

#include "emit/day_words.hpp"
#include "emit/words.hpp"
#include "foods/counted.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::emit {
namespace {

using measure::Rational;
using use_up::Left;
using use_up::Suggestion;

// Recipes that are shown, and of each, what it needs besides. A longer list helps nobody.
constexpr std::size_t most_recipes = 8;
constexpr std::size_t most_needs = 8;

enum class Section : std::uint8_t { goes_off, open, freezer };

Section section_of(const Compiled& compiled, const Left& left) {
  if (left.until && *left.until <= compiled.plan().until) {
    return Section::goes_off;
  }
  return left.frozen ? Section::freezer : Section::open;
}

// Where more are left out than shown, how many.
std::string some_of(const std::vector<std::string>& all, std::size_t most) {
  if (all.size() <= most) {
    return text::join(all, ", ");
  }
  return fmt::format(
      "{} and {} more",
      text::join({all.begin(), all.begin() + static_cast<std::ptrdiff_t>(most)}, ", "),
      all.size() - most);
}

class Text {
public:
  Text(const Compiled& compiled, const UseUp& asked) : compiled_(compiled), asked_(asked) {}

  std::string run() {
    const text::Date end = compiled_.plan().until;
    out_ = fmt::format("{}: what is left over{}\n", compiled_.plan().name,
                       asked_.on_day ? " on " + text::print_day(asked_.wanted.day) : "");
    if (asked_.wanted.lefts.empty()) {
      return out_ + "\nThere is nothing to use up.\n" + cooked();
    }
    section(Section::goes_off, "Goes off before the plan uses it");
    section(Section::open,
            fmt::format("Still good after {}, but not for long", text::print_day(end)));
    section(Section::freezer, "In the freezer");
    out_ += cooked();
    recipes();
    return std::move(out_);
  }

private:
  [[nodiscard]] std::string seen(foods::FoodId food, const Rational& amount) const {
    return foods::as_seen(compiled_.kitchen.food(food), amount, compiled_.kitchen.household.system);
  }

  // With its year where the day alone could be taken for an earlier one.
  [[nodiscard]] std::string until(text::Date day) const {
    constexpr std::chrono::days half_a_year{182};
    return day > compiled_.plan().until + half_a_year ? text::print_date(day)
                                                      : text::print_day(day);
  }

  void section(Section which, const std::string& heading) {
    std::string rows;
    Rational sum;
    for (std::size_t i = 0; i < asked_.wanted.lefts.size(); ++i) {
      const Left& first = asked_.left[asked_.wanted.lefts[i]];
      if (section_of(compiled_, first) != which) {
        continue;
      }
      // Of one food and date, one row.
      Left row = first;
      const auto next = [&]() -> const Left* {
        return i + 1 < asked_.wanted.lefts.size() ? &asked_.left[asked_.wanted.lefts[i + 1]]
                                                  : nullptr;
      };
      for (const Left* more = next(); more != nullptr && more->food == row.food &&
                                      more->until == row.until && more->frozen == row.frozen;
           more = next()) {
        row.amount += more->amount;
        row.worth = row.worth && more->worth ? std::optional<Rational>(*row.worth + *more->worth)
                                             : std::nullopt;
        row.opened = row.opened || more->opened;
        ++i;
      }
      sum += row.worth.value_or(0);
      rows += fmt::format("  {:<12} {}{}, {}\n", row.until ? until(*row.until) : "no date",
                          seen(row.food, row.amount), row.opened && !row.frozen ? ", opened" : "",
                          row.worth ? money(compiled_, cents(*row.worth)) : "no price known");
    }
    if (!rows.empty()) {
      out_ += fmt::format("\n{}: {}\n{}", heading, money(compiled_, cents(sum)), rows);
    }
  }

  // What was made and nobody eats; on a day, what is good then.
  [[nodiscard]] std::string cooked() const {
    if (asked_.only) {
      return {};
    }
    std::multimap<text::Date, std::string> by_date;
    for (const resolve::Making& making : compiled_.resolved.makings) {
      const kitchen::Recipe& recipe = compiled_.kitchen.recipe(making.recipe);
      const bool a_serving = making.left() * recipe.serves >= 1;
      const std::string left = a_serving ? left_of(compiled_, making) : std::string();
      const text::Date day = asked_.wanted.day;
      const bool there = making.good_until &&
                         (!asked_.on_day || (making.date <= day && day <= *making.good_until));
      if (there && !left.empty()) {
        by_date.emplace(*making.good_until, fmt::format("{} of {}, made {}", left, recipe.name,
                                                        text::print_day(making.date)));
      }
    }
    std::string out = by_date.empty() ? "" : "\nCooked, but not for any meal\n";
    for (const auto& [date, what] : by_date) {
      out += fmt::format("  {:<12} {}\n", text::print_day(date), what);
    }
    return out;
  }

  void recipes() {
    const auto& all = asked_.suggestions.all;
    out_ += fmt::format("\n{}\n", all.empty() ? "No recipe in the library uses any of it."
                                              : "What to make with it");
    for (std::size_t i = 0; i < std::min(all.size(), most_recipes); ++i) {
      recipe(all[i]);
    }
    if (all.size() > most_recipes) {
      out_ += fmt::format("  and {} more recipes, which save less or are already planned\n",
                          all.size() - most_recipes);
    }
    const auto left_out = [&](std::size_t count, std::string_view why) {
      if (count > 0) {
        out_ += fmt::format("\n{} {} left out: {}\n", count,
                            count == 1 ? "recipe is" : "recipes are", why);
      }
    };
    left_out(asked_.suggestions.unfit, "somebody here must not have something in it.");
    left_out(asked_.suggestions.unread, "'manciple check' shows what is wrong with it.");
  }

  void recipe(const Suggestion& one) {
    const kitchen::Recipe& recipe = asked_.library.recipe(one.recipe);
    out_ += fmt::format(
        "  {}, serves {}{}{}{}\n", recipe.name, decimal(compiled_, recipe.serves, 1),
        one.by ? ", by " + until(*one.by) : "",
        one.saves > 0 ? ": saves " + money(compiled_, cents(one.saves)) : "",
        one.planned ? fmt::format(" (the plan has it on {})", text::print_day(*one.planned)) : "");
    std::vector<std::pair<foods::FoodId, Rational>> used;
    for (const use_up::Used& use : one.uses) {
      const foods::FoodId food = asked_.left[use.left].food;
      if (used.empty() || used.back().first != food) {
        used.emplace_back(food, 0);
      }
      used.back().second += use.amount;
    }
    std::vector<std::string> words;
    for (const auto& [food, amount] : used) {
      words.push_back(seen(food, amount));
    }
    out_ += fmt::format("    uses up {}\n", text::join(words, ", "));
    words.clear();
    for (const use_up::Lacking& lacking : one.lacking) {
      const auto* food = std::get_if<foods::FoodId>(&lacking.what);
      words.push_back(food == nullptr
                          ? asked_.library.recipe(std::get<kitchen::RecipeId>(lacking.what)).name
                          : foods::as_seen(asked_.library.food(*food), lacking.amount,
                                           compiled_.kitchen.household.system));
    }
    out_ += words.empty() ? "    needs nothing else but seasoning\n"
                          : fmt::format("    also needs {}\n", some_of(words, most_needs));
    for (const resolve::LabelCheck& label : one.labels) {
      out_ += fmt::format("    read the label of {} for {}: {}\n",
                          asked_.library.food(label.food).name, label.person, label.what);
    }
  }

  const Compiled& compiled_;
  const UseUp& asked_;
  std::string out_;
};

} // namespace

std::string use_up_text(const Compiled& compiled, const UseUp& use_up) {
  return Text(compiled, use_up).run();
}

} // namespace manciple::emit
