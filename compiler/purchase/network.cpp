#include "purchase/network.hpp"

#include <algorithm>
#include <tuple>

#include "purchase/room_price.hpp"

namespace manciple::purchase {

Cost Network::length(const Edge& edge, const Tariff& tariff) const {
  Cost length = edge.cost;
  for (std::size_t i = edge.paid; i < edge.paid_end; ++i) {
    if (tariff.closed[paid[i].stop] != 0)
      return impossible;
    length.value -= paid[i].money * tariff.discount[paid[i].stop];
  }
  const Good& facts = *good_->good;
  for (std::size_t i = edge.held; i < edge.held_end; ++i) {
    const Held& part = held[i];
    const std::vector<Fine>& room =
        tariff.room[static_cast<std::size_t>(part.frozen ? Place::freezer : facts.cool_place)];
    if (room.empty())
      continue;
    const auto before = [&](Day day) {
      return room[static_cast<std::size_t>(
          std::clamp<Day>(day, 0, static_cast<Day>(room.size()) - 1))];
    };
    length.value += priced(part.amount, (before(part.until) - before(part.from)) *
                                            (part.frozen ? facts.room_frozen : facts.room_cool));
  }
  return length;
}

std::vector<Cost> Network::lengths(const Tariff& tariff) const {
  std::vector<Cost> lengths;
  lengths.reserve(edges.size());
  for (const Edge& edge : edges)
    lengths.push_back(length(edge, tariff));
  return lengths;
}

std::vector<Cost> Network::to_end(const std::vector<Cost>& lengths) const {
  std::vector<Cost> result(nodes.size(), impossible);
  for (std::size_t node = nodes.size(); node-- > 0;) {
    if (nodes[node].edges == nodes[node].edges_end)
      result[node] = Cost{};
    for (std::size_t e = nodes[node].edges; e < nodes[node].edges_end; ++e)
      result[node] = std::min(result[node], lengths[e] + result[edges[e].to]);
  }
  return result;
}

void Network::add_arcs(std::size_t stops) {
  arcs_.reserve(edges.size());
  for (const Edge& edge : edges) {
    Arc arc{edge.cost.value,
            0,
            static_cast<std::uint32_t>(stops),
            static_cast<std::int32_t>(edge.cost.ties),
            static_cast<std::uint32_t>(edge.to),
            edge.paid_end > edge.paid + 1,
            edge.held_end > edge.held};
    if (edge.paid_end == edge.paid + 1) {
      arc.money = paid[edge.paid].money;
      arc.stop = static_cast<std::uint32_t>(paid[edge.paid].stop);
    }
    arcs_.push_back(arc);
  }
  for (std::size_t node = nodes.size(); node-- > 0;)
    for (std::size_t e = nodes[node].edges; e < nodes[node].edges_end; ++e)
      for (std::size_t i = edges[e].paid; i < edges[e].paid_end; ++i)
        if (std::none_of(last_at_.begin(), last_at_.end(),
                         [&](const auto& last) { return last.first == paid[i].stop; }))
          last_at_.emplace_back(paid[i].stop, node);
}

Cost Network::shortest(const Tariff& tariff, Way& way) const {
  return shortest(tariff, way, nodes.size());
}

Cost Network::shortest(const Tariff& tariff, const Tariff& before, Way& way) const {
  const auto room_costs_the_same = [&](Place place) {
    const auto at = static_cast<std::size_t>(place);
    return tariff.room[at] == before.room[at];
  };
  if (!room_costs_the_same(good_->good->cool_place) ||
      (good_->good->keeps_frozen && !room_costs_the_same(Place::freezer)))
    return shortest(tariff, way);
  std::size_t count = 0;
  for (const auto& [stop, node] : last_at_)
    if (tariff.discount[stop] != before.discount[stop] ||
        tariff.closed[stop] != before.closed[stop])
      count = std::max(count, node + 1);
  return count == 0 ? way.length() : shortest(tariff, way, count);
}

Cost Network::shortest(const Tariff& tariff, Way& way, std::size_t count) const {
  const bool room_costs =
      !tariff.room[static_cast<std::size_t>(good_->good->cool_place)].empty() ||
      (good_->good->keeps_frozen && !tariff.room[static_cast<std::size_t>(Place::freezer)].empty());
  way.to_end.resize(nodes.size());
  way.next.resize(nodes.size());
  const Arc* const arcs = arcs_.data();
  const Cost* const to_end = way.to_end.data();
  const char* const closed = tariff.closed.data();
  const Fine* const discount = tariff.discount.data();
  for (std::size_t node = count; node-- > 0;) {
    const std::size_t begin = nodes[node].edges;
    const std::size_t end = nodes[node].edges_end;
    Cost nearest = begin == end ? Cost{} : impossible;
    std::size_t next = begin;
    for (std::size_t e = begin; e < end; ++e) {
      const Arc& arc = arcs[e];
      if (closed[arc.stop] != 0)
        continue;
      Cost through = to_end[arc.to];
      if (arc.mixed || (room_costs && arc.holds)) {
        through += length(edges[e], tariff);
      } else {
        through.value += arc.cost - arc.money * discount[arc.stop];
        if (through.value > nearest.value)
          continue;
        through.ties += arc.packs;
      }
      if (through < nearest) {
        nearest = through;
        next = e;
      }
    }
    way.to_end[node] = nearest;
    way.next[node] = static_cast<std::uint32_t>(next);
  }
  way.path.clear();
  if (!is_possible(way.length()))
    return impossible;
  for (std::size_t node = 0; nodes[node].edges < nodes[node].edges_end;) {
    way.path.push_back(way.next[node]);
    node = edges[way.path.back()].to;
  }
  return way.length();
}

Cost Network::charges(const Edge& edge, const std::vector<Cost>& charge,
                      std::optional<StopId> paid_for) const {
  Cost sum;
  for (std::size_t i = edge.paid; i < edge.paid_end; ++i)
    if (paid[i].stop != paid_for && (i == edge.paid || paid[i].stop != paid[i - 1].stop))
      sum += charge[paid[i].stop];
  return sum;
}

/// A stop's offers come one stage after the other, unless they are all of one stage. So nodes that
/// ways pass in between count twice: before and after its charge is paid.
Cost Network::shortest(const Tariff& tariff, const std::vector<Cost>& charge, Way& way) const {
  const std::size_t count = nodes.size();
  way.to_end.resize(2 * count);
  way.next.resize(2 * count);
  const auto next_of = [&](std::size_t node, const Edge& edge, bool paid_for) {
    const bool pays = paid_for || edge.paid_end > edge.paid;
    const bool stays = nodes[edge.to].stop && nodes[edge.to].stop == nodes[node].stop;
    return edge.to + (pays && stays ? count : 0);
  };
  for (std::size_t node = count; node-- > 0;) {
    const Node& here = nodes[node];
    const Cost at_end = here.edges == here.edges_end ? Cost{} : impossible;
    way.to_end[node] = way.to_end[node + count] = at_end;
    for (std::size_t e = here.edges; e < here.edges_end; ++e) {
      const Cost length_of_edge = length(edges[e], tariff);
      for (const bool paid_for : {false, true}) {
        const Cost through =
            length_of_edge +
            charges(edges[e], charge, paid_for ? here.stop : std::optional<StopId>{}) +
            way.to_end[next_of(node, edges[e], paid_for)];
        const std::size_t from = node + (paid_for ? count : 0);
        if (through < way.to_end[from]) {
          way.to_end[from] = through;
          way.next[from] = static_cast<std::uint32_t>(e);
        }
      }
    }
  }
  way.path.clear();
  if (!is_possible(way.length()))
    return impossible;
  for (std::size_t at = 0; nodes[at % count].edges < nodes[at % count].edges_end;) {
    way.path.push_back(way.next[at]);
    at = next_of(at % count, edges[way.path.back()], at >= count);
  }
  return way.length();
}

void Network::add(const Path& path, Bundle& bundle) const {
  for (const std::size_t e : path) {
    bundle.cost += edges[e].cost;
    for (std::size_t i = edges[e].paid; i < edges[e].paid_end; ++i)
      bundle.spent[paid[i].stop] += paid[i].money;
    for (std::size_t i = edges[e].held; i < edges[e].held_end; ++i)
      add_room(held[i], bundle.room);
  }
}

std::vector<Buy> Network::buys(const Path& path) const {
  std::vector<Buy> buys;
  for (const std::size_t e : path)
    for (std::size_t i = edges[e].paid; i < edges[e].paid_end; ++i)
      buys.push_back(paid[i].buy);
  std::sort(buys.begin(), buys.end(), [](const Buy& a, const Buy& b) {
    return std::tie(a.visit, a.offer) < std::tie(b.visit, b.offer);
  });
  return buys;
}

bool Network::buys_at(StopId stop) const {
  return std::any_of(last_at_.begin(), last_at_.end(),
                     [&](const auto& last) { return last.first == stop; });
}

void Network::shrink(const std::vector<Cost>& lengths, Fine longest) {
  Network small(*good_);
  small.least = least;
  small.finished = finished;
  const std::vector<Cost> ahead = to_end(lengths);
  std::vector<Fine> behind(nodes.size(), impossible.value);
  behind[0] = 0;
  std::vector<std::size_t> number(nodes.size(), 0);
  std::vector<bool> stays(nodes.size(), false);
  std::vector<bool> edge_stays(edges.size(), false);
  stays[0] = true;
  for (std::size_t node = 0; node < nodes.size(); ++node)
    for (std::size_t e = nodes[node].edges; stays[node] && e < nodes[node].edges_end; ++e) {
      const Fine so_far = behind[node] + lengths[e].value;
      if (!is_possible(lengths[e]) || !is_possible(ahead[edges[e].to]) ||
          so_far + ahead[edges[e].to].value > longest)
        continue;
      edge_stays[e] = stays[edges[e].to] = true;
      behind[edges[e].to] = std::min(behind[edges[e].to], so_far);
    }
  for (std::size_t node = 0; node < nodes.size(); ++node) {
    if (!stays[node])
      continue;
    number[node] = small.nodes.size();
    Node kept{small.edges.size(), 0, nodes[node].stop};
    for (std::size_t e = nodes[node].edges; e < nodes[node].edges_end; ++e) {
      if (!edge_stays[e])
        continue;
      Edge edge = edges[e];
      edge.paid = small.paid.size();
      edge.held = small.held.size();
      for (std::size_t i = edges[e].paid; i < edges[e].paid_end; ++i)
        small.paid.push_back(paid[i]);
      for (std::size_t i = edges[e].held; i < edges[e].held_end; ++i)
        small.held.push_back(held[i]);
      edge.paid_end = small.paid.size();
      edge.held_end = small.held.size();
      small.edges.push_back(edge);
    }
    kept.edges_end = small.edges.size();
    small.nodes.push_back(kept);
  }
  for (Edge& edge : small.edges)
    edge.to = number[edge.to];
  *this = std::move(small);
}

std::int64_t Network::room(const Held& part, Place place, Day night) const {
  const Good& facts = *good_->good;
  if (place != (part.frozen ? Place::freezer : facts.cool_place) || night < part.from ||
      night >= part.until)
    return 0;
  return part.amount * (part.frozen ? facts.room_frozen : facts.room_cool);
}

void Network::add_room(const Held& part, RoomSums& sums) const {
  const Good& facts = *good_->good;
  std::vector<std::int64_t>& nights =
      sums[static_cast<std::size_t>(part.frozen ? Place::freezer : facts.cool_place)];
  if (nights.empty())
    return;
  const std::int64_t room = part.amount * (part.frozen ? facts.room_frozen : facts.room_cool);
  for (Day night = std::max(0, part.from); night < part.until; ++night)
    nights[static_cast<std::size_t>(night)] += room;
}

} // namespace manciple::purchase
