#include "bench/model_text.hpp"

#include <sstream>
#include <stdexcept>

#include <fmt/format.h>

namespace manciple::purchase {
namespace {

constexpr const char* places[] = {"pantry", "fridge", "freezer"};

std::string or_dash(const std::optional<int>& value) {
  return value ? fmt::format("{}", *value) : "-";
}

class Reader {
public:
  Model read(std::istream& text) {
    std::string line;
    for (int number = 1; std::getline(text, line); ++number) {
      fields_ = std::istringstream(line);
      std::string record;
      if (!(fields_ >> record))
        continue;
      take(record);
      if (!fields_)
        throw std::runtime_error(fmt::format("line {}: not a record of a model", number));
    }
    return std::move(model_);
  }

private:
  template <typename Value>
  Value next() {
    Value value{};
    fields_ >> value;
    return value;
  }
  bool flag() { return next<int>() != 0; }
  std::optional<int> optional() {
    const auto word = next<std::string>();
    if (word == "-")
      return std::nullopt;
    std::istringstream number(word);
    int value = 0;
    if (!(number >> value))
      fields_.setstate(std::ios::failbit);
    return value;
  }
  Place place() {
    const auto word = next<std::string>();
    for (std::size_t i = 0; i < place_count; ++i)
      if (word == places[i])
        return static_cast<Place>(i);
    fields_.setstate(std::ios::failbit);
    return Place::pantry;
  }
  template <typename Value>
  std::vector<Value> rest() {
    std::vector<Value> values;
    Value value{};
    while (fields_ >> value)
      values.push_back(value);
    if (fields_.eof())
      fields_.clear();
    return values;
  }

  void take(const std::string& record) {
    if (record == "model") {
      model_.last_day = next<int>();
    } else if (record == "room") {
      const Place where = place();
      model_.room[static_cast<std::size_t>(where)] = rest<Volume>();
    } else if (record == "shop") {
      Shop shop;
      shop.credit = next<Money>();
      shop.over = next<Money>();
      shop.off = next<Money>();
      model_.shops.push_back(shop);
    } else if (record == "stop") {
      Stop stop;
      stop.day = next<Day>();
      stop.shop = next<ShopId>();
      stop.cost = next<Money>();
      stop.always = flag();
      model_.stops.push_back(stop);
    } else if (record == "good") {
      Good good;
      good.keeps_cool = next<int>();
      good.keeps_frozen = optional();
      good.keeps_opened = optional();
      good.cool_place = place();
      good.room_cool = next<Volume>();
      good.room_frozen = next<Volume>();
      good.waste = next<Money>();
      good.salvage = next<Money>();
      good.salvage_cap = next<Amount>();
      good.salvage_days = next<int>();
      model_.goods.push_back(std::move(good));
    } else if (record == "demand" && !model_.goods.empty()) {
      Demand demand;
      demand.day = next<Day>();
      demand.amount = next<Amount>();
      demand.takes_frozen = flag();
      demand.longest_age = optional();
      model_.goods.back().demands.push_back(demand);
    } else if (record == "offer" && !model_.goods.empty()) {
      Offer offer;
      offer.shop = next<ShopId>();
      offer.first_day = next<Day>();
      offer.last_day = next<Day>();
      offer.pack = next<Amount>();
      offer.by_weight = flag();
      offer.cost.unit = next<Money>();
      offer.cost.limit = next<int>();
      offer.cost.table = rest<Money>();
      model_.goods.back().offers.push_back(std::move(offer));
    } else {
      fields_.setstate(std::ios::failbit);
    }
  }

  Model model_;
  std::istringstream fields_;
};

void write_good(std::string& text, const Good& good) {
  text += fmt::format(
      "good {} {} {} {} {} {} {} {} {} {}\n", good.keeps_cool, or_dash(good.keeps_frozen),
      or_dash(good.keeps_opened), places[static_cast<std::size_t>(good.cool_place)], good.room_cool,
      good.room_frozen, good.waste, good.salvage, good.salvage_cap, good.salvage_days);
  for (const Demand& demand : good.demands)
    text += fmt::format("demand {} {} {:d} {}\n", demand.day, demand.amount, demand.takes_frozen,
                        or_dash(demand.longest_age));
  for (const Offer& offer : good.offers) {
    text += fmt::format("offer {} {} {} {} {:d} {} {}", offer.shop, offer.first_day, offer.last_day,
                        offer.pack, offer.by_weight, offer.cost.unit, offer.cost.limit);
    for (const Money cost : offer.cost.table)
      text += fmt::format(" {}", cost);
    text += '\n';
  }
}

} // namespace

std::string write_model(const Model& model) {
  std::string text = fmt::format("model {}\n", model.last_day);
  for (std::size_t place = 0; place < place_count; ++place) {
    if (model.room[place].empty())
      continue;
    text += fmt::format("room {}", places[place]);
    for (const Volume volume : model.room[place])
      text += fmt::format(" {}", volume);
    text += '\n';
  }
  for (const Shop& shop : model.shops)
    text += fmt::format("shop {} {} {}\n", shop.credit, shop.over, shop.off);
  for (const Stop& stop : model.stops)
    text += fmt::format("stop {} {} {} {:d}\n", stop.day, stop.shop, stop.cost, stop.always);
  for (const Good& good : model.goods)
    write_good(text, good);
  return text;
}

Model read_model(std::istream& text) {
  return Reader().read(text);
}

} // namespace manciple::purchase
