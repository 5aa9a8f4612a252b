#include "kitchen/stock.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/read.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

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

} // namespace

OnHand read_on_hand(const Node& file, measure::System system, Names& names,
                    Diagnostics& diagnostics) {
  OnHand on_hand;
  text::Fields fields(file, "a list of what is on hand", diagnostics);
  if (const Node* date = fields.need("date")) {
    on_hand.date = read_date(*date, diagnostics);
  }
  for (const Node* line : fields.list("on hand")) {
    const std::string* words =
        text::text_of(*line, "a line such as '2 lb onions, pantry'", diagnostics);
    if (words == nullptr) {
      continue;
    }
    const std::size_t comma = std::min(words->find(','), words->size());
    for (Ingredient& what : read_line(*line, std::string_view(*words).substr(0, comma), 0, system,
                                      names, diagnostics)) {
      if (!what.amount) {
        diagnostics.error(errors::unread_amount, line->span, "how much of it there is must be said",
                          "for example '2 lb onions'");
        continue;
      }
      const foods::Food& food = *names.food(what.target);
      StockLot lot{std::move(what), 0, food.stored, {}};
      read_parts(*line,
                 comma < words->size() ? std::string_view(*words).substr(comma + 1)
                                       : std::string_view(),
                 lot, diagnostics);
      lot.amount = foods::as_purchased(food, *lot.what.amount)->amount;
      lot.what.fresh = lot.place != foods::Place::freezer;
      if (!lot.use_by && on_hand.date) {
        if (const auto& keeps = food.keeps.in(lot.place)) {
          lot.use_by = *on_hand.date + std::chrono::days(keeps->value);
        }
      }
      on_hand.lots.push_back(std::move(lot));
    }
  }
  fields.close();
  return on_hand;
}

} // namespace manciple::kitchen
