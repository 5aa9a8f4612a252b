#pragma once

#include "buying/item/holding.hpp"
#include "buying/item/plan.hpp"
#include "buying/item/room_rates.hpp"

#include <array>
#include <vector>

namespace manciple::buying {

/// In which state a part of a holding serves a demand.
enum class Way : std::uint8_t {
  open,       ///< of an opened pack, unfrozen
  cool,       ///< loose, or by opening a pack, unfrozen
  loose,      ///< loose, frozen on the day on which it came home (or stock from the freezer)
  of_portion, ///< of an opened pack, as a frozen portion
  whole,      ///< by thawing and opening a pack that was frozen whole
  portioned   ///< by opening a pack on the day on which it came home and freezing portions of it
};
constexpr bool from_freezer(Way way) {
  return way >= Way::loose;
}

/// One way in which things may go on.
///
/// A `Track` notes what happens along it; copied where ways part. It has
///
///     void stay(const Stay&)                              something takes room
///     void take(const Holding&, size_t demand, Amount, Way)   an opened pack or a loose holding
///                                                         serves so much of its own
///     void open(const Holding& unopened, const Holding& opened, Day)      one pack is opened
///     void rename(const Holding& from, const Holding& to)
///     void thaw(size_t demand)                            it is served from the freezer
///     void miss(size_t demand, Amount)                    nothing serves so much of it
///     void lend(const Holding&, size_t demand, Amount, Way)   it takes so much for what gives
///     void take_back(const Holding&, Amount)              so much of what was lent last is needed
///     void lack(size_t demand, Amount)                    so much of what gives is lacking anyway
///     void settle(const Holding&, bool kept)              no demand takes more of it: what is lent
///                                                         is eaten, and the rest is left
template <typename Track>
struct Branch {
  Holdings held;
  /// Waste (of all that is not used yet), shortage, handling, salvage; not purchases and room.
  Fine cost = 0;
  /// What was chosen where there was a choice.
  std::vector<std::uint32_t> choices;
  Track track;
};

/// Notes nothing: a track derives from it and hides what it does note.
struct BlankTrack {
  void stay(const Stay&) {}
  void take(const Holding&, std::size_t, Amount, Way) {}
  void open(const Holding&, const Holding&, Day) {}
  void rename(const Holding&, const Holding&) {}
  void thaw(std::size_t) {}
  void miss(std::size_t, Amount) {}
  void lend(const Holding&, std::size_t, Amount, Way) {}
  void take_back(const Holding&, Amount) {}
  void lack(std::size_t, Amount) {}
  void settle(const Holding&, bool) {}
};

/// Where a part of a holding that came from `from` has been until `until`: in its cool place or, as
/// a portion, frozen.
inline std::array<Stay, 3> stays_of(const Source& from, const Holding& held, Amount part,
                                    bool portion, Day until) {
  Day in_freezer = until;
  Day out_of_freezer = until;
  if (from.in_freezer || held.thawed) {
    in_freezer = from.home;
    out_of_freezer = held.thawed ? held.until - from.opened : until;
  } else if (portion) {
    in_freezer = held.open ? held.frozen_on : from.home;
  }
  return {Stay{part, from.place, false, from.home, in_freezer},
          Stay{part, Place::freezer, true, in_freezer, out_of_freezer},
          Stay{part, from.thawed_in, false, out_of_freezer, until}};
}

} // namespace manciple::buying
