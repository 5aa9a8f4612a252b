#include "buying/network/network.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::buying {

Cost Network::length(const Edge& edge, const Tariff& tariff, const RoomRates& room) const {
  Cost length = edge.cost;
  for (std::size_t i = edge.paid; i < edge.paid_end; ++i) {
    const std::size_t stop = paid_[i].stop.index();
    if (tariff.closed[stop] != 0) {
      return impossible;
    }
    length.value -= paid_[i].till * tariff.discount[stop];
  }
  if (!room.free()) {
    for (std::size_t i = edge.stays; i < edge.stays_end; ++i) {
      length.value += room.of(stays_[i]);
    }
  }
  return length;
}

std::vector<Cost> Network::lengths(const Tariff& tariff) const {
  const RoomRates room = tariff.rates(*item_->item);
  std::vector<Cost> lengths;
  lengths.reserve(edges_.size());
  for (const Edge& edge : edges_) {
    lengths.push_back(length(edge, tariff, room));
  }
  return lengths;
}

std::vector<Cost> Network::to_end(const std::vector<Cost>& lengths) const {
  std::vector<Cost> result(nodes_.size(), impossible);
  for (std::size_t node = nodes_.size(); node-- > 0;) {
    if (nodes_[node].edges == nodes_[node].edges_end) {
      result[node] = Cost{};
    }
    for (std::size_t e = nodes_[node].edges; e < nodes_[node].edges_end; ++e) {
      if (is_possible(lengths[e])) {
        result[node] = std::min(result[node], lengths[e] + result[edges_[e].to]);
      }
    }
  }
  return result;
}

void Network::add_arcs(std::size_t stops) {
  arcs_.reserve(edges_.size());
  for (const Edge& edge : edges_) {
    Arc arc{edge.cost, 0, static_cast<std::uint32_t>(stops), static_cast<std::uint32_t>(edge.to),
            edge.stays_end > edge.stays};
    if (edge.paid_end > edge.paid) {
      arc.till = paid_[edge.paid].till;
      arc.stop = static_cast<std::uint32_t>(paid_[edge.paid].stop.index());
    }
    arcs_.push_back(arc);
  }
  for (std::size_t node = nodes_.size(); node-- > 0;) {
    for (std::size_t e = nodes_[node].edges; e < nodes_[node].edges_end; ++e) {
      for (std::size_t i = edges_[e].paid; i < edges_[e].paid_end; ++i) {
        if (!buys_at(paid_[i].stop)) {
          last_at_.emplace_back(paid_[i].stop, node);
        }
      }
    }
  }
}

Cost Network::shortest(const Tariff& tariff, Way& way) const {
  way.room = tariff.rates(*item_->item);
  return shortest(tariff, way, nodes_.size());
}

Cost Network::shortest(const Tariff& tariff, const Tariff& before, Way& way) const {
  RoomRates room = tariff.rates(*item_->item);
  if (room != way.room) {
    way.room = std::move(room);
    return shortest(tariff, way, nodes_.size());
  }
  std::size_t count = 0;
  for (const auto& [stop, node] : last_at_) {
    if (tariff.discount[stop.index()] != before.discount[stop.index()] ||
        tariff.closed[stop.index()] != before.closed[stop.index()]) {
      count = std::max(count, node + 1);
    }
  }
  return count == 0 ? way.length() : shortest(tariff, way, count);
}

