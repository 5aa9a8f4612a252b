#include "foods/convert.hpp"

#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

namespace manciple::foods {
namespace {

using measure::Dimension;
using measure::print_decimal;
using measure::Unit;

tl::unexpected<NoConversion> no(std::string what, std::string fix) {
  return tl::unexpected(NoConversion{std::move(what), std::move(fix)});
}

std::string grams(const Rational& g) {
  return fmt::format("{} g", print_decimal(g, 2));
}

// Cuts that a kitchen takes for each other where the tables weigh only one of them.
constexpr std::array<std::array<Form, 3>, 3> alike{{
    {Form::chopped, Form::diced, Form::cubed},
    {Form::shredded, Form::grated, Form::shredded},
    {Form::plain, Form::whole, Form::leaves},
}};

std::string known_forms(const Food& food) {
  std::vector<std::string> words;
  for (const VolumeWeight& v : food.volumes) {
    words.emplace_back(name(v.form));
  }
  return text::join(words, ", ");
}

// "1 cup onions" is meant as it goes into a cup: cheese grated, anything else in small pieces.
const VolumeWeight* as_cut_for_a_cup(const Food& food) {
  constexpr std::array pieces{Form::chopped, Form::diced,    Form::cubed,  Form::sliced,
                              Form::florets, Form::shredded, Form::minced, Form::grated};
  constexpr std::array cheese{Form::shredded, Form::grated, Form::crumbled, Form::diced};
  const std::span<const Form> forms =
      food.department == Department::dairy ? std::span<const Form>(cheese) : pieces;
  for (const Form form : forms) {
    if (const VolumeWeight* weight = food.volume(form)) {
      return weight;
    }
  }
  return nullptr;
}

// The weight of a volume of `form`, or of the form that stands for it.
const VolumeWeight* weight_for(const Food& food, Form form, std::vector<ConversionStep>& steps) {
  if (const VolumeWeight* exact = food.volume(form)) {
    return exact;
  }
  const VolumeWeight* stand_in = nullptr;
  for (const auto& group : alike) {
    if (std::find(group.begin(), group.end(), form) != group.end()) {
      for (const Form other : group) {
        stand_in = stand_in == nullptr ? food.volume(other) : stand_in;
      }
    }
  }
  if (stand_in == nullptr && form == Form::plain) {
    stand_in = food.volumes.size() == 1 ? food.volumes.data() : as_cut_for_a_cup(food);
  }
  if (stand_in != nullptr) {
    steps.push_back({fmt::format("{} is weighed as {}", name(form), name(stand_in->form)),
                     "common practice, no source"});
  }
  return stand_in;
}

// What stays of the weight as bought in a form. Only what has a peel, bone or shell to lose must
// have a figure; the rest is used as it comes.
tl::expected<Yield, NoConversion> yield_of(const Food& food, Form form) {
  if (const Yield* own = food.yield(form)) {
    return *own;
  }
  if (form == Form::cooked || form == Form::juice || form == Form::zest || form == Form::yolk ||
      form == Form::white) {
    return no(fmt::format("how much {} comes from '{}' is not known", name(form), food.name),
              fmt::format("add 'yields: {{{}: [NN %, SOURCE]}}' to '{}' in recipes/foods.yaml",
                          name(form), food.name));
  }
  if (const Yield* edible = food.yield(Form::plain)) {
    return *edible;
  }
  const bool trimmed = food.department == Department::produce ||
                       food.department == Department::meat || food.department == Department::fish;
  if (trimmed) {
    return no(fmt::format("how much of '{}' is left after trimming is not known", food.name),
              fmt::format("add 'yields: {{edible: [NN %, SOURCE]}}' to '{}' in recipes/foods.yaml",
                          food.name));
  }
  return Yield{form, 1, {}};
}

// From the weight of a form to the weight as bought.
tl::expected<Purchased, NoConversion> untrimmed(const Food& food, const Rational& of_form,
                                                Form form, std::vector<ConversionStep> steps) {
  const auto yield = yield_of(food, form);
  if (!yield) {
    return tl::unexpected(yield.error());
  }
  const Rational bought = of_form / yield->share;
  if (yield->share != 1) {
    const std::string_view what = yield->form == Form::plain ? "edible" : name(yield->form);
    steps.push_back({fmt::format("{} / {} % {} = {} as bought", grams(of_form),
                                 print_decimal(yield->share * 100, 2), what, grams(bought)),
                     yield->source});
  }
  return Purchased{bought, std::move(steps)};
}

tl::expected<Purchased, NoConversion> from_pieces(const Food& food, const Amount& amount) {
  if (basis(food) == Dimension::count) {
    return Purchased{amount.number, {}};
  }
  const std::string word =
      amount.measure.piece.empty() ? food.count_as.value_or("") : amount.measure.piece;
  const Piece* piece = food.piece(word);
  if (piece == nullptr) {
    std::vector<std::string> known;
    for (const Piece& p : food.pieces) {
      known.push_back(p.name);
    }
    const std::string have =
        known.empty()
            ? fmt::format("add 'pieces: {{{}: [NN g, SOURCE]}}' to '{}' in recipes/foods.yaml",
                          word.empty() ? "each" : word, food.name)
            : fmt::format("'{}' has weights for: {}", food.name, text::join(known, ", "));
    return word.empty()
               ? no(fmt::format("what one '{}' weighs is not known", food.name), have)
               : no(fmt::format("what a {} of '{}' weighs is not known", word, food.name), have);
  }
  const Rational weight = amount.number * piece->grams;
  std::vector<ConversionStep> steps{
      {fmt::format("{} x {} {} = {}{}", measure::print_exact(amount.number), piece->name,
                   grams(piece->grams), grams(weight), piece->as_purchased ? " as bought" : ""),
       piece->source}};
  if (piece->as_purchased) {
    return Purchased{weight, std::move(steps)};
  }
  // A piece in the edible portion: the form that it is cut to afterwards does not change it, save
  // for juice and zest, where the piece is the whole fruit.
  return untrimmed(food, weight, Form::plain, std::move(steps));
}

tl::expected<Purchased, NoConversion> from_volume(const Food& food, const Amount& amount) {
  const measure::Quantity volume{amount.number, amount.measure.unit};
  if (basis(food) == Dimension::volume) {
    return Purchased{measure::in_base(volume), {}};
  }
  std::vector<ConversionStep> steps;
  const VolumeWeight* weight = weight_for(food, amount.form, steps);
  if (weight == nullptr) {
    const std::string fix =
        food.volumes.empty()
            ? fmt::format("weigh a cup and add 'volume: {{{}: [NN g/cup, our scales]}}' to '{}' in "
                          "recipes/foods.yaml",
                          name(amount.form), food.name)
            : fmt::format("'{}' has weights by volume for: {}", food.name, known_forms(food));
    return no(amount.form == Form::plain
                  ? fmt::format("what a volume of '{}' weighs is not known", food.name)
                  : fmt::format("what a volume of '{}', {}, weighs is not known", food.name,
                                name(amount.form)),
              fix);
  }
  const Rational per_ml = weight->grams / measure::facts(weight->unit).factor;
  const Rational of_form = measure::in_base(volume) * per_ml;
  const auto& unit = measure::facts(weight->unit);
  steps.push_back({fmt::format("{} {} at {} g/{} = {}", measure::print(volume), name(weight->form),
                               print_decimal(weight->grams, 2), unit.name, grams(of_form)),
                   weight->source});
  return untrimmed(food, of_form, amount.form, std::move(steps));
}

tl::expected<Purchased, NoConversion> from_mass(const Food& food, const Amount& amount) {
  const measure::Quantity mass{amount.number, amount.measure.unit};
  if (basis(food) != Dimension::mass) {
    return no(
        fmt::format("'{}' is not sold by weight", food.name),
        fmt::format("give it in {}", basis(food) == Dimension::count ? "pieces" : "a volume"));
  }
  const Rational g = measure::in_base(mass);
  std::vector<ConversionStep> steps;
  if (mass.unit != Unit::gram) {
    steps.push_back({fmt::format("{} = {}", measure::print(mass), grams(g)),
                     std::string(measure::facts(mass.unit).source)});
  }
  const bool changed = amount.form == Form::cooked || amount.form == Form::juice ||
                       amount.form == Form::zest || amount.form == Form::drained ||
                       amount.form == Form::yolk || amount.form == Form::white;
  if (!amount.formed_first || amount.form == Form::plain) {
    if (!(changed && amount.form != Form::drained)) {
      return Purchased{g, std::move(steps)};
    }
  }
  return untrimmed(food, g, amount.form, std::move(steps));
}

} // namespace

Dimension basis(const Food& food) {
  if (food.as_written) {
    return *food.as_written;
  }
  if (!food.volumes.empty() || !food.pieces.empty() || !food.yields.empty() ||
      !food.is_household()) {
    return Dimension::mass;
  }
  const auto unit = measure::find_unit(food.shop_in, measure::System::us);
  return unit ? measure::facts(*unit).dimension : Dimension::count;
}

std::optional<Rational> eaten_share(const Food& food, Form form) {
  const auto yield = yield_of(food, form);
  return yield ? std::optional(yield->share) : std::nullopt;
}

tl::expected<Purchased, NoConversion> as_purchased(const Food& food, const Amount& amount) {
  if (amount.taken_from_whole) {
    return as_purchased(food, {amount.number, amount.measure, Form::plain, false});
  }
  if (!amount.measure.piece.empty()) {
    return from_pieces(food, amount);
  }
  switch (measure::facts(amount.measure.unit).dimension) {
  case Dimension::mass:
    return from_mass(food, amount);
  case Dimension::volume:
    return from_volume(food, amount);
  case Dimension::count:
    break;
  }
  Amount pieces = amount;
  pieces.number *= measure::facts(amount.measure.unit).factor;
  return from_pieces(food, pieces);
}

tl::expected<Purchased, NoConversion> measured(const Food& food, const Rational& purchased,
                                               const Measure& wanted, Form form) {
  // The way back is the way there for one of the measure.
  auto one = as_purchased(food, {1, wanted, form, form != Form::plain});
  if (!one) {
    return one;
  }
  const Rational number = purchased / one->amount;
  std::vector<ConversionStep> steps = one->steps;
  if (one->amount == 1) { // grams
    return Purchased{number, std::move(steps)};
  }
  steps.push_back({fmt::format("{} as bought / {} = {}", grams(purchased), grams(one->amount),
                               print_decimal(number, 2)),
                   {}});
  return Purchased{number, std::move(steps)};
}

std::string print(const Amount& amount) {
  std::string out;
  if (!amount.measure.piece.empty()) {
    const std::string& piece = amount.measure.piece;
    out = fmt::format("{} {}", measure::print_exact(amount.number),
                      amount.number > 1 ? text::plural(piece) : piece);
  } else {
    out = measure::print({amount.number, amount.measure.unit});
  }
  if (amount.form != Form::plain) {
    out += fmt::format(", {}", name(amount.form));
  }
  return out;
}

} // namespace manciple::foods
