#include "compare/result.hpp"

#include "emit/result_form.hpp"
#include "text/printable.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>
#include <set>

namespace manciple::compare {
namespace {

using Json = nlohmann::json;

// What is not as a result has it: the key at which that is.
struct Broken {
  std::string key;
};

const Json& at(const Json& object, const char* key) {
  const auto found = object.is_object() ? object.find(key) : object.end();
  if (!object.is_object() || found == object.end()) {
    throw Broken{key};
  }
  return *found;
}

const Json& list(const Json& object, const char* key) {
  const Json& value = at(object, key);
  if (!value.is_array()) {
    throw Broken{key};
  }
  return value;
}

// Names come from a file that anybody may have written.
std::string text_of(const Json& value, const char* key) {
  if (!value.is_string()) {
    throw Broken{key};
  }
  return text::printable(value.get_ref<const std::string&>());
}
std::string words(const Json& object, const char* key) {
  return text_of(at(object, key), key);
}

std::int64_t whole(const Json& object, const char* key, std::int64_t least, std::int64_t most) {
  const Json& value = at(object, key);
  const bool fits = value.is_number_integer() &&
                    !(value.is_number_unsigned() &&
                      value.get<std::uint64_t>() >
                          static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max()));
  if (!fits || value.get<std::int64_t>() < least || value.get<std::int64_t>() > most) {
    throw Broken{key};
  }
  return value.get<std::int64_t>();
}

// Sums of a thousand such amounts are still exact.
constexpr Cents most_money = std::int64_t{1} << 52U;
constexpr int many = 1'000'000'000;

Cents money(const Json& object, const char* key) {
  return whole(object, key, -most_money, most_money);
}
std::optional<Cents> maybe_money(const Json& object, const char* key) {
  return at(object, key).is_null() ? std::nullopt : std::optional(money(object, key));
}

double number(const Json& object, const char* key) {
  const Json& value = at(object, key);
  const double found = value.is_number() ? value.get<double>() : -1;
  if (!std::isfinite(found) || found < 0) {
    throw Broken{key};
  }
  return found;
}

bool yes(const Json& object, const char* key) {
  if (!at(object, key).is_boolean()) {
    throw Broken{key};
  }
  return at(object, key).get<bool>();
}

Date date(const Json& object, const char* key) {
  const auto day = text::parse_date(words(object, key));
  if (!day) {
    throw Broken{key};
  }
  return *day;
}

// The place of one thing in a list of which `size` are known.
std::size_t place(const Json& object, const char* key, std::size_t size) {
  if (size == 0) {
    throw Broken{key};
  }
  return static_cast<std::size_t>(whole(object, key, 0, static_cast<std::int64_t>(size) - 1));
}

kitchen::Currency currency_of(const Json& json) {
  kitchen::Currency out;
  out.code = words(json, "code");
  out.sign = words(json, "sign");
  out.after = yes(json, "after");
  out.spaced = yes(json, "spaced");
  const std::string point = words(json, "point");
  if (point != "." && point != ",") {
    throw Broken{"point"};
  }
  out.point = point.front();
  out.digits = static_cast<int>(whole(json, "digits", 0, 3));
  return out;
}

std::vector<Stop> stops_of(const Json& json) {
  std::vector<Stop> out;
  for (const Json& one : list(json, "visits")) {
    out.push_back({date(one, "date"), words(one, "shop"), money(one, "paid")});
  }
  return out;
}

std::vector<Line> lines_of(const Json& json, const std::vector<Stop>& stops) {
  std::vector<Line> out;
  for (const Json& one : list(json, "purchases")) {
    Line line;
    line.food = words(one, "food");
    line.stop = stops[place(one, "visit", stops.size())];
    line.pack = words(one, "pack");
    line.count = words(one, "count");
    line.name = words(one, "name");
    line.packs = static_cast<int>(whole(one, "packs", 0, many));
    line.by_weight = yes(one, "by_weight");
    line.amount = number(one, "amount");
    line.cost = maybe_money(one, "cost");
    for (const Json& note : list(one, "notes")) {
      line.notes.push_back(text_of(note, "notes"));
    }
    out.push_back(std::move(line));
  }
  return out;
}

std::vector<Meal> meals_of(const Json& json) {
  std::vector<Meal> out;
  for (const Json& one : list(json, "meals")) {
    Meal meal{date(one, "date"), words(one, "meal"), {}};
    for (const Json& dish : list(one, "dishes")) {
      const std::string kind = words(dish, "kind");
      meal.dishes.push_back({(kind == "leftovers" ? "leftovers of " : "") + words(dish, "name"),
                             number(dish, "servings"), kind != "plain"});
    }
    out.push_back(std::move(meal));
  }
  return out;
}

std::vector<Making> makings_of(const Json& json) {
  std::vector<Making> out;
  for (const Json& one : list(json, "makings")) {
    Making making{words(one, "recipe"), date(one, "date"), !at(one, "session").is_null(), false,
                  number(one, "serves") * number(one, "times")};
    for (const Json& consumer : list(one, "for")) {
      making.for_the_day = making.for_the_day ||
                           (consumer.contains("dish") && date(consumer, "date") == making.date);
    }
    out.push_back(std::move(making));
  }
  return out;
}

std::optional<Past> past_of(const Json& json) {
  if (!json.contains("past")) {
    return std::nullopt;
  }
  const Json& past = at(json, "past");
  Past out{date(past, "until"), money(past, "paid"), {}};
  for (const Json& one : list(past, "receipts")) {
    out.stops.push_back({date(one, "date"), words(one, "shop"), money(one, "paid")});
  }
  return out;
}

Result result_of(const Json& json) {
  Result out;
  out.plan = words(json, "plan");
  out.from = date(json, "from");
  out.until = date(json, "until");
  out.currency = currency_of(at(json, "currency"));
  out.paid = money(json, "paid");
  out.cash_back = money(json, "cash_back");
  out.budget = maybe_money(json, "budget");
  out.stops = stops_of(json);
  out.lines = lines_of(json, out.stops);
  std::set<std::string> to_find;
  for (const Json& one : list(json, "still_to_find")) {
    to_find.insert(words(one, "food"));
  }
  out.to_find.assign(to_find.begin(), to_find.end());
  out.meals = meals_of(json);
  out.makings = makings_of(json);
  for (const Json& one : list(json, "sessions")) {
    out.sessions.push_back({date(one, "date"), static_cast<int>(whole(one, "from", 0, many)),
                            static_cast<int>(whole(one, "length", 0, many))});
  }
  for (const Json& one : list(json, "reminders")) {
    out.reminders.push_back({date(one, "date"), words(one, "kind"), words(one, "what")});
  }
  out.past = past_of(json);
  return out;
}

} // namespace

tl::expected<Result, std::string> read_result(std::string_view json) {
  const Json parsed = Json::parse(json, nullptr, false);
  if (!parsed.is_object() || !parsed.contains("plan") || !parsed.contains("purchases")) {
    return tl::unexpected(std::string("is not the result of a build"));
  }
  const auto form = parsed.find("form");
  if (form == parsed.end() || *form != emit::result_form) {
    return tl::unexpected(std::string(
        "was written by another version of manciple, and cannot be compared; build it again"));
  }
  try {
    return result_of(parsed);
  } catch (const Broken& broken) {
    return tl::unexpected(
        fmt::format("is not what a build writes, at '{}'; build it again", broken.key));
  }
}

} // namespace manciple::compare
