#pragma once

#include "prep/placing.hpp"
#include "prep/prep.hpp"

#include <vector>

namespace manciple::prep {

/// What the sessions of a day take of hands and appliances, in minutes from midnight. As many cook
/// as in the largest of them while it lasts, and one at any other time.
struct Occupied {
  int cooks = 1;
  std::vector<Taken> taken;
};

/// What is taken refers to the tasks of `sessions`.
Occupied occupied(const kitchen::Kitchen& kitchen, const std::vector<SessionPlan>& sessions,
                  Date date);

} // namespace manciple::prep
