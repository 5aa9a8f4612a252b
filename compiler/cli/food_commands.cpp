// Commands about foods, without a plan.
#include "cli/class_command.hpp"
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/house_here.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "foods/spoken.hpp"
#include "kitchen/kitchen.hpp"
#include "measure/print.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::cli {
namespace {

struct FoodRequest {
  std::string food;
  std::string food_class; ///< instead of a food
};

struct ConvertRequest {
  std::string amount;
  std::string to;
};

struct PricesRequest {
  std::string food; ///< empty: all that are sold
  std::string plan;
};

using foods::Food;
using foods::Form;
using measure::Rational;

class BookNames final : public kitchen::Names {
public:
  explicit BookNames(foods::Book& book) : book_(book) {}
  std::optional<kitchen::Target> find(std::string_view name) override {
    const auto id = book_.find(name);
    return id ? std::optional<kitchen::Target>(*id) : std::nullopt;
  }
  [[nodiscard]] const Food* food(const kitchen::Target& target) const override {
    return &book_.get(std::get<foods::FoodId>(target));
  }
  [[nodiscard]] std::vector<std::string_view> all() const override { return book_.names(); }

private:
  foods::Book& book_;
};

// The reference, and the household's own foods where the command is run in its house: those that
// can be read, with what is wrong with the others.
void read_book(foods::Book& book, text::Sources& sources, text::Diagnostics& diagnostics) {
  if (const auto own = file_here("recipes/foods.yaml", sources, diagnostics)) {
    book.add_household(*own, diagnostics);
  }
  complain(std::string_view(text::render(diagnostics, sources)));
}

// What words of measures mean in the house in which the command is run, and how it prints them. The
// book speaks its words from here on.
measure::Customs customs_here(foods::Book& book) {
  const auto household = household_here();
  if (!household) {
    return {};
  }
  text::Diagnostics unsaid; // a command about a food is not the household's check
  BookNames names(book);
  book.speak(kitchen::system_of(*household));
  return kitchen::read_household(*household, names, unsaid).customs();
}

void row(std::string_view what, const std::string& value, std::string_view source) {
  if (source.empty()) {
    say("  {:<22} {}\n", what, value);
  } else {
    say("  {:<22} {:<24} {}\n", what, value, source);
  }
}

template <typename Class>
std::string words_of(const std::vector<Class>& list) {
  std::vector<std::string> words;
  for (const Class of : list) {
    words.emplace_back(foods::name(of));
  }
  return text::join(words, ", ");
}

void print_keeps(const Food& food) {
  const auto one = [&](std::string_view what, const std::optional<foods::Sourced<int>>& keeps) {
    if (keeps) {
      row(what, text::print_days(keeps->value), keeps->source);
    }
  };
  one("keeps in the pantry", food.keeps.pantry);
  one("keeps in the fridge", food.keeps.fridge);
  one("keeps in the freezer", food.keeps.freezer);
  one("keeps once opened", food.keeps.opened);
  one("keeps once thawed", food.keeps.thawed);
  one("keeps hard", food.keeps.hard);
  if (food.keeps.cut && food.keeps.cut->value == 0) {
    row("is cut", "when it is used", food.keeps.cut->source);
  } else {
    one("keeps once cut", food.keeps.cut);
  }
  one("ripens", food.ripens);
  one("juice and zest, frozen", food.keeps.frozen_juice);
}

void print_roasts(const Food& food, measure::System system) {
  const bool us = system == measure::System::us;
  const measure::UnitFacts& unit =
      measure::facts(us ? measure::Unit::pound : measure::Unit::kilogram);
  const Rational pounds = unit.factor / measure::facts(measure::Unit::pound).factor;
  for (const foods::RoastingTime& time : food.roasts) {
    row(fmt::format("roasts, up to {} {}", measure::print_decimal(time.pounds / pounds, 1),
                    unit.name),
        fmt::format("{} min/{} at {}", measure::print_decimal(time.minutes_a_pound * pounds, 0),
                    unit.name, measure::print_on_dial(time.fahrenheit, system)),
        time.source);
  }
}

void print_food(const Food& food, measure::System system) {
  say("{}\n", food.name);
  if (!food.aliases.empty()) {
    row("also", text::join(food.aliases, ", "), "");
  }
  row("department", std::string(foods::name(food.department)), "");
  for (const foods::VolumeWeight& v : food.volumes) {
    const measure::UnitFacts& unit = measure::facts(v.unit);
    row(foods::name(v.form),
        system == measure::System::us
            ? fmt::format("{} g per {}", measure::print_decimal(v.grams, 3), unit.name)
            : fmt::format("{} g per 100 ml",
                          measure::print_decimal(v.grams / unit.factor * 100, 1)),
        v.source);
  }
  for (const foods::Piece& p : food.pieces) {
    row(fmt::format("1 {}", p.name),
        fmt::format("{} g{}", measure::print_decimal(p.grams, 3),
                    p.as_purchased ? " as bought" : ""),
        p.source);
  }
  for (const foods::Yield& y : food.yields) {
    row(y.form == Form::plain ? "edible" : foods::name(y.form),
        fmt::format("{} % of what is bought", measure::print_decimal(y.share * 100, 2)), y.source);
  }
  print_keeps(food);
  if (food.safe_at) {
    const auto& safe = food.safe_at->value;
    row("safe at",
        fmt::format("{}{}", measure::print_at_least(safe.fahrenheit, system),
                    safe.rest_minutes > 0 ? fmt::format(", rest {} min", safe.rest_minutes) : ""),
        food.safe_at->source);
  }
  print_roasts(food, system);
  if (food.allergens) {
    row("contains",
        food.allergens->contains.empty() ? "none of the listed allergens"
                                         : words_of(food.allergens->contains),
        "");
    if (!food.allergens->check_label.empty()) {
      row("read the label for", words_of(food.allergens->check_label), "");
    }
  } else if (!food.is_household()) {
    row("allergens", "not known", "");
  }
  if (food.classes) {
    row("for diets",
        food.classes->contains.empty() ? "none of the classes that diets ask about"
                                       : words_of(food.classes->contains),
        food.classes->source);
    if (!food.classes->check_label.empty()) {
      row("read the label for", words_of(food.classes->check_label), "");
    }
  } else if (!food.is_household()) {
    row("for diets", "not known: read the label", "");
  }
  if (food.safety) {
    row("for safety",
        food.safety->classes.empty() ? "no food safety class" : words_of(food.safety->classes),
        food.safety->source);
  }
  if (food.nutrients) {
    for (const foods::Nutrient nutrient : foods::all_nutrients()) {
      if (const auto& value = (*food.nutrients)[nutrient]) {
        row(foods::in_words(nutrient),
            fmt::format("{:.6g} {}", *value, foods::facts(nutrient).unit),
            food.usda ? fmt::format("SR28 {}, 100 g edible", *food.usda) : "100 g edible");
      }
    }
  }
}

// "lb", "cups, sliced", "cloves": a unit or a piece, and a form.
std::optional<std::pair<foods::Measure, Form>> read_measure(const Food& food, std::string_view to,
                                                            const measure::Customs& customs) {
  const std::size_t comma = to.find(',');
  const std::string_view word = text::trim(to.substr(0, comma));
  Form form = Form::plain;
  if (comma != std::string_view::npos) {
    const auto read = foods::parse_form(text::trim(to.substr(comma + 1)));
    if (!read) {
      return std::nullopt;
    }
    form = *read;
  }
  if (const auto unit = measure::find_unit(word, customs)) {
    return std::pair(foods::Measure{*unit, {}}, form);
  }
  if (const foods::Piece* piece = food.piece(customs.meaning(word))) {
    return std::pair(foods::Measure{measure::Unit::each, piece->name}, form);
  }
  return std::nullopt;
}

std::string print_measure(const foods::Measure& measure, const Rational& number) {
  if (!measure.piece.empty()) {
    return fmt::format("{} {}", measure::print_decimal(number, 3),
                       number > 1 ? text::plural(measure.piece) : measure.piece);
  }
  const auto& facts = measure::facts(measure.unit);
  const bool whole = (measure.unit == measure::Unit::gram && number >= 10);
  return fmt::format("{} {}", measure::print_decimal(number, whole ? 0 : 3),
                     number > 1 ? facts.plural : facts.name);
}

// "320 g, 356 g as bought": what is eaten of an amount in the measure that is wanted, and what is
// bought for it.
std::string eaten_and_bought(const Food& food, const foods::Amount& amount,
                             const std::pair<foods::Measure, Form>& wanted, const Rational& bought,
                             const foods::Purchased& result) {
  const foods::Measure& measure = wanted.first;
  const bool mass =
      !measure.is_counted() && measure::facts(measure.unit).dimension == measure::Dimension::mass;
  const auto share = foods::eaten_share(food, mass ? amount.form : wanted.second);
  if (foods::basis(food) != measure::Dimension::mass || !share || *share == 1) {
    return print_measure(measure, result.amount);
  }
  const foods::Measure weight = mass ? measure : foods::Measure{measure::Unit::gram, {}};
  const Rational per = measure::facts(weight.unit).factor;
  return fmt::format("{}, {} as bought",
                     print_measure(measure, mass ? Rational(bought * *share / per) : result.amount),
                     print_measure(weight, bought / per));
}

void print_steps(const std::vector<foods::ConversionStep>& steps) {
  for (const foods::ConversionStep& step : steps) {
    say("  {}{}\n", step.what, step.source.empty() ? "" : fmt::format("  [{}]", step.source));
  }
}

int food(const std::string& name) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  foods::Book book;
  read_book(book, sources, diagnostics);
  const measure::Customs customs = customs_here(book);
  auto id = book.find(name);
  if (!id) { // as a recipe may say it: "egg yolk", "chopped onion"
    BookNames names(book);
    text::Diagnostics ignored;
    text::Node line;
    line.kind = text::Node::Kind::scalar;
    line.scalar = name;
    line.span = {sources.add("food", name), 0, static_cast<std::uint32_t>(name.size())};
    const auto read = kitchen::read_line(line, name, 0, customs, names, ignored);
    if (const foods::FoodId* const named = read.size() == 1 ? read.front().food() : nullptr) {
      id = *named;
    }
  }
  if (!id) {
    const std::string near = text::did_you_mean(foods::normal_name(name), book.names());
    complain_of_name("no food is called", name, near);
    return bad_input;
  }
  print_food(book.get(*id), customs.system);
  return good;
}

