#include "prep/clean_first.hpp"
#include "prep/session_work.hpp"

#include <fmt/format.h>

#include <set>
#include <utility>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using resolve::Making;
using resolve::Resolved;

// Recipes that are part of recipes made in the same session.
void order_parts(const Resolved& resolved, SessionWork& work) {
  for (const Making& making : resolved.makings) {
    for (const resolve::Consumer& consumer : making.consumers) {
      const auto* parent = std::get_if<MakingId>(&consumer.who);
      if (parent == nullptr || !work.steps.contains(making.id) || !work.steps.contains(*parent)) {
        continue;
      }
      work.jobs[work.steps[*parent].first].job.after.push_back(work.last_step(making.id));
    }
  }
  for (const resolve::ByProduct& one : resolved.by_products) {
    for (const resolve::ByProduct::Part& part : one.parts) {
      if (work.steps.contains(one.of) && work.steps.contains(part.into)) {
        work.jobs[work.steps[part.into].first].job.after.push_back(work.last_of_method(one.of));
      }
    }
  }
}

// On the board ready-to-eat food goes first, raw poultry last; before what somebody must not have,
// what harms nobody.
void order_boards(SessionWork& work) {
  for (std::size_t later = 0; later < work.jobs.size(); ++later) {
    for (std::size_t earlier = 0; earlier < work.jobs.size(); ++earlier) {
      const auto rank = [&](std::size_t w) {
        return std::pair(work.jobs[w].risk, work.jobs[w].harms);
      };
      if (work.jobs[later].on_board && work.jobs[earlier].on_board && rank(earlier) < rank(later)) {
        work.jobs[later].job.after.push_back(earlier);
      }
    }
  }
}

// Whether a job cannot begin before another has ended.
bool waits_for(const SessionWork& work, std::size_t job, std::size_t other) {
  std::vector<bool> seen(work.jobs.size(), false);
  std::vector<std::size_t> open{job};
  while (!open.empty()) {
    const std::size_t next = open.back();
    open.pop_back();
    for (const std::size_t before : work.jobs[next].job.after) {
      if (before == other) {
        return true;
      }
      if (!seen[before]) {
        seen[before] = true;
        open.push_back(before);
      }
    }
  }
  return false;
}

void wash_between(std::size_t then, std::size_t first, const std::string& why, SessionWork& work) {
  Task task;
  task.kind = Task::Kind::wash;
  task.what = fmt::format("Wash boards, knives, bowls and hands: {}", why);
  task.hands_on = thorough_wash;
  task.making = work.jobs[first].making;
  SessionJob wash;
  wash.making = work.jobs[first].making;
  wash.job.after = {then};
  wash.add(std::move(task));
  work.jobs[first].job.after.push_back(work.jobs.size());
  work.jobs.push_back(std::move(wash));
}

// What somebody eats is begun before what they must not have. Where that cannot be, since the other
// is needed for it or is itself for somebody who must avoid something, boards are washed between.
void make_clean_first(const Kitchen& kitchen, const Resolved& resolved, std::size_t session,
                      SessionWork& work) {
  std::set<MakingId> said;
  std::set<std::pair<MakingId, MakingId>> washed;
  for (const CleanFirst& one : clean_first_in(kitchen, resolved, session)) {
    if (!work.steps.contains(one.first) || !work.steps.contains(one.then)) {
      continue;
    }
    const std::size_t first = work.steps[one.first].first;
    const std::size_t then = work.steps[one.then].first;
    const bool late = waits_for(work, first, then);
    if (!late) {
      work.jobs[then].job.after.push_back(first);
    }
    for (const std::size_t cut : work.before[one.then]) {
      if (work.jobs[cut].harms && !waits_for(work, first, cut)) {
        work.jobs[cut].job.after.push_back(first);
      }
    }
    if (late && washed.insert({one.first, one.then}).second) {
      wash_between(then, first, one.why, work);
    } else if (!late && said.insert(one.first).second) {
      work.jobs[first].tasks.back().second.what +=
          fmt::format(" (made first, with clean boards and knives: {})", one.why);
    }
  }
}

} // namespace

void set_order(const Kitchen& kitchen, const Resolved& resolved, std::size_t session,
               SessionWork& work) {
  order_parts(resolved, work);
  order_boards(work);
  make_clean_first(kitchen, resolved, session, work);
}

} // namespace manciple::prep
