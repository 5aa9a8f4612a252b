#include "foods/spoken.hpp"

#include "foods/convert.hpp"
#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::foods {

using measure::Dimension;
using measure::print_decimal;
using measure::Unit;

namespace {

/// Last words of what comes by the many, whatever it is measured in. English, in order.
constexpr std::array<std::string_view, 107> by_the_many{
    "almond",     "apricot", "bag",         "ball",       "balloon", "bandage",    "battery",
    "bean",       "beet",    "berry",       "blackberry", "blade",   "blueberry",  "bowl",
    "burger",     "candle",  "caper",       "cashew",     "cherry",  "chestnut",   "chickpea",
    "chip",       "chive",   "chunk",       "cloth",      "condom",  "container",  "cracker",
    "cranberry",  "crouton", "crumb",       "cup",        "currant", "diaper",     "dishcloth",
    "envelope",   "filter",  "firelighter", "flake",      "flower",  "fork",       "glove",
    "groat",      "hanger",  "hazelnut",    "heart",      "jar",     "knife",      "label",
    "lentil",     "lid",     "light",       "liner",      "lozenge", "mask",       "match",
    "napkin",     "nappy",   "noodle",      "nut",        "oat",     "olive",      "pad",
    "pea",        "peach",   "peanut",      "pecan",      "peg",     "pen",        "pencil",
    "peppercorn", "pickle",  "pistachio",   "plaster",    "plate",   "pod",        "pretzel",
    "puff",       "raisin",  "raspberry",   "razor",      "rib",     "rind",       "sardine",
    "seed",       "segment", "sheet",       "shoot",      "skewer",  "sparerib",   "sponge",
    "spoon",      "sprout",  "stamp",       "steak",      "straw",   "strawberry", "swab",
    "tampon",     "tissue",  "tomato",      "toothpick",  "towel",   "vegetable",  "wafer",
    "walnut",     "wipe"};
static_assert(std::is_sorted(by_the_many.begin(), by_the_many.end()));

bool comes_by_the_many(const Food& food) {
  const std::string_view name = food.name;
  return std::binary_search(by_the_many.begin(), by_the_many.end(),
                            name.substr(name.rfind(' ') + 1));
}

// What comes in cartons is sold by the litre outside the US, where broth is not sold in cans.
// Common practice, no source.
bool is_poured(const Food& food, measure::System system) {
  return system != measure::System::us && food.count_as == "carton" &&
         food.volume(Form::plain) != nullptr;
}

} // namespace

PriceUnit price_unit(const Food& food, measure::System system) {
  if (basis(food) != Dimension::mass) {
    return {" each", 1};
  }
  const bool us = system == measure::System::us;
  const std::string piece = food.count_as.value_or("");
  const bool counted = food.shop_in == "dozen" || food.shop_in == "each";
  if (const auto one = as_purchased(food, {1, {Unit::each, piece}, Form::plain, false});
      counted && counts_itself(food, piece) && one) {
    return {" each", one->amount};
  }
  // Larger ones are sold by weight as often.
  constexpr int small_bunch = 150; // grams
  if (food.shop_in == "head" || food.shop_in == "bunch") {
    const auto one = as_purchased(food, {1, {Unit::each, food.shop_in}, Form::plain, false});
    if (one && one->amount <= small_bunch) {
      return {"/" + food.shop_in, one->amount};
    }
  }
  if (const auto unit = measure::find_unit(food.shop_in, measure::System::us);
      unit && measure::facts(*unit).dimension == Dimension::volume) {
    const Unit poured = us ? *unit : Unit::liter;
    if (const auto one = as_purchased(food, {1, {poured, {}}, Form::plain, false})) {
      return {fmt::format("/{}", measure::facts(poured).name), one->amount};
    }
  }
  return weight_unit(system);
}

PriceUnit weight_unit(measure::System system) {
  const auto& weight = measure::facts(system == measure::System::us ? Unit::pound : Unit::kilogram);
  return {fmt::format("/{}", weight.name), weight.factor};
}

std::string counted_by(const Food& food) {
  return food.piece(food.shop_in) != nullptr ? food.shop_in : food.count_as.value_or("");
}

bool counts_itself(const Food& food, std::string_view word) {
  constexpr std::array<std::string_view, 6> sizes{"small",       "medium", "large",
                                                  "extra large", "jumbo",  "each"};
  return std::find(sizes.begin(), sizes.end(), word) != sizes.end() ||
         fmt::format(" {} ", food.name).find(fmt::format(" {} ", word)) != std::string::npos;
}

