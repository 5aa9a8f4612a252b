#pragma once

#include "history/settled.hpp"
#include "text/date.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Prices written into a price list as its author wrote it: comments and layout stay.
namespace manciple::cli {

/// One line of a file, before and after; `before` is empty where it is added.
struct LineEdit {
  std::size_t line = 0; ///< from 1: of the old file, or after which it is added
  std::string before;
  std::string after;
};

/// The lines of a price list that change so that it says what a receipt says. The old price stays
/// behind it, as a comment with the day until which it was known.
std::vector<LineEdit> price_edits(std::string_view file, const kitchen::Kitchen& kitchen,
                                  const kitchen::Receipt& receipt, const history::Settled& settled);

/// The file with its lines changed.
std::string edited(std::string_view file, const std::vector<LineEdit>& edits);

} // namespace manciple::cli
