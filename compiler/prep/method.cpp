#include "prep/method.hpp"

#include "foods/convert.hpp"
#include "kitchen/contents.hpp"
#include "kitchen/known_appliances.hpp"
#include "prep/roasting.hpp"
#include "resolve/steps.hpp"
#include "text/phrases.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>

namespace manciple::prep {
namespace {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::MethodStep;
using kitchen::Recipe;
using text::says;

constexpr std::array<std::string_view, 27> preparing{
    "cut",     "dice", "chop", "slice", "mince", "shred", "grate",     "cube",   "tear",
    "peel",    "trim", "wash", "scrub", "halve", "core",  "pit",       "zest",   "julienne",
    "quarter", "snap", "top",  "tail",  "rinse", "spin",  "pick over", "string", "shell"};
constexpr std::array<std::string_view, 14> cutting_verbs{
    "cut",  "dice", "chop",  "slice", "mince",   "shred",    "grate",
    "cube", "tear", "halve", "peel",  "quarter", "julienne", "zest"};

bool is_one_of(std::string_view word, std::span<const std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string first_word(std::string_view clause) {
  std::string_view rest = text::trim(clause);
  for (;;) {
    std::size_t end = 0;
    while (end < rest.size() && text::is_letter(rest[end])) {
      ++end;
    }
    std::string word = text::lower(rest.substr(0, end));
    const bool passes = word == "then" || word == "and" || word == "finely" || word == "roughly" ||
                        word == "thinly" || word == "coarsely";
    if (!passes || end == rest.size()) {
      return word;
    }
    rest = text::trim(rest.substr(end));
  }
}

// A piece of a step's words, with what stands before it: ", " or " and ".
struct Clause {
  std::string words;
  bool after_and = false;
};

std::vector<Clause> clauses(std::string_view what) {
  std::vector<Clause> out(1);
  for (std::size_t i = 0; i < what.size(); ++i) {
    if (what[i] == ',' || what[i] == ';') {
      out.push_back({});
    } else if (what.substr(i, 5) == " and ") {
      out.push_back({"", true});
      i += 4;
    } else {
      out.back().words += what[i];
    }
  }
  return out;
}

// Whether a clause is of the one before it: "the chicken", "carrots".
bool goes_on(const Recipe& recipe, const Clause& clause) {
  const std::string word = first_word(clause.words);
  constexpr std::array<std::string_view, 10> of_things{"the", "a",   "an",   "all",  "rest",
                                                       "it",  "one", "half", "some", ""};
  if (is_one_of(word, of_things)) {
    return true;
  }
  return !is_one_of(word, preparing) && text::singular(word).size() >= 3 &&
         std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                     [&](const Ingredient& line) { return text::names(line.text, word); });
}

// By clause: whether it only prepares something.
std::vector<bool> prepares(const Recipe& recipe, const std::vector<Clause>& all) {
  std::vector<bool> out;
  for (const Clause& clause : all) {
    const bool more = !out.empty() && goes_on(recipe, clause);
    out.push_back(more ? out.back() : is_one_of(first_word(clause.words), preparing));
  }
  return out;
}

// An egg dirties no board.
bool is_raw(const foods::Food& food) {
  return foods::is(food, foods::Class::poultry) || foods::is(food, foods::Class::meat) ||
         foods::is(food, foods::Class::minced) || foods::is(food, foods::Class::fish) ||
         foods::is(food, foods::Class::shellfish);
}

// Whether hands do it piece by piece.
bool is_by_the_piece(const MethodStep& step) {
  return says(step.what, {"cut~",      "dice~", "chop~",  "slice~",     "mince~",       "shred~",
                          "grate~",    "peel~", "roll~",  "fill~",      "wrap~",        "shape~",
                          "label~",    "bag~",  "scoop~", "stuff~",     "form~",        "build~",
                          "assemble~", "pick~", "divide", "toast~",     "spread",       "portion~",
                          "knead~",    "trim~", "snap~",  "in batches", "two at a time"});
}

} // namespace

bool only_prepares(const Recipe& recipe, const MethodStep& step) {
  if (step.is_hot || step.then > 0) {
    return false;
  }
  const std::vector<bool> all = prepares(recipe, clauses(step.what));
  return std::find(all.begin(), all.end(), false) == all.end();
}

bool cuts(const MethodStep& step) {
  const std::vector<Clause> all = clauses(step.what);
  return std::any_of(all.begin(), all.end(), [](const Clause& clause) {
    return is_one_of(first_word(clause.words), cutting_verbs);
  });
}

std::string without_cutting(const Recipe& recipe, const MethodStep& step) {
  const std::vector<Clause> all = clauses(step.what);
  const std::vector<bool> preparing_only = prepares(recipe, all);
  std::string out;
  bool after_gap = false;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (preparing_only[i]) {
      // "Chop, dress and fill the bread": what is chopped stands at the end.
      if (text::trim(all[i].words).find(' ') == std::string_view::npos && all.size() > 2) {
        return step.what;
      }
      after_gap = true;
      continue;
    }
    std::string_view words = text::trim(all[i].words);
    if (out.empty() || after_gap) {
      words = words.starts_with("then ") ? words.substr(5) : words;
    }
    out += out.empty() ? "" : all[i].after_and && !after_gap ? " and " : ", ";
    out += words;
    after_gap = false;
  }
  return out.empty() ? step.what : text::capitalized(std::move(out));
}

