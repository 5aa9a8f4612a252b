#include "kitchen/plan.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/plan_reader.hpp"
#include "text/errors.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::kitchen {

using text::Date;
using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

std::optional<Date> PlanReader::inside(const Node& node, int days_before) {
  const auto date = read_date(node, diagnostics_);
  if (date && (*date < plan_.from - std::chrono::days(days_before) || *date > plan_.until)) {
    diagnostics_.error(errors::outside_plan, node.span,
                       fmt::format("{} is outside the plan, which runs from {} to {}", node.scalar,
                                   text::print_date(plan_.from), text::print_date(plan_.until)));
    return std::nullopt;
  }
  return date;
}

// "2027-03-02" is that day, "every Friday" all of them, "every day" each.
std::vector<Date> PlanReader::days(const Node& key, int days_before) {
  std::vector<Date> out;
  if (!key.scalar.starts_with("every ")) {
    if (const auto date = inside(key, days_before)) {
      out.push_back(*date);
    }
    return out;
  }
  const std::string_view word = text::trim(std::string_view(key.scalar).substr(6));
  const auto weekday = text::parse_weekday(word);
  const bool weekdays = word == "weekday";
  if (!weekday && !weekdays && word != "day") {
    diagnostics_.error(errors::bad_value, key.span,
                       fmt::format("'{}' is not a day of the week", word),
                       "write 'every Friday', 'every weekday', 'every day' or a date");
    return out;
  }
  for (Date date = plan_.from; date <= plan_.until; date += std::chrono::days(1)) {
    const std::chrono::weekday on{date};
    const bool weekend = on == std::chrono::Saturday || on == std::chrono::Sunday;
    if (weekday ? on == *weekday : !(weekdays && weekend)) {
      out.push_back(date);
    }
  }
  return out;
}

namespace {

// The first and the last of the dates that the plan's meals are at.
std::optional<std::pair<Date, Date>> dates_in(const std::vector<const Entry*>& meals) {
  std::optional<std::pair<Date, Date>> out;
  for (const Entry* entry : meals) {
    if (const auto date = text::parse_date(entry->key.scalar)) {
      out = out ? std::pair(std::min(out->first, *date), std::max(out->second, *date))
                : std::pair(*date, *date);
    }
  }
  return out;
}

// A file called 2027-03 is of that month.
std::optional<std::pair<Date, Date>> month_of(std::string_view slug) {
  const auto first = text::parse_date(fmt::format("{}-01", slug));
  if (!first) {
    return std::nullopt;
  }
  const std::chrono::year_month_day day(*first);
  return std::pair(*first, Date(day.year() / day.month() / std::chrono::last));
}

} // namespace

// What the file says; else the month that it is called after; else from the first to the last of
// its meals.
bool PlanReader::period(const Fields& fields) {
  const Node* from = fields.find("from");
  const Node* until = fields.find("until");
  const auto first = from != nullptr ? read_date(*from, diagnostics_) : std::nullopt;
  const auto last = until != nullptr ? read_date(*until, diagnostics_) : std::nullopt;
  if ((from != nullptr && !first) || (until != nullptr && !last)) {
    return false;
  }
  const auto month = month_of(context_.slug);
  const auto usual = month ? month : dates_in(fields.named("meals"));
  if (!usual && (!first || !last)) {
    diagnostics_.error(
        text::errors::missing_key, plan_.at,
        fmt::format("a plan needs '{}', or meals with dates", first ? "until" : "from"));
    return false;
  }
  plan_.from = first ? *first : usual->first;
  plan_.until = last ? *last : usual->second;
  plan_.begins = plan_.from;
  if (const Node* as_of = fields.find("as of")) {
    plan_.as_of = read_date(*as_of, diagnostics_);
    plan_.as_of_at = as_of->span;
  }
  if (plan_.until < plan_.from || plan_.until - plan_.from > std::chrono::days(120)) {
    const Node* at = until != nullptr ? until : from;
    diagnostics_.error(errors::wrong_order, at != nullptr ? at->span : plan_.at,
                       plan_.until < plan_.from ? "the plan ends before it begins"
                                                : "a plan can cover at most 120 days");
    return false;
  }
  return true;
}

