#pragma once

#include "foods/words.hpp"
#include "kitchen/currency.hpp"
#include "measure/rational.hpp"
#include "text/date.hpp"
#include "text/yaml.hpp"

#include <optional>
#include <string_view>
#include <vector>

/// Values as the kitchen's files write them. Each gives nothing, with an error at its place, when
/// the text is not what is wanted.
namespace manciple::kitchen {

std::optional<text::Date> read_date(const text::Node& node, text::Diagnostics& diagnostics);
std::optional<int> read_clock(const text::Node& node, text::Diagnostics& diagnostics);
std::optional<int> read_minutes(const text::Node& node, text::Diagnostics& diagnostics);
std::optional<int> read_days(const text::Node& node, text::Diagnostics& diagnostics);
/// An age: "8 months", "6 years", "6" (years); at most 150 years.
std::optional<int> read_months(const text::Node& node, text::Diagnostics& diagnostics);
std::optional<measure::Rational> read_number(const text::Node& node,
                                             text::Diagnostics& diagnostics);
/// A number above 0.
std::optional<measure::Rational> read_positive(const text::Node& node,
                                               text::Diagnostics& diagnostics);
/// A whole number of at least `least`, at most a million.
std::optional<int> read_count(const text::Node& node, text::Diagnostics& diagnostics,
                              int least = 0);
std::optional<bool> read_yes_no(const text::Node& node, text::Diagnostics& diagnostics);
/// "8.25 %" as 0.0825; at most 100 %.
std::optional<measure::Rational> read_percent(const text::Node& node,
                                              text::Diagnostics& diagnostics);

/// Names of allergen classes; what is none is an error and left out.
std::vector<foods::Allergen> read_allergens(const std::vector<const text::Node*>& words,
                                            text::Diagnostics& diagnostics);

std::optional<Cents> read_money(const text::Node& node, const Currency& currency,
                                text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
