#pragma once

#include "prep/prep.hpp"

#include <vector>

namespace manciple::prep {

/// What the cooks of a session do for a meal while it runs, in minutes from its start.
struct OtherWork {
  std::size_t dish = 0; ///< any number, the same for all work of a dish
  int from = 0, until = 0;
  std::optional<std::size_t> cook = {}; ///< who does it; none where all are busy
};

/// The tasks of a session by their start, each with the cook who does it, and the same of what is
/// done for meals meanwhile: the first one who is free; for a wash-up the one who has made it
/// necessary, and for a dish the one who has begun it. By cook, `free_at` says from which minute on
/// they are free. As long as there are never more hands at work than cooks, everything has one.
std::vector<Task> assign_cooks(std::vector<Task> tasks, std::vector<int> free_at,
                               std::vector<OtherWork>& others);

} // namespace manciple::prep
