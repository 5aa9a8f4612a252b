#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/say.hpp"
#include "cli/shells.hpp"

#include <CLI/CLI.hpp>

#include <csignal>
#include <exception>
#include <sstream>

namespace {

namespace cli = manciple::cli;

// The commands as they are declared below, for the shells and the manual page.
std::vector<cli::Command> table_of(const CLI::App& app) {
  std::vector<cli::Command> out;
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
    cli::Command one{command->get_name(), command->get_description(), {}};
    for (const CLI::Option* option : command->get_options()) {
      const bool named = !option->get_lnames().empty();
      one.arguments.push_back({named ? "--" + option->get_lnames().front() : option->get_name(),
                               option->get_description(), named,
                               named && option->get_items_expected_max() > 0,
                               option->get_required()});
    }
    out.push_back(std::move(one));
  }
  return out;
}

manciple::text::Date date_of(const std::string& option, const std::string& words,
                             const std::string& example) {
  const auto day = manciple::text::parse_date(words);
  if (!day) {
    throw CLI::ValidationError(option, "'" + words + "' is not a date such as " + example);
  }
  return *day;
}

int run(int argc, char** argv) {
  CLI::App app{"manciple compiles recipes and a month's meal plan into the list to shop from and "
               "the schedule to cook from."};
  app.require_subcommand(1);
  app.set_version_flag("--version", "manciple " MANCIPLE_VERSION);
  int code = 0;

  std::string plan;
  std::string name;
  std::string second;
  std::vector<std::string> files;
  const auto with_plan = [&](CLI::App* command) {
    command->add_option("--plan", plan, "the plan, for example plans/2027-03.yaml")->required();
  };

  CLI::App* begin = app.add_subcommand(
      "new",
      "make a folder with the files of a small household, ready to build and to make your own");
  begin->add_option("FOLDER", name, "the folder to make; it must not exist yet")->required();
  std::string measures = "us";
  begin->add_option("--measures", measures, "us or metric (default: us)")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  std::string from = "2027-01-04";
  begin->add_option("--from", from, "the first day of its plan (default: 2027-01-04)");
  begin->callback([&] {
    code = cli::new_house(name, *manciple::measure::parse_system(measures),
                          date_of("--from", from, "2027-01-04"));
  });

  CLI::App* build = app.add_subcommand(
      "build", "compile a plan and write the list, the menu, the schedule and the sums");
  build->add_option("PLAN", plan, "the plan, for example plans/2027-03.yaml")->required();
  build->add_option("--out", second,
                    "the folder to write to (default: out/ and the plan's name, beside plans/)");
  cli::BuildRequest request;
  build
      ->add_option("--search", request.search,
                   "how hard to search for the cheapest list, as a multiple of the usual effort "
                   "(default: 1; most months take a second, the hardest half a minute); if the "
                   "list is not proven by then, the build says how far off it may be")
      ->check(CLI::Range(0.01, 1e6));
  build->add_flag("--strict", request.strict,
                  "write nothing and fail if something is still to be found or is not known, or if "
                  "what is on hand was counted long before the plan");
  std::string as_of;
  build->add_option("--as-of", as_of,
                    "the day to plan from, for example 2027-03-10; everything before it is done "
                    "(default: as the plan, the last receipt or the last count has it)");
  build->callback([&] {
    if (!as_of.empty()) {
      request.as_of = date_of("--as-of", as_of, "2027-03-10");
    }
    request.plan = plan;
    request.out = second;
    code = cli::build(request);
  });

  CLI::App* compare = app.add_subcommand(
      "compare", "what changed between two results or plans, or between two revisions in git: the "
                 "list, the meals, what is cooked ahead, the days and what is paid");
  cli::CompareRequest two;
  compare
      ->add_option("BEFORE", two.before,
                   "a folder or result.json of a build, or a plan; with --plan, a revision: HEAD~1")
      ->required();
  compare->add_option("AFTER", two.after,
                      "the same (default, with --plan: the files as they are now)");
  compare->add_option("--plan", two.plan,
                      "compare this plan, with everything it needs, in two revisions");
  compare->add_flag("--exit-code", two.exit_code, "end with 1 if something changed");
  compare->callback([&] { code = cli::compare(two); });

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

  CLI::App* food = app.add_subcommand(
      "food",
      "what is known about a food, and from which source; or which foods belong to a class");
  food->add_option("FOOD", name, "a food");
  std::string food_class;
  food->add_option(
      "--class", food_class,
      "a class of foods, an allergen or a diet: which foods it concerns, and which labels to read");
  food->callback([&] {
    if (name.empty() == food_class.empty()) {
      throw CLI::ValidationError("food", "name a food, or a class with --class");
    }
    code = food_class.empty() ? cli::food(name) : cli::foods_of_class(food_class);
  });

  CLI::App* convert = app.add_subcommand(
      "convert", "an amount of a food in another measure, with each step and its source");
  convert->add_option("AMOUNT", name, "for example '2 cups onion, chopped' or '500 g onion'")
      ->required();
  convert->add_option("--to", second, "for example 'g', 'lb' or 'cups, sliced'")->required();
  convert->callback([&] { code = cli::convert(name, second); });

  CLI::App* prices =
      app.add_subcommand("prices", "the prices known for a food by piece, measure or weight, as "
                                   "bought, and by weight as eaten, cheapest first");
  prices->add_option("FOOD", name, "a food (default: all that are sold)");
  with_plan(prices);
  prices->callback(
      [&] { code = cli::prices(name.empty() ? std::nullopt : std::optional(name), plan); });

  CLI::App* day =
      app.add_subcommand("day", "one day of a plan: what to buy, thaw, soak, cook and eat");
  day->add_option("DATE", name, "for example 2027-03-09, '9 mar', 9 or fri")->required();
  with_plan(day);
  day->callback([&] { code = cli::day(name, plan); });

  CLI::App* use_up =
      app.add_subcommand("use-up", "what a plan leaves over, how long it is good and what it is "
                                   "worth; and which recipes in the library use it, best first");
  cli::UseUpRequest left;
  use_up->add_option("PLAN", left.plan, "the plan, for example plans/2027-03.yaml")->required();
  use_up->add_option("--date", left.date,
                     "only what is in the house on a day of the plan, such as '9 mar' (default: "
                     "everything that is left at its end or goes off before then)");
  use_up->add_option("--for", left.food, "only this food");
  use_up->callback([&] { code = cli::use_up(left); });

  bool write = false;
  const auto with_write = [&](CLI::App* command, const std::string& where) {
    command->add_flag("--write", write, "write it " + where + " instead of only showing it");
  };
  CLI::App* receipt = app.add_subcommand(
      "receipt", "the receipts of a shopping day, filled in from the list for you to correct");
  receipt->add_option("DATE", name, "for example 2027-03-06 or '6 mar'")->required();
  with_plan(receipt);
  with_write(receipt, "into plans/receipts");
  receipt->callback([&] { code = cli::receipt(name, plan, write); });

  CLI::App* settle = app.add_subcommand(
      "settle", "compare a receipt with the list, and show what the price list should say now; or "
                "compare a later count with what should have been there");
  settle
      ->add_option(
          "FILE", name,
          "for example plans/receipts/2027-03-06-corner.yaml or plans/on-hand/2027-03-10.yaml")
      ->required();
  settle->add_option("--plan", plan, "the plan (default: the one that the day is in)");
  with_write(settle, "into the price list");
  settle->callback([&] { code = cli::settle(name, plan, write); });

  CLI::App* review = app.add_subcommand(
      "review", "what was spent by shop, department, meal and person, prices over time, what was "
                "thrown away, what each shop saved, and how fast staples were used");
  review->add_option("FILES", files, "plans (default: all plans of the house that have receipts)");
  review->add_flag("--write", write, "also draw it as a page: out/review.html");
  review->callback([&] { code = cli::review(files, write); });

  CLI::App* on_hand = app.add_subcommand(
      "on-hand",
      "what should be in the house on the morning of a day, where it is, and how long it is good");
  on_hand->add_option("--date", name, "the day (default: the day from which the plan continues)");
  with_plan(on_hand);
  with_write(on_hand, "into plans/on-hand");
  on_hand->callback([&] { code = cli::on_hand(name, plan, write); });

  CLI::App* keys = app.add_subcommand(
      "keys", "what a file can say: every key, what values it takes, and what it means");
  keys->add_option("KIND", name,
                   "recipe, foods, household, on-hand, receipt, shop or plan (default: all)");
  std::string examples;
  keys->add_option("--measures", examples,
                   "us or metric: the measures in the examples (default: those of this house)")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  keys->callback([&] { code = cli::keys(name, examples); });

  CLI::App* schema = app.add_subcommand(
      "schema", "the JSON Schema for a kind of file, for editors that check YAML with it");
  schema->add_option("KIND", name, "recipe, foods, household, on-hand, receipt, shop or plan")
      ->required();
  schema->callback([&] { code = cli::schema(name); });

  CLI::App* prep = app.add_subcommand(
      "prep", "the prep sessions of a plan, with a chart of who and what is busy when");
  prep->add_option("PLAN", plan, "the plan, for example plans/2027-03.yaml")->required();
  prep->callback([&] { code = cli::prep(plan); });

  CLI::App* completion = app.add_subcommand(
      "completion", "a script that completes the command line, for bash, zsh or fish");
  completion->add_option("SHELL", name, "bash, zsh or fish")
      ->required()
      ->check(CLI::IsMember({"bash", "zsh", "fish"}).description(""));
  completion->callback([&] { cli::say(std::string_view(cli::completion(table_of(app), name))); });

  CLI::App* manual = app.add_subcommand("manual", "the manual page, for man(1)");
  manual->callback(
      [&] { cli::say(std::string_view(cli::manual(table_of(app), MANCIPLE_VERSION))); });

  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& e) { // --help, --version
    std::ostringstream said;
    app.exit(e, said, said);
    cli::say(std::string_view(said.str()));
    return cli::good;
  } catch (const CLI::ParseError& e) {
    std::ostringstream said;
    app.exit(e, said, said);
    cli::complain(std::string_view(said.str()));
    return cli::bad_usage;
  } catch (const std::exception& e) {
    cli::complain("manciple: internal error, not a mistake in your files: {}\n", e.what());
    return cli::own_fault;
  }
  return code;
}

} // namespace

int main(int argc, char** argv) {
  // A reader that has gone is an error of writing, not an end without a word.
  (void)std::signal(SIGPIPE, SIG_IGN);
  return cli::finish(run(argc, argv));
}
