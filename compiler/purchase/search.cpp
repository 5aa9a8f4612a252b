#include "purchase/search.hpp"

#include <algorithm>

#include "purchase/assemble.hpp"
#include "purchase/coupled.hpp"
#include "purchase/prices.hpp"

namespace manciple::purchase {
namespace {

/// What each good buys when exactly these stops are made.
std::vector<std::vector<Buy>> buys_with(Ledger& ledger, const std::vector<bool>& made) {
  std::vector<StopState> states;
  for (const bool stop : made)
    states.push_back(stop ? StopState::open : StopState::closed);
  const Basket basket(ledger, states);
  std::vector<std::vector<Buy>> buys;
  for (GoodId good = 0; good < ledger.goods().size(); ++good)
    buys.push_back(basket.outcome(good).buys);
  return buys;
}

Solution search_uncoupled(const Model& model, const std::vector<Prepared>& goods,
                          const std::vector<StopChoice>& choices, const Options& options) {
  Limits limits(options);
  Ledger ledger(model, goods);
  const StopsResult result = choose_stops(ledger, plain_terms(model), choices, limits);
  Solution solution;
  if (is_possible(result.cost)) {
    solution = assemble(model, goods, result.made, buys_with(ledger, result.made));
    solution.status = result.bound >= result.cost ? Status::optimal : Status::feasible;
    solution.bound =
        solution.status == Status::optimal ? solution.total : to_money(result.bound.value);
  } else {
    solution.status = is_possible(result.bound) ? Status::unknown : Status::infeasible;
  }
  solution.nodes = limits.nodes();
  solution.subproblems = ledger.subproblems();
  return solution;
}

} // namespace

Solution search(const Model& model, const std::vector<Prepared>& goods,
                const std::vector<StopChoice>& choices, const Options& options) {
  return is_coupled(model) ? search_coupled(model, goods, choices, options)
                           : search_uncoupled(model, goods, choices, options);
}

} // namespace manciple::purchase
