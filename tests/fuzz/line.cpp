// Ingredient lines: things with an amount that can be bought, or an error, or both.
#include "fuzz.hpp"

#include "foods/convert.hpp"
#include "foods/spoken.hpp"

using namespace manciple; // NOLINT

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static fuzz::BookNames names;
  const std::string words = fuzz::text_of(data, size);
  text::Sources sources;
  text::Diagnostics diagnostics;
  const text::Node line = fuzz::scalar(words, sources);
  const auto read = kitchen::read_line(line, words, 0, measure::System::us, names, diagnostics);
  fuzz::check_said(diagnostics, sources);
  fuzz::require(!read.empty() || diagnostics.errors() > 0, "neither read nor refused");
  for (const kitchen::Ingredient& one : read) {
    if (!one.amount) {
      continue;
    }
    const foods::Food& food = *names.food(one.target);
    const auto bought = foods::as_purchased(food, *one.amount);
    fuzz::require(bought && bought->amount > 0, "an amount that cannot be bought");
    fuzz::require(!one.low || *one.low <= one.amount->number, "a range upside down");
    fuzz::require(!foods::with_name(food, bought->amount, measure::System::us).empty(), "no words");
    fuzz::require(!foods::print(*one.amount).empty(), "no words");
  }
  return 0;
}
