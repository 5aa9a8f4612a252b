#include <algorithm>

#include "purchase/among_equals.hpp"
#include "purchase/search.hpp"
#include "purchase/shortage.hpp"
#include "purchase/validate.hpp"

namespace manciple::purchase {

Solution solve(const Model& model, const Options& options) {
  validate(model);
  std::vector<Prepared> goods;
  for (const Good& good : model.goods)
    goods.push_back(prepare(model, good));
  std::vector<StopChoice> choices;
  for (const Stop& stop : model.stops)
    choices.push_back(stop.always ? StopChoice::must : StopChoice::maybe);
  Solution solution = search(model, goods, choices, options);
  if (!solution.goods.empty())
    return among_equals(model, goods, solution);
  if (solution.status != Status::infeasible)
    return solution;
  solution.shortages = shortages(goods, model);
  if (solution.shortages.empty()) {
    // Every good can be had: there is no room for all of them.
    Model roomy = model;
    roomy.room = {};
    solution.shortages = room_shortage(goods, model, search(roomy, goods, choices, options));
  }
  return solution;
}

} // namespace manciple::purchase
