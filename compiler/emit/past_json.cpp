#include "emit/past_json.hpp"

#include "emit/json_words.hpp"

namespace manciple::emit {
namespace {

using json::Json;

std::string_view name(history::Move::Kind kind) {
  switch (kind) {
  case history::Move::Kind::counted:
    return "counted";
  case history::Move::Kind::bought:
    return "bought";
  case history::Move::Kind::found:
    return "found";
  case history::Move::Kind::eaten:
    return "eaten";
  case history::Move::Kind::thrown_away:
    return "thrown away";
  case history::Move::Kind::missing:
    return "missing";
  }
  return "";
}

Json receipt_json(const kitchen::Kitchen& kitchen, const kitchen::Receipt& receipt) {
  Json lines = Json::array();
  for (const kitchen::Bought& line : receipt.bought) {
    lines.push_back({{"food", kitchen.food(*line.what.food()).name},
                     {"amount", to_double(line.amount)},
                     {"paid", json::maybe(line.paid)}});
  }
  return {{"shop", kitchen.shop(receipt.shop).name},
          {"date", json::date(receipt.date)},
          {"paid", receipt.paid()},
          {"written", !receipt.slug.empty()},
          {"lines", std::move(lines)}};
}

} // namespace

Json past_json(const kitchen::Kitchen& kitchen, const history::Past& past) {
  Json receipts = Json::array();
  for (const kitchen::Receipt& receipt : kitchen.receipts) {
    receipts.push_back(receipt_json(kitchen, receipt));
  }
  Json moves = Json::array();
  for (const history::Move& move : past.moves) {
    moves.push_back({{"what", name(move.kind)},
                     {"date", json::date(move.date)},
                     {"food", kitchen.food(move.food).name},
                     {"amount", to_double(move.amount)}});
  }
  Json there = Json::array();
  for (const history::Holding& one : past.there) {
    there.push_back({{"food", kitchen.food(one.food).name},
                     {"amount", to_double(one.amount)},
                     {"place", foods::name(one.place)},
                     {"opened", json::maybe(one.opened)},
                     {"use_by", json::maybe(one.use_by)},
                     {"cut", one.cut},
                     {"given", one.given}});
  }
  return {{"until", json::date(past.until)},
          {"paid", past.paid},
          {"receipts", std::move(receipts)},
          {"moves", std::move(moves)},
          {"there", std::move(there)}};
}

} // namespace manciple::emit
