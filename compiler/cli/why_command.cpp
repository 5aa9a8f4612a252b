// What says why a food is on the list.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "emit/emit.hpp"
#include "purchase/other_offers.hpp"
#include "resolve/by_products.hpp"
#include "text/nearest.hpp"

#include <algorithm>

namespace manciple::cli {
namespace {

struct WhyRequest {
  std::string food;
  std::string plan;
};

int why(const WhyRequest& request) {
  const std::string& name = request.food;
  auto compiled = compile_and_report(request.plan);
  if (!compiled) {
    return bad_input;
  }
  const auto food = compiled->kitchen.foods.find(name);
  const auto& uses = compiled->resolved.uses;
  const purchase::Shopping& shopping = compiled->shopping;
  const auto is_used = [&](const resolve::Use& use) { return use.food == *food; };
  const auto is_bought = [&](const purchase::Line& line) { return line.food == *food; };
  const auto is_taken = [&](const purchase::StockUse& used) {
    return purchase::food_of(compiled->kitchen, used) == *food;
  };
  const bool used =
      food && (std::any_of(uses.begin(), uses.end(), is_used) ||
               std::any_of(shopping.lines.begin(), shopping.lines.end(), is_bought) ||
               std::any_of(shopping.from_stock.begin(), shopping.from_stock.end(), is_taken));
  const auto gives = [&](const resolve::ByProduct& one) {
    const auto& given = resolve::given_as(compiled->kitchen, compiled->resolved, one);
    return food && given.what.target == kitchen::Target(*food);
  };
  const auto& given = compiled->resolved.by_products;
  if (!used && std::none_of(given.begin(), given.end(), gives)) {
    std::vector<std::string_view> names;
    for (const resolve::Use& use : uses) {
      names.push_back(compiled->kitchen.food(use.food).name);
    }
    complain_of_name("the plan does not use", name,
                     text::did_you_mean(foods::normal_name(name), names));
    return bad_input;
  }
  const auto other_ways = purchase::other_offers(compiled->kitchen, shopping, *food);
  say(std::string_view(emit::why_text(*compiled, *food, other_ways)));
  return good;
}

} // namespace

void add_why(CommandLine& to) {
  auto [command, asked] = to.add<WhyRequest>(
      "why",
      "why a food is on the list: what is bought, and what each part of it is for, down to the "
      "meals",
      why);
  command.add_option("FOOD", asked.food, "a food")->required();
  take_plan(command, asked.plan);
}

} // namespace manciple::cli
