#include "kitchen/currency.hpp"

#include "emit/emit.hpp"
#include "house.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

TEST(Currency, IsWrittenAsItUsuallyIs) {
  // ISO 4217 for the digits; sign, place and point as in the Unicode CLDR, from memory.
  EXPECT_EQ(currency_called("USD").print(1250), "$12.50");
  EXPECT_EQ(currency_called("EUR").print(1250), "12,50\u00a0€");
  EXPECT_EQ(currency_called("GBP").print(5), "£0.05");
  EXPECT_EQ(currency_called("CHF").print(1250), "CHF\u00a012.50");
  EXPECT_EQ(currency_called("SEK").print(1250), "12,50\u00a0kr");
  EXPECT_EQ(currency_called("JPY").print(1250), "¥1250");
  EXPECT_EQ(currency_called("KWD").print(1250), "KWD\u00a01.250");
}

TEST(Currency, PutsTheMinusBeforeTheSign) {
  EXPECT_EQ(currency_called("EUR").print(-249), "-2,49\u00a0€");
  EXPECT_EQ(currency_called("USD").print(-249), "-$2.49");
}

TEST(Currency, OfWhichNoMoreIsKnownStandsBeforeTheAmount) {
  EXPECT_EQ(currency_called("XTS").print(1250), "XTS\u00a012.50");
  EXPECT_EQ(currency_called("€").print(1250), "€12.50");
  EXPECT_EQ(Currency{}.print(1250), "$12.50");
}

TEST(Currency, ReadsAPointAndACommaAndASignAtEitherEnd) {
  const Currency euro = currency_called("EUR");
  for (const char* text :
       {"2.49", "2,49", "€ 2,49", "2,49 €", "2,49\u00a0€", "EUR 2,49", "2,49 EUR"}) {
    EXPECT_EQ(euro.parse(text), 249) << text;
  }
  EXPECT_EQ(euro.parse("2,5"), 250);
  EXPECT_EQ(euro.parse("8"), 800);
  EXPECT_EQ(currency_called("SEK").parse("12,50 kr"), 1250);
}

TEST(Currency, RefusesMorePlacesThanItHas) {
  EXPECT_EQ(currency_called("EUR").parse("1,250"), std::nullopt);
  EXPECT_EQ(currency_called("JPY").parse("1.2"), std::nullopt);
  EXPECT_EQ(currency_called("JPY").parse("120"), 120);
  EXPECT_EQ(currency_called("KWD").parse("1.250"), 1250);
  EXPECT_EQ(currency_called("EUR").parse("€"), std::nullopt);
  EXPECT_EQ(currency_called("EUR").parse("a few"), std::nullopt);
}

TEST(Currency, WithACommaHasItInWeightsAndInTheTableForASpreadsheet) {
  House house;
  house.household("measures: metric\ncurrency: EUR\nstorage: {freezer: \"60,5 l\"}\n");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {carrot: \"1,99/kg\"}\n");
  house.recipe("soup", "1.2 kg carrots, 250 ml mirlo");
  house.plan("2027-03-02: {dinner: soup}, 2027-03-30: {dinner: 1.5 l mirlo}");
  const auto compiled = house.good();
  const std::string list = emit::list_text(compiled);
  EXPECT_NE(list.find("about 1,2 kg"), std::string::npos) << list;
  EXPECT_NE(list.find("1,75 l"), std::string::npos) << list;
  EXPECT_EQ(list.find("1.2"), std::string::npos) << list;
  const std::string why = emit::why_text(compiled, compiled.shopping.lines.at(0).food, {});
  EXPECT_NE(why.find("1,2 kg needed"), std::string::npos) << why;
  const std::string table = emit::list_csv(compiled);
  EXPECT_NE(table.find("about 1,2 kg"), std::string::npos) << table;
  EXPECT_NE(table.find(";1,2;kg;1,99;2,39;"), std::string::npos) << table;
  const std::string page = emit::page_html(compiled);
  EXPECT_NE(page.find(" l of 60,5 l"), std::string::npos);
}

} // namespace
} // namespace manciple::kitchen
