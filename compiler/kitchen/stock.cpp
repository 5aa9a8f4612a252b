#include "kitchen/stock.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/read.hpp"
#include "text/fields.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Node;

// Where it is and how long it is good, from the parts of a line after the first comma.
void read_parts(const Node& line, std::string_view rest, StockLot& lot, Diagnostics& diagnostics) {
  for (const std::string_view part : text::split(rest, ',')) {
    if (const auto place = foods::parse_place(part)) {
      lot.place = *place;
    } else if (part.starts_with("use by ")) {
      lot.use_by = text::parse_date(text::trim(part.substr(7)));
      if (!lot.use_by) {
        diagnostics.error(errors::bad_value, line.span,
                          fmt::format("'{}' is not a date such as 2027-03-02", part.substr(7)));
      }
    } else if (!part.empty()) {
      lot.what.note += (lot.what.note.empty() ? "" : ", ") + std::string(part);
    }
  }
}

// Without a date it is good as long as such food keeps. Raw meat, fish and eggs in the fridge that
// are said to be good for longer deserve a question; what has been thawed keeps for a day or two.
void good_until(StockLot& lot, const foods::Food& food, text::Date counted,
                Diagnostics& diagnostics) {
  lot.thawed = lot.what.note.find("thawed") != std::string::npos;
  // A later date only means "for ever".
  const text::Date latest = counted + std::chrono::days(text::longest_days);
  lot.use_by = lot.use_by ? std::min(*lot.use_by, latest) : lot.use_by;
  const auto& keeps =
      lot.thawed && food.keeps.thawed ? food.keeps.thawed : food.keeps.in(lot.place);
  if (!keeps) {
    return;
  }
  const text::Date longest = counted + std::chrono::days(keeps->value);
  if (!lot.use_by) {
    lot.use_by = longest;
  } else if (food.safe_at && lot.place == foods::Place::fridge && *lot.use_by > longest) {
    diagnostics.warning(
        errors::kept_too_long, lot.what.at,
        fmt::format("'{}' is said to be good until {}, but raw it keeps {} in the fridge{} [{}]",
                    food.name, text::print_date(*lot.use_by), text::print_days(keeps->value),
                    lot.thawed ? " once thawed" : "", keeps->source),
        "the date on its label comes first; when in doubt, freeze it now or throw it out");
  }
}

} // namespace

OnHand read_on_hand(const Node& file, measure::System system, Names& names,
                    Diagnostics& diagnostics) {
  OnHand on_hand;
  const text::Fields fields(file, keys::on_hand, diagnostics);
  if (const Node* date = fields.find("date")) {
    on_hand.date = read_date(*date, diagnostics);
    on_hand.at = date->span;
  }
  for (const Node* line : fields.list("on hand")) {
    const std::string_view words = line->scalar;
    const std::size_t comma = std::min(words.find(','), words.size());
    for (Ingredient& what :
         read_line(*line, words.substr(0, comma), 0, system, names, diagnostics)) {
      if (!what.amount) {
        diagnostics.error(errors::unread_amount, line->span, "give an amount",
                          "for example '2 lb onions'");
        continue;
      }
      const foods::Food& food = *names.food(what.target);
      StockLot lot{std::move(what), 0, food.stored, {}};
      read_parts(*line, comma < words.size() ? words.substr(comma + 1) : std::string_view(), lot,
                 diagnostics);
      lot.amount = foods::as_purchased(food, *lot.what.amount)->amount;
      lot.what.fresh = lot.place != foods::Place::freezer;
      if (on_hand.date) {
        good_until(lot, food, *on_hand.date, diagnostics);
      }
      on_hand.lots.push_back(std::move(lot));
    }
  }
  return on_hand;
}

} // namespace manciple::kitchen
