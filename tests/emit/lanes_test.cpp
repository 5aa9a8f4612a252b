#include "emit/lanes.hpp"

#include <gtest/gtest.h>

namespace manciple::emit {
namespace {

// A session of two, in a house with two burners and an oven.
class LanesTest : public testing::Test {
protected:
  LanesTest() {
    compiled.kitchen.plan.emplace().sessions.resize(1);
    window().cooks = 2;
    compiled.kitchen.household.appliances = {{"burner", 2}, {"oven", 1}};
  }
  kitchen::Session& window() { return compiled.kitchen.plan->sessions.front(); }
  void task(int start, int hands_on, int then, const std::string& on,
            std::optional<std::size_t> cook = {}) {
    prep::Task& made = session.tasks.emplace_back();
    made.start = start;
    made.hands_on = hands_on;
    made.then = then;
    made.appliance = on;
    made.cook = cook;
  }
  // As "cook 1: 0-5 8-10".
  std::vector<std::string> drawn() {
    std::vector<std::string> out;
    for (const Lane& lane : lanes(compiled, session)) {
      out.push_back(lane.name + ":");
      for (const Block& block : lane.blocks) {
        out.back() += " " + std::to_string(block.start) + "-" + std::to_string(block.end);
      }
    }
    return out;
  }

  using Words = std::vector<std::string>;
  Compiled compiled;
  prep::SessionPlan session;
};

TEST_F(LanesTest, ACookIsBusyWithHandsAndAnApplianceAlsoAfterwards) {
  window().names = {"Ada"};
  task(0, 5, 30, "oven", 0);
  task(5, 10, 0, "", 1);
  EXPECT_EQ(drawn(), (Words{"Ada: 0-5", "cook 2: 5-15", "oven: 0-35"}));
}

TEST_F(LanesTest, OfEqualAppliancesTheFirstThatIsFreeTakesATask) {
  task(0, 0, 20, "burner");
  task(5, 0, 5, "burner");
  task(10, 0, 20, "burner");
  task(20, 0, 5, "burner");
  EXPECT_EQ(drawn(), (Words{"cook 1:", "cook 2:", "burner 1: 0-20 20-25", "burner 2: 5-10 10-30"}));
}

TEST_F(LanesTest, ATaskOnSeveralPlacesKeepsThemAll) {
  task(0, 0, 20, "burner");
  session.tasks.back().places = 2;
  EXPECT_EQ(drawn(), (Words{"cook 1:", "cook 2:", "burner 1: 0-20", "burner 2: 0-20"}));
  EXPECT_EQ(lanes(compiled, session).back().group, "burner");
}

} // namespace
} // namespace manciple::emit
