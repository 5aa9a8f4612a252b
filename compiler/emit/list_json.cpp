#include "emit/list_json.hpp"

#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "kitchen/table.hpp"
#include "measure/print.hpp"
#include "purchase/lives.hpp"

#include <numeric>

namespace manciple::emit::json {
namespace {

std::string_view basis_word(const foods::Food& food) {
  switch (foods::basis(food)) {
  case measure::Dimension::mass:
    return "g";
  case measure::Dimension::volume:
    return "ml";
  case measure::Dimension::count:
    return "each";
  }
  return {};
}

Json stock(const Compiled& compiled) {
  Json out = Json::array();
  const auto& lots = compiled.kitchen.on_hand.lots;
  for (std::size_t l = 0; l < lots.size(); ++l) {
    const kitchen::StockLot& lot = lots[l];
    out.push_back({{"food", compiled.kitchen.food(lot.food()).name},
                   {"amount", number(lot.amount)},
                   {"place", foods::name(lot.place)},
                   {"use_by", maybe(lot.use_by)},
                   {"worth", maybe(compiled.worth.lots[l])},
                   {"kept", 0},
                   {"wasted", 0}});
  }
  for (const purchase::StockRest& rest : compiled.shopping.stock_left) {
    out[rest.lot]["kept"] = number(rest.kept);
    out[rest.lot]["wasted"] = number(rest.wasted);
  }
  return out;
}

Json purchases(const Compiled& compiled) {
  Json out = Json::array();
  const auto& lines = compiled.shopping.lines;
  for (std::size_t l = 0; l < lines.size(); ++l) {
    const purchase::Line& line = lines[l];
    const kitchen::Offer& offer = offer_of(compiled, line);
    out.push_back({{"visit", line.visit},
                   {"food", food_of(compiled, line).name},
                   {"count", count_of(compiled, line)},
                   {"name", name_on_list(compiled, line)},
                   {"notes", notes_of(compiled, l)},
                   {"pack", offer.pack},
                   {"by_weight", offer.by_weight},
                   {"pack_amount", number(offer.size)},
                   {"packs", line.packs},
                   {"price", maybe(offer.price)},
                   {"steps_per_price", number(offer.steps_per_price)},
                   {"cost", maybe(line.cost)},
                   {"worth", maybe(compiled.worth.lines[l])},
                   {"amount", number(line.amount)},
                   {"freeze", number(line.to_freeze)},
                   {"kept", number(line.kept)},
                   {"wasted", number(line.wasted)}});
  }
  return out;
}

Json visits(const Compiled& compiled) {
  Json out = Json::array();
  for (const purchase::StopMade& visit : compiled.shopping.visits) {
    out.push_back({{"date", date(visit.date)},
                   {"home", visit.home},
                   {"shop", compiled.kitchen.shop(visit.shop).name},
                   {"goods", visit.goods},
                   {"tax", visit.tax},
                   {"off", visit.off},
                   {"credit", visit.credit},
                   {"paid", visit.paid()},
                   {"cash_back", visit.cash_back},
                   {"stop_cost", visit.stop_cost}});
  }
  return out;
}

// What the solver was told of each food that is bought: enough to check its answer.
Json keeping(const Compiled& compiled) {
  Json out = Json::array();
  const purchase::Shopping& shopping = compiled.shopping;
  const auto days = static_cast<int>((compiled.plan().until - shopping.first).count()) + 1;
  for (const foods::FoodId first : shopping.foods) {
    for (const foods::FoodId id : compiled.kitchen.household.instead_of(first)) {
      const foods::Food& food = compiled.kitchen.food(id);
      const auto keeping = purchase::keeping_of(food, days);
      out.push_back({{"food", food.name},
                     {"basis", basis_word(food)},
                     {"keeps_days", keeping.life.cool},
                     {"keeps_frozen_days",
                      maybe(keeping.life.frozen ? keeping.life.frozen : keeping.life.refrozen)},
                     {"keeps_opened_days", maybe(keeping.life.opened)},
                     {"stands_for", compiled.kitchen.food(first).name}});
    }
  }
  return out;
}

void add_served(Json& out, const purchase::Served& served) {
  out["use"] = served.use;
  out["amount"] = number(served.amount);
  out["covers"] = number(served.covers);
  out["frozen"] = served.frozen;
  out["frozen_on"] = served.frozen ? Json(date(served.frozen_on)) : Json(nullptr);
  out["opened_on"] = maybe(served.opened_on);
}

// What the list minimises, term by term, in the currency's unit.
Json account(const purchase::Account& account, kitchen::Cents per_unit) {
  const auto money = [&](const Rational& cents) { return number(cents / per_unit); };
  return {{"prices", money(account.prices)},       {"tax", money(account.tax)},
          {"cash_back", money(account.cash_back)}, {"preference", money(account.preference)},
          {"unpriced", money(account.unpriced)},   {"reductions", money(account.reductions)},
          {"credit", money(account.credit)},       {"stops", money(account.stops)},
          {"wasted", money(account.wasted)},       {"kept", money(account.kept)},
          {"lacking", money(account.lacking)},     {"missing", money(account.missing)},
          {"handling", money(account.handling)},   {"total", money(account.total)}};
}

// Money by what it is for, in cents, and what has no known price.
Json worth(const Compiled& compiled) {
  const auto sum = [](const std::vector<Rational>& list) {
    return std::accumulate(list.begin(), list.end(), Rational(0));
  };
  const auto parts = [&](const purchase::Parts& of) {
    Rational meals = 0;
    for (const auto& meal : of.dishes) {
      meals += sum(meal);
    }
    return Json{{"meals", number(meals)},          {"staples", number(sum(of.staples))},
                {"extra", number(sum(of.extras))}, {"left_over", number(of.left_over)},
                {"kept", number(of.kept)},         {"wasted", number(of.wasted)}};
  };
  return {{"paid", parts(compiled.worth)},
          {"worth", parts(compiled.worth.replaced)},
          {"without_price", names(compiled, compiled.worth.unknown)}};
}

// What is lacking within what the dishes can do without, or missing beyond that.
Json shortfalls(const Compiled& compiled, Rational purchase::Shortfall::*part) {
  Json out = Json::array();
  for (const purchase::Shortfall& one : compiled.shopping.shortfalls) {
    if (one.*part > 0) {
      out.push_back({{"use", one.use},
                     {"food", compiled.kitchen.food(compiled.resolved.uses[one.use].food).name},
                     {"amount", number(one.*part)}});
    }
  }
  return out;
}

// What serves which use: of lots that were there before, and of the list's lines.
Json from_stock(const Compiled& compiled) {
  Json out = Json::array();
  for (const purchase::StockUse& used : compiled.shopping.from_stock) {
    Json one{{"lot", used.lot}};
    add_served(one, used);
    out.push_back(std::move(one));
  }
  return out;
}
Json supplies(const Compiled& compiled) {
  Json out = Json::array();
  for (const purchase::Supply& supply : compiled.shopping.supplies) {
    Json one{{"purchase", supply.line}};
    add_served(one, supply);
    out.push_back(std::move(one));
  }
  return out;
}

Json labels_to_read(const Compiled& compiled) {
  Json out = Json::array();
  for (const resolve::LabelCheck& label : compiled.resolved.labels) {
    out.push_back({{"food", compiled.kitchen.food(label.food).name},
                   {"what", label.what},
                   {"known", label.known},
                   {"person", label.person}});
  }
  return out;
}

} // namespace

void add_list(Json& out, const Compiled& compiled) {
  const purchase::Shopping& shopping = compiled.shopping;
  out["on_hand"] = stock(compiled);
  out["from_stock"] = from_stock(compiled);
  out["foods"] = keeping(compiled);
  out["visits"] = visits(compiled);
  out["purchases"] = purchases(compiled);
  out["supplies"] = supplies(compiled);
  out["still_to_find"] = shortfalls(compiled, &purchase::Shortfall::missing);
  out["short_but_enough"] = shortfalls(compiled, &purchase::Shortfall::lacking);
  out["account"] = account(shopping.account, compiled.kitchen.household.currency.per_unit());
  out["money"] = worth(compiled);
  out["labels_to_read"] = labels_to_read(compiled);
}

} // namespace manciple::emit::json
