#pragma once

#include "prep/batch.hpp"
#include "prep/prep.hpp"

#include <map>
#include <set>
#include <vector>

/// What a session cuts and weighs before it cooks: each food once, however many dishes it is for.
namespace manciple::prep {

/// A task and the makings of the session that wait for it.
struct Mise {
  Task task;
  std::vector<MakingId> before;
  bool for_today = false; ///< for a meal that is cooked on the day of the session
  bool harms = false;     ///< it is of what somebody must not have
};

/// The cutting of a session, for what it makes and for dishes of the days after it; one task a food
/// ("Dice 9 onions (2.3 lb): Marinara sauce 1 lb, Tomato soup 1.3 lb"). What takes less than two
/// minutes is done together, but for what somebody must not have.
std::vector<Mise> cutting(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                          std::size_t session);

/// Dry goods of which two or more makings of the session take some, weighed out once.
std::vector<Mise> weighing(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                           std::size_t session);

/// By making: how much of its cutting tasks of a session do.
std::map<MakingId, CutBefore> cut_before(const kitchen::Kitchen& kitchen,
                                         const resolve::Resolved& resolved);

} // namespace manciple::prep
