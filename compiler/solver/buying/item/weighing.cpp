#include "buying/item/weighing.hpp"

#include <algorithm>

namespace manciple::buying {

const std::vector<Weighing::Weighed>& Weighing::choices(const Holding* begin, const Holding* end,
                                                        std::size_t visit, std::size_t source,
                                                        bool required) {
  choices_.clear();
  find(begin, end, visit, source);
  if (required && choices_.empty()) {
    choices_.push_back({1, item_.sources[source].pack});
  }
  return choices_;
}

void Weighing::find(const Holding* begin, const Holding* end, std::size_t visit,
                    std::size_t source) {
  const Source& from = item_.sources[source];
  const int most = item_.useful_packs[source];
  if (most == 0) {
    return;
  }
  std::vector<Amount> sums;
  // With nothing else held the one is as the other.
  const bool alone = begin == end;
  for (const auto last : {std::optional<std::size_t>{}, std::optional(source)}) {
    if (last && alone) {
      break;
    }
    branch_.held.assign(begin, end);
    put(branch_.held, unopened_of(source, from.pack * most));
    TakenTrack& track = branch_.track;
    track = {};
    track.source = static_cast<std::uint32_t>(source);
    service_.look_ahead(branch_, visit, last);
    track.note();
    sums.insert(sums.end(), track.so_far.begin(), track.so_far.end());
  }
  std::sort(sums.begin(), sums.end());
  for (const Amount sum : sums) {
    const auto steps = static_cast<int>((sum + from.pack - 1) / from.pack);
    if (choices_.empty() || choices_.back().steps < steps) {
      choices_.push_back({steps, sum});
    }
    choices_.back().amount = sum;
  }
}

Amount Weighing::amount(const Holdings& held, std::size_t visit, std::size_t source, int steps) {
  const auto& all = choices(held.data(), held.data() + held.size(), visit, source);
  const auto one = std::find_if(all.begin(), all.end(),
                                [&](const Weighed& weighed) { return weighed.steps == steps; });
  return one != all.end() ? one->amount : steps * item_.sources[source].pack;
}

} // namespace manciple::buying
