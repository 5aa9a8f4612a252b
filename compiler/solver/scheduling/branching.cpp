#include "scheduling/branching.hpp"

#include <tuple>
#include <utility>

namespace manciple::scheduling {

bool Branching::more_active(std::size_t a, std::size_t b) const {
  return std::tuple(candidates_[b].activity, a) < std::tuple(candidates_[a].activity, b);
}

void Branching::rise(std::size_t place) {
  const std::size_t candidate = heap_[place];
  while (place > 0 && more_active(candidate, heap_[(place - 1) / 2])) {
    heap_[place] = heap_[(place - 1) / 2];
    candidates_[heap_[place]].place = place;
    place = (place - 1) / 2;
  }
  heap_[place] = candidate;
  candidates_[candidate].place = place;
}

void Branching::sink(std::size_t place) {
  const std::size_t candidate = heap_[place];
  for (std::size_t child = 2 * place + 1; child < heap_.size(); child = 2 * place + 1) {
    if (child + 1 < heap_.size() && more_active(heap_[child + 1], heap_[child])) {
      ++child;
    }
    if (!more_active(heap_[child], candidate)) {
      break;
    }
    heap_[place] = heap_[child];
    candidates_[heap_[place]].place = place;
    place = child;
  }
  heap_[place] = candidate;
  candidates_[candidate].place = place;
}

void Branching::insert(std::size_t candidate) {
  heap_.push_back(candidate);
  rise(heap_.size() - 1);
}

std::size_t Branching::take_most_active() {
  const std::size_t candidate = heap_.front();
  candidates_[candidate].place = nowhere;
  const std::size_t last = heap_.back();
  heap_.pop_back();
  if (!heap_.empty()) {
    heap_.front() = last;
    sink(0);
  }
  return candidate;
}

void Branching::bump_met(const std::vector<Bound>& bounds) {
  for (const Bound bound : bounds) {
    const Bound lower = bound.side % 2 == 0 ? bound : opposite(bound);
    const std::uint64_t key =
        (std::uint64_t{lower.side} << 32U) | static_cast<std::uint32_t>(lower.least);
    const auto [known, fresh] = known_.try_emplace(key, candidates_.size());
    if (fresh) {
      candidates_.push_back({lower.side, lower.least, 0, nowhere});
      insert(known->second);
    }
    Candidate& candidate = candidates_[known->second];
    candidate.activity += increment_;
    if (candidate.place != nowhere) {
      rise(candidate.place);
    }
  }
  if (increment_ > 1e100) {
    for (Candidate& candidate : candidates_) {
      candidate.activity *= 1e-100;
    }
    increment_ *= 1e-100;
  }
}

void Branching::back(int level) {
  while (!asked_.empty() && asked_.back().level > level) {
    insert(asked_.back().candidate);
    asked_.pop_back();
  }
}

bool Branching::next(const Trail& trail, Bound& out) {
  while (!heap_.empty()) {
    const std::size_t i = take_most_active();
    const Candidate& candidate = candidates_[i];
    const Bound bound{candidate.side, candidate.least};
    if (trail.holds(bound) || trail.fails(bound)) {
      asked_.push_back({i, trail.level()});
      continue;
    }
    asked_.push_back({i, trail.level() + 1});
    out = guide_[candidate.side / 2] >= candidate.least ? bound : opposite(bound);
    return true;
  }
  Side best = 0;
  bool found = false;
  for (Side side = 0; side < 2 * starts_; side += 2) {
    if (!trail.fixed(side) && (!found || std::pair(trail.at(side), -trail.at(other(side))) <
                                             std::pair(trail.at(best), -trail.at(other(best))))) {
      best = side;
      found = true;
    }
  }
  out = {other(best), -trail.at(best)};
  return found;
}

} // namespace manciple::scheduling
