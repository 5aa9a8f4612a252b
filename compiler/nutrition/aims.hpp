#pragma once

#include "nutrition/nutrition.hpp"
#include "purchase/worth.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::nutrition {

/// Another dish in the place of one, and what it would do.
struct Mend {
  std::string instead; ///< the recipe's name
  bool planned = true; ///< the plan has it, too; else it is only in the library
  bool labels = false; ///< there are labels to read before somebody eats it
  resolve::DishRef of;
  double value = 0; ///< of the occasion, then
  /// What a serving costs more, in cents; under 0: less. At what this plan pays, or, of a dish of
  /// the library, at what its foods usually cost; absent where a price is not known.
  std::optional<double> cents;
};

/// How an aim of the plan is met. Amounts are of an adult's serving: what somebody with half a
/// portion eats counts twice, so that one figure holds for the whole table.
struct AimMet {
  std::size_t aim = 0; ///< of the plan
  int asked = 0;       ///< meals, days or weeks, each with each who eats
  int missed = 0;
  int not_known = 0; ///< besides: for want of figures nothing can be said
  double mean = 0;   ///< over what was asked
  // Where it is missed by most:
  double worst = 0;
  double wanted = 0; ///< there: of a week that the plan cuts off, its share
  std::string person;
  text::Date date; ///< of a week, its first day in the plan
  std::optional<Mend> mend;
};

/// Looks at each aim of the plan. A day counts for somebody who sits at as many meals as on most of
/// their days; a week that the plan cuts off counts by its days. The mend is a dish that the plan
/// has at the same meal of another day, and all who eat there eat it, or a recipe of the library
/// that says it suits the meal and that all may eat: the cheapest that is enough, else the one that
/// comes nearest.
std::vector<AimMet> look_at_aims(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                                 const Nutrition& nutrition, const purchase::Worth& worth,
                                 kitchen::Library library = {});

/// An amount as the aim counts it: "28 g of protein", "once", "3.40".
std::string print_amount(const kitchen::Kitchen& kitchen, const kitchen::Aim& aim, double amount);

/// What is to be said of an aim that is missed, in a sentence; empty when it is met.
std::string missed_by(const kitchen::Kitchen& kitchen, const AimMet& met);
/// What would mend it; empty where nothing that the plan has would.
std::string would_mend(const kitchen::Kitchen& kitchen, const AimMet& met);

/// A remark for each aim that is missed.
void tell_aims(const kitchen::Kitchen& kitchen, const std::vector<AimMet>& aims,
               text::Diagnostics& diagnostics);

} // namespace manciple::nutrition
