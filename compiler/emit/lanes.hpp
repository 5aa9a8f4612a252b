#pragma once

#include "emit/compiled.hpp"

#include <string>
#include <vector>

/// Who and what is busy when in a prep session, as it is drawn.
namespace manciple::emit {

/// A task that keeps a lane busy.
struct Block {
  std::size_t task = 0; ///< of the session
  int start = 0;        ///< minutes from the session's start
  int end = 0;
};

/// A cook, or one appliance of several equal ones. A cook is busy with their hands, an appliance
/// also while the task goes on alone.
struct Lane {
  std::string name;  ///< "cook 1", "oven", "burner 2"
  std::string group; ///< "cook", "oven", "burner"
  std::vector<Block> blocks;
};

/// The cooks of the session, then the appliances that it uses, each as often as the house has it.
/// Of several equal appliances, the first that is free takes a task.
std::vector<Lane> lanes(const Compiled& compiled, const prep::SessionPlan& session);

} // namespace manciple::emit
