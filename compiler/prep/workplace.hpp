#pragma once

#include "kitchen/kitchen.hpp"
#include "scheduling/project.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::prep {

/// Some minutes of work: with hands or without, on so many places of an appliance or of none.
struct Stretch {
  int minutes = 0;
  bool hands = false;
  std::string_view appliance = {};
  int places = 1;
  std::optional<int> fahrenheit = {}; ///< of an oven
  bool warms = false; ///< the oven is brought to that temperature, and nothing is in it yet
  std::string_view vessel = {}; ///< of which so many are taken, where the house has few
  int vessels = 0;
};

/// Hands and appliances as the resources of a project.
class Workplace {
public:
  Workplace(const std::vector<kitchen::Appliance>& appliances, int cooks);

  /// By resource; hands come first.
  [[nodiscard]] const std::vector<int>& capacity() const { return capacity_; }
  [[nodiscard]] std::optional<std::size_t> resource(std::string_view appliance) const;
  /// What a stretch takes of each resource.
  [[nodiscard]] std::vector<int> takes(const Stretch& stretch) const;

private:
  std::vector<int> capacity_;
  std::map<std::string, std::size_t, std::less<>> resource_;
};

/// Whether two temperatures are one to an oven: none at home is exact to 20 F. Common practice, no
/// source.
bool is_as_hot(int fahrenheit, int other);

/// Minutes until an oven that is at one temperature is at another: 20 F a minute up, and five
/// minutes with the door open down. Common practice, no source.
int heating_minutes(int from, int to);
inline constexpr int cold_oven = 70; // F

} // namespace manciple::prep
