// What a shop's file says of prices, and what a till asks for them.
#include "kitchen/kitchen.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

using namespace std::chrono_literals;

struct ShopRead {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Kitchen kitchen;
  explicit ShopRead(const std::string& shop, const std::string& household = {}) {
    text::FilesInMemory files;
    files.texts["plans/household.yaml"] =
        "people: [{name: Ada}]\nmeals: {dinner: \"18:30\"}\n" + household;
    files.texts["plans/stores/corner.yaml"] = shop;
    kitchen = read_everything(".", sources, diagnostics, files);
  }
  [[nodiscard]] const Offer& offer() const { return kitchen.shops.at(0).offers.at(0); }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

constexpr text::Date monday = std::chrono::sys_days{2027y / 3 / 1};
constexpr text::Date sunday = std::chrono::sys_days{2027y / 3 / 7};

ShopRead offering(const std::string& offer, const std::string& household = {}) {
  return ShopRead("shop: Corner\nprices: {garlic: " + offer + "}\n", household);
}

TEST(Prices, AreReadInTheCurrencyOfTheHouse) {
  for (const char* offer : {"\"500 g 2,49\"", "\"500 g 2,49 €\"", "\"500 g € 2,49\"", "500 g 2.49",
                            "\"500 g 2,49 EUR\""}) {
    const ShopRead read = offering(offer, "currency: EUR\n");
    ASSERT_EQ(read.diagnostics.errors(), 0U) << read.said();
    EXPECT_EQ(read.offer().price, 249) << offer;
    EXPECT_EQ(read.offer().pack, "500 g") << offer;
  }
  const ShopRead yen = offering("500 g 298", "currency: JPY\n");
  EXPECT_EQ(yen.offer().price, 298) << yen.said();
  const ShopRead half = offering("500 g 2.98", "currency: JPY\n");
  EXPECT_NE(half.said().find("[K010]"), std::string::npos) << half.said();
}

TEST(Prices, AreReadWithTheWordsOfTheHouse) {
  const ShopRead read = offering("\"1,29/Knolle\"", "words: {Knolle: head}\n");
  ASSERT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_EQ(read.offer().size, offering("1.29/head").offer().size);
  const ShopRead none = offering("1.29/head", "words: {Knolle: heap}\n");
  EXPECT_NE(none.said().find("'heap' is not a measure, a piece or a pack [K005]"),
            std::string::npos)
      << none.said();
}

TEST(Deals, AreTakenAsOftenAsTheyPay) {
  const ShopRead read = offering("{offer: 3.00 each, deal: 2 for 5.00}");
  EXPECT_EQ(read.offer().cost(1, monday), 300);
  EXPECT_EQ(read.offer().cost(2, monday), 500);
  EXPECT_EQ(read.offer().cost(5, monday), 1300);
}

TEST(Deals, DearerThanOneByOneAreLeftAlone) {
  const ShopRead read = offering("{offer: 2.00 each, deal: 2 for 5.00}");
  EXPECT_EQ(read.offer().cost(2, monday), 400);
  EXPECT_EQ(read.offer().cost(3, monday), 600);
}

TEST(Deals, GoAgainstTheSalePriceWhileASaleLasts) {
  const ShopRead dearer =
      offering("{offer: 3.00 each, deal: 2 for 5.00, sale: {price: 2.00, until: 2027-03-03}}");
  EXPECT_EQ(dearer.offer().cost(2, monday), 400);
  EXPECT_EQ(dearer.offer().cost(2, sunday), 500);
  const ShopRead cheaper =
      offering("{offer: 3.00 each, deal: 3 for 5.00, sale: {price: 2.00, until: 2027-03-03}}");
  EXPECT_EQ(cheaper.offer().cost(4, monday), 700);
}

TEST(Deals, ByWeightAreOfTheUnitThatThePriceIsFor) {
  const ShopRead read = offering("{offer: 3.00/lb, deal: 2 for 5.00}");
  EXPECT_EQ(read.offer().cost(10, monday), 300); // tenths of a pound
  EXPECT_EQ(read.offer().cost(20, monday), 500);
  EXPECT_EQ(read.offer().cost(25, monday), 650);
}

// Common practice, no source: what a shop means by one, and what it puts in a pack.
TEST(Offers, OfOneAreOfWhatAShopMeansByOne) {
  const auto grams = [](const std::string& food, const std::string& offer) {
    const ShopRead read("shop: Corner\nprices: {" + food + ": " + offer + "}\n");
    return to_double(read.offer().size);
  };
  EXPECT_GT(grams("garlic", "0.59 each"), 25); // a head, where a recipe counts cloves
  EXPECT_EQ(grams("garlic", "0.59 each"), grams("garlic", "0.59/head"));
  EXPECT_EQ(grams("garlic", "3 pack 1.59"), 3 * grams("garlic", "0.59/head"));
  EXPECT_EQ(grams("garlic", "2 for 1.00"), grams("garlic", "0.59/head"));
  EXPECT_EQ(grams("white bread", "2.49 each"), grams("white bread", "2.49/loaf"));
  EXPECT_EQ(grams("celery", "1.49 each"), grams("celery", "1.49/bunch"));
  EXPECT_EQ(grams("celery", "bunch 1.49"), grams("celery", "1.49/bunch"));
  EXPECT_EQ(grams("romaine lettuce", "1.49 each"), grams("romaine lettuce", "1.49/head"));
  EXPECT_EQ(grams("romaine lettuce", "6 pack 5.99"), 6 * grams("romaine lettuce", "1.49/heart"));
}

TEST(Offers, OfOneMeasureNeedNoNumber) {
  const ShopRead eggs("shop: Corner\nprices: {egg: [dozen 3.00, 12 large 3.00]}\n");
  const auto& offers = eggs.kitchen.shops.at(0).offers;
  ASSERT_EQ(offers.size(), 2U) << eggs.said();
  EXPECT_EQ(offers[0].size, offers[1].size);
  EXPECT_EQ(offers[0].pack, "1 dozen");
  EXPECT_EQ(offering("lb 1.49").offer().size, offering("1 lb 1.49").offer().size);
}

TEST(Offers, OfAPriceAloneAreOfOneOfWhatIsNotWeighed) {
  const ShopRead bread("shop: Corner\nprices: {white bread: 2.79}\n");
  EXPECT_EQ(bread.offer().price, 279);
  EXPECT_EQ(bread.offer().pack, "each");
  const ShopRead beef("shop: Corner\nprices: {ground beef: 5.99}\n");
  EXPECT_NE(beef.said().find("'5.99' is not an offer"), std::string::npos) << beef.said();
}

TEST(Offers, InAPackOfAnySizeAreRefused) {
  EXPECT_NE(offering("bag 1.49").said().find("'bag' is not a pack size"), std::string::npos);
}

TEST(Offers, OfSeveralForAPriceAreThatManyPacks) {
  const ShopRead read = offering("2 for 5.00");
  EXPECT_EQ(read.offer().pack, "each");
  EXPECT_EQ(read.offer().cost(1, monday), 250);
  EXPECT_EQ(read.offer().cost(2, monday), 500);
  const ShopRead one = offering("5.00 each");
  EXPECT_EQ(read.offer().size, one.offer().size);
  // A share that is no whole number of cents is rounded up.
  const ShopRead three = offering("3 for 5.00");
  EXPECT_EQ(three.offer().cost(1, monday), 167);
  EXPECT_EQ(three.offer().cost(3, monday), 500);
}

TEST(Offers, OfSeveralPacksForAPriceKeepThePacksSize) {
  const ShopRead read = offering("8 oz bag 2 for 5.00");
  EXPECT_EQ(read.offer().pack, "8 oz bag");
  EXPECT_EQ(read.offer().cost(2, monday), 500);
  EXPECT_EQ(read.offer().size, offering("8 oz bag 3.00").offer().size);
  EXPECT_EQ(offering("2 lb for 5.00").offer().pack, "2 lb");
  EXPECT_FALSE(offering("2 lb for 5.00").offer().deal);
}

// One food, a pound of which is 453.59237 g (NIST Handbook 44), as price lists write its packs.
TEST(Offers, ArePacksWrittenInAnyUsualWay) {
  const auto butter = [](const std::string& offer) {
    return ShopRead("shop: Corner\nprices:\n  butter: " + offer + "\n");
  };
  const Rational ounce = Rational(45359237, 100000) / 16;
  const ShopRead cans = butter("6 x 15 oz cans 5.99");
  EXPECT_EQ(cans.offer().size, ounce * 90) << cans.said();
  EXPECT_EQ(cans.offer().inside, 6);
  EXPECT_EQ(cans.offer().price, 599);
  EXPECT_EQ(butter("2 x 16 oz boxes $7.50").offer().size, ounce * 32);
  EXPECT_EQ(butter("12 x 1 kg 9.99").offer().size, 12000);
  EXPECT_EQ(butter("500 g 2,49").offer().price, 249);
  EXPECT_EQ(butter("500 g 2,49").offer().size, 500);
  EXPECT_EQ(butter("1/2 lb 2.49").offer().size, ounce * 8);
  EXPECT_EQ(butter("1/2 lb 2.49").offer().price, 249);
  EXPECT_EQ(butter("16 oz box \u20ac2.49").offer().price, 249);
}

// The cans of a pack are opened one by one, its rolls are not.
TEST(Offers, OfSeveralClosedPacksAreOpenedOneByOne) {
  const auto read = [](const std::string& line) {
    return ShopRead("shop: Corner\nprices:\n  " + line + "\n");
  };
  for (const char* line : {"canned chickpeas: 8 pack 7.49", "canned chickpeas: 8 cans 7.49"}) {
    EXPECT_EQ(read(line).offer().inside, 8) << line;
    EXPECT_EQ(read(line).offer().size, 3400) << line;
  }
  EXPECT_EQ(read("hamburger buns: 8 pack 2.79").offer().inside, 1);
  EXPECT_EQ(read("canned chickpeas: 15 oz can 0.99").offer().inside, 1);
}

TEST(Offers, ByWeightAreOfAnyUsualUnit) {
  for (const char* offer : {"19.90/kg", "1.99/100 g", "1,99 / 100 g", "1.99 per 100 g",
                            "9.95 per 500 g", "19.90 per kg"}) {
    const ShopRead read(std::string("shop: Corner\nprices:\n  garlic: ") + offer + "\n");
    ASSERT_EQ(read.kitchen.shops.at(0).offers.size(), 1U) << offer << read.said();
    EXPECT_EQ(read.offer().price, 1990) << offer;
    EXPECT_EQ(read.offer().pack, "kg");
    EXPECT_EQ(read.offer().cost(20, monday), 1990) << offer; // twenty steps of 50 g
  }
  EXPECT_GE(ShopRead("shop: Corner\nprices: {garlic: 1.00/3 oz}\n").diagnostics.errors(), 1U);
}

TEST(Offers, MayHaveNoPrice) {
  for (const char* offer : {"\"8 oz bag ?\"", "8 oz bag", "\"?\"", "[]"}) {
    const ShopRead read = offering(offer);
    ASSERT_EQ(read.kitchen.shops.at(0).offers.size(), 1U) << offer << read.said();
    EXPECT_FALSE(read.offer().price) << offer;
    EXPECT_FALSE(read.offer().cost(1, monday)) << offer;
  }
  EXPECT_EQ(offering("\"8 oz bag ?\"").offer().size, offering("8 oz bag 3.00").offer().size);
  EXPECT_GE(offering("8 oz bag 3.o0").diagnostics.errors(), 1U);
}

TEST(Shops, SayWhenTheyAreOpen) {
  const ShopRead read("open: [Thu, \"Sat-Sun 07:00-13:00\"]\nprices: {}\n");
  const Shop& shop = read.kitchen.shops.at(0);
  constexpr int noon = 12 * text::minutes_an_hour;
  EXPECT_EQ(shop.name, "Corner");
  EXPECT_FALSE(shop.is_open(monday, noon));
  EXPECT_TRUE(shop.is_open(sunday, noon));
  EXPECT_FALSE(shop.is_open(sunday, noon / 2)); // home by six
  for (const char* wrong : {"Sometimes", "Sat 7", "Sat 13:00-07:00", "Mon-Tue-Wed"}) {
    EXPECT_GE(ShopRead(std::string("open: [\"") + wrong + "\"]\n").diagnostics.errors(), 1U)
        << wrong;
  }
}

TEST(Offers, WithTwoDealsAreRefused) {
  EXPECT_NE(offering("{offer: 2 for 5.00, deal: 3 for 6.00}").said().find("two deals"),
            std::string::npos);
}

TEST(Offers, OfNothingAreRefused) {
  for (const char* nothing :
       {"0 lb bag 2.00", "0 large 2.00", "\"0/lb for 2\"", "0 for 5.00", "2.00/0 g", "0 .0oz"}) {
    const ShopRead read = offering(nothing);
    EXPECT_GE(read.diagnostics.errors(), 1U) << nothing;
    EXPECT_NE(read.said().find("corner.yaml:2:"), std::string::npos) << read.said();
  }
}

TEST(Shops, HaveNoShareAboveTheWhole) {
  for (const char* share : {"cash back: 101 %", "tax: {produce: 120 %}", "cash back: -1 %"}) {
    const ShopRead read(std::string("shop: Corner\n") + share + "\nprices: {}\n");
    EXPECT_NE(read.said().find("[K005]"), std::string::npos) << share << read.said();
  }
  EXPECT_EQ(ShopRead("shop: Corner\ncash back: 100 %\nprices: {}\n").diagnostics.errors(), 0U);
}

} // namespace
} // namespace manciple::kitchen
