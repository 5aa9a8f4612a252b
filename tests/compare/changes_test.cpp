#include "compare/changes.hpp"

#include "emit/emit.hpp"
#include "house.hpp"

namespace manciple {
namespace {

using compare::Change;
using compare::Changes;
using compare::Result;

Result result_of(House& house) {
  const auto result = compare::read_result(emit::result_json(house.good()));
  EXPECT_TRUE(result) << (result ? "" : result.error());
  return result.value_or(Result{});
}

// A house of two and a stew, and a result that tests change by hand.
class Comparing : public ::testing::Test {
protected:
  Comparing() {
    house.recipe("stew", "1 lb onion, 1 lb ground beef");
    house.recipe("soup", "2 lb onion");
    house.plan("2027-03-02: {dinner: stew}, 2027-03-05: {dinner: soup}");
    before = result_of(house);
    after = before;
  }
  [[nodiscard]] Changes changes() const { return compare::compare(before, after); }
  [[nodiscard]] std::vector<std::string> said() const {
    std::vector<std::string> out;
    for (const Change& change : changes().all) {
      out.push_back(change.what);
    }
    return out;
  }
  using Said = std::vector<std::string>;
  compare::Line& onions() {
    for (compare::Line& line : after.lines) {
      if (line.food == "onion") {
        return line;
      }
    }
    return after.lines.at(0);
  }

