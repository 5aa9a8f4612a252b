#include "resolve/dates.hpp"

#include <algorithm>

namespace manciple::resolve {
namespace {

using kitchen::Kitchen;
using kitchen::Recipe;

std::size_t at(MakingId id) {
  return static_cast<std::size_t>(id);
}

class Dating {
public:
  Dating(const Kitchen& kitchen, std::vector<Making>& makings, std::vector<ByProduct>& by_products)
      : kitchen_(kitchen), makings_(makings), by_products_(by_products), spoils_(makings.size()) {
    for (const Making& making : makings) {
      begun_.push_back(making.date);
    }
  }

  // What a making needs stands after it, but what it leaves over may go into any other: each round
  // only brings dates forward, until none changes.
  void run() {
    do {
      changed_ = false;
      for (std::size_t i = makings_.size(); i-- > 0;) {
        making(i);
      }
      for (ByProduct& one : by_products_) {
        by_product(one);
      }
    } while (changed_ && !by_products_.empty());
  }

private:
  void making(std::size_t i) {
    Making& making = makings_[i];
    const Recipe& recipe = kitchen_.recipe(making.recipe);
    if (const auto keeps = recipe.keeps_unfrozen(); keeps && !making.on_hand) {
      making.good_until = good(i, *keeps);
    }
    for (const Consumer& consumer : making.consumers) {
      const auto* into = std::get_if<MakingId>(&consumer.who);
      const bool fresh = consumer.date == making.date && begun_[i] == making.date;
      if (into != nullptr && !consumer.from_freezer && !recipe.keeps_pantry && !fresh) {
        older(at(*into), begun_[i], making.good_until);
      }
    }
  }

  void by_product(ByProduct& one) {
    const Recipe& recipe = kitchen_.recipe(makings_[at(one.of)].recipe);
    const kitchen::GivesLine& given = recipe.gives[one.given];
    one.good_until = given.keeps_unfrozen ? good(at(one.of), *given.keeps_unfrozen) : one.date;
    for (const ByProduct::Part& part : one.parts) {
      if (!part.from_freezer && given.cool_place != foods::Place::pantry) {
        older(at(part.into), begun_[at(one.of)], one.good_until);
      }
    }
  }

  [[nodiscard]] Date good(std::size_t i, int keeps) const {
    const Date out = begun_[i] + std::chrono::days(keeps);
    return spoils_[i] ? std::min(*spoils_[i], out) : out;
  }

  void older(std::size_t i, Date begun, const std::optional<Date>& spoils) {
    if (begun < begun_[i]) {
      begun_[i] = begun;
      changed_ = true;
    }
    if (spoils && (!spoils_[i] || *spoils < *spoils_[i])) {
      spoils_[i] = spoils;
      changed_ = true;
    }
  }

  const Kitchen& kitchen_;
  std::vector<Making>& makings_;
  std::vector<ByProduct>& by_products_;
  std::vector<Date> begun_;                 // by making: the day of its oldest part
  std::vector<std::optional<Date>> spoils_; // by making: when the first of its parts does
  bool changed_ = false;
};

} // namespace

void date_makings(const Kitchen& kitchen, std::vector<Making>& makings,
                  std::vector<ByProduct>& by_products) {
  Dating(kitchen, makings, by_products).run();
}

std::vector<Date> last_eaten(const std::vector<Making>& makings) {
  std::vector<Date> out;
  for (const Making& making : makings) {
    Date last = making.date;
    for (const Consumer& consumer : making.consumers) {
      const auto* into = std::get_if<MakingId>(&consumer.who);
      if (!consumer.from_freezer) {
        last = std::max(last, into != nullptr ? out[at(*into)] : consumer.date);
      }
    }
    out.push_back(last);
  }
  return out;
}

} // namespace manciple::resolve
