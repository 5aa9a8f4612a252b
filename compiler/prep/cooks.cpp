#include "prep/cooks.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::prep {

std::vector<Task> assign_cooks(std::vector<Task> tasks, int cooks) {
  std::vector<std::size_t> order(tasks.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    order[i] = i;
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const Task& one = tasks[a];
    const Task& other = tasks[b];
    return std::tuple(one.start, one.kind != Task::Kind::wash) <
           std::tuple(other.start, other.kind != Task::Kind::wash);
  });
  std::vector<int> free_at(static_cast<std::size_t>(cooks), 0);
  std::vector<std::size_t> place(order.size());
  std::vector<Task> sorted;
  for (std::size_t i = 0; i < order.size(); ++i) {
    place[order[i]] = i;
    Task& task = tasks[order[i]];
    std::optional<std::size_t> same;
    for (const Task& other : sorted) {
      const bool made_dirty = task.kind == Task::Kind::wash && other.hands_on > 0 &&
                              other.start + other.hands_on == task.start &&
                              other.making == task.making && other.cook;
      same = made_dirty ? other.cook : same;
    }
    for (std::size_t c = 0; task.hands_on > 0 && c < free_at.size(); ++c) {
      if (free_at[c] <= task.start && (!same || c == *same)) {
        free_at[c] = task.start + task.hands_on;
        task.cook = c;
        break;
      }
    }
    for (std::size_t c = 0; task.hands_on > 0 && !task.cook && c < free_at.size(); ++c) {
      if (free_at[c] <= task.start) {
        free_at[c] = task.start + task.hands_on;
        task.cook = c;
      }
    }
    sorted.push_back(std::move(task));
  }
  for (Task& task : sorted) {
    for (std::size_t& before : task.after) {
      before = place[before];
    }
    std::sort(task.after.begin(), task.after.end());
    task.after.erase(std::unique(task.after.begin(), task.after.end()), task.after.end());
  }
  return sorted;
}

} // namespace manciple::prep
