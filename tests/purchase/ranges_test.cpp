#include "purchase/ranges.hpp"

#include "purchase/errors.hpp"

#include <gtest/gtest.h>

namespace manciple::purchase {
namespace {

using measure::Rational;

// A kitchen that wants something besides its meals, and a shop that has it.
class RangesTest : public testing::Test {
protected:
  RangesTest() {
    onion = *kitchen.foods.find("onion");
    kitchen.plan.emplace();
    kitchen.plan->at = {text::FileId{0}, 1, 2};
    kitchen.plan->extra.emplace_back();
    kitchen.plan->extra.front().what.at = wanted_at;
    kitchen.shops.emplace_back();
    kitchen.shops.front().offers.emplace_back();
    offer().food = onion;
    offer().size = 1000;
    offer().price = 100;
    offer().at = offered_at;
    resolved.uses.emplace_back();
    use().food = onion;
    use().amount = 1000;
    use().reason = resolve::OfExtra{0};
  }
  kitchen::Offer& offer() { return kitchen.shops.front().offers.front(); }
  resolve::Use& use() { return resolved.uses.front(); }
  // Where something is said to be too much; nothing where all is well.
  std::optional<text::Span> too_much() {
    text::Diagnostics diagnostics;
    check_ranges(kitchen, resolved, diagnostics);
    EXPECT_LE(diagnostics.all().size(), 1U);
    if (diagnostics.all().empty()) {
      return std::nullopt;
    }
    EXPECT_TRUE(diagnostics.said(errors::too_much));
    return diagnostics.all().front().at;
  }

  static constexpr text::Span wanted_at{text::FileId{0}, 10, 20};
  static constexpr text::Span offered_at{text::FileId{1}, 30, 40};
  kitchen::Kitchen kitchen;
  resolve::Resolved resolved;
  foods::FoodId onion{};
};

TEST_F(RangesTest, AHundredTonsMayBeUsedAndNoGramMore) {
  use().amount = 100'000'000;
  EXPECT_EQ(too_much(), std::nullopt);
  use().amount += Rational(1, 1000);
  EXPECT_EQ(too_much(), wanted_at);
}

TEST_F(RangesTest, ASubstituteCountsForWhatItStandsFor) {
  const foods::FoodId shallot = *kitchen.foods.find("shallot");
  kitchen.household.any_of = {{{{onion, 1}, {shallot, Rational(1, 2)}}}};
  ASSERT_EQ(kitchen.household.in_terms_of(shallot).worth, 2); // half of it does the same
  use().food = shallot;
  use().amount = 50'000'000;
  EXPECT_EQ(too_much(), std::nullopt);
  use().amount += 1;
  EXPECT_EQ(too_much(), wanted_at);
}

TEST_F(RangesTest, PricesAndPacksHaveTheirLines) {
  offer().price = 1'000'000'000;
  offer().size = 100'000'000;
  EXPECT_EQ(too_much(), std::nullopt);
  offer().size += 1;
  EXPECT_EQ(too_much(), offered_at);
  offer().size = 1000;
  *offer().price += 1;
  EXPECT_EQ(too_much(), offered_at);
  offer().price = 100;
  offer().deal = kitchen::Deal{1001, 500};
  EXPECT_EQ(too_much(), offered_at);
}

TEST_F(RangesTest, TheHouseHasRoomForAMillionLitres) {
  kitchen.household.fridge_litres = 1'000'000;
  EXPECT_EQ(too_much(), std::nullopt);
  kitchen.household.freezer_litres = 1'000'001;
  EXPECT_EQ(too_much(), kitchen.plan->at);
}

} // namespace
} // namespace manciple::purchase