std::pair<Date, Date> PlanReader::span_of(const Fields& fields) {
  const Node* from = fields.find("from");
  const Node* until = fields.find("until");
  const Date first = from != nullptr ? inside(*from).value_or(plan_.from) : plan_.from;
  const Date last = until != nullptr ? inside(*until).value_or(first) : first;
  if (until != nullptr && last < first) {
    diagnostics_.error(errors::wrong_order, until->span, "this ends before it begins");
  }
  return {first, last};
}

std::vector<std::string> PlanReader::slots(const std::vector<const Node*>& list) {
  return read_meals(list, context_.household, diagnostics_);
}

std::optional<Ingredient> PlanReader::one(const Node& node, std::string_view words,
                                          std::size_t offset, Names& names, bool free_text) {
  auto read =
      read_line(node, words, offset, context_.household.customs(), names, diagnostics_, free_text);
  if (read.size() > 1) {
    diagnostics_.error(errors::unread_amount, node.part(offset, words.size()),
                       "this line asks for several things", "give each a line of its own");
  }
  return read.size() == 1 ? std::optional(std::move(read.front())) : std::nullopt;
}

// "smoky-lentil-soup for 6", "leftovers of smoky-lentil-soup", "6 bananas".
bool PlanReader::dish_words(const Node& node, Dish& dish) {
  constexpr std::string_view of = "leftovers of ";
  std::string_view words = node.scalar;
  std::size_t offset = 0;
  if (words.starts_with(of)) {
    dish.kind = Dish::Kind::leftovers;
    offset = of.size();
    words.remove_prefix(offset);
  }
  if (const std::size_t with = words.rfind(" for "); with != std::string_view::npos) {
    measure::Cursor cursor{words.substr(with + 5)};
    const auto servings = measure::scan_number(cursor);
    if (!servings || !cursor.done() || *servings <= 0) {
      diagnostics_.error(errors::unread_amount, node.part(offset + with + 5, words.size()),
                         "'for' must be followed by a number of servings");
      return false;
    }
    dish.servings = *servings;
    words = words.substr(0, with);
  }
  const auto recipe = context_.recipes.find(words);
  if (recipe && std::holds_alternative<RecipeId>(*recipe)) {
    dish.what = {
        std::string(words), node.part(offset, words.size()), *recipe, {}, {}, false, false, {}};
    return true;
  }
  const bool amount = !words.empty() && !text::is_letter(words.front());
  if (dish.kind == Dish::Kind::cooked && amount) {
    const auto plain = one(node, words, offset, context_.foods);
    if (!plain) {
      return false;
    }
    dish.kind = Dish::Kind::plain;
    dish.what = *plain;
    return true;
  }
  return unknown_dish(node, words, offset, dish);
}

// What is neither a recipe nor an amount of a food, nor leftovers of one, stands in the menu, and
// nothing is bought for it. What is nearly the name of a recipe is an error.
bool PlanReader::unknown_dish(const Node& node, std::string_view words, std::size_t offset,
                              Dish& dish) {
  const text::Span at = node.part(offset, words.size());
  if (const auto recipe = context_.recipes.find_title(words)) {
    dish.what = {std::string(words), at, *recipe, {}, {}, false, false, {}};
    return true;
  }
  const std::vector<std::string_view> names = context_.recipes.all();
  const auto food = context_.foods.find(words);
  const bool slip = !food && (text::slip_of(text::slug(words), names) ||
                              text::slip_of(foods::normal_name(words), names));
  const auto target =
      food ? food : context_.foods.as_written(words, measure::Dimension::count, {}, nullptr);
  if (slip || text::trim(words).empty() || !target) {
    diagnostics_.error(errors::unknown_recipe, at, fmt::format("there is no recipe '{}'", words),
                       text::did_you_mean(text::slug(words), names));
    return false;
  }
  dish.kind = Dish::Kind::plain;
  dish.what = {std::string(words), at, *target, {}, {}, false, false, {}};
  diagnostics_.warning(
      errors::unknown_recipe, at,
      food ? fmt::format("no amount is given for '{}', so nothing is bought for it", words)
           : fmt::format("there is no recipe '{}'; it is on the menu, but nothing is bought for it",
                         words),
      food ? fmt::format("give an amount, for example '2 {}'", text::plural(text::singular(words)))
           : "");
  return true;
}

