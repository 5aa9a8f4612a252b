#include "house.hpp"

#include "cli/commands.hpp"
#include "emit/emit.hpp"

#include <array>

namespace manciple {
namespace {

// There is only penne in the house, which may stand for spaghetti.
class WhyTest : public testing::Test {
protected:
  void SetUp() override {
    house.household("any of these: [{spaghetti: 1, penne: 1}]\n");
    house.recipe("pasta", "7 oz spaghetti");
    house.write("plans/on-hand.yaml", "date: 2027-02-28\non hand: [1 lb penne]\n");
    house.plan("2027-03-10: {dinner: pasta}");
  }
  std::string why(emit::Compiled& compiled, std::string_view name) {
    return emit::why_text(compiled, *compiled.kitchen.foods.find(name), {});
  }

  House house;
};

TEST_F(WhyTest, WhatIsInTheHouseIsToldOfTheFoodThatItIs) {
  emit::Compiled compiled = house.good();
  const std::string spaghetti = why(compiled, "spaghetti");
  EXPECT_NE(spaghetti.find("spaghetti: 7 oz needed, 0 oz of that in the house"), std::string::npos)
      << spaghetti;
  EXPECT_NE(spaghetti.find("7 oz of it is covered by penne (on hand: 1 lb penne)"),
            std::string::npos)
      << spaghetti;
  const std::string penne = why(compiled, "penne");
  EXPECT_NE(penne.find("7 oz of that in the house"), std::string::npos) << penne;
  EXPECT_NE(penne.find("on hand: 1 lb penne"), std::string::npos) << penne;
}

TEST_F(WhyTest, WhatServesTheUseOfAnotherFoodIsUsed) {
  testing::internal::CaptureStdout();
  const std::string plan = house.root() + "/plans/p.yaml";
  const std::array words{"manciple", "why", "penne", "--plan", plan.c_str()};
  const int code = cli::run(static_cast<int>(words.size()), words.data(), "0");
  EXPECT_NE(testing::internal::GetCapturedStdout().find("on hand: 1 lb penne"), std::string::npos);
  EXPECT_EQ(code, 0);
}

TEST_F(WhyTest, TheCookIsToldWhatToTakeInItsPlace) {
  const emit::Compiled compiled = house.good();
  EXPECT_NE(emit::page_html(compiled).find("in place of it: penne"), std::string::npos);
}

} // namespace
} // namespace manciple
