#include "foods/diets.hpp"

#include "text/words.hpp"

#include <algorithm>
#include <array>

namespace manciple::foods {
namespace {

// Further words for classes, and groups of them.
struct Group {
  std::string_view word;
  std::array<std::string_view, 4> classes;
};
constexpr auto groups = std::to_array<Group>({
    {"fowl", {"poultry"}},
    {"veal", {"beef"}},
    {"mutton", {"lamb"}},
    {"goat", {"lamb"}},
    {"red meat", {"meat"}},
    {"dairy", {"milk"}},
    {"eggs", {"egg"}},
    {"nuts", {"tree nuts", "peanut"}},
    {"peanuts", {"peanut"}},
    {"nut", {"tree nuts", "peanut"}},
    {"shellfish", {"crustaceans", "molluscs"}},
    {"seafood", {"fish", "crustaceans", "molluscs"}},
    {"gelatine", {"gelatin"}},
    {"suet", {"animal fat"}},
    {"broth", {"stock"}},
    {"soya", {"soy"}},
    {"shellac", {"carmine"}},
});

struct Diet {
  std::string_view name;
  std::array<std::string_view, 14> without;
};
constexpr auto diets = std::to_array<Diet>({
    {"vegetarian",
     {"meat", "poultry", "fish", "crustaceans", "molluscs", "stock", "gelatin", "animal fat",
      "rennet", "carmine", "finings"}},
    {"vegan",
     {"meat", "poultry", "fish", "crustaceans", "molluscs", "stock", "gelatin", "animal fat",
      "rennet", "carmine", "finings", "milk", "egg", "honey"}},
    {"pescatarian", {"meat", "poultry", "gelatin", "animal fat", "rennet"}},
    {"low lactose", {"lactose"}},
    {"lactose-free", {"lactose", "traces of lactose"}},
});
// Told besides as diets, by the rule for "no ..." and "...-free".
constexpr auto shown =
    std::to_array<std::string_view>({"no pork", "no alcohol", "no caffeine", "gluten-free"});

std::optional<AnyClass> one_called(std::string_view word) {
  if (const auto of = parse_diet_class(word)) {
    return *of;
  }
  if (const auto of = parse_allergen(word)) {
    return *of;
  }
  return std::nullopt;
}

template <std::size_t n>
std::vector<AnyClass> all_called(const std::array<std::string_view, n>& words) {
  std::vector<AnyClass> out;
  for (const std::string_view word : words) {
    if (!word.empty()) {
      out.push_back(*one_called(word));
    }
  }
  return out;
}

bool among(const std::vector<DietClass>& list, DietClass wide) {
  return std::any_of(list.begin(), list.end(), [&](DietClass of) { return is_within(of, wide); });
}

Holds holds_class(const Food& food, DietClass of) {
  if (!food.classes) {
    return Holds::not_known;
  }
  if (among(food.classes->contains, of)) {
    return Holds::yes;
  }
  // Meat of a kind that is not said may be the kind that is asked for.
  const auto may_be = [&](DietClass wider) { return is_within(of, wider); };
  const auto& contains = food.classes->contains;
  const auto& label = food.classes->check_label;
  const bool kind_is_open = std::any_of(contains.begin(), contains.end(), may_be) ||
                            std::any_of(label.begin(), label.end(), may_be);
  return kind_is_open || among(label, of) ? Holds::read_the_label : Holds::no;
}

Holds holds_allergen(const Food& food, Allergen of) {
  if (!food.allergens) {
    return Holds::not_known;
  }
  const auto in = [&](const std::vector<Allergen>& list) {
    return std::find(list.begin(), list.end(), of) != list.end();
  };
  return in(food.allergens->contains)      ? Holds::yes
         : in(food.allergens->check_label) ? Holds::read_the_label
                                           : Holds::no;
}

} // namespace

std::string_view name(const AnyClass& of) {
  return std::visit([](auto one) { return name(one); }, of);
}

std::vector<std::string_view> class_words() {
  std::vector<std::string_view> out;
  for (const auto list : {diet_class_words(), allergen_words()}) {
    out.insert(out.end(), list.begin(), list.end());
  }
  for (const Group& group : groups) {
    out.push_back(group.word);
  }
  return out;
}

std::vector<AnyClass> classes_called(std::string_view word) {
  const std::string lower = text::lower(text::trim(word));
  for (const Group& group : groups) {
    if (group.word == lower) {
      return all_called(group.classes);
    }
  }
  const auto one = one_called(lower);
  return one ? std::vector{*one} : std::vector<AnyClass>();
}

std::vector<std::string_view> diet_words() {
  std::vector<std::string_view> out;
  for (const Diet& diet : diets) {
    out.push_back(diet.name);
  }
  out.insert(out.end(), shown.begin(), shown.end());
  return out;
}

std::string without(std::string_view diet) {
  const std::string lower = text::lower(text::trim(diet));
  const std::string_view word = lower;
  for (const std::string_view before : {"no ", "without "}) {
    if (word.starts_with(before)) {
      return std::string(text::trim(word.substr(before.size())));
    }
  }
  for (const std::string_view after : {"-free", " free"}) {
    if (word.ends_with(after)) {
      return std::string(text::trim(word.substr(0, word.size() - after.size())));
    }
  }
  return {};
}

std::vector<AnyClass> diet_called(std::string_view word) {
  std::string lower = text::lower(text::trim(word));
  if (lower == "lactose free" || lower == "no lactose") {
    lower = "lactose-free";
  } else if (lower == "low-lactose") {
    lower = "low lactose";
  }
  for (const Diet& diet : diets) {
    if (diet.name == lower) {
      return all_called(diet.without);
    }
  }
  return classes_called(without(lower));
}

Holds holds(const Food& food, const AnyClass& of) {
  if (food.is_household()) {
    return Holds::no;
  }
  if (const auto* diet = std::get_if<DietClass>(&of)) {
    return holds_class(food, *diet);
  }
  return holds_allergen(food, std::get<Allergen>(of));
}

} // namespace manciple::foods
