#pragma once

#include "emit/compiled.hpp"

#include <nlohmann/json.hpp>

#include <set>

/// How result.json says things. Amounts are numbers of the food's basis (grams, millilitres or
/// pieces) to six places; money is in cents, or what the currency has instead.
namespace manciple::emit::json {

using Json = nlohmann::ordered_json;
using measure::Rational;

/// Six places; written by the shortest decimal that reads back to the same double.
Json number(const Rational& value);
Json date(text::Date day);

/// What is not known is null.
Json maybe(const std::optional<text::Date>& day);
Json maybe(const std::optional<int>& count);
Json maybe(const std::optional<kitchen::Cents>& money);
Json maybe(const std::optional<Rational>& value);

/// Of foods, without repetition, in the order of the alphabet.
Json names(const Compiled& compiled, const std::set<foods::FoodId>& of);

} // namespace manciple::emit::json
