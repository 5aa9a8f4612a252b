#pragma once

#include "emit/compiled.hpp"

#include <string>

/// A line of the list as a receipt or a list of what is on hand says it.
namespace manciple::emit {

/// "# lb pork loin roast", "# (14.5 oz) cans diced tomatoes": with a number in place of the `#` it
/// reads as an amount of the food, as on-hand lines are written.
struct ReceiptText {
  std::string text;
  measure::Rational each; ///< the number of one pack, or of one step of the scale
};

/// How what a line buys is written on a receipt: by packs where the pack is what one counts (cans
/// and jars), else by what is in it.
ReceiptText receipt_text(const Compiled& compiled, const purchase::Line& line);

/// The text with a number in it, to a thousandth, with a point: "2 (14.5 oz) cans diced tomatoes".
std::string filled(const ReceiptText& text, const measure::Rational& number);

} // namespace manciple::emit
