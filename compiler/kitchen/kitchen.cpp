#include "kitchen/kitchen.hpp"

#include "kitchen/appliances.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/library.hpp"
#include "kitchen/library_names.hpp"
#include "kitchen/numbering.hpp"
#include "kitchen/paths.hpp"
#include "kitchen/receipt_csv.hpp"
#include "kitchen/usual.hpp"
#include "kitchen/variants.hpp"
#include "text/errors.hpp"
#include "text/nearest.hpp"
#include "text/printable.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::kitchen {
namespace {

constexpr const char* usual_count = "plans/on-hand.yaml";

class Loader {
public:
  Loader(std::string root, const text::Files& files, text::Sources& sources,
         text::Diagnostics& diagnostics)
      : root_(std::move(root)),
        files_(files),
        sources_(sources),
        diagnostics_(diagnostics),
        food_names_(kitchen.foods),
        library_(
            kitchen.foods, recipe_names(), [this] { return titles(); },
            [this] { return given(); }) {}

  Kitchen kitchen;

  void setting();
  void shops_named();
  /// What was counted last, up to a day.
  void on_hand(std::optional<text::Date> up_to);
  void counts(text::Date up_to);
  void tell_old_count();
  void receipts(std::optional<text::Date> up_to);
  void settle_as_of(std::optional<text::Date> said);
  void plan(text::FileId file, const std::string& slug);
  void refuse_later_count();
  void recipes();
  void all_recipes();
  void suited_recipes();
  std::optional<text::FileId> load(const std::string& path) {
    return text::load(path, files_, sources_, diagnostics_);
  }

private:
  std::optional<text::Node> read(const std::string& path);
  std::optional<OnHand> count(const std::string& path, std::optional<text::Date> day);
  std::optional<text::Date> counted_usually() const {
    return kitchen.plan ? std::optional(kitchen.plan->first_day()) : std::nullopt;
  }
  std::vector<std::string> names_in(const std::string& folder, std::string_view ending = ".yaml");
  void receipt(const std::string& name, std::optional<text::Node> node,
               std::optional<text::Date> since, std::optional<text::Date> up_to);
  std::vector<std::string> recipe_names() {
    std::vector<std::string> names = names_in("recipes");
    std::erase(names, "foods");
    return names;
  }

  [[nodiscard]] std::vector<std::string> recipe_files() const;
  /// Whether a recipe's file has a word anywhere.
  [[nodiscard]] bool says(const std::string& name, std::string_view word) const;
  RecipeNames::Titles titles() const;
  RecipeNames::Given given() const;

