#include "emit/day_words.hpp"
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "foods/spoken.hpp"
#include "measure/print.hpp"
#include "resolve/by_products.hpp"

#include <fmt/format.h>

namespace manciple::emit {
namespace {

using measure::Rational;
using resolve::MakingId;

class Tree {
public:
  Tree(const Compiled& compiled, foods::FoodId food,
       const std::vector<purchase::OtherWay>& other_ways)
      : compiled_(compiled), food_(food), other_ways_(other_ways) {}
  std::string run();

private:
  void use(const resolve::Use& use, const Rational& amount, int depth);
  void making(MakingId id, const Rational& amount, int depth);
  void dish(const resolve::DishRef& ref, const Rational& amount, bool leftovers, int depth);
  void in_its_place(const Rational& covered, const foods::Food& by, std::string_view which);
  void line_in_its_place(std::size_t line);
  void lot_in_its_place(std::size_t lot);
  void others();
  void by_products();
  void line(int depth, const Rational& amount, std::string_view what) {
    out_ += fmt::format("{:{}}{:>9}  {}\n", "", depth * 2, amount_of(compiled_, food_, amount, 2),
                        what);
  }

  const Compiled& compiled_;
  foods::FoodId food_;
  const std::vector<purchase::OtherWay>& other_ways_;
  std::string out_;
};

// Of recipes in recipes, so many levels are shown; then the dishes at once.
constexpr int deepest = 8;

void Tree::dish(const resolve::DishRef& ref, const Rational& amount, bool leftovers, int depth) {
  const kitchen::Meal& meal = compiled_.plan().meals[ref.meal];
  line(depth, amount,
       fmt::format("{} {}: {}{}", text::print_day(meal.date), meal.slot,
                   leftovers ? "leftovers of " : "", dish_name(compiled_, meal.dishes[ref.dish])));
}

// "3/4 of the recipe; 0.71 needed".
std::string made_and_needed(const Compiled& compiled, const resolve::Making& made) {
  return how_much(compiled, made) +
         (made.times == made.needed
              ? ""
              : fmt::format("; {} needed", decimal(compiled, made.needed, 2)));
}

// The dishes that a making ends up in, each with its share of the amount.
void Tree::making(MakingId id, const Rational& amount, int depth) {
  const resolve::Making& made = compiled_.resolved.making(id);
  if (depth > deepest) {
    for (const resolve::DishShare& of : compiled_.resolved.shares_of(id)) {
      dish(of.dish, amount * of.share, false, depth);
    }
    return;
  }
  for (const resolve::Consumer& consumer : made.consumers) {
    const Rational share = amount * consumer.times / made.times;
    if (const auto* ref = std::get_if<resolve::DishRef>(&consumer.who)) {
      dish(*ref, share, consumer.leftovers, depth);
    } else {
      const MakingId parent = std::get<MakingId>(consumer.who);
      const resolve::Making& of = compiled_.resolved.making(parent);
      line(depth, share,
           fmt::format("{}, made {}", compiled_.kitchen.recipe(of.recipe).name,
                       text::print_day(of.date)));
      making(parent, share, depth + 1);
    }
  }
  if (!left_of(compiled_, made).empty()) {
    line(depth, amount * made.left() / made.times, "left over");
  }
}

void Tree::use(const resolve::Use& use, const Rational& amount, int depth) {
  const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
  if (of == nullptr) {
    line(depth, amount,
         fmt::format("{}: {}", text::print_day(use.date), purpose_of(compiled_, use)));
    return;
  }
  const resolve::Making& made = compiled_.resolved.making(of->making);
  const kitchen::Recipe& recipe = compiled_.kitchen.recipe(made.recipe);
  line(depth, amount,
       fmt::format("{}, made {} ('{}', {}){}", recipe.name, text::print_day(made.date),
                   recipe.ingredients[of->ingredient].text, made_and_needed(compiled_, made),
                   use.cut_in ? fmt::format(", cut {}", text::print_day(use.date)) : ""));
  making(of->making, amount, depth + 1);
}

std::string Tree::run() {
  const auto& resolved = compiled_.resolved;
  const auto& shopping = compiled_.shopping;
  Rational needed = 0;
  Rational stock = 0;
  Rational bought = 0;
  Rational left = 0;
  for (const resolve::Use& u : resolved.uses) {
    needed += u.food == food_ ? u.amount : Rational(0);
  }
  for (const purchase::StockUse& s : shopping.from_stock) {
    stock += food_of(compiled_.kitchen, s) == food_ ? s.amount : Rational(0);
  }
  for (const purchase::Line& l : shopping.lines) {
    if (l.food == food_) {
      bought += l.amount;
      left += l.kept + l.wasted;
    }
  }
  const foods::Food& food = compiled_.kitchen.food(food_);
  const auto amount = [&](const Rational& a) { return amount_of(compiled_, food_, a, 2); };
  out_ += fmt::format("{}: {} needed, {} of that in the house, {} bought{}\n", food.name,
                      amount(needed), amount(stock), amount(bought),
                      left > 0 ? fmt::format(" ({} left over)", amount(left)) : "");

  for (std::size_t l = 0; l < compiled_.kitchen.on_hand.lots.size(); ++l) {
    const kitchen::StockLot& lot = compiled_.kitchen.on_hand.lots[l];
    if (lot.food() != food_) {
      lot_in_its_place(l);
      continue;
    }
    if (shopping.taken_of_lot(l) == 0) {
      continue;
    }
    out_ += fmt::format("\non hand: {}\n", lot.what.text);
    for (const purchase::StockUse& s : shopping.from_stock) {
      if (s.lot == l) {
        use(resolved.uses[s.use], s.amount, 1);
      }
    }
  }
  by_products();
  for (std::size_t l = 0; l < shopping.lines.size(); ++l) {
    const purchase::Line& bought_line = shopping.lines[l];
    if (bought_line.food != food_) {
      line_in_its_place(l);
      continue;
    }
    const purchase::StopMade& visit = shopping.visits[bought_line.visit];
    out_ +=
        fmt::format("\n{}, {} {}, {}: {} ({})\n", count_of(compiled_, bought_line),
                    compiled_.kitchen.shop(visit.shop).name, text::print_day(visit.date),
                    bought_line.cost ? money(compiled_, *bought_line.cost) : "no price known",
                    amount(bought_line.amount),
                    fmt::format("{} for the plan", amount(bought_line.amount - bought_line.kept -
                                                          bought_line.wasted)));
    for (const purchase::Supply& supply : shopping.supplies) {
      if (supply.line == l) {
        use(resolved.uses[supply.use], supply.amount, 1);
      }
    }
    if (bought_line.kept >= 1) {
      line(1, bought_line.kept, "left at the end, still good");
    }
    if (bought_line.wasted >= 1) {
      line(1, bought_line.wasted, "goes off before it is used");
    }
  }
  others();
  return std::move(out_);
}

// What other dishes leave over of it, and into what that goes.
void Tree::by_products() {
  for (const resolve::ByProduct& one : compiled_.resolved.by_products) {
    const resolve::Making& of = compiled_.resolved.making(one.of);
    const kitchen::Recipe& giver = compiled_.kitchen.recipe(of.recipe);
    const foods::FoodId* food =
        resolve::given_as(compiled_.kitchen, compiled_.resolved, one).what.food();
    if (food == nullptr || *food != food_) {
      continue;
    }
    out_ +=
        fmt::format("\n{} left over from {}, made {}\n", amount_of(compiled_, food_, one.amount, 2),
                    giver.name, text::print_day(one.date));
    for (const resolve::ByProduct::Part& part : one.parts) {
      const resolve::Making& into = compiled_.resolved.making(part.into);
      const kitchen::Recipe& recipe = compiled_.kitchen.recipe(into.recipe);
      line(1, part.amount,
           fmt::format("{}, made {} ('{}', {})", recipe.name, text::print_day(into.date),
                       recipe.ingredients[part.ingredient].text, made_and_needed(compiled_, into)));
      making(part.into, part.amount, 2);
    }
    if (one.left() > 0) {
      line(1, one.left(), "left over");
    }
  }
}

// What another food covers of it.
void Tree::in_its_place(const Rational& covered, const foods::Food& by, std::string_view which) {
  if (covered > 0) {
    out_ += fmt::format("\n{} of it is covered by {} ({})\n",
                        amount_of(compiled_, food_, covered, 2), by.name, which);
  }
}

void Tree::lot_in_its_place(std::size_t lot) {
  Rational covered = 0;
  for (const purchase::StockUse& used : compiled_.shopping.from_stock) {
    if (used.lot == lot && compiled_.resolved.uses[used.use].food == food_) {
      covered += used.covers;
    }
  }
  const kitchen::Ingredient& what = compiled_.kitchen.on_hand.lots[lot].what;
  in_its_place(covered, compiled_.kitchen.food(*what.food()),
               fmt::format("on hand: {}", what.text));
}

void Tree::line_in_its_place(std::size_t line) {
  Rational covered = 0;
  for (const purchase::Supply& supply : compiled_.shopping.supplies) {
    if (supply.line == line && compiled_.resolved.uses[supply.use].food == food_) {
      covered += supply.covers;
    }
  }
  const purchase::Line& bought = compiled_.shopping.lines[line];
  in_its_place(covered, food_of(compiled_, bought), count_of(compiled_, bought));
}

// What the other offers would come to, and why the one with the lowest price a unit may lose.
void Tree::others() {
  if (other_ways_.empty()) {
    return;
  }
  const foods::Food& food = compiled_.kitchen.food(food_);
  out_ += "\nIf it were all bought in one way, with everything else decided again:\n";
  for (const purchase::OtherWay& way : other_ways_) {
    const kitchen::Shop& shop = compiled_.kitchen.shop(way.shop);
    const kitchen::Offer& offer = shop.offers[way.offer];
    std::string what;
    if (!way.more) {
      what = "not possible: it would not keep, or no trip is in time";
    } else if (*way.more == 0) {
      what = way.on_the_list ? "as on the list" : "the same in all";
    } else {
      what =
          fmt::format("{}{} more in all", way.proven ? "" : "about ", money(compiled_, *way.more));
    }
    if (way.more) {
      what += fmt::format(", {} for it", money(compiled_, way.spent));
      if (way.stops_more != 0) {
        what += fmt::format(", stops {} {}", money(compiled_, std::abs(way.stops_more)),
                            way.stops_more > 0 ? "more" : "less");
      }
      if (foods::is_more_than_scraps(food, way.wasted)) {
        what += fmt::format(", {} thrown away", amount_of(compiled_, food_, way.wasted, 2));
      }
    }
    out_ += fmt::format("  {:<24} {:<20} {}\n", shop.name,
                        !offer.price ? "no price known"
                        : offer.by_weight
                            ? fmt::format("{}/{}", figure(compiled_, *offer.price), offer.pack)
                            : fmt::format("{} {}", offer.pack, figure(compiled_, *offer.price)),
                        what);
  }
}

} // namespace

std::string why_text(const Compiled& compiled, foods::FoodId food,
                     const std::vector<purchase::OtherWay>& other_ways) {
  return Tree(compiled, food, other_ways).run();
}

} // namespace manciple::emit
