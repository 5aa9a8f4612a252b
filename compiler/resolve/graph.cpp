#include "resolve/graph.hpp"

#include "resolve/errors.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/strong_components.hpp>
#include <boost/graph/topological_sort.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <iterator>
#include <map>

namespace manciple::resolve {
namespace {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Recipe;
using kitchen::RecipeId;

// From a recipe to one that it needs; the edge carries the line that says so.
using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property,
                                    const Ingredient*>;

Graph graph_of(const Kitchen& kitchen) {
  Graph graph(kitchen.recipes.size());
  for (const Recipe& recipe : kitchen.recipes) {
    for (const Ingredient& ingredient : recipe.ingredients) {
      if (const RecipeId* needed = ingredient.recipe()) {
        boost::add_edge(static_cast<std::size_t>(recipe.id), static_cast<std::size_t>(*needed),
                        &ingredient, graph);
      }
    }
  }
  return graph;
}

// The shortest way from `start` back to itself inside its component, as edges; breadth first.
std::vector<const Ingredient*> circle(const Graph& graph, std::size_t start,
                                      const std::vector<std::size_t>& component) {
  std::map<std::size_t, Graph::edge_descriptor> came_by;
  std::deque<std::size_t> open{start};
  while (!open.empty()) {
    const std::size_t at = open.front();
    open.pop_front();
    for (const auto& edge : boost::make_iterator_range(boost::out_edges(at, graph))) {
      const std::size_t to = boost::target(edge, graph);
      if (component[to] != component[start] || !came_by.emplace(to, edge).second) {
        continue;
      }
      if (to != start) {
        open.push_back(to);
        continue;
      }
      std::vector<const Ingredient*> path;
      std::size_t back = start;
      do {
        path.push_back(graph[came_by.at(back)]);
        back = boost::source(came_by.at(back), graph);
      } while (back != start);
      std::reverse(path.begin(), path.end());
      return path;
    }
  }
  return {};
}

} // namespace

std::vector<RecipeId> order_of_need(const Kitchen& kitchen, text::Diagnostics& diagnostics) {
  const Graph graph = graph_of(kitchen);
  std::vector<std::size_t> component(boost::num_vertices(graph));
  const std::size_t components =
      component.empty()
          ? 0
          : boost::strong_components(
                graph, boost::make_iterator_property_map(component.begin(),
                                                         boost::get(boost::vertex_index, graph)));
  bool circles = false;
  std::vector<std::size_t> members(components, 0);
  for (const std::size_t c : component) {
    ++members[c];
  }
  std::vector<bool> told(components, false);
  for (std::size_t v = 0; v < component.size(); ++v) {
    const bool itself = boost::edge(v, v, graph).second;
    if (told[component[v]] || (members[component[v]] == 1 && !itself)) {
      continue;
    }
    const std::vector<const Ingredient*> path = circle(graph, v, component);
    if (path.empty()) {
      continue;
    }
    circles = true;
    told[component[v]] = true;
    std::string names = kitchen.recipes[v].name;
    for (const Ingredient* edge : path) {
      names += " -> " + kitchen.recipe(*edge->recipe()).name;
    }
    auto& said = diagnostics.error(errors::cycle, path.front()->at,
                                   fmt::format("recipes need each other in a circle: {}", names),
                                   "change one of them so that it does not need the other");
    for (const Ingredient* edge : path) {
      said.note(edge->at, fmt::format("needs {}", kitchen.recipe(*edge->recipe()).name));
    }
  }
  std::vector<RecipeId> order;
  if (!circles) {
    std::vector<std::size_t> backwards;
    boost::topological_sort(graph, std::back_inserter(backwards));
    for (auto v = backwards.rbegin(); v != backwards.rend(); ++v) {
      order.push_back(RecipeId{static_cast<std::uint32_t>(*v)});
    }
  }
  return order;
}

} // namespace manciple::resolve
