#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace manciple::buying {

/// The number of a thing of one kind, which no number of another kind can be taken for.
template <typename Kind>
class Id {
public:
  constexpr Id() = default;
  constexpr explicit Id(std::size_t index) : index_(static_cast<std::uint32_t>(index)) {}
  [[nodiscard]] constexpr std::size_t index() const { return index_; }
  friend constexpr auto operator<=>(Id, Id) = default;
  constexpr Id& operator++() {
    ++index_;
    return *this;
  }

private:
  std::uint32_t index_ = 0;
};

/// A vector that only ids of its kind look into.
template <typename Key, typename Value>
class Table : public std::vector<Value> {
public:
  using std::vector<Value>::vector;
  decltype(auto) operator[](Key key) { return std::vector<Value>::operator[](key.index()); }
  decltype(auto) operator[](Key key) const { return std::vector<Value>::operator[](key.index()); }
  [[nodiscard]] Key end_id() const { return Key(this->size()); }
};

/// All ids of a table, for a loop: `for (const ShopId shop : ids(shops))`.
template <typename Key>
class IdRange {
public:
  explicit IdRange(Key end) : end_(end) {}
  struct Iterator {
    Key at;
    Key operator*() const { return at; }
    Iterator& operator++() {
      ++at;
      return *this;
    }
    bool operator!=(const Iterator& other) const { return at != other.at; }
  };
  [[nodiscard]] Iterator begin() const { return {Key(0)}; }
  [[nodiscard]] Iterator end() const { return {end_}; }

private:
  Key end_;
};
template <typename Key, typename Value>
IdRange<Key> ids(const Table<Key, Value>& table) {
  return IdRange<Key>(table.end_id());
}

using ShopId = Id<struct OfShops>;
using StopId = Id<struct OfStops>;
using ItemId = Id<struct OfItems>;
/// Of one item.
using OfferId = Id<struct OfOffers>;
using DemandId = Id<struct OfDemands>;
using LotId = Id<struct OfLots>;

} // namespace manciple::buying
