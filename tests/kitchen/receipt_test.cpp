#include "house.hpp"

namespace manciple {
namespace {

class ReceiptTest : public testing::Test {
protected:
  kitchen::Receipt read(const std::string& text, const std::string& name = "2027-03-06-corner") {
    house.plan("2027-03-30: {dinner: 1 egg}");
    house.write("plans/receipts/" + name + ".yaml", text);
    house.sources = {};
    house.diagnostics = {};
    kitchen =
        kitchen::read_kitchen(house.root() + "/plans/p.yaml", house.sources, house.diagnostics);
    return kitchen.receipts.empty() ? kitchen::Receipt{} : kitchen.receipts.front();
  }

  House house;
  kitchen::Kitchen kitchen;
};

TEST_F(ReceiptTest, ALineSaysWhatItCostAndWhatWasFrozen) {
  const auto receipt =
      read("shop: Corner\nlines:\n  - 6 lb ground beef, 24.99, freeze 4.5 lb, until 9 Mar\n"
           "  - 2 lb onions 1.58\n  - 12 eggs, 2.50, sale\n");
  ASSERT_EQ(receipt.bought.size(), 3U) << house.said();
  EXPECT_EQ(receipt.date, text::parse_date("2027-03-06")); // by the name of its file
  EXPECT_EQ(receipt.bought[0].paid, 2499);
  EXPECT_NEAR(to_double(*receipt.bought[0].frozen), 4.5 * 453.59237, 1e-6);
  EXPECT_EQ(receipt.bought[0].use_by, text::parse_date("2027-03-09"));
  EXPECT_EQ(receipt.bought[1].paid, 158); // without a comma, too
  EXPECT_TRUE(receipt.bought[2].sale);
  EXPECT_EQ(receipt.paid(), 2499 + 158 + 250);
  EXPECT_EQ(house.diagnostics.errors(), 0U) << house.said();
}

TEST_F(ReceiptTest, ADecimalCommaIsNoEndOfAPart) {
  house.household("currency: EUR\nmeasures: metric\n");
  const auto receipt = read("shop: Corner\nlines: [\"500 g onions, 2,49\"]\n");
  ASSERT_EQ(receipt.bought.size(), 1U) << house.said();
  EXPECT_EQ(receipt.bought[0].paid, 249);
}

TEST_F(ReceiptTest, PacksOfPiecesAreCounted) {
  const auto receipt = read("shop: corner\nlines: [\"2 (12 large) packs eggs, 6.00\"]\n");
  ASSERT_EQ(receipt.bought.size(), 1U) << house.said();
  EXPECT_EQ(receipt.bought[0].what.containers, 2);
  EXPECT_EQ(receipt.bought[0].what.amount->number, 24);
}

TEST_F(ReceiptTest, TheTotalGoesBeforeTheSumOfTheLines) {
  const auto receipt = read("shop: corner\nlines: [\"2 lb onions, 2.00\"]\ntax: 0.20\n"
                            "credit: 1.00\noff: 0.50\n");
  EXPECT_EQ(receipt.sum(), 200 + 20 - 100 - 50);
  EXPECT_EQ(receipt.paid(), 70);
}

TEST_F(ReceiptTest, WithoutACountThoseOfAnotherMonthSayNothing) {
  house.write("plans/receipts/2027-02-20-corner.yaml",
              "shop: corner\nlines: [\"2 lb onions, 2.00\"]\n");
  const auto receipt = read("shop: corner\nlines: [\"1 lb onions, 1.00\"]\n");
  EXPECT_EQ(kitchen.receipts.size(), 1U);
  EXPECT_EQ(receipt.date, text::parse_date("2027-03-06"));
}

TEST_F(ReceiptTest, MistakesAreSaidWhereTheyAre) {
  (void)read("shop: corner\nlines: [\"onions, 2.00\", \"2 lb onions, 2.00, freeze 1 gal of\"]\n");
  EXPECT_TRUE(house.said("K003")) << house.said();
  (void)read("shop: cornr\nlines: []\n");
  EXPECT_TRUE(house.said("K007")) << house.said();
  (void)read("shop: corner\nlines: []\n", "saturday");
  EXPECT_TRUE(house.said("T007")) << house.said();
}

} // namespace
} // namespace manciple