  House house;
  Result before;
  Result after;
};

TEST_F(Comparing, TheSameTwiceHasNoChanges) {
  EXPECT_TRUE(changes().none());
  EXPECT_EQ(compare::print(changes()), "P: $8.00 in all, as before\nNothing changed.\n");
  EXPECT_EQ(compare::print_since_last_build(changes(), "x"),
            "Nothing changed since the last build.\n");
}

TEST_F(Comparing, AnotherDinnerChangesMealListAndMoney) {
  house.plan("2027-03-02: {dinner: soup}, 2027-03-05: {dinner: soup}");
  after = result_of(house);
  EXPECT_EQ(compare::print(changes()), "P: $4.00 in all, $4.00 less\n"
                                       "\nMeals\n"
                                       "  Tue 2 Mar dinner: soup instead of stew\n"
                                       "\nList\n"
                                       "  dropped: 1 lb ground beef, Corner Mon 1 Mar, $5.00\n"
                                       "  more: 15, about 4 lb onions instead of 11, about 3 lb, "
                                       "Corner Mon 1 Mar, $1.00 more\n"
                                       "\nMoney\n"
                                       "  Corner Mon 1 Mar: $4.00 instead of $8.00\n");
}

TEST_F(Comparing, AMealCanBeAddedDroppedAndServeMore) {
  after.meals.pop_back();
  after.meals.at(0).dishes.at(0).servings = 3.5;
  after.meals.at(0).dishes.push_back({"salad", 2, true});
  after.meals.push_back({before.until, "lunch", {{"2 apples", 2, false}}});
  EXPECT_EQ(said(),
            (Said{"Tue 2 Mar dinner: salad as well; stew for 3 1/2 instead of 2",
                  "Fri 5 Mar dinner: nothing now; it was soup", "Wed 31 Mar lunch: 2 apples"}));
}

TEST_F(Comparing, ALineMovesToAnotherDayOrStop) {
  onions().stop.date += std::chrono::days(5);
  EXPECT_EQ(said(),
            (Said{"moved: 11, about 3 lb onions, from Corner Mon 1 Mar to Corner Sat 6 Mar"}));
  onions().stop.shop = "Far";
  onions().cost = 100;
  EXPECT_EQ(said(), (Said{"moved: 11, about 3 lb onions, from Corner Mon 1 Mar to Far Sat 6 Mar, "
                          "$2.00 less"}));
}

TEST_F(Comparing, ALineIsOfAnotherPackOrPrice) {
  onions().pack = onions().count = "5 lb bag";
  onions().cost = 499;
  EXPECT_EQ(said(),
            (Said{"other pack: 5 lb bag onions instead of 11, about 3 lb, Corner Mon 1 Mar, "
                  "$1.99 more"}));
  onions() = *std::find_if(before.lines.begin(), before.lines.end(),
                           [](const auto& line) { return line.food == "onion"; });
  onions().cost = 200;
  EXPECT_EQ(said(),
            (Said{"cheaper: 11, about 3 lb onions, Corner Mon 1 Mar, $2.00 instead of $3.00"}));
  onions().cost = std::nullopt;
  EXPECT_EQ(said(),
            (Said{"price: 11, about 3 lb onions, Corner Mon 1 Mar, its price is no longer known"}));
}

TEST_F(Comparing, TwoLinesOfAFoodArePairedWithThoseThatAreMostLikeThem) {
  before.lines.push_back(onions());
  before.lines.back().stop.date += std::chrono::days(5);
  after.lines.insert(after.lines.begin(), before.lines.back());
  after.lines.front().notes = {"hard"};
  EXPECT_EQ(said(),
            (Said{"note: 11, about 3 lb onions, Corner Sat 6 Mar: hard (before: no note)"}));
}

TEST_F(Comparing, WhatIsStillToFindIsTold) {
  before.to_find = {"okra"};
  after.to_find = {"yam"};
  EXPECT_EQ(said(), (Said{"now still to find: yam", "no longer to find: okra"}));
}

TEST_F(Comparing, WhatIsMadeAheadMovesBetweenSessionsAndDays) {
  const text::Date first = before.from;
  const auto later = first + std::chrono::days(6);
  before.makings = {{"stock", first, true, false, 8},
                    {"dough", first, true, false, 4},
                    {"stew", later, false, true, 4},
                    {"hummus", first, true, false, 20}};
  after.makings = {{"stock", later, true, false, 8},
                   {"dough", first, true, false, 6},
                   {"granola", later, false, false, 1},
                   {"hummus", first, true, false, 20.5}};
  EXPECT_EQ(said(), (Said{"Mon 1 Mar session: dough, 6 servings instead of 4",
                          "Sun 7 Mar: granola, 1 serving",
                          "Sun 7 Mar session: stock, previously on Mon 1 Mar session"}));
}

TEST_F(Comparing, ASessionIsTimedAnew) {
  before.sessions = {{before.from, 780, 100}};
  after.sessions = {{before.from, 780, 125}};
  EXPECT_EQ(said(), (Said{"Mon 1 Mar session: takes 2 h 5 min instead of 1 h 40 min"}));
  after.sessions = {{before.from, 780, 105}};
  EXPECT_TRUE(changes().none());
}

TEST_F(Comparing, WhatIsTakenOutIsAlignedByWhatItIs) {
  const text::Date day = before.from;
  before.reminders = {
      {day, "thaw", "Move 1 lb ground beef from the freezer, for stew on Tue 2 Mar"},
      {day, "soak", "Soak 1 lb beans for soup (Tue 2 Mar)"}};
  after.reminders = {{day, "thaw", "Move 2 lb ground beef from the freezer, for stew on Tue 2 Mar"},
                     {day + std::chrono::days(2), "soak", "Soak 1 lb beans for soup (Thu 4 Mar)"},
                     {day, "use up", "Use up 2 carrots: good until Tue 2 Mar"},
                     {day, "freeze", "Portion 2 rolls"}};
  EXPECT_EQ(
      said(),
      (Said{"Mon 1 Mar: Portion 2 rolls",
            "Mon 1 Mar: Move 2 lb ground beef from the freezer, for stew on Tue 2 Mar (before: "
            "Move 1 lb ground beef from the freezer, for stew on Tue 2 Mar)",
            "Wed 3 Mar instead of Mon 1 Mar: Soak 1 lb beans for soup (Thu 4 Mar)"}));
}

TEST_F(Comparing, BudgetAndStopsAreTold) {
  before.budget = 1000;
  after.budget = 700;
  after.stops.push_back({before.until, "Far", 0});
  EXPECT_EQ(said(), (Said{"Far Wed 31 Mar: an extra stop, $0.00",
                          "Budget: $1.00 over, $2.00 left before"}));
  after.stops.clear();
  after.budget = std::nullopt;
  EXPECT_EQ(said(), (Said{"Corner Mon 1 Mar: no longer a stop, $8.00 before",
                          "Budget: none is set, $2.00 left before"}));
}

TEST_F(Comparing, OfOtherDaysOnlySumsAreCompared) {
  after.from += std::chrono::days(31);
  after.until += std::chrono::days(31);
  after.paid = 900;
  EXPECT_EQ(changes().sum, "$9.00 in all, $1.00 more");
  EXPECT_EQ(said(), (Said{"Thu 1 Apr to Sat 1 May instead of Mon 1 Mar to Wed 31 Mar: the days are "
                          "different, so only totals are compared."}));
}

TEST_F(Comparing, OfAPlanThatIsHalfDoneOnlyTheRestIsCompared) {
  const text::Date first = before.from;
  after.past = compare::Past{first + std::chrono::days(3), 850, {{first, "Corner", 850}}};
  after.from = after.past->until;
  after.paid = 0;
  after.lines.clear();
  after.stops.clear();
  after.meals.erase(after.meals.begin()); // the one of the second day
  EXPECT_EQ(changes().sum, "$8.50 in all, $0.50 more");
  EXPECT_EQ(
      said(),
      (Said{"Bought since the earlier result, until Thu 4 Mar: $8.50 paid, the list said $8.00"}));
  before = after;
  EXPECT_TRUE(changes().none());
}

TEST_F(Comparing, AStopWithAReceiptIsDoneAlsoOnTheDayFromWhichIsPlanned) {
  after.past = compare::Past{before.from, 800, {{before.from, "Corner", 800}}};
  after.paid = 0;
  after.lines.clear();
  after.stops.clear();
  EXPECT_TRUE(changes().none()) << compare::print(changes());
}

TEST_F(Comparing, MoneyIsWrittenAsTheHouseWritesIt) {
  house.household("currency: EUR\n");
  before = after = result_of(house);
  onions().cost = 400;
  EXPECT_EQ(said(), (Said{"dearer: 11, about 3 lb onions, Corner Mon 1 Mar, 4,00\u00a0€ instead of "
                          "3,00\u00a0€"}));
  after.currency.sign = "kr";
  EXPECT_EQ(said().size(), 1U);
}

TEST_F(Comparing, ABuildEndsWithAFewLines) {
  for (int i = 1; i <= 9; ++i) {
    after.stops.push_back({before.until, "Far " + std::to_string(i), 0});
  }
  const std::string said = compare::print_since_last_build(changes(), "look");
  EXPECT_EQ(std::count(said.begin(), said.end(), '\n'), 7);
  EXPECT_TRUE(said.ends_with("  and 4 more; since the last commit: look\n")) << said;
}

} // namespace
} // namespace manciple
