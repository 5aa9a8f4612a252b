#pragma once

#include "kitchen/kitchen.hpp"

#include <optional>
#include <string>
#include <vector>

/// A receipt beside the list.
namespace manciple::history {

using kitchen::Cents;
using measure::Rational;

/// What became of a food that was planned or bought.
struct SettledLine {
  enum class Fate : std::uint8_t { as_planned, other_amount, other_price, not_planned, missing };
  Fate fate{};
  foods::FoodId food{};
  Rational planned; ///< as purchased, in the food's basis
  Rational bought;
  std::optional<Cents> list; ///< what the list said that it would cost
  std::optional<Cents> till; ///< what was paid
  std::string instead_of;
};

/// What a price list should say, by a receipt.
struct NewPrice {
  enum class Why : std::uint8_t {
    changed,   ///< it is to be taken over
    sale,      ///< said to be a sale
    much_less, ///< so much less that it is more likely a sale
    uneven,    ///< the till's sum does not come from one price
    not_known, ///< the price list has no such pack
  };
  Why why{};
  foods::FoodId food{};
  std::optional<std::size_t> offer; ///< of the shop
  std::string pack;                 ///< "2 lb bag"; of what is not known, as the receipt has it
  std::optional<Cents> old;
  Cents now = 0; ///< of one pack, or of the unit by weight
};

struct Settled {
  std::vector<SettledLine> lines; ///< what is otherwise than planned first, then by name
  std::vector<NewPrice> prices;   ///< in the order of the receipt
  std::optional<Cents> planned;   ///< what the list said that would be paid
  Cents paid = 0;
  std::optional<Cents> unaccounted; ///< what the receipt's total has besides its lines and tax
};

/// `planned` is the list of that stop; none where the list did not go there.
Settled settle(const kitchen::Kitchen& kitchen, const kitchen::Receipt& receipt,
               const std::optional<kitchen::Receipt>& planned);

} // namespace manciple::history
