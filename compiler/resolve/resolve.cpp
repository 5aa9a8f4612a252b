#include "resolve/resolve.hpp"

#include "resolve/eaters.hpp"
#include "resolve/graph.hpp"
#include "resolve/limits.hpp"
#include "resolve/makings.hpp"
#include "resolve/shares.hpp"
#include "resolve/uses.hpp"

#include <algorithm>

namespace manciple::resolve {

Resolved resolve(const kitchen::Kitchen& kitchen, text::Diagnostics& diagnostics) {
  Resolved out;
  const std::vector<RecipeId> order = order_of_need(kitchen, diagnostics);
  if (order.size() != kitchen.recipes.size()) {
    return out; // a circle: nothing below would come to an end
  }
  out.labels = check_limits(kitchen, diagnostics);
  out.servings = servings(kitchen, diagnostics);
  out.makings = makings(kitchen, out.servings, order, diagnostics);
  if (diagnostics.errors() > 0) {
    return out;
  }
  out.shares = shares(out.makings);
  out.uses = uses(kitchen, out.makings);
  if (!kitchen.household.buys_optional) {
    const auto optional = std::stable_partition(out.uses.begin(), out.uses.end(),
                                                [](const Use& use) { return !use.optional; });
    out.left_out.assign(optional, out.uses.end());
    out.uses.erase(optional, out.uses.end());
  }
  return out;
}

} // namespace manciple::resolve
