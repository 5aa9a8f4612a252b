#include "emit/receipt_text.hpp"

#include "house.hpp"

#include <gtest/gtest.h>

#include <set>

namespace manciple::emit {
namespace {

// A house on disk, compiled; then its whole list, as a receipt would have it, put where what is on
// hand stands, and read from there.
void reads_back(const std::string& house, const std::string& plan) {
  const std::filesystem::path place =
      std::filesystem::temp_directory_path() / ("manciple-receipt-" + std::to_string(::getpid()));
  std::filesystem::remove_all(place);
  std::filesystem::create_directories(place);
  for (const char* folder : {"plans", "recipes"}) {
    std::filesystem::copy(std::filesystem::path(house) / folder, place / folder,
                          std::filesystem::copy_options::recursive);
  }
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto compiled = cli::compile((place / plan).string(), sources, diagnostics);
  ASSERT_TRUE(compiled) << render(diagnostics, sources);
  std::ofstream on_hand(place / "plans/on-hand.yaml");
  on_hand << "date: " << text::print_date(compiled->plan().from) << "\non hand:\n";
  std::vector<std::string> said;
  for (const purchase::Line& line : compiled->shopping.lines) {
    const ReceiptText text = receipt_text(*compiled, line);
    said.push_back(filled(text, text.each * line.packs));
    on_hand << "  - \"" << said.back() << "\"\n";
  }
  on_hand.close();
  text::Sources again;
  text::Diagnostics found;
  const kitchen::Kitchen kitchen = kitchen::read_kitchen((place / plan).string(), again, found);
  ASSERT_EQ(kitchen.on_hand.lots.size(), said.size()) << render(found, again);
  for (std::size_t l = 0; l < said.size(); ++l) {
    const purchase::Line& line = compiled->shopping.lines[l];
    const kitchen::StockLot& lot = kitchen.on_hand.lots[l];
    ASSERT_NE(lot.what.food(), nullptr) << said[l];
    EXPECT_EQ(kitchen.food(*lot.what.food()).name, compiled->kitchen.food(line.food).name)
        << said[l];
    // What was written has three decimals.
    EXPECT_NEAR(to_double(lot.amount / line.amount), 1, 0.001)
        << said[l] << " for " << line.packs << " x "
        << compiled->kitchen.shop(compiled->shopping.visits[line.visit].shop)
               .offers[line.offer]
               .pack;
  }
  std::filesystem::remove_all(place);
}

TEST(ReceiptText, OfEveryLineOfTheDemoIsReadAsWhatWasBought) {
  reads_back(MANCIPLE_SOURCE, "plans/2027-03.yaml");
}

TEST(ReceiptText, OfAMetricHouseIsReadAsWhatWasBought) {
  reads_back(std::string(MANCIPLE_SOURCE) + "/examples/ladder/5-metric", "plans/week.yaml");
}

TEST(ReceiptText, CountsCansAndSaysWhatIsInBags) {
  House house;
  house.write(
      "plans/stores/corner.yaml",
      "shop: Corner\nprices: {diced tomatoes: 14.5 oz can 0.99, onion: 3 lb bag 2.99, lime: "
      "0.40 each, ground beef: 5.00/lb, canned chickpeas: 8 pack 7.49}\n");
  house.recipe(
      "stew",
      "2 (14.5 oz) cans diced tomatoes, 1 lb onions, 1 lb ground beef, juice of 2 limes, 3 cans "
      "chickpeas");
  house.plan("2027-03-02: {dinner: stew}");
  const Compiled compiled = house.good();
  std::set<std::string> texts;
  for (const purchase::Line& line : compiled.shopping.lines) {
    texts.insert(receipt_text(compiled, line).text);
  }
  EXPECT_EQ(texts,
            (std::set<std::string>{"# (14.5 oz) cans diced tomatoes", "# lb onions",
                                   "# lb ground beef", "# limes", "# cans canned chickpea"}));
}

} // namespace
} // namespace manciple::emit
