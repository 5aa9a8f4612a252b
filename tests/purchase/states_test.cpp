#include <gtest/gtest.h>

#include <map>

#include "purchase/dice.hpp"
#include "purchase/states.hpp"

namespace manciple::purchase {
namespace {

TEST(States, AreNumberedAsTheyComeUpAndFoundAgain) {
  for (std::size_t length = 1; length <= 3; ++length) {
    Dice dice(length);
    States states(length);
    for (int round = 0; round < 2; ++round) {
      std::map<std::vector<Amount>, std::size_t> numbers;
      for (int i = 0; i < 2000; ++i) {
        std::vector<Amount> state;
        for (std::size_t k = 0; k < length; ++k)
          state.push_back(dice.pick(0, 20) * 1'000'000);
        const std::size_t number = numbers.try_emplace(state, numbers.size()).first->second;
        EXPECT_EQ(states.add(state), number);
        EXPECT_TRUE(std::equal(state.begin(), state.end(), states.at(number)));
      }
      EXPECT_EQ(states.size(), numbers.size());
      states.clear();
    }
  }
}

} // namespace
} // namespace manciple::purchase