  std::string root_;
  const text::Files& files_;
  text::Sources& sources_;
  text::Diagnostics& diagnostics_;
  FoodNames food_names_;
  RecipeNames library_;
};

std::optional<text::Node> Loader::read(const std::string& path) {
  const auto file = load(in_root(root_, path));
  return file ? text::parse_yaml(*file, sources_, diagnostics_) : std::nullopt;
}

constexpr std::string_view yaml_ending = ".yaml";

// The names of the YAML files of a folder, without their ending, sorted. A name that could not be
// printed is refused here, so that it gets no further.
std::vector<std::string> Loader::names_in(const std::string& folder, std::string_view ending) {
  const auto names = files_.names(in_root(root_, folder));
  if (!names) {
    diagnostics_.error(names.error().code, {}, names.error().what, names.error().fix);
    return {};
  }
  std::vector<std::string> out;
  for (const std::string& name : *names) {
    if (name.size() <= ending.size() || !name.ends_with(ending)) {
      continue;
    }
    if (text::find_unprintable(name)) {
      diagnostics_.error(text::errors::not_text, {},
                         fmt::format("a file in {} has a name that is not text: {}", folder,
                                     text::printable(name)),
                         "give it a plain name");
      continue;
    }
    out.push_back(name.substr(0, name.size() - ending.size()));
  }
  std::sort(out.begin(), out.end()); // without the ending it is another order
  return out;
}

// What is wrong with the folder is said when all its names are asked for.
std::vector<std::string> Loader::recipe_files() const {
  std::vector<std::string> out =
      files_.names(in_root(root_, "recipes")).value_or(std::vector<std::string>());
  std::erase_if(out, [](const std::string& name) {
    return !name.ends_with(yaml_ending) || name == "foods.yaml";
  });
  return out;
}

RecipeNames::Titles Loader::titles() const {
  RecipeNames::Titles out;
  for (const std::string& name : recipe_files()) {
    const auto file = files_.read(in_root(root_, "recipes/" + name));
    const std::string title = file ? title_in(*file) : std::string();
    if (!title.empty()) {
      out.emplace(text::slug(title), name.substr(0, name.size() - yaml_ending.size()));
    }
  }
  return out;
}

// Of a large library few may say it: what does not is never parsed.
bool Loader::says(const std::string& name, std::string_view word) const {
  const auto file = files_.read(in_root(root_, "recipes/" + name));
  return file && file->find(word) != std::string::npos;
}

RecipeNames::Given Loader::given() const {
  RecipeNames::Given out;
  for (const std::string& name : recipe_files()) {
    if (!says(name, "gives")) {
      continue;
    }
    // What is wrong with a file is said when it is read for its own sake.
    text::Sources sources;
    text::Diagnostics unsaid;
    const auto file = text::load(in_root(root_, "recipes/" + name), files_, sources, unsaid);
    const auto node = file ? text::parse_yaml(*file, sources, unsaid) : std::nullopt;
    if (node) {
      add_given(*node, kitchen.household.customs(), out);
    }
  }
  return out;
}

// The household, its foods and its shops.
void Loader::setting() {
  if (files_.exists(in_root(root_, "recipes/foods.yaml"))) {
    if (const auto node = read("recipes/foods.yaml")) {
      kitchen.foods.add_household(*node, diagnostics_);
    }
  }
  kitchen.household = usual_household();
  if (files_.exists(in_root(root_, "plans/household.yaml"))) {
    if (const auto node = read("plans/household.yaml")) {
      kitchen.foods.speak(system_of(*node)); // before any food is named
      kitchen.household = read_household(*node, food_names_, diagnostics_);
    }
  }
  for (const std::string& name : names_in("plans/stores")) {
    const ShopId id{static_cast<std::uint32_t>(kitchen.shops.size())};
    if (const auto node = read("plans/stores/" + name + ".yaml")) {
      kitchen.shops.push_back(
          read_shop(*node, name, id, kitchen.household, food_names_, diagnostics_));
    }
  }
  shops_named();
}

std::optional<OnHand> Loader::count(const std::string& path, std::optional<text::Date> day) {
  const auto node = read(path);
  return node ? std::optional(read_on_hand(*node, kitchen.household.customs(), day, food_names_,
                                           library_, diagnostics_))
              : std::nullopt;
}

// What is in the house, counted before the plan's shopping where the file does not say when. Of
// several counts the last one holds.
void Loader::on_hand(std::optional<text::Date> up_to) {
  const auto count = [&](const std::string& path, std::optional<text::Date> day) {
    if (auto read = this->count(path, day)) {
      const auto& known = kitchen.on_hand.date;
      const bool too_late = known && up_to && *known > *up_to; // it is of another time
      if (!known || too_late || (read->date && *read->date >= *known)) {
        kitchen.on_hand = std::move(*read);
      }
    }
  };
  std::optional<std::pair<text::Date, std::string>> last;
  for (const std::string& name : names_in("plans/on-hand")) {
    const auto day = day_in_name(name);
    if (day && (!up_to || *day <= *up_to)) {
      last = std::max(last, {{*day, name}});
    }
  }
  if (files_.exists(in_root(root_, usual_count))) {
    count(usual_count, counted_usually());
  }
  if (last) {
    count("plans/on-hand/" + last->second + ".yaml", last->first);
  }
}

// All counts from the one with which the plan begins to the one of the morning after it; what is
// on hand is the last of them up to a day.
void Loader::counts(text::Date up_to) {
  const text::Date first = kitchen.plan->first_day();
  const text::Date last = kitchen.plan->until + std::chrono::days(1);
  std::map<text::Date, OnHand> by_day;
  const auto take = [&](const std::string& path, text::Date day) {
    if (auto read = count(path, day); read && read->date) {
      by_day.insert_or_assign(*read->date, std::move(*read));
    }
  };
  if (files_.exists(in_root(root_, usual_count))) {
    take(usual_count, first);
  }
  const std::vector<std::string> names = names_in("plans/on-hand");
  std::optional<text::Date> begun;
  for (const std::string& name : names) {
    const auto day = day_in_name(name);
    begun = day && *day <= first ? std::max(begun, day) : begun;
  }
  for (const std::string& name : names) {
    const auto day = day_in_name(name);
    if (day && *day <= last && (!begun || *day >= *begun)) {
      take("plans/on-hand/" + name + ".yaml", *day);
    }
  }
  auto next = by_day.upper_bound(first);
  next = next == by_day.begin() ? next : std::prev(next);
  for (; next != by_day.end(); ++next) {
    if (next->first <= up_to || !kitchen.on_hand.date) {
      kitchen.on_hand = next->second;
    }
    if (next->first <= last) {
      kitchen.counts.push_back(std::move(next->second));
    }
  }
}

// What was counted so long before a plan is still what is there when it begins. Our own choice.
constexpr std::chrono::days fresh_count(7);

// A count says nothing of what was eaten between it and the plan.
void Loader::tell_old_count() {
  const auto& counted = kitchen.on_hand.date;
  if (!kitchen.plan || !counted || kitchen.on_hand.lots.empty()) {
    return;
  }
  const text::Date first = kitchen.plan->first_day();
  if (*counted + fresh_count < first) {
    diagnostics_.warning(
        errors::old_count, kitchen.on_hand.at,
        fmt::format("what is in the house was counted on {}, {} before the plan begins; anything "
                    "eaten since then is assumed to be still there",
                    text::print_day(*counted),
                    text::print_days(static_cast<int>((first - *counted).count()))),
        "count again, or let 'manciple on-hand --write' work out what the previous plan leaves");
  }
}

void Loader::receipt(const std::string& name, std::optional<text::Node> node,
                     std::optional<text::Date> since, std::optional<text::Date> up_to) {
  auto receipt = node ? read_receipt(*node, name, {kitchen.household, kitchen.shops, food_names_},
                                     diagnostics_)
                      : std::nullopt;
  if (receipt && (!up_to || receipt->date <= *up_to) && (!since || receipt->date >= *since)) {
    kitchen.receipts.push_back(std::move(*receipt));
  }
}

// Those that were written since what is in the house was counted, and those of the plan's days,
// which its budget has paid.
void Loader::receipts(std::optional<text::Date> up_to) {
  std::optional<text::Date> since = counted_usually();
  const OnHand& first = kitchen.counts.empty() ? kitchen.on_hand : kitchen.counts.front();
  if (since && first.date) {
    since = std::min(*since, *first.date);
  }
  const auto of_these_days = [&](const std::string& name) {
    const auto day = day_in_name(name);
    return !day || ((!up_to || *day <= *up_to) && (!since || *day >= *since));
  };
  for (const std::string& name : names_in("plans/receipts")) {
    if (of_these_days(name)) {
      receipt(name, read("plans/receipts/" + name + ".yaml"), since, up_to);
    }
  }
  for (const std::string& name : names_in("plans/receipts", ".csv")) {
    const auto file = of_these_days(name) ? load(in_root(root_, "plans/receipts/" + name + ".csv"))
                                          : std::nullopt;
    if (file) {
      receipt(name, receipt_of_table(*file, name, sources_, diagnostics_), since, up_to);
    }
  }
  by_date(kitchen.receipts);
}

// A day that is asked for goes first; else the plan, its last receipt or its last count tells how
// far it is, whichever is latest.
void Loader::settle_as_of(std::optional<text::Date> said) {
  if (!kitchen.plan) {
    return;
  }
  const Plan& plan = *kitchen.plan;
  std::optional<text::Date> day = said ? said : plan.as_of;
  if (!said) {
    const auto& counted = kitchen.on_hand.date;
    day = counted && *counted > plan.from ? std::max(day, counted) : day;
    day = kitchen.receipts.empty() ? day : std::max(day, {kitchen.receipts.back().date});
  }
  if (day && (*day > plan.from || !kitchen.receipts.empty())) {
    kitchen.as_of = day;
  }
  if (const text::Date first = plan.first_day(); said && *said < first) {
    diagnostics_.error(errors::outside_plan, plan.at,
                       fmt::format("the plan and its shopping begin on {}, after {}",
                                   text::print_date(first), text::print_date(*said)));
  }
  if (day && *day > plan.until) {
    diagnostics_.error(errors::outside_plan, plan.as_of ? plan.as_of_at : plan.at,
                       fmt::format("the plan ends on {}, before {}", text::print_date(plan.until),
                                   text::print_date(*day)));
  }
}

// The shops that the household's file names.
void Loader::shops_named() {
  const auto shop = [&](ShopName& name) -> Shop* {
    const auto id = shop_named(name.slug, name.at, kitchen.shops, diagnostics_);
    if (!id) {
      return nullptr;
    }
    Shop& found = kitchen.shops[static_cast<std::size_t>(*id)];
    name.slug = found.slug;
    return &found;
  };
  for (ShopName& name : kitchen.household.member_of) {
    if (Shop* found = shop(name)) {
      found->take_member_prices();
    }
  }
  for (BuyingRule& rule : kitchen.household.buying) {
    for (auto* list : {&rule.only_at, &rule.never_at, &rule.prefer}) {
      std::for_each(list->begin(), list->end(), shop);
    }
  }
}

void Loader::plan(text::FileId file, const std::string& slug) {
  if (const auto node = text::parse_yaml(file, sources_, diagnostics_)) {
    const PlanContext context{slug, kitchen.household, kitchen.shops, library_, food_names_};
    kitchen.plan = read_plan(*node, context, diagnostics_);
  }
}

// What was counted after the plan's last day says nothing of its days.
void Loader::refuse_later_count() {
  const OnHand& on_hand = kitchen.on_hand;
  if (kitchen.plan && on_hand.date && *on_hand.date > kitchen.plan->until) {
    diagnostics_.error(
        errors::outside_plan, on_hand.at,
        fmt::format("this was counted on {}, but the plan ends on {}",
                    text::print_date(*on_hand.date), text::print_date(kitchen.plan->until)),
        fmt::format(
            "rename the file to plans/on-hand/{}.yaml: plans that end before that day ignore it",
            text::print_date(*on_hand.date)));
  }
}

// Reading a recipe may name further ones; each is read once.
void Loader::recipes() {
  while (kitchen.recipes.size() < library_.wanted.size()) {
    const std::string slug = library_.wanted[kitchen.recipes.size()];
    library_.reading = slug;
    Recipe recipe;
    if (const auto node = read("recipes/" + slug + ".yaml")) {
      recipe = read_recipe(*node, slug, kitchen.household.customs(), library_, diagnostics_);
      mark_hot_steps(recipe, kitchen.household);
    }
    recipe.id = RecipeId{static_cast<std::uint32_t>(kitchen.recipes.size())};
    kitchen.recipes.push_back(std::move(recipe));
  }
  library_.reading.clear();
  split_meals(kitchen, diagnostics_);
  number_recipes(kitchen);
}

void Loader::all_recipes() {
  for (const std::string& slug : library_.slugs()) {
    library_.need(slug);
  }
  recipes();
}

void Loader::suited_recipes() {
  for (const std::string& slug : library_.slugs()) {
    if (says(slug + std::string(yaml_ending), "suits")) {
      library_.need(slug);
    }
  }
  recipes();
}

} // namespace

