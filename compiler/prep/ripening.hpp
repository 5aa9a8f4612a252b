#pragma once

#include "prep/prep.hpp"

#include <string>
#include <vector>

/// Fruit that ripens at home: how ripe it is chosen in the shop, and what is to be done for it.
namespace manciple::prep {

/// Ripe for today and tomorrow, nearly ripe for as long as it keeps once ripe, hard for later; what
/// is eaten some time in a week is of every kind.
enum class Ripeness { ripe, nearly_ripe, hard, mixed };

struct Chosen {
  Ripeness ripeness{};
  foods::Rational amount; ///< as purchased
};

/// How ripe what a line buys is chosen, in that order; none for what does not ripen.
std::vector<Chosen> ripeness_of(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                                const purchase::Shopping& shopping, std::size_t line);

/// What is bought or on hand hard: when it is put out to ripen, and what is ripe before its day is
/// put into the fridge.
std::vector<Reminder> ripening(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                               const purchase::Shopping& shopping);

} // namespace manciple::prep
