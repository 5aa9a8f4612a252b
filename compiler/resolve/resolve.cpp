#include "resolve/resolve.hpp"

#include "resolve/allergens.hpp"
#include "resolve/eaters.hpp"
#include "resolve/graph.hpp"
#include "resolve/makings.hpp"
#include "resolve/shares.hpp"
#include "resolve/uses.hpp"

namespace manciple::resolve {

Resolved resolve(const kitchen::Kitchen& kitchen, text::Diagnostics& diagnostics) {
  Resolved out;
  const std::vector<RecipeId> order = order_of_need(kitchen, diagnostics);
  if (order.size() != kitchen.recipes.size()) {
    return out; // a circle: nothing below would come to an end
  }
  out.labels = check_allergens(kitchen, diagnostics);
  out.servings = servings(kitchen, diagnostics);
  out.makings = makings(kitchen, out.servings, order, diagnostics);
  if (diagnostics.errors() > 0) {
    return out;
  }
  out.shares = shares(out.makings);
  out.uses = uses(kitchen, out.makings);
  return out;
}

} // namespace manciple::resolve
