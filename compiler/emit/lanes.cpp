#include "emit/lanes.hpp"

#include "emit/day_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::emit {

std::vector<Lane> lanes(const Compiled& compiled, const prep::SessionPlan& session) {
  const kitchen::Session& window = compiled.plan().sessions[session.session];
  std::vector<Lane> out;
  for (std::size_t c = 0; c < static_cast<std::size_t>(window.cooks); ++c) {
    Lane lane{cook_name(window, c), "cook", {}};
    for (std::size_t t = 0; t < session.tasks.size(); ++t) {
      const prep::Task& task = session.tasks[t];
      if (task.cook == c) {
        lane.blocks.push_back({t, task.start, task.start + task.hands_on});
      }
    }
    out.push_back(std::move(lane));
  }
  for (const kitchen::Appliance& appliance : compiled.kitchen.household.appliances) {
    std::vector<Lane> equal;
    for (std::size_t t = 0; t < session.tasks.size(); ++t) {
      const prep::Task& task = session.tasks[t];
      if (task.appliance != appliance.name) {
        continue;
      }
      for (int place = 0; place < task.places; ++place) {
        auto lane = std::find_if(equal.begin(), equal.end(),
                                 [&](const Lane& l) { return l.blocks.back().end <= task.start; });
        if (lane == equal.end()) {
          lane = equal.insert(lane, {appliance.count > 1
                                         ? fmt::format("{} {}", appliance.name, equal.size() + 1)
                                         : appliance.name,
                                     appliance.name,
                                     {}});
        }
        lane->blocks.push_back({t, task.start, task.start + task.hands_on + task.then});
      }
    }
    out.insert(out.end(), equal.begin(), equal.end());
  }
  return out;
}

} // namespace manciple::emit