std::optional<Dish> PlanReader::dish(const Node& node) {
  Dish out;
  out.at = node.span;
  if (node.is_scalar()) {
    return dish_words(node, out) ? std::optional(std::move(out)) : std::nullopt;
  }
  const Fields fields(node, keys::dish, diagnostics_);
  const Node* what = fields.find("dish");
  bool good = what != nullptr && dish_words(*what, out);
  if (const Node* servings = fields.find("servings")) {
    out.servings = read_positive(*servings, diagnostics_);
  }
  for (const Node* who : fields.list("eaten by")) {
    good = is_known(*who) && good;
    out.eaten_by.push_back(who->scalar);
  }
  for (const Entry* entry : fields.named("for")) {
    auto other = variant(*entry);
    good = good && other;
    if (other) {
      out.variants.push_back(std::move(*other));
    }
  }
  for (const Entry* entry : fields.named("portions")) {
    const auto number = read_positive(entry->value, diagnostics_);
    good = is_known(entry->key) && number && good;
    out.portions.emplace(entry->key.scalar, number.value_or(1));
  }
  return good ? std::optional(std::move(out)) : std::nullopt;
}

void PlanReader::dishes(const Node& value, Meal& meal) {
  for (const Node* node : text::items_of(value)) {
    if (node->scalar == "out" || node->scalar == "none") {
      continue;
    }
    if (auto read = dish(*node)) {
      meal.dishes.push_back(std::move(*read));
    }
  }
}

namespace {

// Of `changes`: no meals.
constexpr std::string_view eaten = "eaten";
constexpr std::string_view thrown_away = "thrown away";

// What a day says of a meal goes before what "every Friday" says, that before "every weekday", and
// that before "every day", wherever they stand.
int rank_of(std::string_view days) {
  return days == "every day" ? 1 : days == "every weekday" ? 2 : days.starts_with("every ") ? 3 : 4;
}

} // namespace

// A meal that the household does not name is served at its usual hour; what is nearly the name of
// one that is known is left for the reader to refuse.
void PlanReader::add_slots(const std::vector<const Entry*>& entries) {
  Household& household = context_.household;
  for (const Entry* of_day : entries) {
    for (const Entry& meal : of_day->value.entries) {
      std::string name = text::lower(meal.key.scalar);
      if (const auto hour =
              household.slot(name) == nullptr ? hour_of_new_meal(household, name) : std::nullopt) {
        household.added_slots.push_back(name);
        household.add_slot({std::move(name), *hour});
      }
    }
  }
}

void PlanReader::meals_of(const Entry& entry, bool changed, SaidMeals& said) {
  constexpr int change = 10;
  const std::vector<Date> on = days(entry.key);
  const int rank = rank_of(entry.key.scalar) + (changed ? change : 0);
  for (const Entry& meal : entry.value.entries) {
    if (changed && (meal.key.scalar == eaten || meal.key.scalar == thrown_away)) {
      continue;
    }
    const std::vector<std::string> slot = slots({&meal.key});
    if (slot.empty()) {
      continue;
    }
    Meal read{{}, slot.front(), {}, meal.value.span};
    dishes(meal.value, read);
    const auto index = static_cast<std::size_t>(context_.household.slot(slot.front()) -
                                                context_.household.slots.data());
    for (const Date date : on) {
      SaidMeal& place = said[{date, index}];
      if (rank == place.rank) {
        diagnostics_.error(
            errors::bad_value, meal.key.span,
            fmt::format("the {} of {} is given twice", slot.front(), entry.key.scalar));
        break;
      }
      if (rank > place.rank) {
        place = {rank, read};
        place.meal.date = date;
      }
    }
  }
}

