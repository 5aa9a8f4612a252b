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

/// What is to be kept of what a making leaves over, a text each: "Put 1 ham bone from Glazed ham
/// into the fridge, for Split pea soup on Mon 29 Mar"; of what nothing takes: "Keep 1 ham bone for
/// something else, good until ...". What is used on the same day is not put away.
std::vector<std::string> put_away(const kitchen::Kitchen& kitchen,
                                  const resolve::Resolved& resolved, resolve::MakingId of);

/// "good until Thu 1 Apr, or until 2027-05-28 in the freezer"; empty if it does not keep.
std::string keeps_until(const resolve::ByProduct& one);

/// The same in one line, for a session's sheet; empty where there is nothing.
std::string put_away_together(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                              resolve::MakingId of);

} // namespace manciple::prep
