#include "foods/book.hpp"

#include "foods/errors.hpp"
#include "foods/load.hpp"
#include "foods/local_names.hpp"
#include "foods/record.hpp"
#include "foods/reference.hpp"
#include "text/errors.hpp"
#include "text/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::foods {
namespace {

const ReferenceName* in_reference(std::string_view normal) {
  const auto found =
      std::lower_bound(reference_names.begin(), reference_names.end(), normal,
                       [](const ReferenceName& a, std::string_view b) { return a.name < b; });
  return found != reference_names.end() && found->name == normal ? &*found : nullptr;
}

// Gives a food the name by which it is known outside the United States.
void call_as_elsewhere(Food& food) {
  const auto* const other =
      std::lower_bound(names_elsewhere.begin(), names_elsewhere.end(), food.name,
                       [](const NameElsewhere& a, std::string_view b) { return a.food < b; });
  if (other == names_elsewhere.end() || other->food != food.name) {
    return;
  }
  const auto alias = std::find(food.aliases.begin(), food.aliases.end(), other->called);
  if (alias != food.aliases.end()) {
    std::swap(food.name, *alias);
  }
}

} // namespace

FoodId Book::keep(Food food) {
  foods_.push_back(std::move(food));
  return FoodId{static_cast<std::uint32_t>(foods_.size() - 1)};
}

void Book::add_household(const text::Node& file, text::Diagnostics& diagnostics) {
  std::map<std::string, text::Span, std::less<>> said;
  const auto base = [&](std::string_view name) -> const Food* {
    const auto id = find(name);
    return id ? &get(*id) : nullptr;
  };
  for (Defined& defined : read_foods(file, base, diagnostics)) {
    std::vector<std::string> claimed{normal_name(defined.food.name)};
    for (const std::string& alias : defined.food.aliases) {
      claimed.push_back(normal_name(alias));
    }
    // A record that changes a reference food answers to all the names of that food.
    if (const ReferenceName* known = in_reference(claimed.front())) {
      const Food reference = from_bytes(reference_records[known->record]);
      claimed.push_back(normal_name(reference.name));
      for (const std::string& alias : reference.aliases) {
        claimed.push_back(normal_name(alias));
      }
    }
    // What is called like a reference food is as dangerous as that, unless it says otherwise.
    for (std::size_t i = 0; i < claimed.size() && !defined.food.safety; ++i) {
      if (const ReferenceName* known = in_reference(claimed[i])) {
        defined.food.safety = from_bytes(reference_records[known->record]).safety;
      }
    }
    std::sort(claimed.begin(), claimed.end());
    claimed.erase(std::unique(claimed.begin(), claimed.end()), claimed.end());
    const FoodId id = keep(std::move(defined.food));
    for (const std::string& name : claimed) {
      const auto [first, fresh] = said.emplace(name, defined.at);
      if (!fresh) {
        diagnostics
            .error(errors::twice, defined.at,
                   fmt::format("'{}' names two foods in this file", name))
            .note(first->second, "the other one");
      }
      own_.insert_or_assign(name, id);
    }
  }
}

std::optional<FoodId> Book::find(std::string_view name) {
  std::string normal = normal_name(name);
  if (const auto own = own_.find(normal); own != own_.end()) {
    return own->second;
  }
  if (system_ != measure::System::us) {
    const auto* const local = std::find_if(local_names.begin(), local_names.end(),
                                           [&](const LocalName& l) { return l.name == normal; });
    normal = local == local_names.end() ? normal : normal_name(local->elsewhere);
  }
  const ReferenceName* known = in_reference(normal);
  if (known == nullptr) {
    const auto carried = as_written_.lower_bound({normal, {}, {}});
    return carried != as_written_.end() && std::get<0>(carried->first) == normal
               ? std::optional(carried->second)
               : std::nullopt;
  }
  const auto read = from_reference_.find(known->record);
  if (read != from_reference_.end()) {
    return read->second;
  }
  Food food = from_bytes(reference_records[known->record]);
  if (system_ != measure::System::us) {
    call_as_elsewhere(food);
  }
  const FoodId id = keep(std::move(food));
  from_reference_.emplace(known->record, id);
  return id;
}

namespace {

Allergens at_least(const std::vector<Allergen>& contains) {
  Allergens out{contains, {}};
  for (const std::string_view word : allergen_words()) {
    const Allergen allergen = *parse_allergen(word);
    if (std::find(contains.begin(), contains.end(), allergen) == contains.end()) {
      out.check_label.push_back(allergen);
    }
  }
  return out;
}

Classes at_least(const std::vector<DietClass>& contains) {
  Classes out{contains, {}, {}};
  for (const std::string_view word : diet_class_words()) {
    const DietClass of = *parse_diet_class(word);
    if (std::find(contains.begin(), contains.end(), of) == contains.end()) {
      out.check_label.push_back(of);
    }
  }
  return out;
}

} // namespace

FoodId Book::as_written(std::string_view name, measure::Dimension dimension, std::string_view word,
                        const Food* like, bool given) {
  const auto key = std::tuple(normal_name(name), dimension, std::string(word));
  // Counted by nothing, it is whatever a bunch or a can of it is.
  for (const auto& [one, id] : as_written_) {
    const bool same = std::get<0>(one) == std::get<0>(key) && std::get<1>(one) == dimension;
    if (same && (std::get<2>(one) == word || std::get<2>(one).empty() || word.empty())) {
      return id;
    }
  }
  Food food;
  food.name = std::string(name);
  food.department = Department::other;
  const auto is_called = [&](const Food& one) {
    return normal_name(one.name) == std::get<0>(key) ||
           std::any_of(one.aliases.begin(), one.aliases.end(), [&](const std::string& alias) {
             return normal_name(alias) == std::get<0>(key);
           });
  };
  if (like != nullptr && is_called(*like)) {
    // The food itself, in a measure that it is not known by.
    if (like->as_written != dimension) {
      food.name += dimension == measure::Dimension::volume ? " (by volume)"
                   : dimension == measure::Dimension::mass ? " (by weight)"
                   : word.empty()                          ? " (by the piece)"
                                                           : fmt::format(" (by the {})", word);
    }
    food.department = like->department;
    food.stored = like->stored;
    food.keeps = like->keeps;
    food.freezes = like->freezes;
    food.freezes_for_cooking = like->freezes_for_cooking;
    food.safe_at = like->safe_at;
    food.allergens = like->allergens;
    food.classes = like->classes;
    food.safety = like->safety;
    food.expecting = like->expecting;
  } else if (like != nullptr && !text::takes_away(std::get<0>(key))) {
    if (like->allergens) {
      food.allergens = at_least(like->allergens->contains);
    }
    if (like->classes) {
      food.classes = at_least(like->classes->contains);
    }
  }
  food.shop_in = std::string(word);
  food.as_written = dimension;
  food.given = given;
  const FoodId id = keep(std::move(food));
  as_written_.emplace(key, id);
  return id;
}

std::vector<std::string_view> Book::names() const {
  std::vector<std::string_view> out;
  for (const ReferenceName& name : reference_names) {
    out.push_back(name.name);
  }
  for (const auto& [name, id] : own_) {
    out.push_back(name);
  }
  return out;
}

std::vector<std::string> Book::food_names() {
  std::vector<std::string> out;
  for (const std::string_view bytes : reference_records) {
    out.push_back(from_bytes(bytes).name);
  }
  for (const auto& [name, id] : own_) {
    out.push_back(get(id).name);
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

} // namespace manciple::foods
