#pragma once

namespace manciple::prep {

/// Nobody starts before the one for what is eaten the same day; what stands overnight is begun at
/// the other, at the latest. Minutes from midnight. Common practice, no source.
inline constexpr int getting_up = 7 * 60;
inline constexpr int evening = 20 * 60;

/// When something is begun that has to stand, soak or marinate.
struct Begun {
  int days_before = 0;
  int clock = 0;
};
/// By day: at the moment itself (minutes from midnight of the day; before it if negative), or else
/// in the evening before that.
Begun begun_by_day(int moment);

} // namespace manciple::prep
