#pragma once

#include "buying/coupled/combine.hpp"

#include <vector>

namespace manciple::buying {

/// Given a choice of columns that spends enough at several stops together: shares it out among them
/// so that each gets what must be spent there, to the last Money, with columns that cost no more,
/// take no more room and spend no less elsewhere. `together` lists the spend rows whose limits are
/// kept in sum. The stops are filled one after the other, and what is missing or too much there is
/// a subset sum, found from two sorted lists of what a few items can add (Horowitz and Sahni 1974).
/// Where that does not succeed, the result may still break limits.
std::vector<std::size_t> balance(const std::vector<ColumnSet>& items, const Joint& joint,
                                 std::vector<std::size_t> together,
                                 std::vector<std::size_t> column);

} // namespace manciple::buying
