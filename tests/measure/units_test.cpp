#include "measure/at_hand.hpp"
#include "measure/print.hpp"
#include "measure/scan.hpp"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace manciple::measure {
namespace {

Quantity read(std::string_view text, System system = System::us) {
  const auto quantity = parse_quantity(text, system);
  EXPECT_TRUE(quantity) << text;
  return quantity.value_or(Quantity{});
}

TEST(Numbers, AreReadInEveryWayACookWritesThem) {
  for (const auto& [text, value] :
       std::initializer_list<std::pair<const char*, Rational>>{{"3", 3},
                                                               {"2.5", Rational(5, 2)},
                                                               {".5", Rational(1, 2)},
                                                               {"2,5", Rational(5, 2)},
                                                               {"0,125", Rational(1, 8)},
                                                               {"1/2", Rational(1, 2)},
                                                               {"1 1/2", Rational(3, 2)},
                                                               {"\u00BD", Rational(1, 2)},
                                                               {"1\u00BD", Rational(3, 2)},
                                                               {"1 \u00BE", Rational(7, 4)},
                                                               {"\u2153", Rational(1, 3)},
                                                               {"1\u20442", Rational(1, 2)},
                                                               {"half a", Rational(1, 2)},
                                                               {"half an", Rational(1, 2)},
                                                               {"a half", Rational(1, 2)},
                                                               {"one", 1},
                                                               {"Twelve", 12},
                                                               {"08", 8}}) {
    Cursor cursor{text};
    const auto number = scan_number(cursor);
    ASSERT_TRUE(number) << text;
    EXPECT_EQ(*number, value) << text;
    EXPECT_TRUE(cursor.done()) << text;
  }
}

TEST(Numbers, NonsenseIsNone) {
  for (const char* text : {"", "x", "1/0", "-3", "12345678901", "/2", ".", "1,500"}) {
    Cursor cursor{text};
    EXPECT_FALSE(scan_number(cursor)) << text;
    EXPECT_EQ(cursor.at, 0U) << text;
  }
}

TEST(Customs, GiveAWordOfTheHouseItsMeaning) {
  const Customs own(System::metric, {{"el", "tbsp"}, {"bund", "bunch"}, {"löffel", "tbsp"}});
  EXPECT_EQ(find_unit("EL", own), Unit::metric_tablespoon);
  EXPECT_EQ(parse_quantity("1,5 Löffel", own), (Quantity{Rational(3, 2), Unit::metric_tablespoon}));
  EXPECT_EQ(find_unit("Bund", own), std::nullopt);
  EXPECT_EQ(own.meaning("Bund"), "bunch");
  EXPECT_EQ(own.meaning("Kilo"), "kilo");
}

// USDA FSIS gives 165 F as 73.9 C, the FDA Food Code 41 F as 5 C.
TEST(Printing, OfATemperatureIsOnTheSafeSide) {
  EXPECT_EQ(print_at_least(165, System::us), "165 F");
  EXPECT_EQ(print_at_least(165, System::metric), "74 °C");
  EXPECT_EQ(print_at_least(145, System::imperial), "63 °C");
  EXPECT_EQ(print_at_most(41, System::metric), "5 °C");
  EXPECT_EQ(print_at_most(70, System::metric), "21 °C");
}

TEST(Printing, OnTheDialOfAnOvenIsInFives) {
  EXPECT_EQ(print_on_dial(392, System::metric), "200 °C"); // 200 C, as it is kept
  EXPECT_EQ(print_on_dial(350, System::metric), "175 °C");
  EXPECT_EQ(print_on_dial(392, System::us), "390 F");
  EXPECT_EQ(print_on_dial(425, System::us), "425 F");
}

TEST(Ranges, HaveTwoEndsAndNeedAGreaterSecond) {
  for (const char* text : {"1-2", "1 - 2", "1\u20132", "1 to 2"}) {
    Cursor cursor{text};
    const auto range = scan_range(cursor);
    ASSERT_TRUE(range) << text;
    EXPECT_EQ(range->high, 2) << text;
    EXPECT_TRUE(cursor.done()) << text;
  }
  Cursor backwards{"3-2"};
  EXPECT_EQ(scan_range(backwards)->high, 3);
  Cursor adjective{"3-lb"};
  EXPECT_EQ(scan_range(adjective)->high, 3);
  EXPECT_EQ(adjective.rest(), "-lb");
}

TEST(Units, CapitalTIsATablespoonSmallTATeaspoon) {
  EXPECT_EQ(find_unit("T", System::us), Unit::us_tablespoon);
  EXPECT_EQ(find_unit("t", System::us), Unit::us_teaspoon);
  EXPECT_EQ(find_unit("Tbsp.", System::us), Unit::us_tablespoon);
  EXPECT_EQ(find_unit("tablespoons", System::australian), Unit::australian_tablespoon);
  EXPECT_EQ(find_unit("cups", System::metric), Unit::metric_cup);
  EXPECT_EQ(find_unit("pints", System::imperial), Unit::imperial_pint);
  EXPECT_EQ(find_unit("dessertspoons", System::metric), Unit::dessertspoon);
  EXPECT_EQ(facts(Unit::dessertspoon).factor, 10); // ml; common practice, no source
  EXPECT_FALSE(find_unit("cupz", System::us));
}

TEST(Units, WordsOfSeveralPartsAreTakenWhole) {
  EXPECT_EQ(read("8 fl oz"), (Quantity{8, Unit::us_fluid_ounce}));
  EXPECT_EQ(read("2 fluid ounces"), (Quantity{2, Unit::us_fluid_ounce}));
  EXPECT_EQ(read("1 imperial pint"), (Quantity{1, Unit::imperial_pint}));
  EXPECT_EQ(read("2 metric cups"), (Quantity{2, Unit::metric_cup}));
}

TEST(Quantities, PartsInOneDimensionAddUp) {
  EXPECT_EQ(in_base(read("1 lb 4 oz")), in_base(read("20 oz")));
  EXPECT_EQ(in_base(read("8-oz")), in_base(read("1/2 lb")));
  EXPECT_FALSE(parse_quantity("1 lb 2 cups", System::us));
  EXPECT_FALSE(parse_quantity("2 cups rice", System::us));
}

TEST(Quantities, SixteenTablespoonsAreACupExactly) {
  EXPECT_EQ(in_base(read("16 tbsp")), in_base(read("1 cup")));
  EXPECT_EQ(in_base(read("48 tsp")), in_base(read("1 cup")));
  EXPECT_EQ(in_base(read("4 quarts")), in_base(read("1 gal")));
  EXPECT_EQ(in_base(read("1/3 cup")) * 3, in_base(read("1 cup")));
}

class RandomQuantities : public testing::Test {
protected:
  Quantity next() {
    const auto units = all_units();
    const auto& unit = units[dice_() % units.size()];
    return {Rational(static_cast<int>(dice_() % 400) + 1, static_cast<int>(dice_() % 12) + 1),
            unit.unit};
  }
  std::mt19937 dice_{20270301};
};

TEST_F(RandomQuantities, PrintingThenReadingGivesTheSame) {
  for (int i = 0; i < 2000; ++i) {
    const Quantity q = next();
    if (q.unit == Unit::each) {
      continue; // printed as a bare number
    }
    EXPECT_EQ(in_base(read(print(q))), in_base(q)) << print(q);
  }
}

TEST_F(RandomQuantities, GoingThereAndBackIsExact) {
  for (int i = 0; i < 2000; ++i) {
    const Quantity q = next();
    const Quantity other = next();
    if (dimension(q) == dimension(other)) {
      EXPECT_EQ(convert(convert(q, other.unit), q.unit), q);
    }
  }
}

TEST_F(RandomQuantities, TheOrderOfASumNeverShows) {
  for (int i = 0; i < 500; ++i) {
    const Quantity a = next();
    const Quantity b = next();
    const Quantity c = next();
    EXPECT_EQ(in_base(a) + in_base(b) + in_base(c), in_base(c) + in_base(b) + in_base(a));
  }
}

TEST(Printing, ForAKitchenIsWhatASpoonCanMeasure) {
  EXPECT_EQ(print_for_kitchen(read("1.49 cups"), System::us), "1 1/2 cups");
  EXPECT_EQ(print_for_kitchen(read("0.34 cup"), System::us), "1/3 cup");
  EXPECT_EQ(print_for_kitchen(read("5 tsp"), System::us), "1 1/2 tbsp");
  EXPECT_EQ(print_for_kitchen(read("0.26 tsp"), System::us), "1/4 tsp");
  EXPECT_EQ(print_for_kitchen(read("1.9 tsp"), System::us), "2 tsp");
  EXPECT_EQ(print_for_kitchen(read("2.9 tsp"), System::us), "1 tbsp");
  EXPECT_EQ(print_for_kitchen(read("0.2 tsp"), System::us), "1/4 tsp");
  EXPECT_EQ(print_for_kitchen(read("0.1 tsp"), System::us), "1/8 tsp");
  EXPECT_EQ(print_for_kitchen(read("0.05 tsp"), System::us), "a pinch");
  EXPECT_EQ(print_for_kitchen(read("3.9 tbsp"), System::us), "1/4 cup");
  EXPECT_EQ(print_for_kitchen(read("501 g"), System::metric), "501 g");
  EXPECT_EQ(print_for_kitchen(read("3.6 g"), System::metric), "4 g");
  EXPECT_EQ(print_for_kitchen(read("0.3 g"), System::metric), "a pinch");
}

// Eighths of spoons beside other parts are on no ring of spoons; of two that are as near it is the
// smaller one.
TEST(Printing, NoMeasureIsFinerThanAKitchenHas) {
  for (const auto& [exact, said] :
       std::vector<std::pair<std::string, std::string>>{{"3/8 tsp", "1/4 tsp"},
                                                        {"5/8 tsp", "1/2 tsp"},
                                                        {"2/3 tsp", "3/4 tsp"},
                                                        {"1 3/8 tsp", "1 1/4 tsp"},
                                                        {"2 2/3 tsp", "2 3/4 tsp"},
                                                        {"4 tsp", "1 1/2 tbsp"},
                                                        {"5/6 cup", "3/4 cup"},
                                                        {"1 1/6 cups", "1 1/4 cups"}}) {
    EXPECT_EQ(print_for_kitchen(read(exact), System::us), said) << exact;
  }
  const std::set<std::string> spoons{"1/8",   "1/4",   "1/2", "3/4",   "1",     "1 1/4",
                                     "1 1/2", "1 3/4", "2",   "2 1/4", "2 1/2", "2 3/4"};
  const std::set<std::string> cups{"1/4", "1/3", "1/2", "2/3", "3/4", "1"};
  for (int part = 1; part < 240; ++part) {
    const Rational some(part, 80);
    EXPECT_TRUE(spoons.contains(print_exact(by_the_teaspoon(some))) || by_the_teaspoon(some) == 3);
    EXPECT_TRUE(cups.contains(print_exact(by_the_cup(Rational(part, 240)))));
    EXPECT_LE(abs(by_the_teaspoon(some) - some), Rational(1, 8)) << part;
  }
}

TEST(Printing, WhatIsCountedIsCutInHalvesAndWhatIsLargeInQuarters) {
  EXPECT_EQ(by_the_piece(Rational(16, 3), Cut::halves), Rational(11, 2)); // cloves
  EXPECT_EQ(by_the_piece(Rational(1, 6), Cut::halves), Rational(1, 2));
  EXPECT_EQ(by_the_piece(Rational(3, 2), Cut::whole), Rational(1)); // bay leaves
  EXPECT_EQ(by_the_piece(Rational(1, 3), Cut::whole), Rational(1));
  EXPECT_EQ(by_the_piece(Rational(8, 3), Cut::whole), Rational(3));
  EXPECT_EQ(by_the_piece(Rational(5, 4), Cut::halves), Rational(1));
  EXPECT_EQ(by_the_piece(Rational(1, 3), Cut::quarters), Rational(1, 3)); // of a block
  EXPECT_EQ(by_the_piece(Rational(1, 6), Cut::quarters), Rational(1, 4));
  EXPECT_EQ(by_the_piece(Rational(4, 3), Cut::quarters), Rational(5, 4));
  EXPECT_EQ(by_the_piece(Rational(17, 4), Cut::quarters), Rational(4));
}

// What a metric recipe measures by the spoon is said by the spoon, in the spoons of its country.
TEST(Printing, AMetricKitchenHasSpoonsAndAJug) {
  const Quantity spoons{2, Unit::metric_tablespoon};
  EXPECT_EQ(print_for_kitchen(spoons, System::metric), "2 tbsp");
  EXPECT_EQ(print_for_kitchen({Rational(3, 8), Unit::metric_teaspoon}, System::metric), "1/4 tsp");
  EXPECT_EQ(print_for_kitchen({3, Unit::australian_tablespoon}, System::australian), "3 tbsp");
  EXPECT_EQ(print_for_kitchen({125, Unit::milliliter}, System::metric), "125 ml");
  EXPECT_EQ(print_for_kitchen({43, Unit::milliliter}, System::metric), "45 ml");
  EXPECT_EQ(print_for_kitchen({Rational(5, 2), Unit::milliliter}, System::metric), "1/2 tsp");
  EXPECT_EQ(print_for_kitchen({1500, Unit::milliliter}, System::metric), "1.5 l");
  EXPECT_EQ(print_for_kitchen({1170, Unit::milliliter}, System::metric), "1.15 l");
}

TEST(Printing, ForAShopIsWhatAScaleShows) {
  EXPECT_EQ(print_for_shop(read("36.8 oz"), System::us), "2.3 lb");
  EXPECT_EQ(print_for_shop(read("14.5 oz"), System::us), "14.5 oz");
  EXPECT_EQ(print_for_shop(read("1500 g"), System::metric), "1.5 kg");
  EXPECT_EQ(print_for_shop(read("0.04 oz"), System::us), "under 0.1 oz");
  EXPECT_EQ(print_for_shop(read("0.4 g"), System::metric), "under 1 g");
  EXPECT_EQ(print_for_shop({Rational(0), Unit::gram}, System::metric), "0 g");
  EXPECT_EQ(print_for_shop({Rational(5, 2), Unit::each}, System::us),
            "3"); // nobody sells half an onion
}

TEST(Decimals, RoundAHalfUp) {
  EXPECT_EQ(print_fixed(Rational(1, 8), 2), "0.13");
  EXPECT_EQ(print_fixed(Rational(-1, 8), 1), "-0.1");
  EXPECT_EQ(print_decimal(Rational(5, 2), 3), "2.5");
  EXPECT_EQ(print_decimal(Rational(7), 2), "7");
  EXPECT_EQ(floor(Rational(-7, 2)), -4);
  EXPECT_EQ(ceil(Rational(7, 2)), 4);
}

TEST(Rationals, RefuseToDivideByNothing) {
  EXPECT_THROW(Rational(1) / Rational(0), std::overflow_error);
}

} // namespace
} // namespace manciple::measure