Cost Network::shortest(const Tariff& tariff, Way& way, std::size_t count) const {
  const bool room_costs = !way.room.free();
  way.to_end.resize(nodes_.size());
  way.next.resize(nodes_.size());
  const Arc* const arcs = arcs_.data();
  const Cost* const to_end = way.to_end.data();
  const char* const closed = tariff.closed.data();
  const Fine* const discount = tariff.discount.data();
  for (std::size_t node = count; node-- > 0;) {
    const std::size_t begin = nodes_[node].edges;
    const std::size_t end = nodes_[node].edges_end;
    Cost nearest = begin == end ? Cost{} : impossible;
    std::size_t next = begin;
    for (std::size_t e = begin; e < end; ++e) {
      const Arc& arc = arcs[e];
      if (closed[arc.stop] != 0) {
        continue;
      }
      Cost through = to_end[arc.to];
      if (room_costs && arc.stays) {
        through += length(edges_[e], tariff, way.room);
      } else {
        through.value += arc.cost.value - arc.till * discount[arc.stop];
        if (through.value > nearest.value) {
          continue;
        }
        through.ties += arc.cost.ties;
      }
      if (through < nearest) {
        nearest = through;
        next = e;
      }
    }
    way.to_end[node] = nearest;
    way.next[node] = static_cast<std::uint32_t>(next);
  }
  follow(way);
  return way.length();
}

void Network::follow(Way& way) const {
  way.path.clear();
  if (!is_possible(way.length())) {
    return;
  }
  for (std::size_t node = 0; nodes_[node].edges < nodes_[node].edges_end;) {
    way.path.push_back(way.next[node]);
    node = edges_[way.path.back()].to;
  }
}

Cost Network::charges(const Edge& edge, const Table<StopId, Cost>& charge,
                      std::optional<StopId> paid_for) const {
  Cost sum;
  for (std::size_t i = edge.paid; i < edge.paid_end; ++i) {
    if (paid_[i].stop != paid_for) {
      sum += charge[paid_[i].stop];
    }
  }
  return sum;
}

/// A stop's offers come one edge after the other. So nodes that ways pass in between count twice:
/// before and after its charge is paid.
Cost Network::shortest(const Tariff& tariff, const Table<StopId, Cost>& charge, Way& way) const {
  const std::size_t count = nodes_.size();
  way.room = tariff.rates(*item_->item);
  way.to_end.resize(2 * count);
  way.next.resize(2 * count);
  const auto next_of = [&](std::size_t node, const Edge& edge, bool paid_for) {
    const bool pays = paid_for || edge.paid_end > edge.paid;
    const bool stays_there = nodes_[edge.to].stop && nodes_[edge.to].stop == nodes_[node].stop;
    return edge.to + (pays && stays_there ? count : 0);
  };
  for (std::size_t node = count; node-- > 0;) {
    const Node& here = nodes_[node];
    const Cost at_end = here.edges == here.edges_end ? Cost{} : impossible;
    way.to_end[node] = way.to_end[node + count] = at_end;
    for (std::size_t e = here.edges; e < here.edges_end; ++e) {
      const Cost length_of_edge = length(edges_[e], tariff, way.room);
      if (!is_possible(length_of_edge)) {
        continue;
      }
      for (const bool paid_for : {false, true}) {
        const Cost through =
            length_of_edge +
            charges(edges_[e], charge, paid_for ? here.stop : std::optional<StopId>{}) +
            way.to_end[next_of(node, edges_[e], paid_for)];
        const std::size_t from = node + (paid_for ? count : 0);
        if (through < way.to_end[from]) {
          way.to_end[from] = through;
          way.next[from] = static_cast<std::uint32_t>(e);
        }
      }
    }
  }
  way.path.clear();
  if (!is_possible(way.length())) {
    return impossible;
  }
  const auto node_of = [&](std::size_t at) { return at < count ? at : at - count; };
  for (std::size_t at = 0; nodes_[node_of(at)].edges < nodes_[node_of(at)].edges_end;) {
    way.path.push_back(way.next[at]);
    at = next_of(node_of(at), edges_[way.path.back()], at >= count);
  }
  return way.length();
}