void PlanReader::meals(const std::vector<const Entry*>& entries,
                       const std::vector<const Entry*>& changes) {
  SaidMeals said; // by date and the meal of the day
  for (const Entry* entry : entries) {
    meals_of(*entry, false, said);
  }
  for (const Entry* entry : changes) {
    meals_of(*entry, true, said);
  }
  for (auto& [when, place] : said) {
    if (!place.meal.dishes.empty()) {
      plan_.meals.push_back(std::move(place.meal));
    }
  }
}

void PlanReader::changes(const std::vector<const Entry*>& entries) {
  for (const Entry* of_day : entries) {
    const std::vector<Date> on = days(of_day->key);
    for (const Entry& entry : of_day->value.entries) {
      const bool thrown = entry.key.scalar == thrown_away;
      if (!thrown && entry.key.scalar != eaten) {
        continue;
      }
      for (const Node* line : text::items_of(entry.value)) {
        const auto what = one(*line, line->scalar, 0, context_.foods);
        if (what && !what->amount) {
          diagnostics_.error(errors::unread_amount, line->span, "no amount is given",
                             "for example '2 onions'");
        } else if (what) {
          for (const Date date : on) {
            plan_.changes.push_back({date, *what, thrown});
          }
        }
      }
    }
  }
  std::stable_sort(plan_.changes.begin(), plan_.changes.end(),
                   [](const Change& a, const Change& b) { return a.date < b.date; });
}

std::optional<Plan> read_plan(const Node& file, const PlanContext& context,
                              Diagnostics& diagnostics) {
  Plan plan;
  plan.at = file.span;
  const Fields fields(file, keys::plan, diagnostics);
  PlanReader reader(plan, context, diagnostics);
  plan.name = month_of(context.slug) ? context.slug : text::title(context.slug);
  if (const Node* name = fields.find("plan")) {
    plan.name = name->scalar;
    plan.at = name->span;
  }
  if (!reader.period(fields)) {
    return std::nullopt;
  }
  const auto each = [&](std::string_view key, void (PlanReader::*read)(const Node&)) {
    for (const Node* node : fields.list(key)) {
      (reader.*read)(*node);
    }
  };
  reader.add_slots(fields.named("meals"));
  each("guests", &PlanReader::guest); // dishes may be for them
  reader.meals(fields.named("meals"), fields.named("changes"));
  reader.changes(fields.named("changes"));
  each("away", &PlanReader::away);
  reader.aims(fields.named("aims"));
  each("staples", &PlanReader::staple);
  each("extra", &PlanReader::extra);
  reader.trips(fields.list("trips"));
  plan.says_trips = fields.has("trips");
  if (!plan.says_trips) {
    reader.usual_trips();
  }
  each("prep", &PlanReader::session);
  each("cooks", &PlanReader::cooks);
  if (const Node* budget = fields.find("budget")) {
    plan.budget = read_money(*budget, context.household.currency, diagnostics);
  }
  std::stable_sort(plan.trips.begin(), plan.trips.end(),
                   [](const Trip& a, const Trip& b) { return a.date < b.date; });
  std::stable_sort(plan.sessions.begin(), plan.sessions.end(),
                   [](const Session& a, const Session& b) {
                     return std::pair(a.date, a.from) < std::pair(b.date, b.from);
                   });
  return plan;
}

} // namespace manciple::kitchen
