#include "scheduling/network.hpp"

#include <algorithm>
#include <stdexcept>

namespace manciple::scheduling {
namespace {

// Longer than a century. Sums of two times stay far within int.
constexpr std::int64_t longest_time = std::int64_t{1} << 26;

std::vector<Requirement> requirements(const Piece& piece, const std::vector<int>& capacity) {
  std::vector<Requirement> out;
  for (std::size_t r = 0; r < piece.takes.size(); ++r) {
    const int amount = piece.takes[r];
    if (amount < 0) {
      throw std::invalid_argument("an activity takes less than nothing of a resource");
    }
    if (amount == 0) {
      continue;
    }
    if (r >= capacity.size()) {
      throw std::invalid_argument("an activity takes a resource that is not there");
    }
    if (piece.minutes > 0 && amount > capacity[r]) {
      throw std::invalid_argument("an activity takes more of a resource than there is");
    }
    out.push_back({r, amount});
  }
  return out;
}

bool same(const std::vector<Requirement>& a, const std::vector<Requirement>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const Requirement& x, const Requirement& y) {
                      return x.resource == y.resource && x.amount == y.amount;
                    });
}

std::vector<Part> parts(const Activity& activity, const std::vector<int>& capacity) {
  std::vector<Part> out;
  int offset = 0;
  for (const Piece& piece : activity.pieces) {
    std::vector<Requirement> takes = requirements(piece, capacity);
    if (!out.empty() && same(out.back().takes, takes)) {
      out.back().minutes += piece.minutes;
    } else if (piece.minutes > 0) {
      out.push_back({offset, piece.minutes, std::move(takes)});
    }
    offset += piece.minutes;
  }
  std::erase_if(out, [](const Part& part) { return part.takes.empty(); });
  return out;
}

// Minutes of each activity, so that sums are safe before anything is added up.
void check_minutes(const Project& project) {
  std::int64_t sum = 0;
  for (const Activity& activity : project.activities) {
    for (const Piece& piece : activity.pieces) {
      if (piece.minutes < 0) {
        throw std::invalid_argument("an activity takes less than no time");
      }
      sum += piece.minutes;
      if (sum > longest_time) {
        throw std::invalid_argument("the activities take more than a hundred years");
      }
    }
  }
  if (std::any_of(project.capacity.begin(), project.capacity.end(), [](int c) { return c < 0; })) {
    throw std::invalid_argument("there is less than nothing of a resource");
  }
}

// Kahn 1962; of those that can come next the one with the smallest index.
std::vector<std::size_t> in_order(const std::vector<Interval>& tasks) {
  std::vector<std::size_t> waits;
  std::vector<std::size_t> open;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    waits.push_back(tasks[i].before.size());
    if (waits[i] == 0) {
      open.push_back(i);
    }
  }
  std::vector<std::size_t> out;
  while (!open.empty()) {
    const auto first = std::min_element(open.begin(), open.end());
    const std::size_t i = *first;
    open.erase(first);
    out.push_back(i);
    for (const std::size_t next : tasks[i].after) {
      if (--waits[next] == 0) {
        open.push_back(next);
      }
    }
  }
  if (out.size() < tasks.size()) {
    throw std::invalid_argument("activities wait for each other in a circle");
  }
  return out;
}

void measure_chains(ActivityNetwork& network) {
  for (const std::size_t i : network.order) {
    for (const std::size_t next : network.tasks[i].after) {
      network.tasks[next].head =
          std::max(network.tasks[next].head, network.tasks[i].head + network.tasks[i].minutes);
    }
  }
  for (auto i = network.order.rbegin(); i != network.order.rend(); ++i) {
    Interval& task = network.tasks[*i];
    task.tail = task.minutes;
    for (const std::size_t next : task.after) {
      task.tail = std::max(task.tail, task.minutes + network.tasks[next].tail);
    }
  }
}

} // namespace

ActivityNetwork activity_network(const Project& project) {
  check_minutes(project);
  ActivityNetwork out;
  out.capacity = project.capacity;
  out.tasks.resize(project.activities.size());
  for (std::size_t i = 0; i < out.tasks.size(); ++i) {
    Interval& task = out.tasks[i];
    task.minutes = project.activities[i].minutes();
    task.parts = parts(project.activities[i], project.capacity);
    task.before = project.activities[i].after;
    std::sort(task.before.begin(), task.before.end());
    task.before.erase(std::unique(task.before.begin(), task.before.end()), task.before.end());
    for (const std::size_t before : task.before) {
      if (before >= out.tasks.size()) {
        throw std::invalid_argument("an activity waits for one that is not there");
      }
      out.tasks[before].after.push_back(i);
    }
  }
  out.order = in_order(out.tasks);
  measure_chains(out);
  return out;
}

ActivityNetwork mirrored(const ActivityNetwork& network) {
  ActivityNetwork out = network;
  for (Interval& task : out.tasks) {
    std::swap(task.before, task.after);
    const int tail = task.tail;
    task.tail = task.head + task.minutes;
    task.head = tail - task.minutes;
    std::reverse(task.parts.begin(), task.parts.end());
    for (Part& part : task.parts) {
      part.offset = task.minutes - part.offset - part.minutes;
    }
  }
  std::reverse(out.order.begin(), out.order.end());
  return out;
}

} // namespace manciple::scheduling
