#pragma once

#include "buying/model/model.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

namespace manciple::buying {

/// Never reached: the last good day of what is not good at all.
constexpr Day never = -1'000'000'000;

/// Where something that is held came from: a lot of stock, or an offer at a visit.
struct Source {
  bool stock = false;
  LotId lot;
  std::size_t visit = 0; ///< of Prepared::visits
  OfferId offer;

  Day home = 0; ///< the day on which it came home
  Place place = Place::pantry;
  Place thawed_in = Place::pantry; ///< where it stands once it is out of the freezer
  bool in_freezer = false;         ///< stock that stands there, to be thawed
  Day ready = 0;
  Day cool_until = never;
  Day frozen_until = never;
  bool comes_in_packs = false; ///< opening one starts a clock
  int opened = 0;              ///< days
  std::optional<int> refrozen; ///< days
  Amount pack = 0;             ///< what is opened at a time
  int inside = 1;              ///< so many are bought at a time
  Amount containers = 0;       ///< of one pack
  /// Sources of one kind are loose, or in packs of one size, and serve demands for containers at
  /// the same rate.
  std::size_t kind = 0;
  /// One unit of it serves at most so many units of any demand: more than 1 where its containers
  /// are smaller than they are as a rule.
  double reach = 1;

  /// What is bought at a time.
  [[nodiscard]] Amount bought() const { return pack * inside; }
  /// What of it serves `amount` of the demand, rounded down.
  [[nodiscard]] Amount spent_on(const Demand& demand, Amount amount) const;
  /// How much of the demand `amount` of it serves, at most `open`.
  [[nodiscard]] Amount served_by(const Demand& demand, Amount amount, Amount open) const;

private:
  [[nodiscard]] bool by_container(const Demand& demand) const {
    return containers > 0 && demand.containers > 0;
  }
};

/// The offers of an item that can be bought at one stop.
struct Visit {
  StopId stop;
  Minute at = 0;
  Day day = 0;
  std::vector<OfferId> offers;
  /// Of each offer, its source.
  std::vector<std::size_t> sources;
};

/// Narrows what may be bought, for the question what another choice would cost.
struct Restriction {
  /// Nothing but this offer.
  std::optional<OfferId> only;
  /// Not this offer at this stop.
  std::optional<std::pair<StopId, OfferId>> without;
  /// At least one pack of this offer at this stop.
  std::optional<std::pair<StopId, OfferId>> required;
};

/// An item ready for the search: demands in the order of use, offers by visit, and who may serve
/// whom.
struct Prepared {
  const Item* item = nullptr;
  Day last_day = 0;
  /// By moment, then those that must be fresh, then by index.
  std::vector<Demand> demands;
  std::vector<DemandId> ids; ///< of the demands, in the model
  /// By moment, then stop. A stop where nothing can be bought has none.
  std::vector<Visit> visits;
  /// By visit: the first demand that it may serve. Then, once more, the number of demands.
  std::vector<std::size_t> first_served;
  /// Stock, then by visit and offer.
  std::vector<Source> sources;
  std::size_t kinds = 0;

  /// By source and demand.
  [[nodiscard]] bool cool(std::size_t source, std::size_t demand) const {
    return (can_[source * demands.size() + demand] & serves_cool) != 0;
  }
  [[nodiscard]] bool frozen(std::size_t source, std::size_t demand) const {
    return (can_[source * demands.size() + demand] & serves_frozen) != 0;
  }
  /// By source: one more than the last demand that it may serve; 0 if none.
  std::vector<std::size_t> end_of_use;
  /// Likewise, unfrozen.
  std::vector<std::size_t> end_of_cool_use;
  /// Likewise, that must be fresh; and, of all demands, that takes frozen food.
  std::vector<std::size_t> end_of_fresh_use;
  Day last_frozen_use = never;
  /// The first day on which one of the demands from `demand` on may be eaten, of all or of those
  /// that take frozen food.
  [[nodiscard]] Day earliest(std::size_t demand, bool frozen) const {
    return (frozen ? earliest_frozen_ : earliest_)[demand];
  }

  [[nodiscard]] bool keeps_cool(std::size_t source) const {
    return sources[source].cool_until >= item->kept_day;
  }
  [[nodiscard]] bool keeps_frozen(std::size_t source) const {
    // What is on hand and not frozen stays as it is if nothing needs it.
    const Source& from = sources[source];
    return from.frozen_until >= item->kept_day &&
           (from.in_freezer || (item->freezes_rest && !from.stock));
  }
  [[nodiscard]] bool keeps(std::size_t source) const {
    return keeps_cool(source) || keeps_frozen(source);
  }

  /// The item can take room in a place that is limited.
  bool takes_room = false;
  /// It may be better to freeze what would keep unfrozen, for lack of room.
  bool freezes_for_room = false;
  /// By visit and source: a source that from the visit on can do the same (the first of them), but
  /// for the room that it has taken.
  [[nodiscard]] std::size_t same_as(std::size_t visit, std::size_t source) const {
    return same_as_[visit * sources.size() + source];
  }

  /// Loose sources of one class can stand in for each other: one of a higher rank does all that one
  /// of a lower rank does at no higher cost. Every other source is a class of its own.
  struct Standing {
    std::size_t stands_in = 0; ///< class
    std::size_t rank = 0;
  };
  std::vector<Standing> standing;
  /// Likewise where room costs something: there a higher rank can do no more, either. For what
  /// keeps longer may have to stay longer, where a use must take it.
  std::vector<Standing> standing_apart;

  /// By source (of a visit): most packs that can matter: of which every one may serve something or
  /// be kept, or makes a deal full. More only cost more.
  std::vector<int> useful_packs;
  /// Of all demands and of what may be kept.
  Amount wanted = 0;

  /// What the restriction requires; none if there is no such thing.
  struct Required {
    std::size_t visit = 0;
    OfferId offer;
  };
  std::optional<Required> required;
  /// The restriction requires what cannot be bought.
  bool barred = false;

  [[nodiscard]] std::optional<std::size_t> visit_at(StopId stop) const;
  /// Most purchases of a source that can each serve something of the demands [begin, end).
  [[nodiscard]] int packs_for(std::size_t source, std::size_t begin, std::size_t end) const;

private:
  friend class Preparation;
  static constexpr std::uint8_t serves_cool = 1;
  static constexpr std::uint8_t serves_frozen = 2;
  std::vector<std::uint8_t> can_;
  std::vector<Day> earliest_;
  std::vector<Day> earliest_frozen_;
  std::vector<std::size_t> same_as_;
};

/// The item must stay.
Prepared prepare(const Model& model, const Item& item, const Restriction& restriction = {});

} // namespace manciple::buying