std::string customary(const Food& food, const Rational& purchased, measure::Writing writing,
                      int decimals) {
  const Dimension dim = basis(food);
  if (food.as_written && dim == Dimension::count && !food.shop_in.empty()) {
    const std::string number =
        print_decimal(purchased, purchased < 1 ? 1 : decimals, writing.point);
    return fmt::format("{} {}", number, purchased > 1 ? text::plural(food.shop_in) : food.shop_in);
  }
  const auto base_unit = dim == Dimension::mass     ? Unit::gram
                         : dim == Dimension::volume ? Unit::milliliter
                                                    : Unit::each;
  const measure::Quantity base{purchased, base_unit};
  const auto unit = measure::find_unit(food.shop_in, measure::System::us);
  const Dimension wanted = is_poured(food, writing) ? Dimension::volume
                           : unit                   ? measure::facts(*unit).dimension
                                                    : Dimension::count;
  if (dim != Dimension::mass || wanted == Dimension::mass) {
    return measure::print_for_shop(base, writing);
  }
  if (wanted == Dimension::volume) {
    if (const auto one = as_purchased(food, {1, {Unit::milliliter, {}}, Form::plain, false})) {
      return measure::print_for_shop({purchased / one->amount, Unit::milliliter}, writing);
    }
    return measure::print_for_shop(base, writing);
  }
  // Counted: by the piece it is shopped in, else by the one a bare count means. What comes in cans
  // and jars is spoken of by weight, save whole cans.
  const std::string word = counted_by(food);
  const bool in_jars = food.department == Department::canned && word != "can";
  const auto one = as_purchased(food, {1, {Unit::each, word}, Form::plain, false});
  if (word.empty() || in_jars || !one) {
    return measure::print_for_shop(base, writing);
  }
  const Rational count = purchased / one->amount;
  const std::string number =
      print_decimal(count, count < 1 ? std::max(1, decimals) : decimals, writing.point);
  return counts_itself(food, word)
             ? number
             : fmt::format("{} {}", number, count > 1 ? text::plural(word) : word);
}

ShopUnit shop_unit(const Food& food, measure::System system) {
  if (basis(food) == Dimension::count) {
    return {food.as_written && !food.shop_in.empty() ? food.shop_in : "each", 1, false};
  }
  const auto unit = measure::find_unit(food.shop_in, measure::System::us);
  const bool poured = is_poured(food, system);
  const Dimension wanted = poured ? Dimension::volume
                           : unit ? measure::facts(*unit).dimension
                                  : Dimension::count;
  const bool canned =
      !poured && food.department == Department::canned && food.piece("can") != nullptr;
  const std::string word = canned                          ? "can"
                           : food.piece("loaf") != nullptr ? "loaf"
                                                           : counted_by(food);
  const auto one = as_purchased(food, {1, {Unit::each, word}, Form::plain, false});
  const bool in_jars = food.department == Department::canned && !canned;
  if ((canned || wanted == Dimension::count) && !word.empty() && !in_jars && one) {
    return {counts_itself(food, word) ? "each" : word, one->amount, false};
  }
  // A quarter of a pound, a pint or a gallon, else an ounce; 50 g or ml. Common practice, no
  // source.
  const bool us = system == measure::System::us;
  const bool small = !unit || unit == Unit::ounce || unit == Unit::us_fluid_ounce ||
                     unit == Unit::gram || unit == Unit::milliliter;
  if (wanted == Dimension::volume || basis(food) == Dimension::volume) {
    const Rational ml = !us     ? Rational(50)
                        : small ? measure::facts(Unit::us_fluid_ounce).factor
                                : Rational(measure::facts(*unit).factor / 4);
    const auto volume = as_purchased(food, {ml, {Unit::milliliter, {}}, Form::plain, false});
    return {{}, volume ? volume->amount : ml, true};
  }
  const Rational grams = !us     ? Rational(50)
                         : small ? measure::facts(Unit::ounce).factor
                                 : Rational(measure::facts(Unit::pound).factor / 4);
  return {{}, grams, true};
}

std::string name_of(const Food& food, const Rational& purchased) {
  const std::string word = counted_by(food);
  bool several = comes_by_the_many(food);
  if (!word.empty() && counts_itself(food, word)) {
    const auto one = as_purchased(food, {1, {Unit::each, word}, Form::plain, false});
    several = one ? purchased >= one->amount * 2 : several;
  }
  return several ? text::plural(food.name) : food.name;
}

std::string with_name(const Food& food, const Rational& purchased, measure::Writing writing,
                      int decimals) {
  const std::string amount = customary(food, purchased, writing, decimals);
  const bool several =
      !food.as_written && text::is_digit(amount.back()) && amount != "1" && amount.front() != '0';
  if (amount == "1" && basis(food) == Dimension::count) {
    return fmt::format("1 {}", food.name);
  }
  return fmt::format("{} {}", amount, several ? text::plural(food.name) : name_of(food, purchased));
}

bool is_more_than_scraps(const Food& food, const Rational& purchased) {
  constexpr int ounce = 30; // grams or millilitres, rounded
  return purchased >= (basis(food) == measure::Dimension::count ? Rational(1, 2) : Rational(ounce));
}

} // namespace manciple::foods
