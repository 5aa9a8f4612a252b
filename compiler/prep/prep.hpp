#pragma once

#include "kitchen/kitchen.hpp"
#include "purchase/shopping.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <string>
#include <vector>

/// What is done at home: in the prep sessions, and day by day between them.
namespace manciple::prep {

using measure::Rational;
using resolve::MakingId;
using text::Date;

/// What some work takes of hands and appliances.
struct Effort {
  int hands_on = 0; ///< minutes
  int then = 0;     ///< minutes unattended afterwards
  std::string appliance;
  int places = 1;          ///< so many of the appliance
  std::string vessel = {}; ///< what it is done in, and how many of them
  int vessels = 0;
  std::optional<int> fahrenheit;
};

/// Some work of a session.
struct Task : Effort {
  enum class Kind { weigh, cut, cook, portion, preheat, cool, store, wash };
  Kind kind = Kind::cook;
  std::string what;                ///< "Dice 2.3 lb onion", "Vegetable stock: simmer"
  std::string purpose;             ///< which dishes it is for
  std::optional<MakingId> making;  ///< of a step
  std::optional<std::size_t> step; ///< of the recipe's method
  std::optional<int> by; ///< minutes from the session's start when it must have ended: cooling
  int start = 0;         ///< minutes from the session's start
  std::optional<std::size_t> cook; ///< who does it, when it takes hands
  std::vector<std::size_t> after;  ///< tasks of the session that must have ended
};

struct SessionPlan {
  std::size_t session = 0; ///< of the plan
  std::vector<Task> tasks; ///< by start
  int length = 0;          ///< minutes
  int bound = 0;           ///< no schedule is shorter
};

/// Something to remember on a day.
struct Reminder {
  enum class Kind { thaw, soak, marinate, ripen, freeze, use_up, leftovers, pack };
  Kind kind = Kind::thaw;
  Date date;
  std::optional<int> clock; ///< minutes from midnight, where it matters
  std::string what;
  std::optional<MakingId> making = {}; ///< of which it is a part
  std::optional<int> lasts = {};       ///< minutes that it takes at least: soaking, marinating
};

/// What is cooked on a day outside the sessions, in minutes from midnight.
struct Cooking {
  /// A step of the recipe's method that is done then.
  struct Step : Effort {
    std::size_t step = 0;
    std::string what;
    int start = 0;
    std::string who = {}; ///< who does it; empty when nobody says
    int preheat = 0; ///< minutes before its start the oven is turned on, or to another temperature
    int wash = 0;    ///< minutes to wash up after raw meat, right after the hands-on ones
  };
  MakingId making{};
  Date date;
  /// What is done of it before it stands (marinates, chills) until its day; else the rest.
  bool ahead = false;
  int start = 0; ///< of its first step
  int done = 0;  ///< end of its last one
  int ready = 0; ///< when it is wanted
  int hands_on = 0;
  std::vector<Step> steps;
  /// When it begins to stand, if it does and it is done here.
  std::optional<int> stands_from = {};
  std::vector<std::string> cooks = {}; ///< who does its steps, the first one first
  std::string first_for = {}; ///< who must not have what another dish has; it is made before that
};

/// What is written on a box or bag that is stored.
struct BoxLabel {
  std::string name;
  std::string purpose; ///< "Minestrone on Sat 20 Mar"; empty when it is for nothing yet
  std::string amount;
  Date made;
  Date use_by;
  foods::Place place{};
  std::string reheat;
  std::optional<MakingId> making; ///< of which it is a part; none for what is bought
};

struct Prep {
  std::vector<SessionPlan> sessions; ///< those with work
  std::vector<Cooking> cooking;      ///< by date and start
  std::vector<Reminder> reminders;   ///< by date
  std::vector<BoxLabel> labels;      ///< by the day they are made
};

/// Plans the work: sessions first, then the days around them; and what both ask to be remembered
/// and labelled. What cannot be done in time is told as a warning or a remark, never an error.
Prep prepare(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
             const purchase::Shopping& shopping, text::Diagnostics& diagnostics);

} // namespace manciple::prep
