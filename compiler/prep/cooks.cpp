#include "prep/cooks.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::prep {
namespace {

using CookIndex = std::optional<std::size_t>;

// Whoever has made the wash-up necessary.
CookIndex made_dirty(const Task& wash, const std::vector<Task>& before) {
  CookIndex out;
  for (const Task& task : before) {
    const bool by_it = wash.kind == Task::Kind::wash && task.hands_on > 0 &&
                       task.start + task.hands_on == wash.start && task.making == wash.making;
    out = by_it && task.cook ? task.cook : out;
  }
  return out;
}

// Whoever has begun the dish.
CookIndex begun_by(const OtherWork& work, const std::vector<OtherWork>& all) {
  CookIndex out;
  int last = work.from;
  for (const OtherWork& other : all) {
    if (other.dish == work.dish && other.cook && other.until <= work.from &&
        (!out || other.until >= last)) {
      out = other.cook;
      last = other.until;
    }
  }
  return out;
}

CookIndex take(std::vector<int>& free_at, int from, int until, CookIndex rather) {
  for (const bool any : {false, true}) {
    for (std::size_t c = 0; c < free_at.size(); ++c) {
      if (free_at[c] <= from && (any || !rather || c == *rather)) {
        free_at[c] = until;
        return c;
      }
    }
  }
  return std::nullopt;
}

} // namespace

std::vector<Task> assign_cooks(std::vector<Task> tasks, std::vector<int> free_at,
                               std::vector<OtherWork>& others) {
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
  std::stable_sort(others.begin(), others.end(),
                   [](const OtherWork& a, const OtherWork& b) { return a.from < b.from; });
  std::size_t next = 0;
  const auto give_others = [&](int until) {
    for (; next < others.size() && others[next].from < until; ++next) {
      OtherWork& work = others[next];
      work.cook = take(free_at, work.from, work.until, begun_by(work, others));
    }
  };
  std::vector<std::size_t> place(order.size());
  std::vector<Task> sorted;
  for (std::size_t i = 0; i < order.size(); ++i) {
    place[order[i]] = i;
    Task& task = tasks[order[i]];
    give_others(task.start);
    task.cook.reset();
    if (task.hands_on > 0) {
      task.cook = take(free_at, task.start, task.start + task.hands_on, made_dirty(task, sorted));
    }
    sorted.push_back(std::move(task));
  }
  give_others(text::minutes_a_day);
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
