#include "prep/begun.hpp"

#include "kitchen/hours.hpp"
#include "text/date.hpp"

namespace manciple::prep {

Begun begun_by_day(int moment) {
  const auto clock = [](int at) {
    return (at % text::minutes_a_day + text::minutes_a_day) % text::minutes_a_day;
  };
  int start = moment;
  if (clock(start) < kitchen::getting_up) {
    start -= clock(start) + text::minutes_a_day - kitchen::evening;
  } else if (clock(start) > kitchen::evening) {
    start -= clock(start) - kitchen::evening;
  }
  return {(clock(start) - start) / text::minutes_a_day, clock(start)};
}

} // namespace manciple::prep
