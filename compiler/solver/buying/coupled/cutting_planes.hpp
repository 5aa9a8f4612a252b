#pragma once

#include <vector>

namespace manciple::buying {

/// at_zero + slope * x.
struct Plane {
  double at_zero = 0;
  std::vector<double> slope;
};

struct Peak {
  std::vector<double> at;
  double value = 0;
};

/// Where the lowest of the planes is highest, for 0 <= x <= highest: a linear program with few
/// rows, one for each part of x, solved by the simplex method on its dual. There must be a plane.
Peak peak(const std::vector<Plane>& planes, const std::vector<double>& highest);

} // namespace manciple::buying
