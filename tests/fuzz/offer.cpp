// Offers of a shop, as words or as a mapping: what is read costs something sensible for any number
// of packs on any day.
#include "fuzz.hpp"

using namespace manciple; // NOLINT

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static fuzz::BookNames names;
  text::Sources sources;
  text::Diagnostics diagnostics;
  const std::string words = fuzz::text_of(data, size);
  text::Node offer = fuzz::scalar(words, sources);
  if (words.starts_with('{')) {
    const auto parsed = text::parse_yaml(sources.add("offer", words), sources, diagnostics);
    if (!parsed) {
      return 0;
    }
    offer = *parsed;
  }
  text::Node prices;
  prices.kind = text::Node::Kind::mapping;
  prices.entries.push_back({fuzz::scalar("garlic", sources), offer});
  text::Node file;
  file.kind = text::Node::Kind::mapping;
  file.entries.push_back({fuzz::scalar("shop", sources), fuzz::scalar("Corner", sources)});
  file.entries.push_back({fuzz::scalar("prices", sources), prices});
  const auto shop = kitchen::read_shop(file, "corner", kitchen::ShopId{0},
                                       kitchen::usual_household(), names, diagnostics);
  fuzz::check_said(diagnostics, sources);
  for (const kitchen::Offer& one : shop.offers) {
    fuzz::require(one.size > 0 && one.price.value_or(0) >= 0, "an offer of nothing");
    for (const char* date : {"2027-03-01", "2027-03-04", "2030-01-01"}) {
      const text::Date day = *text::parse_date(date);
      for (int packs = 1; packs < 40; ++packs) {
        const auto cost = one.exact_cost(packs, day);
        const auto single = one.exact_cost(1, day);
        const auto deal = one.deal ? one.exact_cost(one.deal->packs, day) : std::nullopt;
        fuzz::require(!cost || *cost >= 0, "less than nothing");
        fuzz::require(!single || (cost && *cost <= *single * packs), "dearer than one by one");
        fuzz::require(!deal || packs < one.deal->packs || *deal <= one.deal->price,
                      "dearer than the deal");
      }
    }
  }
  return 0;
}