Kitchen read_kitchen(const std::string& plan_path, text::Sources& sources,
                     text::Diagnostics& diagnostics, const text::Files& files,
                     std::optional<text::Date> as_of, Counts counts) {
  Loader loader(root_of(plan_path), files, sources, diagnostics);
  // A plan that cannot be read at all makes the rest beside the point.
  if (const auto file = loader.load(plan_path)) {
    loader.setting();
    loader.plan(*file, plan_slug(plan_path));
    const auto& plan = loader.kitchen.plan;
    const auto last = as_of || !plan ? as_of : std::optional(plan->until);
    if (plan && counts == Counts::all) {
      loader.counts(*last);
    } else {
      loader.on_hand(last);
    }
    loader.refuse_later_count();
    loader.tell_old_count();
    loader.receipts(last);
    loader.settle_as_of(as_of);
    loader.recipes();
    settle_usual(loader.kitchen, diagnostics);
    check_appliances(loader.kitchen, diagnostics);
    check_suits(loader.kitchen, diagnostics);
  }
  return std::move(loader.kitchen);
}

Kitchen read_everything(const std::string& root, text::Sources& sources,
                        text::Diagnostics& diagnostics, const text::Files& files) {
  Loader loader(root, files, sources, diagnostics);
  loader.setting();
  for (const std::string& path : plan_files(root, files)) {
    if (const auto file = loader.load(path)) {
      loader.plan(*file, plan_slug(path));
    }
  }
  loader.receipts({});
  loader.on_hand({});
  loader.all_recipes();
  settle_usual(loader.kitchen, diagnostics);
  check_appliances(loader.kitchen, diagnostics);
  check_suits(loader.kitchen, diagnostics);
  return std::move(loader.kitchen);
}

Library read_library(const std::string& root, Recipes which, const text::Files& files) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Loader loader(root, files, sources, diagnostics);
  loader.setting();
  if (which == Recipes::all) {
    loader.all_recipes();
  } else {
    loader.suited_recipes();
  }
  settle_usual(loader.kitchen, diagnostics);
  Library out{std::move(loader.kitchen), {}};
  out.readable = readable_recipes(out.kitchen, diagnostics);
  return out;
}

} // namespace manciple::kitchen
