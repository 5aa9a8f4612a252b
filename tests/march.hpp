#pragma once

#include "text/date.hpp"

namespace manciple {

/// A day of the month that tests plan.
inline text::Date march(unsigned day) {
  return text::Date(std::chrono::year(2027) / 3 / std::chrono::day(day));
}

} // namespace manciple
