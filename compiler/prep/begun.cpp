#include "prep/begun.hpp"

#include "text/date.hpp"

namespace manciple::prep {

Begun begun_by_day(int moment) {
  const auto clock = [](int at) {
    return (at % text::minutes_a_day + text::minutes_a_day) % text::minutes_a_day;
  };
  int start = moment;
  if (clock(start) < getting_up) {
    start -= clock(start) + text::minutes_a_day - evening;
  } else if (clock(start) > evening) {
    start -= clock(start) - evening;
  }
  return {(clock(start) - start) / text::minutes_a_day, clock(start)};
}

} // namespace manciple::prep
