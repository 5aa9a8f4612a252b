#pragma once

namespace manciple::prep {

/// When something is begun that has to stand, soak or marinate.
struct Begun {
  int days_before = 0;
  int clock = 0;
};
/// Neither before getting up nor after the evening (`kitchen/hours.hpp`): at the moment itself
/// (minutes from midnight of the day; before it if negative), or else in the evening before that.
Begun begun_by_day(int moment);

} // namespace manciple::prep