void Network::add(const Path& path, Bundle& bundle) const {
  for (const std::size_t e : path) {
    bundle.cost += edges_[e].cost;
    for (std::size_t i = edges_[e].paid; i < edges_[e].paid_end; ++i) {
      bundle.spent[paid_[i].stop] += paid_[i].till;
    }
    for (std::size_t i = edges_[e].stays; i < edges_[e].stays_end; ++i) {
      add_stay(*item_->item, stays_[i], bundle.room);
    }
  }
}

ItemPlan Network::plan(const Path& path) const {
  ItemPlan plan;
  plan.apart = item_->takes_room;
  for (const std::size_t e : path) {
    const Edge& edge = edges_[e];
    for (std::size_t i = edge.paid; i < edge.paid_end; ++i) {
      plan.buys.push_back(paid_[i].buy);
    }
    plan.choices.insert(plan.choices.end(),
                        choices_.begin() + static_cast<std::ptrdiff_t>(edge.choices),
                        choices_.begin() + static_cast<std::ptrdiff_t>(edge.choices_end));
  }
  return plan;
}

bool Network::buys_at(StopId stop) const {
  return std::any_of(last_at_.begin(), last_at_.end(),
                     [&](const auto& last) { return last.first == stop; });
}

void Network::shrink(const std::vector<Cost>& lengths, Fine longest) {
  Network small(*item_);
  small.least_ = least_;
  small.finished_ = finished_;
  const std::vector<Cost> ahead = to_end(lengths);
  std::vector<Fine> behind(nodes_.size(), impossible.value);
  behind[0] = 0;
  std::vector<std::size_t> number(nodes_.size(), 0);
  std::vector<bool> remains(nodes_.size(), false);
  std::vector<bool> edge_remains(edges_.size(), false);
  remains[0] = true;
  for (std::size_t node = 0; node < nodes_.size(); ++node) {
    for (std::size_t e = nodes_[node].edges; remains[node] && e < nodes_[node].edges_end; ++e) {
      if (!is_possible(lengths[e]) || !is_possible(ahead[edges_[e].to])) {
        continue;
      }
      const Fine so_far = behind[node] + lengths[e].value;
      if (so_far + ahead[edges_[e].to].value > longest) {
        continue;
      }
      edge_remains[e] = remains[edges_[e].to] = true;
      behind[edges_[e].to] = std::min(behind[edges_[e].to], so_far);
    }
  }
  const auto copy = [](const auto& from, std::size_t begin, std::size_t end, auto& to) {
    const std::size_t first = to.size();
    to.insert(to.end(), from.begin() + static_cast<std::ptrdiff_t>(begin),
              from.begin() + static_cast<std::ptrdiff_t>(end));
    return std::pair(first, to.size());
  };
  for (std::size_t node = 0; node < nodes_.size(); ++node) {
    if (!remains[node]) {
      continue;
    }
    number[node] = small.nodes_.size();
    Node kept{small.edges_.size(), 0, nodes_[node].stop};
    for (std::size_t e = nodes_[node].edges; e < nodes_[node].edges_end; ++e) {
      if (!edge_remains[e]) {
        continue;
      }
      Edge edge = edges_[e];
      std::tie(edge.paid, edge.paid_end) = copy(paid_, edge.paid, edge.paid_end, small.paid_);
      std::tie(edge.stays, edge.stays_end) = copy(stays_, edge.stays, edge.stays_end, small.stays_);
      std::tie(edge.choices, edge.choices_end) =
          copy(choices_, edge.choices, edge.choices_end, small.choices_);
      small.edges_.push_back(edge);
    }
    kept.edges_end = small.edges_.size();
    small.nodes_.push_back(kept);
  }
  for (Edge& edge : small.edges_) {
    edge.to = number[edge.to];
  }
  *this = std::move(small);
}

std::int64_t Network::room(const Stay& stay, Place place, Day night) const {
  if (place != stay.place || night < stay.from || night >= stay.until) {
    return 0;
  }
  return stay.amount * (stay.frozen ? item_->item->room_frozen : item_->item->room_cool);
}

} // namespace manciple::buying
