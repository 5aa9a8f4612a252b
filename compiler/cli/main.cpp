#include "cli/commands.hpp"

#include <CLI/CLI.hpp>

#include <exception>
#include <iostream>

namespace {

// The exit code of a wrong command line.
constexpr int usage = 2;

} // namespace

int main(int argc, char** argv) {
  namespace cli = manciple::cli;
  CLI::App app{"manciple compiles recipes and a month's meal plan into the list to shop from and "
               "the schedule to cook from."};
  app.require_subcommand(1);
  int code = 0;

  std::string plan;
  std::string name;
  std::string second;
  std::vector<std::string> files;
  const auto with_plan = [&](CLI::App* command) {
    command->add_option("--plan", plan, "the plan, for example plans/2027-03.yaml")->required();
  };

  CLI::App* build = app.add_subcommand(
      "build", "compile a plan and write the list, the menu, the schedule and the sums");
  build->add_option("PLAN", plan, "the plan, for example plans/2027-03.yaml")->required();
  build->add_option("--out", second, "the folder to write to (default: out/ and the plan's name)");
  cli::BuildRequest request;
  build
      ->add_option("--search", request.search,
                   "how hard to look for the cheapest list, times the usual (default: 1, a second "
                   "or two at most); what is not proven by then is said with how much it can be")
      ->check(CLI::Range(0.01, 1e6));
  build->add_flag("--strict", request.strict,
                  "write nothing and fail if something on the list is still to be found");
  build->callback([&] {
    request.plan = plan;
    request.out = second;
    code = cli::build(request);
  });

  CLI::App* check =
      app.add_subcommand("check", "read everything, write nothing: the files named, or all plans, "
                                  "recipes and price lists below this folder");
  check->add_option("FILES", files, "plans (compiled), recipes, price lists, the household");
  check->callback([&] { code = cli::check(files); });

  CLI::App* why = app.add_subcommand("why", "why a food is on the list: what is bought, and what "
                                            "each part of it is for, down to the meals");
  why->add_option("FOOD", name, "a food")->required();
  with_plan(why);
  why->callback([&] { code = cli::why(name, plan); });

  CLI::App* food = app.add_subcommand("food", "what is known of a food, and from where");
  food->add_option("FOOD", name, "a food")->required();
  food->callback([&] { code = cli::food(name); });

  CLI::App* convert = app.add_subcommand(
      "convert", "an amount of a food in another measure, with each step and its source");
  convert->add_option("AMOUNT", name, "for example '2 cups onion, chopped' or '3 lb onion'")
      ->required();
  convert->add_option("--to", second, "for example 'lb' or 'cups, sliced'")->required();
  convert->callback([&] { code = cli::convert(name, second); });

  CLI::App* prices = app.add_subcommand(
      "prices",
      "the prices known for a food by the pound or piece, as bought and as eaten, cheapest first");
  prices->add_option("FOOD", name, "a food (default: all that are sold)");
  with_plan(prices);
  prices->callback(
      [&] { code = cli::prices(name.empty() ? std::nullopt : std::optional(name), plan); });

  CLI::App* day =
      app.add_subcommand("day", "one day of a plan: what to shop, thaw, soak, cook and eat");
  day->add_option("DATE", name, "for example 2027-03-09")->required();
  with_plan(day);
  day->callback([&] { code = cli::day(name, plan); });

  CLI::App* prep = app.add_subcommand(
      "prep", "the prep sessions of a plan, with a drawing of who and what is busy when");
  prep->add_option("PLAN", plan, "the plan, for example plans/2027-03.yaml")->required();
  prep->callback([&] { code = cli::prep(plan); });

  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForHelp& e) {
    return app.exit(e);
  } catch (const CLI::ParseError& e) {
    app.exit(e);
    return usage;
  } catch (const std::exception& e) {
    std::cerr << "manciple: a mistake of the program, not of its input: " << e.what() << "\n";
    return 70;
  }
  return code;
}
