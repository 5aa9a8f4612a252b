#include "prep/workplace.hpp"

#include <cstdlib>

namespace manciple::prep {

Workplace::Workplace(const std::vector<kitchen::Appliance>& appliances, int cooks)
    : capacity_(1, cooks) {
  for (const kitchen::Appliance& appliance : appliances) {
    resource_[appliance.name] = capacity_.size();
    capacity_.push_back(appliance.count);
  }
}

std::optional<std::size_t> Workplace::resource(std::string_view appliance) const {
  const auto found = resource_.find(appliance);
  return found == resource_.end() ? std::nullopt : std::optional(found->second);
}

std::vector<int> Workplace::takes(const Stretch& stretch) const {
  std::vector<int> out(capacity_.size(), 0);
  out[0] = stretch.hands ? 1 : 0;
  if (const auto on = resource(stretch.appliance)) {
    out[*on] = stretch.places;
  }
  if (const auto in = resource(stretch.vessel)) {
    out[*in] += stretch.vessels;
  }
  return out;
}

bool is_as_hot(int fahrenheit, int other) {
  constexpr int as_good_as = 20;
  return std::abs(fahrenheit - other) <= as_good_as;
}

int heating_minutes(int from, int to) {
  constexpr int degrees_a_minute = 20;
  constexpr int door_open = 5;
  return to < from ? door_open : (to - from + degrees_a_minute - 1) / degrees_a_minute;
}

} // namespace manciple::prep
