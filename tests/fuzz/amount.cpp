// Amounts: whatever is read prints, and what is printed reads as the same.
#include "fuzz.hpp"

#include "measure/print.hpp"
#include "measure/scan.hpp"

using namespace manciple; // NOLINT

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text = fuzz::text_of(data, size);
  for (const auto system : {measure::System::us, measure::System::imperial, measure::System::metric,
                            measure::System::australian}) {
    measure::Cursor cursor{text};
    if (const auto range = measure::scan_range(cursor)) {
      fuzz::require(range->low >= 0 && range->low <= range->high, "a range upside down");
    }
    fuzz::require(cursor.at <= text.size(), "read past the end");
    const auto quantity = measure::parse_quantity(text, system);
    if (!quantity) {
      continue;
    }
    fuzz::require(quantity->amount >= 0, "less than nothing");
    fuzz::require(!measure::print_for_kitchen(*quantity, system).empty(), "nothing for a kitchen");
    fuzz::require(!measure::print_for_shop(*quantity, system).empty(), "nothing for a shop");
    const std::string printed = measure::print(*quantity);
    // A cup that is printed is a US cup. Sums can have more digits than a file may say.
    const auto again = measure::parse_quantity(printed, measure::System::us);
    fuzz::require(!again || measure::in_base(*again) == measure::in_base(*quantity),
                  "reads otherwise than it was printed");
  }
  return 0;
}
