#include "foods/book.hpp"
#include "foods/convert.hpp"
#include "foods/spoken.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

using measure::Unit;

TEST(Amounts, AreSaidAsAShopperSaysThem) {
  Book book;
  const auto said = [&](const char* name, const Rational& amount) {
    return with_name(book.get(*book.find(name)), amount, measure::System::us);
  };
  EXPECT_EQ(said("onion", Rational(4535924, 10000)), "1 lb onions");
  EXPECT_EQ(said("cucumber", as_purchased(book.get(*book.find("cucumber")),
                                          {2, {Unit::each, {}}, Form::plain, false})
                                 ->amount),
            "2 cucumbers");
  EXPECT_EQ(said("cucumber", as_purchased(book.get(*book.find("cucumber")),
                                          {Rational(1, 2), {Unit::each, {}}, Form::plain, false})
                                 ->amount),
            "0.5 cucumber");
}

TEST(Amounts, BelowTwoPiecesAndOfWhatIsNotCountedByItselfLeaveTheNameAsItIs) {
  Book book;
  const auto named = [&](const char* name, const Rational& grams) {
    return name_of(book.get(*book.find(name)), grams);
  };
  EXPECT_EQ(named("lime", 100), "lime"); // a lime and a half
  EXPECT_EQ(named("lime", 907), "limes");
  EXPECT_EQ(named("white bread", 567), "white bread"); // many slices, one bread
  EXPECT_EQ(named("ground beef", 900), "ground beef");
  EXPECT_EQ(named("canned whole tomato", 794), "canned whole tomatoes");
  EXPECT_EQ(named("canned white bean", 425), "canned white beans"); // not counted by cans
  EXPECT_EQ(named("dried black bean", 454), "dried black beans");
}

TEST(Amounts, OfPiecesAreToldInTenthsUnlessWholeOnesAreAskedFor) {
  Book book;
  const Food& bread = book.get(*book.find("white bread"));
  const Rational slice =
      as_purchased(bread, {1, {Unit::each, "slice"}, Form::plain, false})->amount;
  EXPECT_EQ(customary(bread, slice * Rational(777, 10), measure::System::us), "77.7 slices");
  EXPECT_EQ(customary(bread, slice * Rational(777, 10), measure::System::us, 0), "78 slices");
  EXPECT_EQ(customary(bread, slice * Rational(4, 10), measure::System::us, 0), "0.4 slice");
}

TEST(Prices, AreComparedByWhatShopsSellAFoodBy) {
  Book book;
  const auto unit = [&](const char* name, measure::System system) {
    return price_unit(book.get(*book.find(name)), system).word;
  };
  EXPECT_EQ(unit("egg", measure::System::us), " each");
  EXPECT_EQ(unit("lemon", measure::System::metric), " each");
  EXPECT_EQ(unit("whole milk", measure::System::us), "/gal");
  EXPECT_EQ(unit("whole milk", measure::System::metric), "/l");
  EXPECT_EQ(unit("garlic", measure::System::us), "/head");
  EXPECT_EQ(unit("broccoli", measure::System::us), "/lb");            // a bunch is often weighed
  EXPECT_EQ(unit("canned chickpea", measure::System::metric), "/kg"); // cans differ in size
  EXPECT_EQ(unit("ground beef", measure::System::us), "/lb");
  const Rational litre =
      price_unit(book.get(*book.find("whole milk")), measure::System::metric).size;
  EXPECT_NEAR(to_double(litre), 1031, 1); // grams
}

} // namespace
} // namespace manciple::foods
