#pragma once

#include "kitchen/kitchen.hpp"
#include "scheduling/project.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::prep {

/// Hands and appliances as the resources of a project.
class Workplace {
public:
  Workplace(const std::vector<kitchen::Appliance>& appliances, int cooks);

  [[nodiscard]] const std::vector<int>& capacity() const { return capacity_; }
  /// So many minutes on an appliance (none where it is empty), with hands or without.
  [[nodiscard]] scheduling::Piece on(std::string_view appliance, int minutes, bool hands) const;

private:
  std::vector<int> capacity_; // hands first
  std::map<std::string, std::size_t, std::less<>> resource_;
};

/// Work on an appliance at a temperature.
struct Heat {
  std::string_view appliance;
  std::optional<int> fahrenheit;
};

/// An appliance that takes several things at once (an oven with two shelves) has one temperature:
/// each pair of a project's activities that needs two of them, more than 20 F apart, gets a
/// resource that only one can have. `heat` is by activity.
void keep_temperatures_apart(scheduling::Project& project, const std::vector<Heat>& heat,
                             const std::vector<kitchen::Appliance>& appliances);

} // namespace manciple::prep
