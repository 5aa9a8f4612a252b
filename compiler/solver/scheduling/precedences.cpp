#include "scheduling/precedences.hpp"

#include <algorithm>
#include <array>

namespace manciple::scheduling {

void Precedences::always(Side from, Side to, int minutes) {
  arcs_.push_back({from, to, minutes, std::nullopt});
  arcs_.push_back({other(to), other(from), minutes, std::nullopt});
}

void Precedences::when(Bound condition, Side from, Side to, int minutes) {
  arcs_.push_back({from, to, minutes, condition});
  arcs_.push_back({other(to), other(from), minutes, condition});
}

void Precedences::close(std::size_t sides) {
  from_.assign(sides, {});
  on_.assign(sides, {});
  for (std::size_t i = 0; i < arcs_.size(); ++i) {
    from_[arcs_[i].from].push_back(i);
    if (arcs_[i].condition) {
      on_[arcs_[i].condition->side].push_back(i);
    }
  }
}

bool Precedences::propagate(Trail& trail, const Arc& arc) {
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

bool Precedences::propagate(Trail& trail, Side side) const {
  const auto fine = [&](std::size_t arc) { return propagate(trail, arcs_[arc]); };
  return std::all_of(from_[side].begin(), from_[side].end(), fine) &&
         std::all_of(on_[side].begin(), on_[side].end(), fine);
}

std::vector<Disjunction> disjunctions(const Interval& first, const Interval& second,
                                      const std::vector<int>& capacity) {
  std::vector<Disjunction> all;
  for (const Part& a : first.parts) {
    for (const Part& b : second.parts) {
      const bool too_much = std::any_of(a.takes.begin(), a.takes.end(), [&](const Requirement& x) {
        return std::any_of(b.takes.begin(), b.takes.end(), [&](const Requirement& y) {
          return x.resource == y.resource && y.amount > capacity[x.resource] - x.amount;
        });
      });
      if (too_much) {
        all.push_back({a.offset - b.offset - b.minutes, a.offset + a.minutes - b.offset});
      }
    }
  }
  std::sort(all.begin(), all.end(), [](Disjunction a, Disjunction b) { return a.low < b.low; });
  std::vector<Disjunction> out;
  for (const Disjunction disjunction : all) {
    if (!out.empty() && disjunction.low < out.back().high) { // no room in between
      out.back().high = std::max(out.back().high, disjunction.high);
    } else {
      out.push_back(disjunction);
    }
  }
  return out;
}

} // namespace manciple::scheduling
