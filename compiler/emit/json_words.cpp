#include "emit/json_words.hpp"

#include "measure/print.hpp"

namespace manciple::emit::json {

Json number(const Rational& value) {
  return std::stod(measure::print_decimal(value, 6));
}

Json date(text::Date day) {
  return text::print_date(day);
}
Json maybe(const std::optional<text::Date>& day) {
  return day ? Json(text::print_date(*day)) : Json(nullptr);
}
Json maybe(const std::optional<int>& count) {
  return count ? Json(*count) : Json(nullptr);
}
Json maybe(const std::optional<kitchen::Cents>& money) {
  return money ? Json(*money) : Json(nullptr);
}

Json maybe(const std::optional<Rational>& value) {
  return value ? number(*value) : Json(nullptr);
}

Json names(const Compiled& compiled, const std::set<foods::FoodId>& of) {
  std::set<std::string> out;
  for (const foods::FoodId food : of) {
    out.insert(compiled.kitchen.food(food).name);
  }
  return out;
}

} // namespace manciple::emit::json
