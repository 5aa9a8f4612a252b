#include "kitchen/receipt_csv.hpp"

#include "house.hpp"

namespace manciple::kitchen {
namespace {

class ReceiptTableTest : public testing::Test {
protected:
  // What the table says, as "key=value" by line, lines in brackets; empty where it is refused.
  std::string read(const std::string& table, std::string_view name = "2027-03-06-corner") {
    const text::FileId file = sources.add("receipt.csv", table);
    const auto node = receipt_of_table(file, name, sources, diagnostics);
    return node ? said(*node) : "";
  }
  static std::string said(const text::Node& node) {
    std::string out = node.scalar;
    for (const text::Entry& entry : node.entries) {
      out += (out.empty() ? "" : " ") + entry.key.scalar + "=" + said(entry.value);
    }
    for (const text::Node& item : node.items) {
      out += "[" + said(item) + "]";
    }
    return out;
  }

  text::Sources sources;
  text::Diagnostics diagnostics;
};

TEST_F(ReceiptTableTest, ColumnsAreTheKeysOfALine) {
  EXPECT_EQ(read("Bought,Paid\n2 lb onions,1.58\n12 eggs,\n"),
            "shop=corner lines=[bought=2 lb onions paid=1.58][bought=12 eggs]");
}

// RFC 4180: what holds a comma stands in quotes, and a quote in it twice.
TEST_F(ReceiptTableTest, QuotesHoldCommasAndQuotes) {
  EXPECT_EQ(read("bought,paid\n\"1 lb beans, \"\"navy\"\"\",2.00\n"),
            "shop=corner lines=[bought=1 lb beans, \"navy\" paid=2.00]");
}

TEST_F(ReceiptTableTest, WithSemicolonsACommaIsADecimalComma) {
  EXPECT_EQ(read("\xEF\xBB\xBF"
                 "bought;paid\r\n500 g onions;2,49\r\n\r\n;\r\n"),
            "shop=corner lines=[bought=500 g onions paid=2,49]");
}

TEST_F(ReceiptTableTest, SumsHaveRowsOfTheirOwn) {
  EXPECT_EQ(read("bought,paid\nTax,,0.10\neggs,3.00\ntotal,3.10\n"),
            "shop=corner tax=0.10 total=3.10 lines=[bought=eggs paid=3.00]");
}

TEST_F(ReceiptTableTest, ACellKnowsItsPlaceInTheFile) {
  const text::FileId file = sources.add("receipt.csv", "bought,paid\n\"2 lb onions\",x\n");
  const auto node = receipt_of_table(file, "2027-03-06-corner", sources, diagnostics);
  ASSERT_TRUE(node);
  const text::Node& line = node->entries.back().value.items.at(0);
  const text::Span onions = line.entries.at(0).value.span;
  EXPECT_EQ(sources.text(file).substr(onions.begin, onions.end - onions.begin), "2 lb onions");
  EXPECT_EQ(sources.position(file, line.entries.at(1).value.span.begin).column, 15U);
}

TEST_F(ReceiptTableTest, WithoutAShopOrARowItIsRefused) {
  EXPECT_EQ(read("bought,paid\n", "2027-03-06"), "");
  EXPECT_EQ(read("\n,,\n"), "");
  EXPECT_EQ(read("bought\na\x01"
                 "b\n"),
            "");
  EXPECT_EQ(diagnostics.errors(), 3U);
}

TEST(ReceiptTable, IsReadAsAReceipt) {
  House house;
  house.plan("2027-03-30: {dinner: 1 egg}");
  house.write("plans/receipts/2027-03-06-corner.csv",
              "\xEF\xBB\xBF"
              "bought,paid,freeze\r\n6 lb ground beef,24.99,4.5 lb\r\n"
              "\"2 lb onions, 1.58\",,\r\ntax,0.10,\r\ntotal,26.67,\r\n");
  house.write("plans/receipts/2027-03-07-corner.csv",
              "bought;paid\n500 g onions;2,49\n2 dozen;x\n");
  const auto read =
      kitchen::read_kitchen(house.root() + "/plans/p.yaml", house.sources, house.diagnostics);
  ASSERT_EQ(read.receipts.size(), 2U) << house.said();
  ASSERT_EQ(read.receipts[0].bought.size(), 2U);
  EXPECT_EQ(read.receipts[0].bought[0].paid, 2499);
  EXPECT_TRUE(read.receipts[0].bought[0].frozen);
  EXPECT_EQ(read.receipts[0].bought[1].paid, 158);
  EXPECT_EQ(read.receipts[0].paid(), 2667);
  EXPECT_EQ(read.receipts[1].bought[0].paid, 249);
  EXPECT_NE(house.said().find("2027-03-07-corner.csv:3:"), std::string::npos) << house.said();
}

} // namespace
} // namespace manciple::kitchen
