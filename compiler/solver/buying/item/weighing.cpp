#include "buying/item/weighing.hpp"

#include <algorithm>

namespace manciple::buying {

const std::vector<Weighing::Weighed>& Weighing::choices(const Holding* begin, const Holding* end,
                                                        std::size_t visit, std::size_t source) {
  const Source& from = item_.sources[source];
  const int most = std::min(item_.useful_packs[source], item_.item->offers[from.offer].limit);
  choices_.clear();
  if (most == 0) {
    return choices_;
  }
  std::vector<Amount> sums;
  for (const auto last : {std::optional<std::size_t>{}, std::optional(source)}) {
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
  return choices_;
}

Amount Weighing::amount(const Holdings& held, std::size_t visit, std::size_t source, int steps) {
  const auto& all = choices(held.data(), held.data() + held.size(), visit, source);
  const auto one = std::find_if(all.begin(), all.end(),
                                [&](const Weighed& weighed) { return weighed.steps == steps; });
  return one != all.end() ? one->amount : steps * item_.sources[source].pack;
}

} // namespace manciple::buying
