// Lines of what is on hand.
#include "fuzz.hpp"

using namespace manciple; // NOLINT

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static fuzz::BookNames names;
  text::Sources sources;
  text::Diagnostics diagnostics;
  text::Node file;
  file.kind = text::Node::Kind::mapping;
  text::Node lines;
  lines.kind = text::Node::Kind::sequence;
  lines.items.push_back(fuzz::scalar(fuzz::text_of(data, size), sources));
  file.entries.push_back({fuzz::scalar("date", sources), fuzz::scalar("2027-02-28", sources)});
  file.entries.push_back({fuzz::scalar("on hand", sources), lines});
  const auto on_hand =
      kitchen::read_on_hand(file, measure::System::us, std::nullopt, names, names, diagnostics);
  fuzz::check_said(diagnostics, sources);
  fuzz::require(!on_hand.lots.empty() || !diagnostics.all().empty(), "neither read nor said");
  for (const kitchen::StockLot& lot : on_hand.lots) {
    fuzz::require(lot.amount > 0, "a lot of nothing");
  }
  return 0;
}
