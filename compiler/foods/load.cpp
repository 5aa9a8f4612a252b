#include "foods/load.hpp"

#include "foods/errors.hpp"
#include "foods/keys.hpp"
#include "measure/scan.hpp"
#include "text/date.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::foods {
namespace {

using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

// A figure with its source: [figure, source].
struct Figure {
  const Node* value;
  std::string source;
};

class FileReader {
public:
  FileReader(Food& food, Diagnostics& diagnostics) : food_(food), diagnostics_(diagnostics) {}

  void read(const Entry& entry);

private:
  std::optional<Figure> figure(const Node& node, std::string_view example);
  void bad(const Node& node, std::string_view what, std::string_view example);

  void volumes(const std::vector<const Entry*>& entries);
  void pieces(const std::vector<const Entry*>& entries);
  void yields(const std::vector<const Entry*>& entries);
  void keeps(const Node& node);
  void keep(const Fields& fields, std::string_view key, std::optional<Sourced<int>>& into,
            std::string_view not_at_all = {});
  void safe_at(const Node& node);
  void allergens(const Node& node);
  void classes(const Node& node);
  void safety(const Node& node);
  void expecting(const Node& node);
  void roasts(const std::vector<const Entry*>& entries);
  void nutrients(const Node& node);
  void check(const Entry& entry);

  template <typename T, typename Parse>
  void word(const Fields& fields, std::string_view key, T& into, Parse parse,
            std::span<const std::string_view> known);
  std::vector<Allergen> allergen_list(const Fields& fields, std::string_view key);

