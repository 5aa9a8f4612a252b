#pragma once

#include <vector>

#include "purchase/combine.hpp"

namespace manciple::purchase {

/// Given a choice of plans that spends enough at several stops together: shares it out among them
/// so that each gets what must be spent there, to the last Money, with plans that cost no more,
/// take no more room and spend no less elsewhere. `together` lists the spend rows whose limits are
/// kept in sum. The stops are filled one after the other, and what is missing or too much there is
/// a subset sum, found from two sorted lists of what a few goods can add (Horowitz and Sahni 1974).
/// Where that does not succeed, the result may still break limits.
std::vector<std::size_t> balance(const std::vector<PlanSet>& goods, const Joint& joint,
                                 std::vector<std::size_t> together, std::vector<std::size_t> plan);

} // namespace manciple::purchase
