#pragma once

#include "prep/cutting.hpp"
#include "prep/freezing.hpp"
#include "prep/placing.hpp"

#include <functional>
#include <map>
#include <set>
#include <utility>
#include <vector>

namespace manciple::prep {

/// Minutes to wash boards, knives, bowls and hands before somebody else's food touches them. Common
/// practice, no source.
inline constexpr int thorough_wash = 4;

/// A job of a session with the tasks that it consists of, and where in it each begins.
struct SessionJob {
  Job job;
  std::vector<std::pair<int, Task>> tasks;
  std::optional<MakingId> making;
  int risk = 0;          ///< of what lies on the board: the higher, the later
  bool on_board = false; ///< cut or portioned
  bool harms = false;    ///< of what somebody must not have

  /// Adds a task to the end of the job.
  void add(Task task);
};

/// All jobs of a session, and what they are for.
struct SessionWork {
  std::vector<SessionJob> jobs;
  std::map<MakingId, std::vector<std::size_t>> before;           ///< weighing and cutting
  std::map<MakingId, std::pair<std::size_t, std::size_t>> steps; ///< first and last job
  std::set<std::size_t> cut_today;                 ///< jobs that cut for a meal of the day
  std::map<std::size_t, std::size_t> cooled_after; ///< by job that cools: what came off the heat

  /// The last job of a making whose last task is such a one; its first, if none is.
  [[nodiscard]] std::size_t last_where(MakingId id,
                                       const std::function<bool(const Task&)>& is) const;
  /// The job after which a making can be used: it need not be cooled and put away before that.
  [[nodiscard]] std::size_t last_step(MakingId id) const;
  /// What a making leaves over is there when the last step of its method is done, cooling or not.
  [[nodiscard]] std::size_t last_of_method(MakingId id) const;
};

/// What a session weighs, cuts, portions, cooks, cools, puts away and washes up, in the order in
/// which some of it has to be done. `cut`: what is cut before, by making.
SessionWork session_work(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                         const std::vector<Freezing>& freezing,
                         const std::map<MakingId, CutBefore>& cut, std::size_t session);

/// Adds what must be done before what: parts before what they go into; on the board ready-to-eat
/// food before raw meat, and what harms nobody before what somebody must not have; what somebody
/// eats before what they must not have.
void set_order(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
               std::size_t session, SessionWork& work);

/// Heating an oven for a making.
Task heat_up(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved, MakingId making,
             std::string_view oven, int fahrenheit);

} // namespace manciple::prep
