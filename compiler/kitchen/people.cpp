#include "kitchen/people.hpp"

#include "kitchen/errors.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

std::vector<std::string_view> own_names(const OwnDiets& own) {
  std::vector<std::string_view> out;
  for (const auto& [name, limits] : own) {
    out.push_back(name);
  }
  return out;
}

std::string listed(std::string_view what, const std::vector<std::string_view>& words) {
  return fmt::format("{}: {}", what,
                     text::join(std::vector<std::string>(words.begin(), words.end()), ", "));
}

// The nearest, and all that there are.
std::string near_and_others(std::string_view word, const OwnDiets& own, const Names& names,
                            bool foods_too) {
  std::vector<std::string_view> diets = foods::diet_words();
  const auto ours = own_names(own);
  diets.insert(diets.end(), ours.begin(), ours.end());
  const auto classes = foods::class_words();
  std::vector<std::string_view> known = diets;
  known.insert(known.end(), classes.begin(), classes.end());
  if (foods_too) {
    const auto all = names.all();
    known.insert(known.end(), all.begin(), all.end());
  }
  std::string near = text::did_you_mean(word, known);
  near += near.empty() ? "" : " ";
  return near + listed("diets", diets) + "; " + listed("classes", classes);
}

void add(std::vector<Limit>& into, const std::vector<foods::AnyClass>& classes,
         const std::string& diet) {
  for (const foods::AnyClass& of : classes) {
    into.push_back({of, diet});
  }
}

// A class, an allergen, a group of them, or a food; false where it is none.
bool add_named(std::string_view word, const std::string& diet, Names& names,
               std::vector<Limit>& into) {
  const auto classes = foods::classes_called(word);
  if (!classes.empty()) {
    add(into, classes, diet);
    return true;
  }
  const auto target = names.find(word);
  if (const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr) {
    into.push_back({*food, diet});
    return true;
  }
  return false;
}

// A diet by its name: one of the house's own, a usual one, or "no ..." of anything.
bool add_diet(const std::string& said, const OwnDiets& own, Names& names,
              std::vector<Limit>& into) {
  const std::string name = text::lower(text::trim(said));
  if (const auto found = own.find(name); found != own.end()) {
    for (const Limit& limit : found->second) {
      into.push_back({limit.what, said});
    }
    return true;
  }
  const auto classes = foods::diet_called(name);
  add(into, classes, said);
  return !classes.empty() ||
         (!foods::without(name).empty() && add_named(foods::without(name), said, names, into));
}

void read_avoids(const std::vector<const Node*>& list, Person& person, Names& names,
                 Diagnostics& diagnostics) {
  for (const Node* word : list) {
    if (!add_named(word->scalar, {}, names, person.limits)) {
      std::vector<std::string_view> known = names.all();
      const auto classes = foods::class_words();
      known.insert(known.end(), classes.begin(), classes.end());
      diagnostics.error(
          errors::unknown_food, word->span,
          fmt::format("'{}' is neither an allergen nor a class of foods nor a food", word->scalar),
          text::did_you_mean(word->scalar, known));
    }
  }
}

} // namespace

Rational portion_at(int months) {
  constexpr int year = 12;
  struct AgeStep {
    int under; ///< months
    Rational portion;
  };
  const std::array<AgeStep, 4> steps{
      {{1 * year, {1, 4}}, {4 * year, {1, 2}}, {9 * year, {3, 4}}, {12 * year, {7, 8}}}};
  for (const AgeStep& step : steps) {
    if (months < step.under) {
      return step.portion;
    }
  }
  return 1;
}

OwnDiets read_diets(const std::vector<const Entry*>& entries, Names& names,
                    Diagnostics& diagnostics) {
  OwnDiets out;
  for (const Entry* entry : entries) {
    const std::string name = text::lower(entry->key.scalar);
    std::vector<Limit> limits;
    for (const Node* word : text::items_of(entry->value)) {
      // Of another diet it takes what that one does without.
      const bool known =
          add_diet(word->scalar, out, names, limits) || add_named(word->scalar, {}, names, limits);
      if (!known) {
        diagnostics.error(
            errors::unknown_food, word->span,
            fmt::format("'{}' is neither a class of foods nor a diet nor a food", word->scalar),
            near_and_others(word->scalar, out, names, true));
      }
    }
    if (!foods::diet_called(name).empty() || !out.emplace(name, std::move(limits)).second) {
      diagnostics.error(errors::bad_value, entry->key.span,
                        fmt::format("'{}' is the name of another diet", entry->key.scalar));
    }
  }
  return out;
}

namespace {

// A contradiction would be compared with a table that is not theirs.
void read_stage(const Fields& fields, Person& person, Diagnostics& diagnostics) {
  for (const auto& [key, stage] :
       {std::pair("pregnant", Stage::pregnant), std::pair("nursing", Stage::nursing)}) {
    const Node* node = fields.find(key);
    if (node == nullptr || !read_yes_no(*node, diagnostics).value_or(false)) {
      continue;
    }
    if (person.stage) {
      diagnostics.error(errors::bad_value, node->span,
                        "the tables have no row for someone who is both pregnant and nursing",
                        "write the one with the higher needs: pregnant");
    } else if (person.sex == Sex::male) {
      diagnostics.error(errors::bad_value, node->span,
                        fmt::format("{} cannot be both male and {}", person.name, key));
    } else {
      person.stage = stage;
      person.sex = Sex::female;
    }
  }
}

} // namespace

void read_about(const Fields& fields, Person& person, const OwnDiets& own, Names& names,
                Diagnostics& diagnostics) {
  read_avoids(fields.list("avoids"), person, names, diagnostics);
  for (const Node* diet : fields.list("diet")) {
    if (add_diet(diet->scalar, own, names, person.limits)) {
      person.diets.push_back(diet->scalar);
    } else {
      diagnostics.error(errors::unknown_diet, diet->span,
                        fmt::format("'{}' is not a diet", diet->scalar),
                        near_and_others(diet->scalar, own, names, false));
    }
  }
  if (const Node* age = fields.find("age")) {
    person.months = read_months(*age, diagnostics);
  }
  if (const Node* sex = fields.find("sex")) {
    if (sex->scalar == "female" || sex->scalar == "male") {
      person.sex = sex->scalar == "female" ? Sex::female : Sex::male;
    } else {
      diagnostics.error(errors::bad_value, sex->span,
                        fmt::format("there is no table for '{}'", sex->scalar),
                        "write female or male, or leave it out to use both ranges together");
    }
  }
  read_stage(fields, person, diagnostics);
  if (const Node* portion = fields.find("portion")) {
    person.portion = read_number(*portion, diagnostics).value_or(1);
  } else if (person.months) {
    person.portion = portion_at(*person.months);
  }
  person.portion *= person.heads;
  for (const Entry* entry : fields.named("appetite")) {
    if (const auto times = read_number(entry->value, diagnostics)) {
      person.appetite.insert_or_assign(text::lower(entry->key.scalar), *times);
    }
  }
}

} // namespace manciple::kitchen
