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

bool reaches(const Graph& graph, std::size_t from, std::size_t to) {
  std::vector<bool> seen(boost::num_vertices(graph), false);
  std::vector<std::size_t> open{from};
  while (!open.empty()) {
    const std::size_t next = open.back();
    open.pop_back();
    if (next == to) {
      return true;
    }
    for (const auto& edge : boost::make_iterator_range(boost::out_edges(next, graph))) {
      const std::size_t there = boost::target(edge, graph);
      if (!seen[there]) {
        seen[there] = true;
        open.push_back(there);
      }
    }
  }
  return false;
}

// What recipes leave over to each other. None of it is needed: an edge that would close a circle is
// left out.
void add_by_products(const Kitchen& kitchen, Graph& graph) {
  const auto add = [&](RecipeId first, RecipeId then) {
    const auto one = static_cast<std::size_t>(first);
    const auto other = static_cast<std::size_t>(then);
    if (!reaches(graph, other, one)) {
      boost::add_edge(one, other, nullptr, graph);
    }
  };
  for (const Recipe& giver : kitchen.recipes) {
    for (const kitchen::GivesLine& given : giver.gives) {
      if (const RecipeId* recipe = given.what.recipe()) {
        add(giver.id, *recipe);
      }
      const auto asks = [&](const Ingredient& line) {
        const foods::FoodId* food = line.food();
        const foods::FoodId* of = given.what.food();
        return line.target == given.what.target || (food != nullptr && of != nullptr &&
                                                    kitchen.household.in_terms_of(*food).food ==
                                                        kitchen.household.in_terms_of(*of).food);
      };
      for (const Recipe& asking : kitchen.recipes) {
        if (std::any_of(asking.ingredients.begin(), asking.ingredients.end(), asks)) {
          add(asking.id, giver.id);
        }
      }
    }
  }
}

} // namespace

std::vector<RecipeId> order_of_need(const Kitchen& kitchen, text::Diagnostics& diagnostics) {
  Graph graph = graph_of(kitchen);
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
    add_by_products(kitchen, graph);
    std::vector<std::size_t> sorted;
    boost::topological_sort(graph, std::back_inserter(sorted));
    std::reverse(sorted.begin(), sorted.end());
    for (const std::size_t v : sorted) {
      order.push_back(RecipeId{static_cast<std::uint32_t>(v)});
    }
  }
  return order;
}

} // namespace manciple::resolve
