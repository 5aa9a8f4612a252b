#include "compare/align.hpp"
#include "compare/parts.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::compare {
namespace {

std::string listed(const Line& line) {
  return fmt::format("{} {}", line.count, line.name);
}

bool same_stop(const Line& a, const Line& b) {
  return a.stop.is_at(b.stop);
}
bool same_pack(const Line& a, const Line& b) {
  return a.pack == b.pack;
}
bool same_count(const Line& a, const Line& b) {
  return a.count == b.count;
}

class ListChanges {
public:
  explicit ListChanges(const kitchen::Currency& currency) : currency_(currency) {}

  void line(const Pair<Line>& pair) {
    if (pair.before == nullptr) {
      add("added", fmt::format("{}, {}{}", listed(*pair.after), at_stop(pair.after->stop),
                               cost(*pair.after)));
    } else if (pair.after == nullptr) {
      add("dropped", fmt::format("{}, {}{}", listed(*pair.before), at_stop(pair.before->stop),
                                 cost(*pair.before)));
    } else {
      changed(*pair.before, *pair.after);
    }
  }
  void add(std::string_view how, const std::string& what) {
    all.push_back({Part::list, fmt::format("{}: {}", how, what)});
  }

  std::vector<Change> all;

private:
  void changed(const Line& before, const Line& after) {
    const std::string here = at_stop(after.stop);
    const bool by_number = same_pack(before, after) && !after.by_weight;
    const std::string instead =
        same_count(before, after)
            ? ""
            : fmt::format(" instead of {}",
                          by_number ? fmt::to_string(before.packs) : before.count);
    if (!same_stop(before, after)) {
      add("moved", fmt::format("{}{}, from {} to {}{}", listed(after), instead,
                               at_stop(before.stop), here, difference(before, after)));
    } else if (!same_pack(before, after)) {
      add("other pack",
          fmt::format("{}{}, {}{}", listed(after), instead, here, difference(before, after)));
    } else if (!same_count(before, after)) {
      add(after.amount > before.amount ? "more" : "less",
          fmt::format("{}{}, {}{}", listed(after), instead, here, difference(before, after)));
    } else if (before.cost != after.cost) {
      add(price_word(before, after),
          fmt::format("{}, {}, {}", listed(after), here, price_change(before, after)));
    } else if (before.notes != after.notes) {
      const auto said = [](const Line& line) {
        return line.notes.empty() ? "no note" : text::join(line.notes, "; ");
      };
      add("note",
          fmt::format("{}, {}: {} (before: {})", listed(after), here, said(after), said(before)));
    }
  }

  [[nodiscard]] std::string cost(const Line& line) const {
    return line.cost ? fmt::format(", {}", currency_.print(*line.cost)) : "";
  }
  [[nodiscard]] std::string difference(const Line& before, const Line& after) const {
    if (before.cost && after.cost) {
      return *before.cost == *after.cost
                 ? ""
                 : ", " + more_or_less(currency_, *before.cost, *after.cost);
    }
    return before.cost == after.cost ? "" : ", " + price_change(before, after);
  }
  static std::string_view price_word(const Line& before, const Line& after) {
    return !before.cost || !after.cost  ? "price"
           : *after.cost > *before.cost ? "dearer"
                                        : "cheaper";
  }
  [[nodiscard]] std::string price_change(const Line& before, const Line& after) const {
    if (!after.cost) {
      return "its price is no longer known";
    }
    return before.cost ? fmt::format("{} instead of {}", currency_.print(*after.cost),
                                     currency_.print(*before.cost))
                       : fmt::format("now known to cost {}", currency_.print(*after.cost));
  }

  const kitchen::Currency& currency_;
};

} // namespace

std::vector<Change> list_changes(const Result& before, const Result& after) {
  std::map<std::string, Group<Line>> by_food;
  for (const Line& line : before.lines) {
    by_food[line.food].before.push_back(&line);
  }
  for (const Line& line : after.lines) {
    by_food[line.food].after.push_back(&line);
  }
  ListChanges changes(after.currency);
  for (const auto& [food, group] : by_food) {
    const auto pairs = align<Line>(
        group.before, group.after,
        {[](const Line& a, const Line& b) {
           return same_stop(a, b) && same_pack(a, b) && same_count(a, b);
         },
         [](const Line& a, const Line& b) { return same_stop(a, b) && same_pack(a, b); }, same_stop,
         [](const Line& a, const Line& b) { return same_pack(a, b) && same_count(a, b); },
         same_pack, [](const Line&, const Line&) { return true; }});
    for (const Pair<Line>& pair : pairs) {
      changes.line(pair);
    }
  }
  const auto holds = [](const Result& in, const std::string& food) {
    return std::binary_search(in.to_find.begin(), in.to_find.end(), food);
  };
  for (const std::string& food : after.to_find) {
    if (!holds(before, food)) {
      changes.add("now still to find", food);
    }
  }
  for (const std::string& food : before.to_find) {
    if (!holds(after, food)) {
      changes.add("no longer to find", food);
    }
  }
  return std::move(changes.all);
}

} // namespace manciple::compare
