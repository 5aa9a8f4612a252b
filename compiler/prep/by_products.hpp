#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <string>
#include <vector>

/// What is done with what a dish leaves over for others.
namespace manciple::prep {

/// "ham bone", "Shredded chicken".
std::string name_given(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                       const resolve::ByProduct& one);

/// "1 ham bone", "3 cups of Shredded chicken".
std::string amount_given(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                         const resolve::ByProduct& one, const measure::Rational& amount);

/// Where it stands until it is taken.
foods::Place place_of(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                      const resolve::ByProduct& one, const resolve::ByProduct::Part& part);

/// "good until Thu 1 Apr, or until Fri 28 May in the freezer"; empty if it does not keep.
std::string keeps_until(const resolve::ByProduct& one);

/// What is to be kept of what a making leaves over. Refers to what is resolved.
struct PutAway {
  const resolve::ByProduct* of = nullptr;
  const resolve::ByProduct::Part* part = nullptr; ///< null: of what nothing takes
  std::string amount;                             ///< as `amount_given`
};
/// By what takes it, then what nothing does. What is used on the same day is not put away.
std::vector<PutAway> put_away(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                              resolve::MakingId of);

/// "Put 1 ham bone from Glazed ham into the fridge, for Split pea soup on Mon 29 Mar"; of what
/// nothing takes: "Put away 1 ham bone from Glazed ham, for something else: good until ...".
std::string in_words(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                     const PutAway& put);

/// All of one making in one line, for a session's sheet: "From Glazed ham: 1 ham bone into the
/// fridge, for Mon 29 Mar". There is at least one.
std::string in_one_line(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                        const std::vector<PutAway>& puts);

} // namespace manciple::prep