  Food& food_;
  Diagnostics& diagnostics_;
};

constexpr std::array<std::string_view, 3> place_words{"pantry", "fridge", "freezer"};

std::optional<Rational> scan_positive(measure::Cursor& cursor) {
  const auto number = measure::scan_number(cursor);
  return number && *number > 0 ? number : std::nullopt;
}

constexpr int hottest = 500; // F, of an oven

int to_degrees(const Rational& number) {
  return static_cast<int>(measure::to_int64(measure::round(number)));
}

std::string nearest_of(std::string_view word, std::span<const std::string_view> known) {
  return text::did_you_mean(word, {known.begin(), known.end()});
}

void FileReader::bad(const Node& node, std::string_view what, std::string_view example) {
  diagnostics_.error(errors::bad_figure, node.span, std::string(what),
                     fmt::format("write it as {}", example));
}

std::optional<Figure> FileReader::figure(const Node& node, std::string_view example) {
  const bool good = node.is_sequence() && node.items.size() == 2 && node.items[0].is_scalar() &&
                    node.items[1].is_scalar() && !node.items[1].scalar.empty();
  if (!good) {
    bad(node, "a figure and its source are needed", example);
    return std::nullopt;
  }
  return Figure{&node.items[0], node.items[1].scalar};
}

// Puts `value` where an equal key stands, else at the end.
template <typename T, typename Same>
void put(std::vector<T>& list, T value, Same same) {
  const auto found = std::find_if(list.begin(), list.end(), same);
  if (found == list.end()) {
    list.push_back(std::move(value));
  } else {
    *found = std::move(value);
  }
}

void FileReader::volumes(const std::vector<const Entry*>& entries) {
  for (const Entry* of : entries) {
    const Entry& entry = *of;
    constexpr std::string_view example = "[160 g/cup, SR28 11282.1]";
    const auto form = parse_form(entry.key.scalar);
    if (!form) {
      diagnostics_.error(errors::unknown_word, entry.key.span,
                         fmt::format("'{}' is not a form of a food", entry.key.scalar),
                         nearest_of(entry.key.scalar, form_words()));
    }
    const auto f = figure(entry.value, example);
    if (!f || !form) {
      continue;
    }
    const std::string& text = f->value->scalar;
    const std::size_t slash = text.rfind('/');
    measure::Cursor cursor{std::string_view(text).substr(0, slash)};
    const auto grams = scan_positive(cursor);
    const bool in_grams = text::trim(cursor.rest()) == "g";
    const auto unit = slash == std::string::npos
                          ? std::nullopt
                          : measure::find_unit(text.substr(slash + 1), measure::System::us);
    if (!grams || !in_grams || !unit ||
        measure::facts(*unit).dimension != measure::Dimension::volume) {
      bad(*f->value, fmt::format("'{}' is not a weight per volume", text), example);
      continue;
    }
    put(food_.volumes, VolumeWeight{*form, *unit, *grams, f->source},
        [&](const VolumeWeight& v) { return v.form == *form; });
  }
}

void FileReader::pieces(const std::vector<const Entry*>& entries) {
  for (const Entry* of : entries) {
    const Entry& entry = *of;
    constexpr std::string_view example =
        "[110 g, SR28 11282.6], or [340 g AP, our scales] as bought";
    const auto f = figure(entry.value, example);
    if (!f) {
      continue;
    }
    measure::Cursor cursor{f->value->scalar};
    const auto grams = scan_positive(cursor);
    const std::string_view rest = text::trim(cursor.rest());
    if (!grams || (rest != "g" && rest != "g AP")) {
      bad(*f->value, fmt::format("'{}' is not the weight of a piece", f->value->scalar), example);
      continue;
    }
    const std::string name = text::lower(entry.key.scalar);
    put(food_.pieces, Piece{name, *grams, rest == "g AP", f->source},
        [&](const Piece& p) { return p.name == name; });
  }
}

void FileReader::yields(const std::vector<const Entry*>& entries) {
  for (const Entry* of : entries) {
    const Entry& entry = *of;
    constexpr std::string_view example = "[90 %, SR28 11282 refuse]";
    const bool edible = entry.key.scalar == "edible";
    const auto form = edible ? std::optional(Form::plain) : parse_form(entry.key.scalar);
    const auto f = figure(entry.value, example);
    if (!form) {
      diagnostics_.error(errors::unknown_word, entry.key.span,
                         fmt::format("'{}' is not a form of a food", entry.key.scalar),
                         nearest_of(entry.key.scalar, form_words()));
    }
    if (!f || !form) {
      continue;
    }
    measure::Cursor cursor{f->value->scalar};
    const auto percent = scan_positive(cursor);
    if (!percent || text::trim(cursor.rest()) != "%" || (edible && *percent > 100)) {
      bad(*f->value, fmt::format("'{}' is not a share of the weight as bought", f->value->scalar),
          example);
      continue;
    }
    put(food_.yields, Yield{*form, *percent / 100, f->source},
        [&](const Yield& y) { return y.form == *form; });
  }
}

// `not_at_all` is a word for no days, where there is one.
void FileReader::keep(const Fields& fields, std::string_view key, std::optional<Sourced<int>>& into,
                      std::string_view not_at_all) {
  const Node* node = fields.find(key);
  if (node == nullptr) {
    return;
  }
  constexpr std::string_view example = "[5 days, FSIS 21]";
  if (const auto f = figure(*node, example)) {
    if (!not_at_all.empty() && f->value->scalar == not_at_all) {
      into = Sourced<int>{0, f->source};
    } else if (const auto days = text::parse_days(f->value->scalar)) {
      into = Sourced<int>{*days, f->source};
    } else {
      bad(*f->value, fmt::format("'{}' is not a keeping time", f->value->scalar), example);
    }
  }
}

void FileReader::keeps(const Node& node) {
  const Fields fields(node, keys::keeps, diagnostics_);
  keep(fields, "pantry", food_.keeps.pantry);
  keep(fields, "fridge", food_.keeps.fridge);
  keep(fields, "freezer", food_.keeps.freezer);
  keep(fields, "opened", food_.keeps.opened);
  keep(fields, "thawed", food_.keeps.thawed);
  keep(fields, "hard", food_.keeps.hard);
  keep(fields, "cut", food_.keeps.cut, "when used");
  keep(fields, "frozen juice", food_.keeps.frozen_juice);
}

void FileReader::safe_at(const Node& node) {
  constexpr std::string_view example = "[165 F, FSIS 21] or [145 F rest 3 min, FSIS 33]";
  const auto f = figure(node, example);
  if (!f) {
    return;
  }
  measure::Cursor cursor{f->value->scalar};
  const auto degrees = scan_positive(cursor);
  std::string_view rest = text::trim(cursor.rest());
  SafeTemperature safe;
  bool good = degrees && *degrees <= hottest && rest.starts_with('F');
  if (good) {
    safe.fahrenheit = to_degrees(*degrees);
    rest = text::trim(rest.substr(1));
    if (!rest.empty()) {
      const auto minutes =
          rest.starts_with("rest ") ? text::parse_minutes(rest.substr(5)) : std::nullopt;
      good = minutes.has_value();
      safe.rest_minutes = minutes.value_or(0);
    }
  }
  if (!good) {
    bad(*f->value, fmt::format("'{}' is not a temperature", f->value->scalar), example);
    return;
  }
  food_.safe_at = Sourced<SafeTemperature>{safe, f->source};
}

std::vector<Allergen> FileReader::allergen_list(const Fields& fields, std::string_view key) {
  std::vector<Allergen> out;
  for (const Node* item : fields.list(key)) {
    const auto allergen = parse_allergen(item->scalar);
    if (!allergen) {
      diagnostics_.error(errors::unknown_word, item->span,
                         fmt::format("'{}' is not an allergen class", item->scalar),
                         nearest_of(item->scalar, allergen_words()));
      continue;
    }
    out.push_back(*allergen);
  }
  return out;
}

void FileReader::allergens(const Node& node) {
  const Fields fields(node, keys::allergens, diagnostics_);
  Allergens read;
  read.contains = allergen_list(fields, "contains");
  read.check_label = allergen_list(fields, "check label");
  food_.allergens = std::move(read);
}

void FileReader::classes(const Node& node) {
  const Fields fields(node, keys::classes, diagnostics_);
  Classes read;
  const auto list = [&](std::string_view key, std::vector<DietClass>& into) {
    for (const Node* item : fields.list(key)) {
      if (const auto of = parse_diet_class(item->scalar)) {
        into.push_back(*of);
      } else {
        diagnostics_.error(errors::unknown_word, item->span,
                           fmt::format("'{}' is not a class of foods", item->scalar),
                           nearest_of(item->scalar, diet_class_words()));
      }
    }
  };
  list("contains", read.contains);
  list("check label", read.check_label);
  if (const Node* source = fields.find("source")) {
    read.source = source->scalar;
  }
  food_.classes = std::move(read);
}

void FileReader::safety(const Node& node) {
  const Fields fields(node, keys::safety, diagnostics_);
  SafetyClasses read;
  for (const Node* item : fields.list("classes")) {
    if (const auto of = parse_safety_class(item->scalar)) {
      read.classes.push_back(*of);
    } else {
      diagnostics_.error(errors::unknown_word, item->span,
                         fmt::format("'{}' is not a food safety class", item->scalar),
                         nearest_of(item->scalar, safety_class_words()));
    }
  }
  if (const Node* source = fields.find("source")) {
    read.source = source->scalar;
  }
  food_.safety = std::move(read);
}

void FileReader::expecting(const Node& node) {
  const Fields fields(node, keys::expecting, diagnostics_);
  Cautions read;
  for (const Node* item : fields.list("classes")) {
    if (const auto of = parse_caution(item->scalar)) {
      read.classes.push_back(*of);
    } else {
      diagnostics_.error(
          errors::unknown_word, item->span,
          fmt::format("'{}' is not a class of foods to be careful with", item->scalar),
          nearest_of(item->scalar, caution_words()));
    }
  }
  if (const Node* source = fields.find("source")) {
    read.source = source->scalar;
  }
  food_.expecting = std::move(read);
}

void FileReader::roasts(const std::vector<const Entry*>& entries) {
  // A number and what it is of.
  const auto so_many = [](measure::Cursor& cursor, std::string_view what) {
    cursor.skip_spaces();
    auto number = scan_positive(cursor);
    cursor.skip_spaces();
    if (!cursor.rest().starts_with(what)) {
      number.reset();
    } else {
      cursor.at += what.size();
    }
    return number;
  };
  for (const Entry* of : entries) {
    const auto f = figure(of->value, "[20 min/lb at 350 F, FSIS 113]");
    if (!f) {
      continue;
    }
    measure::Cursor weight{of->key.scalar};
    measure::Cursor time{f->value->scalar};
    const auto pounds = so_many(weight, "lb");
    const auto minutes = so_many(time, "min/lb at ");
    const auto degrees = so_many(time, "F");
    const bool good =
        pounds && minutes && degrees && *degrees <= hottest && weight.done() && time.done();
    if (!good) {
      bad(of->value,
          fmt::format("'{}: {}' is not a roasting time up to a weight", of->key.scalar,
                      f->value->scalar),
          "{7 lb: [20 min/lb at 350 F, FSIS 113]}");
      continue;
    }
    put(food_.roasts, RoastingTime{*pounds, to_degrees(*degrees), *minutes, f->source},
        [&](const RoastingTime& r) { return r.pounds == *pounds; });
  }
  std::sort(food_.roasts.begin(), food_.roasts.end(),
            [](const RoastingTime& a, const RoastingTime& b) { return a.pounds < b.pounds; });
}

// A household's record changes the figures that it names.
void FileReader::nutrients(const Node& node) {
  const Fields fields(node, keys::nutrients, diagnostics_);
  Nutrients read = food_.nutrients.value_or(Nutrients{});
  for (const Nutrient nutrient : all_nutrients()) {
    const NutrientFacts& of = facts(nutrient);
    const Node* value = fields.find(of.name);
    if (value == nullptr) {
      continue;
    }
    measure::Cursor cursor{value->scalar};
    const auto number = measure::scan_number(cursor);
    if (!number || *number < 0 || text::trim(cursor.rest()) != of.unit) {
      bad(*value, fmt::format("'{}' is not an amount in {}", value->scalar, of.unit),
          fmt::format("'{}: 40 {}'", of.name, of.unit));
      continue;
    }
    read[nutrient] = to_double(*number);
  }
  food_.nutrients = read;
}

template <typename T, typename Parse>
void FileReader::word(const Fields& fields, std::string_view key, T& into, Parse parse,
                      std::span<const std::string_view> known) {
  const Node* node = fields.find(key);
  if (node == nullptr) {
    return;
  }
  if (const auto value = parse(node->scalar)) {
    into = *value;
    return;
  }
  diagnostics_.error(errors::unknown_word, node->span,
                     fmt::format("'{}' is not a {}", node->scalar, key == "stored" ? "place" : key),
                     nearest_of(node->scalar, known));
}

void FileReader::read(const Entry& entry) {
  food_.name = text::lower(entry.key.scalar);
  const Fields fields(entry.value, keys::food, diagnostics_,
                      fmt::format("the food '{}'", entry.key.scalar));
  for (const Node* alias : fields.list("aliases")) {
    food_.aliases.push_back(text::lower(alias->scalar));
  }
  const bool new_food = fields.has("department");
  word(fields, "department", food_.department, parse_department, department_words());
  const auto sr28 = [&](std::string_view key, std::optional<int>& number) {
    const Node* node = fields.find(key);
    if (node == nullptr) {
      return;
    }
    measure::Cursor cursor{node->scalar};
    const auto read = measure::scan_number(cursor);
    if (read && cursor.done() && *read < 100000) {
      number = static_cast<int>(measure::to_int64(measure::floor(*read)));
    } else {
      bad(*node, fmt::format("'{}' is not an SR28 number", node->scalar), "11282");
    }
  };
  sr28("usda", food_.usda);
  sr28("usda cooked", food_.usda_cooked);
  for (const Entry* of : fields.named("usda of forms")) {
    const auto form = parse_form(of->key.scalar);
    measure::Cursor cursor{of->value.scalar};
    const auto number = scan_positive(cursor);
    if (!form || !number || !cursor.done()) {
      bad(of->value, "a form and its SR28 number are needed", "{white: 1124}");
      continue;
    }
    put(food_.usda_forms,
        UsdaForm{*form, static_cast<int>(measure::to_int64(measure::floor(*number)))},
        [&](const UsdaForm& u) { return u.form == *form; });
  }
  word(fields, "stored", food_.stored, parse_place, place_words);
  const auto each = [&](std::string_view key, void (FileReader::*part)(const Node&)) {
    if (const Node* node = fields.find(key)) {
      (this->*part)(*node);
    }
  };
  volumes(fields.named("volume"));
  pieces(fields.named("pieces"));
  if (const Node* node = fields.find("count as")) {
    food_.count_as = text::lower(node->scalar);
  }
  if (const Node* node = fields.find("sold as")) {
    food_.sold_as = text::lower(node->scalar);
  }
  if (const Node* node = fields.find("in packs")) {
    food_.in_packs = text::lower(node->scalar);
  }
  yields(fields.named("yields"));
  each("keeps", &FileReader::keeps);
  if (const Node* node = fields.find("freezes")) {
    food_.freezes_for_cooking = node->scalar == "for cooking";
    if (node->scalar != "well" && node->scalar != "poorly" && !food_.freezes_for_cooking) {
      bad(*node,
          fmt::format("a food freezes well, poorly or only for cooking, not '{}'", node->scalar),
          "'freezes: well' or 'freezes: for cooking'");
    }
    food_.freezes = node->scalar != "poorly";
  }
  if (const Node* node = fields.find("thaw")) {
    food_.thaw = node->scalar;
  }
  if (const Node* node = fields.find("ripens")) {
    if (const auto f = figure(*node, "[3 days, common practice no source]")) {
      if (const auto days = text::parse_days(f->value->scalar)) {
        food_.ripens = Sourced<int>{*days, f->source};
      } else {
        bad(*f->value, fmt::format("'{}' is not a time", f->value->scalar), "3 days");
      }
    }
  }
  if (const Node* node = fields.find("soak")) {
    if (const auto f = figure(*node, "[8 hours, common practice no source]")) {
      if (const auto minutes = text::parse_minutes(f->value->scalar)) {
        food_.soak = Sourced<int>{*minutes, f->source};
      } else {
        bad(*f->value, fmt::format("'{}' is not a time", f->value->scalar), "8 hours");
      }
    }
  }
  each("safe at", &FileReader::safe_at);
  roasts(fields.named("roasts"));
  each("allergens", &FileReader::allergens);
  if (const Node* node = fields.find("shop in")) {
    food_.shop_in = node->scalar;
  }
  each("classes", &FileReader::classes);
  each("safety", &FileReader::safety);
  each("expecting", &FileReader::expecting);
  each("nutrients", &FileReader::nutrients);
  if (const Node* node = fields.find("from the tap")) {
    food_.from_tap = node->scalar == "yes";
  }
  if (entry.value.is_mapping() && !new_food && food_.shop_in.empty()) {
    diagnostics_.error(
        errors::incomplete, entry.key.span,
        fmt::format("'{}' is not in the reference, so it needs a department", entry.key.scalar),
        "for example 'department: produce'");
  }
  check(entry);
}

void FileReader::check(const Entry& entry) {
  if (food_.shop_in.empty()) {
    food_.shop_in = food_.is_household() ? "each" : "lb";
  }
  const auto has_piece = [&](const std::optional<std::string>& piece, std::string_view does) {
    if (piece && food_.piece(*piece) == nullptr) {
      diagnostics_.error(
          errors::incomplete, entry.key.span,
          fmt::format("'{}' {} '{}', but has no piece of that name", food_.name, does, *piece));
    }
  };
  has_piece(food_.count_as, "counts as");
  has_piece(food_.sold_as, "is sold as");
  has_piece(food_.in_packs, "in packs is");
}

} // namespace

Food read_food(const Entry& entry, Food base, Diagnostics& diagnostics) {
  FileReader(base, diagnostics).read(entry);
  return base;
}

} // namespace manciple::foods