bool is_prepared(const Ingredient& line) {
  return resolve::is_cut(line.amount ? line.amount->form : foods::Form::plain) ||
         says(line.note, {"halved", "quartered", "cut~", "in wedges", "peeled", "trimmed",
                          "crushed", "sliced", "diced", "chopped"});
}

bool cools(const MethodStep& step) {
  return !step.is_hot && says(step.what, {"cool", "cools", "cooled", "chill"});
}

bool stores(const MethodStep& step) {
  return says(step.what, {"portion~", "bag", "jar", "label", "wrap", "box~"});
}

int hands_on(const MethodStep& step, const Rational& times) {
  if (step.hands_on == 0) {
    return 0;
  }
  const Rational grows = is_by_the_piece(step) ? Rational(4, 5) : Rational(1, 4);
  const Rational minutes = step.hands_on * (1 - grows + grows * times);
  const auto whole = static_cast<int>(measure::to_int64(measure::ceil(minutes)));
  return std::max(whole, std::min(step.hands_on, worth_writing));
}

int alone(const Kitchen& kitchen, const Recipe& recipe, const MethodStep& step,
          const Rational& times) {
  // A second, short time in the oven browns it, whatever it weighs.
  const bool longest = std::all_of(recipe.method.begin(), recipe.method.end(),
                                   [&](const MethodStep& one) { return one.then <= step.then; });
  if (step.then == 0 || !kitchen::known_appliance(step.appliance).is_oven || !longest) {
    return step.then;
  }
  for (const Ingredient& line : recipe.ingredients) {
    const foods::Food* food = kitchen::food_of(kitchen, line);
    if (food == nullptr || !line.amount) {
      continue;
    }
    if (food->roasts.empty() || foods::basis(*food) != measure::Dimension::mass) {
      continue;
    }
    const auto bought = foods::as_purchased(*food, *line.amount);
    if (!bought) {
      continue;
    }
    // A whole bird does not grow: more of them stand side by side.
    const bool pieces = resolve::comes_in_pieces(kitchen, line);
    const Rational grams = bought->amount * (pieces ? Rational(1) : times);
    return roasting_minutes(*food, step, bought->amount, grams);
  }
  return step.then;
}

std::optional<int> longest_wait(const MethodStep& step) {
  if (step.wait) {
    return step.wait;
  }
  constexpr int soon = 30;
  constexpr int two_hours = 120;
  if (says(step.what, {"chill", "overnight", "in the fridge", "freeze"})) {
    return std::nullopt;
  }
  return step.is_hot || says(step.what, {"rise~", "rising", "proof~", "prove~"}) ? soon : two_hours;
}

std::size_t steps_before_the_wait(const Recipe& recipe) {
  const auto heat = std::find_if(recipe.method.begin(), recipe.method.end(),
                                 [](const auto& step) { return step.is_hot; });
  return static_cast<std::size_t>(heat - recipe.method.begin());
}

bool handles_raw(const Kitchen& kitchen, const Recipe& recipe, std::size_t step) {
  const bool raw = std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                               [&](const Ingredient& line) {
                                 const foods::Food* food = kitchen::food_of(kitchen, line);
                                 return food != nullptr && is_raw(*food);
                               });
  if (!raw || step > steps_before_the_wait(recipe)) {
    return false;
  }
  // A step that cuts the vegetables, or boils the rice, does not touch it.
  const std::string& what = recipe.method[step].what;
  const auto names_it = [&](const Ingredient& line) {
    const foods::Food* food = kitchen::food_of(kitchen, line);
    if (food == nullptr) {
      return false;
    }
    for (const std::string_view word : text::split(food->name, ' ')) {
      if (word.size() >= 3 && text::names(what, word)) {
        return true;
      }
    }
    return false;
  };
  bool names_other = false;
  for (const Ingredient& line : recipe.ingredients) {
    const foods::Food* food = kitchen::food_of(kitchen, line);
    if (names_it(line) && food != nullptr && is_raw(*food)) {
      return true;
    }
    names_other = names_other || names_it(line);
  }
  if (names_other || says(what, {"vegetable~", "pasta", "rice", "beans", "sauce", "dressing"})) {
    return false;
  }
  // What was shaped before only goes onto the heat now. No step before the heat asks this of those
  // before it.
  for (std::size_t before = 0; step == steps_before_the_wait(recipe) && before < step; ++before) {
    if (handles_raw(kitchen, recipe, before)) {
      return false;
    }
  }
  return true;
}

} // namespace manciple::prep
