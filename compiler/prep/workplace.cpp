#include "prep/workplace.hpp"

#include <algorithm>
#include <cstdlib>

namespace manciple::prep {
namespace {

// No oven at home is more exact: what wants 350 F bakes at 365 as well. Common practice, no source.
constexpr int as_good_as = 20; // F

} // namespace

Workplace::Workplace(const std::vector<kitchen::Appliance>& appliances, int cooks)
    : capacity_(1, cooks) {
  for (const kitchen::Appliance& appliance : appliances) {
    resource_[appliance.name] = capacity_.size();
    capacity_.push_back(appliance.count);
  }
}

scheduling::Piece Workplace::on(std::string_view appliance, int minutes, bool hands) const {
  scheduling::Piece out{minutes, std::vector<int>(capacity_.size(), 0)};
  if (const auto found = resource_.find(appliance); found != resource_.end()) {
    out.takes[found->second] = 1;
  }
  out.takes[0] = hands ? 1 : 0;
  return out;
}

void keep_temperatures_apart(scheduling::Project& project, const std::vector<Heat>& heat,
                             const std::vector<kitchen::Appliance>& appliances) {
  for (std::size_t a = 0; a < heat.size(); ++a) {
    const auto appliance = std::find_if(appliances.begin(), appliances.end(), [&](const auto& one) {
      return one.name == heat[a].appliance;
    });
    if (appliance == appliances.end() || appliance->count < 2 || !heat[a].fahrenheit) {
      continue;
    }
    for (std::size_t b = 0; b < a; ++b) {
      if (heat[b].appliance != heat[a].appliance || !heat[b].fahrenheit ||
          std::abs(*heat[b].fahrenheit - *heat[a].fahrenheit) <= as_good_as) {
        continue;
      }
      project.capacity.push_back(1);
      for (std::size_t i = 0; i < project.activities.size(); ++i) {
        for (scheduling::Piece& piece : project.activities[i].pieces) {
          piece.takes.push_back(i == a || i == b ? 1 : 0);
        }
      }
    }
  }
}

} // namespace manciple::prep
