#include "buying/coupled/cutting_planes.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>

namespace manciple::buying {
namespace {

constexpr double tiny = 1e-9;
/// Far more than are needed; ends a run that rounding makes go in circles.
constexpr int most_pivots = 2000;

/// The dual: weights of the planes, which sum up to 1, such that
///
///     minimise   sum weight * at_zero + sum highest * above
///     so that    above - below - sum weight * slope = 0   for each part of x, all >= 0.
///
/// Columns are the planes, then above and below for each part, then the right side.
class Simplex {
public:
  Simplex(const std::vector<Plane>& planes, const std::vector<double>& highest)
      : planes_(planes.size()),
        parts_(highest.size()),
        width_(planes.size() + 2 * highest.size() + 1),
        table_((highest.size() + 2) * width_, 0),
        basis_(highest.size() + 1, 0) {
    double* const sum = row(parts_);
    double* const cost = row(parts_ + 1);
    for (std::size_t k = 0; k < planes_; ++k) {
      for (std::size_t i = 0; i < parts_; ++i) {
        row(i)[k] = -planes[k].slope[i];
      }
      sum[k] = 1;
      cost[k] = planes[k].at_zero;
    }
    sum[width_ - 1] = 1;
    for (std::size_t i = 0; i < parts_; ++i) {
      row(i)[above(i)] = 1;
      row(i)[below(i)] = -1;
      cost[above(i)] = highest[i];
    }
    // To begin with, all weight on the first plane.
    pivot(parts_, 0);
    for (std::size_t i = 0; i < parts_; ++i) {
      pivot(i, row(i)[width_ - 1] >= 0 ? above(i) : below(i));
    }
  }

  Peak run() {
    for (int pivots = 0; pivots < most_pivots; ++pivots) {
      const std::size_t column = entering(pivots > most_pivots / 2);
      if (column == width_) {
        break;
      }
      const std::size_t leaves = leaving(column);
      if (leaves > parts_) {
        break;
      }
      pivot(leaves, column);
    }
    Peak result;
    result.value = -row(parts_ + 1)[width_ - 1];
    for (std::size_t i = 0; i < parts_; ++i) {
      result.at.push_back(row(parts_ + 1)[below(i)]);
    }
    return result;
  }

private:
  double* row(std::size_t i) { return table_.data() + i * width_; }
  std::size_t above(std::size_t i) const { return planes_ + i; }
  std::size_t below(std::size_t i) const { return planes_ + parts_ + i; }

  /// The column that lowers the cost fastest, or, against circles, the first that lowers it (Bland
  /// 1977). The table's width if there is none.
  std::size_t entering(bool first) {
    const double* const cost = row(parts_ + 1);
    std::size_t best = width_;
    for (std::size_t k = 0; k + 1 < width_; ++k) {
      if (cost[k] < (best == width_ ? -tiny : cost[best])) {
        best = k;
        if (first) {
          break;
        }
      }
    }
    return best;
  }

  std::size_t leaving(std::size_t column) {
    std::size_t best = parts_ + 1;
    double least = 0;
    for (std::size_t i = 0; i <= parts_; ++i) {
      if (row(i)[column] <= tiny) {
        continue;
      }
      const double ratio = row(i)[width_ - 1] / row(i)[column];
      if (best > parts_ || ratio < least || (ratio == least && basis_[i] < basis_[best])) {
        best = i;
        least = ratio;
      }
    }
    return best;
  }

  void pivot(std::size_t at, std::size_t column) {
    double* const pivot_row = row(at);
    const double scale = 1 / pivot_row[column];
    for (std::size_t k = 0; k < width_; ++k) {
      pivot_row[k] *= scale;
    }
    for (std::size_t i = 0; i < parts_ + 2; ++i) {
      const double factor = row(i)[column];
      if (i == at || factor == 0) {
        continue;
      }
      double* const other = row(i);
      for (std::size_t k = 0; k < width_; ++k) {
        other[k] -= factor * pivot_row[k];
      }
      other[column] = 0;
    }
    basis_[at] = column;
  }

  std::size_t planes_;
  std::size_t parts_;
  std::size_t width_;
  std::vector<double> table_;
  std::vector<std::size_t> basis_;
};

} // namespace

Peak peak(const std::vector<Plane>& planes, const std::vector<double>& highest) {
  return Simplex(planes, highest).run();
}

} // namespace manciple::buying
