#pragma once

#include "compare/result.hpp"

#include <string>
#include <vector>

namespace manciple::compare {

/// What a change is in.
enum class Part : std::uint8_t { meals, list, prep, days, money };

/// One change, as a line: "more: 18 eggs instead of 12, The market Sun 3 Jan, $1.00 more".
struct Change {
  Part part{};
  std::string what;
};

struct Changes {
  std::string plan; ///< the plan's name, and the one before where that is another
  std::string sum;  ///< "$1019.40 in all, $5.60 less"; empty where nothing has a price
  std::vector<Change> all;

  [[nodiscard]] bool none() const { return all.empty(); }
};

/// What is otherwise in `after` than in `before`. Of plans for other days only what they cost.
Changes compare(const Result& before, const Result& after);

/// All of them as text, by part; short enough for the message of a commit.
std::string print(const Changes& changes);

/// The same for the end of a build: the first few, and how many more there are, with a command that
/// shows those where there is one.
std::string print_since_last_build(const Changes& changes, std::string_view command);

} // namespace manciple::compare
