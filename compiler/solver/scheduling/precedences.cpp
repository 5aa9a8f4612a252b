#include "scheduling/precedences.hpp"

#include <algorithm>
#include <array>

namespace manciple::scheduling {

void Distances::always(Side from, Side to, int minutes) {
  arcs_.push_back({from, to, minutes, std::nullopt});
  arcs_.push_back({other(to), other(from), minutes, std::nullopt});
}

void Distances::when(Bound condition, Side from, Side to, int minutes) {
  arcs_.push_back({from, to, minutes, condition});
  arcs_.push_back({other(to), other(from), minutes, condition});
}

void Distances::close(std::size_t sides) {
  from_.assign(sides, {});
  on_.assign(sides, {});
  for (std::size_t i = 0; i < arcs_.size(); ++i) {
    from_[arcs_[i].from].push_back(i);
    if (arcs_[i].condition) {
      on_[arcs_[i].condition->side].push_back(i);
    }
  }
}

bool Distances::follow(Trail& trail, const Arc& arc) {
  const Bound cause{arc.from, trail.at(arc.from)};
  const Bound effect{arc.to, cause.least + arc.minutes};
  if (!arc.condition) {
    return trail.set(effect, std::array{cause});
  }
  if (trail.holds(*arc.condition)) {
    return trail.set(effect, std::array{cause, *arc.condition});
  }
  if (trail.fails(effect)) {
    return trail.set(opposite(*arc.condition), std::array{cause, opposite(effect)});
  }
  return true;
}

bool Distances::follow(Trail& trail, Side side) const {
  const auto fine = [&](std::size_t arc) { return follow(trail, arcs_[arc]); };
  return std::all_of(from_[side].begin(), from_[side].end(), fine) &&
         std::all_of(on_[side].begin(), on_[side].end(), fine);
}

std::vector<Clash> clashes(const Step& first, const Step& second,
                           const std::vector<int>& capacity) {
  std::vector<Clash> all;
  for (const Part& a : first.parts) {
    for (const Part& b : second.parts) {
      const bool too_much = std::any_of(a.takes.begin(), a.takes.end(), [&](const Taking& x) {
        return std::any_of(b.takes.begin(), b.takes.end(), [&](const Taking& y) {
          return x.resource == y.resource && y.amount > capacity[x.resource] - x.amount;
        });
      });
      if (too_much) {
        all.push_back({a.offset - b.offset - b.minutes, a.offset + a.minutes - b.offset});
      }
    }
  }
  std::sort(all.begin(), all.end(), [](Clash a, Clash b) { return a.low < b.low; });
  std::vector<Clash> out;
  for (const Clash clash : all) {
    if (!out.empty() && clash.low < out.back().high) { // no room in between
      out.back().high = std::max(out.back().high, clash.high);
    } else {
      out.push_back(clash);
    }
  }
  return out;
}

} // namespace manciple::scheduling
