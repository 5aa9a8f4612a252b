#include "purchase/offers.hpp"

#include "house.hpp"

namespace manciple::purchase {
namespace {

// Only what is left without an offer by its makers is looked for at other shops: the bread of the
// corner shop has milk in it, which Ben must not have.
TEST(OffersOfAList, WhatItsMakerMakesUnsafeIsLikelyToBeHadElsewhere) {
  House house;
  house.write("plans/stores/bakery.yaml",
              "shop: Bakery\nwalk: [bakery]\nprices: {onion: 1.00/lb}\n");
  house.recipe("toast", "1 loaf french bread");
  house.plan_with_trip("2027-03-02: {dinner: toast}", "[corner, bakery]");
  const auto offers_with = [&](const std::string& allergens) {
    house.write("plans/stores/corner.yaml",
                "shop: Corner\nwalk: [produce]\nprices: {french bread: {offer: loaf 1.99, "
                "allergens: {contains: [" +
                    allergens + "]}}}\n");
    text::Sources sources;
    text::Diagnostics diagnostics;
    const auto kitchen =
        kitchen::read_kitchen(house.root() + "/plans/p.yaml", sources, diagnostics);
    const auto resolved = resolve::resolve(kitchen, diagnostics);
    std::vector<std::string> out;
    for (const kitchen::Shop& shop : with_offers(kitchen, resolved, diagnostics).shops) {
      for (const kitchen::Offer& offer : shop.offers) {
        if (kitchen.food(offer.food).name == "french bread") {
          out.push_back(shop.name + (offer.likely ? ", likely" : ""));
        }
      }
    }
    return out;
  };
  house.household("", "[milk]");
  EXPECT_EQ(offers_with("wheat"), std::vector<std::string>{"Corner"});
  EXPECT_EQ(offers_with("wheat, milk"), std::vector<std::string>{"Bakery, likely"});
}

} // namespace
} // namespace manciple::purchase
