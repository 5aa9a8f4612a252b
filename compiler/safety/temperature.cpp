#include "safety/temperature.hpp"

#include "kitchen/contents.hpp"
#include "kitchen/food_code.hpp"
#include "safety/errors.hpp"
#include "text/phrases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace manciple::safety {
namespace {

using text::says;

// Of the middle of food that is done: below that, of what is cooled or proves; above it, of an
// oven, of fat or of sugar.
constexpr int coolest_middle = 100;
constexpr int hottest_middle = 212;
// What is held no warmer than that is meant to be cold.
constexpr int held_cold = 60;

int celsius_up(int degrees) {
  return ((degrees - 32) * 5 + 8) / 9;
}

// To the nearest degree, as tables have it: 57 C is 135 F.
int fahrenheit(int degrees, char scale) {
  return scale == 'C' ? (degrees * 9 + 2) / 5 + 32 : degrees;
}

// The temperature is that at which meat is done, not that of milk for yeast or of an oven.
bool is_done_at(std::string_view text) {
  return says(text, {"in the middle", "inside", "internal~", "in the thigh", "in the centre",
                     "in the center", "thickest part", "core", "until it reaches", "roast~ to",
                     "roast~ * to", "grill~ * to", "cook~ * to", "fry * to", "sear~ * to",
                     "smoke~ * to", "finish * to", "barbecue~ * to"});
}

} // namespace

std::vector<int> temperatures_in(std::string_view text) {
  std::vector<int> out;
  for (std::size_t i = 0; i < text.size();) {
    if (std::isdigit(static_cast<unsigned char>(text[i])) == 0) {
      ++i;
      continue;
    }
    int number = 0;
    std::size_t end = i;
    while (end < text.size() && std::isdigit(static_cast<unsigned char>(text[end])) != 0) {
      number = std::min(number * 10 + (text[end] - '0'), 9999);
      ++end;
    }
    std::size_t unit = end;
    constexpr std::string_view degree = "°";
    while (unit < text.size() && (text[unit] == ' ' || text.substr(unit).starts_with(degree))) {
      unit += text[unit] == ' ' ? 1 : degree.size();
    }
    const bool ends_word =
        unit + 1 >= text.size() || std::isalnum(static_cast<unsigned char>(text[unit + 1])) == 0;
    if (unit < text.size() && (text[unit] == 'F' || text[unit] == 'C') && ends_word) {
      out.push_back(fahrenheit(number, text[unit]));
    }
    i = end;
  }
  return out;
}

void check_temperatures(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
                        text::Diagnostics& diagnostics) {
  const foods::Food* dangerous = kitchen::least_safe(kitchen, recipe);
  int hottest = 0;
  const kitchen::MethodStep* last = nullptr;
  for (const kitchen::MethodStep& step : recipe.method) {
    const bool held = says(step.what, {"keep * warm", "hold * at", "keep * hot"});
    for (const int degrees : temperatures_in(step.what)) {
      if (held && degrees < kitchen::hot_enough.fahrenheit && degrees > held_cold) {
        diagnostics
            .warning(errors::too_cool, step.at,
                     fmt::format("{}: {} F is too cool to keep food warm", recipe.name, degrees),
                     fmt::format("keep it at {} F ({} C) or above, or cool it at once",
                                 kitchen::hot_enough.fahrenheit, kitchen::hot_enough.celsius))
            .note(std::nullopt, "Food Code 3-501.16");
      } else if (!held && degrees <= hottest_middle && degrees > hottest && is_done_at(step.what)) {
        hottest = degrees;
        last = &step;
      }
    }
  }
  if (last == nullptr || dangerous == nullptr || hottest < coolest_middle ||
      hottest >= dangerous->safe_at->value.fahrenheit) {
    return;
  }
  // Whole pieces of other meat are eaten rare by those who know what they do.
  const bool forbidden =
      foods::is(*dangerous, foods::Class::poultry) || foods::is(*dangerous, foods::Class::minced);
  const std::string what =
      fmt::format("{}: {} is not safe at {} F", recipe.name, dangerous->name, hottest);
  const int safe = dangerous->safe_at->value.fahrenheit;
  const std::string instead = fmt::format("cook it to {} F ({} C)", safe, celsius_up(safe));
  (forbidden ? diagnostics.error(errors::too_cool, last->at, what, instead)
             : diagnostics.warning(errors::too_cool, last->at, what, instead))
      .note(std::nullopt, "FSIS, Safe Minimum Internal Temperature Chart; Food Code 3-401.11");
}

} // namespace manciple::safety
