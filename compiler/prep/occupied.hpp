#pragma once

#include "prep/placing.hpp"
#include "prep/prep.hpp"

#include <vector>

namespace manciple::prep {

/// What the sessions of a day take of hands and appliances, in minutes from midnight. While one
/// lasts, as many cook as in it, and at any other time those who cook the next meal; where the most
/// of them do not, their hands are taken.
struct Occupied {
  int cooks = 1;
  std::vector<Taken> taken;
};

/// What is taken refers to the tasks of `sessions`.
Occupied occupied(const kitchen::Kitchen& kitchen, const std::vector<SessionPlan>& sessions,
                  Date date);

} // namespace manciple::prep