int food_or_class(const FoodRequest& request) {
  if (request.food.empty() == request.food_class.empty()) {
    throw CLI::ValidationError("food", "name a food, or a class with --class");
  }
  return request.food_class.empty() ? food(request.food) : foods_of_class(request.food_class);
}

int convert(const ConvertRequest& request) {
  const auto& [amount, to] = request;
  text::Sources sources;
  text::Diagnostics diagnostics;
  foods::Book book;
  text::Diagnostics of_book;
  read_book(book, sources, of_book);
  BookNames names(book);
  const measure::Customs customs = customs_here(book);
  text::Node line;
  line.kind = text::Node::Kind::scalar;
  line.scalar = amount;
  const auto file = sources.add("amount", amount);
  line.span = {file, 0, static_cast<std::uint32_t>(amount.size())};
  const auto read = kitchen::read_line(line, amount, 0, customs, names, diagnostics);
  if (read.size() != 1 || !read.front().amount) {
    complain(std::string_view(text::render(diagnostics, sources)));
    if (diagnostics.errors() == 0) {
      complain("manciple: '{}' is not a single amount of a single food\n", amount);
    }
    return bad_input;
  }
  const Food& food = book.get(*read.front().food());
  const auto wanted = read_measure(food, to, customs);
  if (!wanted) {
    complain("manciple: '{}' is not a measure of {}; try '{}' or 'cups, sliced'\n", to, food.name,
             customs.system == measure::System::us ? "lb" : "g");
    return bad_input;
  }
  const auto bought = foods::as_purchased(food, *read.front().amount);
  auto result = foods::measured(food, bought->amount, wanted->first, wanted->second);
  if (!result && wanted->second == foods::Form::plain) {
    // "juice of 2 lemons" in tablespoons is tablespoons of juice.
    result = foods::measured(food, bought->amount, wanted->first, read.front().amount->form);
  }
  if (!result) {
    complain("manciple: {}; {}\n", result.error().what, result.error().fix);
    return bad_input;
  }
  say("{}\n", eaten_and_bought(food, *read.front().amount, *wanted, bought->amount, *result));
  print_steps(bought->steps);
  print_steps(result->steps);
  return good;
}

