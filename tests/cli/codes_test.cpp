// Every number that a diagnostic can have is provoked by a house that makes just that mistake: the
// numbers are those that the phases list in their errors.hpp.

#include "house.hpp"
#include "safety/corpus.hpp"

#include <functional>
#include <map>
#include <regex>
#include <set>

namespace manciple {
namespace {

namespace fs = std::filesystem;

using Spoil = std::function<void(House&)>;

// Writes a file of the house.
Spoil file(std::string path, std::string text) {
  return [path, text](House& house) { house.write(path, text); };
}

// A recipe with that line.
Spoil line(std::string ingredient) {
  return [ingredient](House& house) { house.recipe("stew", "\"" + ingredient + "\""); };
}

// A plan with those meals and more.
Spoil plan(std::string meals, std::string further = {}) {
  return [meals, further](House& house) { house.plan(meals, further); };
}

// Food of one's own, half a pound of which is eaten on a day between two trips.
Spoil own_food(std::string record, std::string offer = "1.00/lb", std::string what = "8 oz zorn") {
  return [=](House& house) {
    house.write("recipes/foods.yaml", "zorn: " + record + "\n");
    house.write("plans/stores/corner.yaml",
                "shop: Corner\nprices: {onion: 1.00/lb, zorn: " + offer + "}\n");
    house.recipe("stew", "\"" + what + "\"");
    house.plan("2027-03-04: {dinner: stew}");
  };
}

const std::map<std::string, Spoil>& spoilt() {
  static const std::map<std::string, Spoil> all{
      {"T001", [](House& house) { fs::remove(house.root() + "/plans/p.yaml"); }},
      {"T002", [](House& house) { fs::resize_file(house.root() + "/plans/p.yaml", 50'000'000); }},
      {"T003", file("recipes/stew.yaml", "a: [1, 2")},
      {"T004", file("recipes/stew.yaml", "")},
      {"T005", file("recipes/stew.yaml", "name: Stew\nname: Soup\nserves: 2\ningredients: []\n")},
      {"T006", plan("", "extras: []\n")},
      {"T007", file("recipes/stew.yaml", "name: Stew\nserves: 2\n")},
      {"T008", file("recipes/stew.yaml", "name: [Stew]\nserves: 2\ningredients: [1 lb onion]\n")},
      {"T010", file("recipes/stew.yaml", "name: &a Stew\nserves: 2\ningredients: [1 lb onion]\n")},
      {"T011", file("recipes/stew.yaml", "name: \xff\nserves: 2\ningredients: [1 lb onion]\n")},
      {"T012", file("plans/stores/corner.yaml",
                    "shop: Corner\nprices: {onion: [500 g 2,49, 1 kg 3.99]}\n")},
      {"F001", file("recipes/foods.yaml", "onion: {volume: {diced: heavy}}\n")},
      {"F002", file("recipes/foods.yaml", "onion: {volume: {squashed: [160 g/cup, mine]}}\n")},
      {"F003", file("recipes/foods.yaml", "zorn: {department: produce, aliases: [zirn]}\n"
                                          "zirn: {department: produce}\n")},
      {"F004", file("recipes/foods.yaml", "zorn: {stored: pantry}\n")},
      {"K001", line("1 lb onoin")},
      {"K002", plan("2027-03-02: {dinner: stwe}")},
      {"K003", file("plans/on-hand.yaml", "date: 2027-02-28\non hand: [onions]\n")},
      {"K004", line("1 lb onion, dicced")},
      {"K005", plan("2027-03-02: {dinner: stew}, every Fryday: {dinner: stew}")},
      {"K006", plan("2027-03-02: {dinner: {dish: stew, eaten by: [Zoe]}}")},
      {"K007",
       [](House& house) { house.plan_with_trip("2027-03-02: {dinner: stew}", "[cornre]"); }},
      {"K008", plan("2027-04-02: {dinner: stew}")},
      {"K009", line("1 cup freezer bag")},
      {"K010", file("plans/stores/corner.yaml", "shop: Corner\nprices: {onion: cheap}\n")},
      {"K011", plan("2027-03-02: {diner: stew}")},
      {"K012",
       [](House& house) {
         house.recipe("stew", "1 lb onion", "method: [{do: Bake, hands on: 5 min, on: kiln}]\n");
       }},
      {"K013", file("plans/stores/corner.yaml",
                    "shop: Corner\nprices: {onion: {offer: 1.00/lb, from: 2027-03-09, until: "
                    "2027-03-02}}\n")},
      {"K014", file("plans/on-hand.yaml", "date: 2027-02-28\non hand: [\"1 lb ground beef, fridge, "
                                          "use by 2027-03-20\"]\n")},
      {"K015",
       [](House& house) {
         fs::remove(house.root() + "/plans/household.yaml");
         house.plan("2027-03-02: {dinner: stew}");
       }},
      {"K016", line("1 lb zorgle flakes")},
      {"K017",
       file("plans/stores/corner.yaml", "shop: Corner\nopen: [Sat]\nprices: {onion: 1.00/lb}\n")},
      {"K018", file("plans/household.yaml", "people: [{name: Ada, diet: vegatarian}]\n")},
      {"K019", plan("2027-03-02: {dinner: {dish: stew, for: {Ben: tofu instead of egg}}}")},
      {"K020", plan("2027-03-02: {dinner: stew}", "aims: {protein: plenty}\n")},
      {"R001", [](House& house) { house.recipe("stew", "1 cup stew", "makes: 2 cups\n"); }},
      {"R002", plan("2027-03-06: {dinner: leftovers of stew}")},
      {"R003", plan("2027-03-02: {dinner: stew}, 2027-03-30: {dinner: leftovers of stew}")},
      {"R004", [](House& house) { house.household("", "[onion]"); }},
      {"R005",
       [](House& house) {
         house.recipe("stock", "1 lb onion");
         house.recipe("stew", "2 cups stock");
       }},
      {"R006", plan("2027-03-02: {dinner: stew}",
                    "away: [{who: Ada, from: 2027-03-02}, {who: Ben, from: 2027-03-02}]\n")},
      {"R007",
       [](House& house) {
         house.household("", "[egg]");
         house.recipe("stew", "4 oz zorgle flakes");
       }},
      {"R008",
       [](House& house) {
         house.household("", "[milk]");
         house.recipe("stew", "1 lb onion, 1 leftover pea");
         house.recipe("roast", "1 lb onion, 1 cup whole milk",
                      "keeps: {fridge: 4 days}\ngives: 1 leftover pea\n");
         house.plan("2027-03-01: {dinner: {dish: roast, eaten by: [Ada]}}, 2027-03-02: {dinner: "
                    "stew}");
       }},
      {"N001", plan("2027-03-02: {dinner: stew}", "aims: {protein: at least 30 g a dinner}\n")},
      {"K021", file("plans/on-hand.yaml", "date: 2027-02-01\non hand: [1 lb onions]\n")},
      {"B001", plan("2027-03-02: {dinner: stew}", "as of: 2027-03-05\n")},
      {"B002",
       [](House& house) {
         house.plan("2027-03-02: {dinner: stew}", "as of: 2027-03-05\n");
         house.write("plans/receipts/2027-03-01-corner.yaml", "shop: corner\nlines: []\n");
       }},
      {"P001",
       [](House& house) {
         house.write("plans/stores/corner.yaml",
                     "shop: Corner\nwalk: [produce]\nprices: {onion: 1.00/lb}\n");
         house.recipe("stew", "1 lb salmon fillet");
       }},
      {"P002",
       [](House& house) {
         house.write("plans/p.yaml",
                     "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {2027-03-02: {dinner: "
                     "stew}}\ntrips: [{date: 2027-03-20, stops: [corner]}]\n");
       }},
      {"P003", own_food("{department: fish, stored: fridge, keeps: {fridge: [1 days, mine]}}")},
      {"P004",
       own_food("{department: fish, stored: fridge, freezes: well, keeps: {fridge: [1 days, "
                "mine], freezer: [90 days, mine]}}",
                "1.00/lb", "8 oz zorn, fresh")},
      {"P005", own_food("{department: canned, stored: pantry, keeps: {pantry: [200 days, mine]}}",
                        "{offer: 4 oz can 1.00, limit: 1}")},
      {"P006",
       [](House& house) {
         house.household("storage: {fridge: 1 ml}\n");
         own_food("{department: dairy, stored: fridge, keeps: {fridge: [20 days, mine]}}")(house);
       }},
      {"P007", own_food("{department: canned, stored: pantry}")},
      {"P008", plan("2027-03-02: {dinner: stew}", "budget: 0.10\n")},
      {"P010", line("999999 lb onion")},
      {"P011",
       [](House& house) {
         own_food("{department: fish, stored: fridge, keeps: {fridge: [2 days, mine]}}")(house);
         house.plan("2027-03-02: {dinner: stew}, 2027-03-07: {dinner: stew}");
       }},
      {"P012",
       [](House& house) {
         house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {parsley: bunch 1.60}\n");
         house.recipe("stew", "1 tbsp chopped parsley");
         house.plan("2027-03-02: {dinner: stew}");
       }},
      {"H021",
       [](House& house) {
         house.write("plans/household.yaml", "people: [{name: Mia, age: 8 months}]\n"
                                             "meals: {dinner: \"18:30\"}\n");
         house.recipe("stew", "1 lb onion, 1 tbsp honey");
       }},
      {"H022",
       [](House& house) {
         house.write("plans/household.yaml", "people: [{name: Ada, pregnant: yes}]\n"
                                             "meals: {dinner: \"18:30\"}\n");
         house.recipe("stew", "1 lb onion, 1 lb swordfish steak");
       }},
      {"P013",
       [](House& house) {
         house.household("", "[milk]");
         house.write("plans/stores/corner.yaml",
                     "shop: Corner\nprices: {onion: 1.00/lb, french bread: {offer: loaf 2.99, "
                     "allergens: {contains: [wheat, milk]}}}\n");
         house.recipe("stew", "1 loaf french bread");
       }},
      {"S003",
       [](House& house) {
         house.write("plans/household.yaml", "people: [{name: Ada}]\nmeals: {dinner: {at: "
                                             "\"18:30\", packed: every day}}\n");
         house.recipe("stew", "1 lb onion",
                      "method: [{do: Simmer, hands on: 10 min, on: burner}]\n");
       }},
      {"S004",
       [](House& house) {
         house.household("cooks: [{who: Ada, from: \"18:00\"}]\n");
         house.recipe("stew", "1 lb onion",
                      "method: [{do: Simmer, hands on: 5 min, then: 1 h, on: burner}]\n");
         house.plan("2027-03-02: {dinner: stew}"); // at 18:30
       }},
      {"S002",
       [](House& house) {
         const std::string bake = "method: [{do: Bake, hands on: 5 min, then: 55 min, on: oven}]\n";
         house.recipe("stew", "1 lb onion", bake);
         house.recipe("roast", "1 lb onion", bake);
         house.plan("2027-03-02: {dinner: [stew, roast]}");
       }},
      {"S001",
       [](House& house) {
         house.recipe("stock", "1 lb onion",
                      "makes: 4 cups\nkeeps: {fridge: 4 days}\nmethod: [{do: Simmer, hands on: 10 "
                      "min, then: 5 h, on: burner}]\n");
         house.recipe("stew", "2 cups stock");
         house.plan("2027-03-08: {dinner: stew}",
                    "prep: [{date: 2027-03-07, from: \"14:00\", until: \"15:00\"}]\n");
       }},
  };
  return all;
}

// A house without fault: a stew of onions for two.
void furnish(House& house) {
  house.recipe("stew", "1 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
}

std::set<std::string> listed() {
  std::set<std::string> out;
  const std::regex code("Code \\w+\\{\"([A-Z]\\d{3})\"\\}");
  for (const auto& phase : fs::directory_iterator(fs::path(MANCIPLE_SOURCE) / "compiler")) {
    std::ifstream in(phase.path() / "errors.hpp");
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    for (std::sregex_iterator found(text.begin(), text.end(), code), end; found != end; ++found) {
      EXPECT_TRUE(out.insert((*found)[1]).second) << (*found)[1] << " stands for two things";
    }
  }
  return out;
}

// Of the dangers in recipes there is a corpus: the first case of each code.
std::map<std::string, Spoil> spoilt_and_dangerous() {
  std::map<std::string, Spoil> out = spoilt();
  for (const safety::Case& one : safety::dangerous) {
    out.try_emplace(std::string(one.code), [one](House& house) {
      house.household("", "[]", "{burner: 4, oven: 1, slow cooker: 1, grill: 1}");
      house.recipe("stew", std::string(one.ingredients), std::string(one.further) + "\n");
    });
  }
  return out;
}

TEST(Codes, AreProvokedByTheirMistakeAndNotWithoutIt) {
  House good;
  furnish(good);
  EXPECT_TRUE(good.good().shopping.proven());
  EXPECT_TRUE(good.diagnostics.all().empty()) << good.said();
  for (const auto& [code, spoil] : spoilt_and_dangerous()) {
    House house;
    furnish(house);
    spoil(house);
    (void)house.compile();
    EXPECT_TRUE(house.said(code)) << code << " is not said, but:\n" << house.said();
  }
}

// The search ends before its time when it may do no work.
TEST(Codes, ForWhatIsNotProvenIsSaidWhenTheSearchIsStopped) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  purchase::Search search;
  search.stop = [] { return true; };
  const std::string demo = std::string(MANCIPLE_SOURCE) + "/plans/2027-03.yaml";
  ASSERT_TRUE(cli::compile(demo, sources, diagnostics, search));
  EXPECT_NE(render(diagnostics, sources).find("[P009]"), std::string::npos);
}

TEST(Codes, ForWhatIsInTheHouseOnADayThatNoPlanReaches) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const std::string demo = std::string(MANCIPLE_SOURCE) + "/plans/2027-03.yaml";
  EXPECT_FALSE(cli::done_until(demo, text::parse_date("2027-05-01"), sources, diagnostics));
  EXPECT_NE(render(diagnostics, sources).find("[B003]"), std::string::npos);
}

TEST(Codes, ThatThePhasesListAreAllProvoked) {
  std::set<std::string> provoked{"B003", "P009"}; // above
  for (const auto& [code, spoil] : spoilt_and_dangerous()) {
    provoked.insert(code);
  }
  EXPECT_EQ(provoked, listed());
}

} // namespace
} // namespace manciple
