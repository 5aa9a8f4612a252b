#pragma once

#include "measure/units.hpp"
#include "text/date.hpp"

#include <optional>
#include <string>
#include <vector>

/// What the program does for each command. Each gives the exit code: 0 good, 1 the input has
/// errors.
namespace manciple::cli {

/// What `build` is asked for.
struct BuildRequest {
  std::string plan;
  std::string out;     ///< the folder to write to; empty: out/ and the plan's name
  double search = 1;   ///< how hard to look for the cheapest list, times the usual work
  bool strict = false; ///< what is still to be found, not known or counted long ago is an error
  std::optional<text::Date> as_of; ///< the day from which is planned
};

/// What `compare` is asked for.
struct CompareRequest {
  std::string before;     ///< a result, its folder or a plan; with `plan`, a revision of git
  std::string after;      ///< likewise; with `plan`, empty for the working files
  std::string plan;       ///< the plan whose revisions are compared
  bool exit_code = false; ///< whether something changed is told by the exit code
};

/// What `use-up` is asked for.
struct UseUpRequest {
  std::string plan;
  std::string date; ///< what is there on this day; empty: all that the plan leaves
  std::string food; ///< only this one; empty: all
};

/// Makes a folder with a small house in it that builds, all at once; nothing that is there is
/// touched.
int new_house(const std::string& folder, measure::System system, text::Date from);
int build(const BuildRequest& request);
int compare(const CompareRequest& request);
int check(const std::vector<std::string>& files);
int why(const std::string& food, const std::string& plan);
int food(const std::string& name);
/// The foods of a class, or those that a diet does without.
int foods_of_class(const std::string& word);
int convert(const std::string& amount, const std::string& to);
int prices(const std::optional<std::string>& food, const std::string& plan);
int day(const std::string& date, const std::string& plan);
int use_up(const UseUpRequest& request);
int prep(const std::string& plan);
/// What the list says of a day of shopping, as a receipt for each stop; written into plans/receipts
/// where `write` says so, but over none that is there.
int receipt(const std::string& date, const std::string& plan, bool write);
/// What should be in the house in the morning of a day (empty: the day from which is planned), as a
/// file of what is on hand; written into plans/on-hand where `write` says so.
int on_hand(const std::string& date, const std::string& plan, bool write);
/// What plans came to by their receipts (all plans of the house where none is named); with `write`
/// as a page, too.
int review(const std::vector<std::string>& plans, bool write);
/// A receipt beside the list, and what the price list should say now; changed there where `write`
/// says so.
int settle(const std::string& receipt, const std::string& plan, bool write);
/// A later count beside what should have been there.
int settle_count(const std::string& count, const std::string& plan);
/// The keys of a kind of file (all kinds where it is empty), with what stands at each, in the
/// examples of a system of measures; where it is empty, in those of the house here.
int keys(const std::string& kind, const std::string& measures);
/// The JSON Schema of a kind of file, for editors.
int schema(const std::string& kind);

} // namespace manciple::cli