int prices(const PricesRequest& request) {
  const std::string& name = request.food;
  text::Sources sources;
  text::Diagnostics diagnostics;
  kitchen::Kitchen house = kitchen::read_kitchen(request.plan, sources, diagnostics);
  complain(std::string_view(text::render(diagnostics, sources)));
  if (diagnostics.errors() > 0) {
    return bad_input;
  }
  struct Row {
    std::string food;
    Rational each;
    std::string text;
  };
  std::vector<Row> rows;
  std::optional<foods::FoodId> only = name.empty() ? std::nullopt : house.foods.find(name);
  if (!name.empty() && !only) {
    const std::string near = text::did_you_mean(foods::normal_name(name), house.foods.names());
    complain_of_name("no food is called", name, near);
    return bad_input;
  }
  for (const kitchen::Shop& shop : house.shops) {
    for (const kitchen::Offer& offer : shop.offers) {
      if ((only && offer.food != *only) || !offer.price) {
        continue;
      }
      const Food& food = house.food(offer.food);
      const foods::PriceUnit unit = foods::price_unit(food, house.household.system);
      const foods::PriceUnit weight = foods::weight_unit(house.household.system);
      const auto cost_of = [&](const Rational& size) {
        return Rational(Rational(*offer.price) / offer.steps_per_price / offer.size * size);
      };
      const auto money = [&](const Rational& cents) {
        return house.household.currency.figure(measure::to_int64(measure::round(cents)));
      };
      const Rational each = cost_of(unit.size);
      const foods::Yield* edible = food.yield(Form::plain);
      std::string text = fmt::format("{:>8}{:<7}", money(each), unit.word);
      text += edible != nullptr && edible->share < 1
                  ? fmt::format(" {:>8}{} as eaten", money(cost_of(weight.size) / edible->share),
                                weight.word)
                  : fmt::format("{:21}", "");
      text += fmt::format("  {:<24} {}", shop.name,
                          offer.by_weight ? fmt::format("{}/{}", money(*offer.price), offer.pack)
                                          : fmt::format("{} {}", offer.pack, money(*offer.price)));
      if (offer.sale) {
        text += fmt::format(
            "; {} from {} to {}", house.household.currency.figure(offer.sale->price),
            offer.sale->from ? text::print_date(*offer.sale->from) : "now",
            offer.sale->until ? text::print_date(*offer.sale->until) : "further notice");
      }
      if (offer.deal) {
        text += fmt::format("; {} for {}",
                            measure::print_exact(offer.deal->packs / offer.steps_per_price),
                            house.household.currency.figure(offer.deal->price));
      }
      rows.push_back({food.name, each, std::move(text)});
    }
  }
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
    return std::tie(a.food, a.each) < std::tie(b.food, b.each);
  });
  std::string last;
  for (const Row& r : rows) {
    if (r.food != last) {
      say("{}\n", r.food);
      last = r.food;
    }
    say("  {}\n", r.text);
  }
  if (rows.empty()) {
    complain("manciple: no price list has '{}'\n", name);
    return bad_input;
  }
  return good;
}

} // namespace

void add_food(CommandLine& to) {
  auto [command, asked] = to.add<FoodRequest>(
      "food", "what is known about a food, and from which source; or which foods belong to a class",
      food_or_class);
  command.add_option("FOOD", asked.food, "a food");
  command.add_option(
      "--class", asked.food_class,
      "a class of foods, an allergen or a diet: which foods it concerns, and which labels to read");
}

void add_convert(CommandLine& to) {
  auto [command, asked] = to.add<ConvertRequest>(
      "convert", "an amount of a food in another measure, with each step and its source", convert);
  command
      .add_option("AMOUNT", asked.amount, "for example '2 cups onion, chopped' or '500 g onion'")
      ->required();
  command.add_option("--to", asked.to, "for example 'g', 'lb' or 'cups, sliced'")->required();
}

void add_prices(CommandLine& to) {
  auto [command, asked] = to.add<PricesRequest>(
      "prices",
      "the prices known for a food by piece, measure or weight, as bought, and by weight as eaten, "
      "cheapest first",
      prices);
  command.add_option("FOOD", asked.food, "a food (default: all that are sold)");
  take_plan(command, asked.plan);
}

} // namespace manciple::cli
