#include "kitchen/stock.hpp"

#include "foods/ripening.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/line_words.hpp"
#include "kitchen/read.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Node;

// Where something is, by the words for it.
std::optional<foods::Place> place_in(std::string_view words) {
  for (const std::string_view before : {"in the ", "in "}) {
    if (words.starts_with(before)) {
      words.remove_prefix(before.size());
      break;
    }
  }
  if (words == "frozen" || words == "deep freeze") {
    return foods::Place::freezer;
  }
  if (words == "refrigerator") {
    return foods::Place::fridge;
  }
  if (words == "cupboard" || words == "larder") {
    return foods::Place::pantry;
  }
  return foods::parse_place(words);
}

constexpr std::array<std::string_view, 8> until_words{
    "use by", "good until", "until", "best before", "best by", "use before", "expires", "exp"};

class Parts {
public:
  Parts(const Node& line, std::optional<text::Date> counted, Diagnostics& diagnostics)
      : line_(line), counted_(counted), diagnostics_(diagnostics) {}

  std::optional<text::Date> made; ///< what a line says of a recipe

  // The parts of a line after the first comma.
  void read(std::string_view rest, StockLot& lot) {
    for (const std::string_view part : text::split(rest, ',')) {
      if (!part.empty()) {
        one(part, lot);
      }
    }
  }

private:
  text::Span at(std::string_view part) const {
    return line_.part(static_cast<std::size_t>(part.data() - line_.scalar.data()), part.size());
  }

  std::optional<text::Date> day(std::string_view words) const {
    return counted_ ? text::parse_day(words, *counted_) : text::parse_date(text::trim(words));
  }

  void one(std::string_view part, StockLot& lot) {
    std::string words = text::lower(part);
    std::replace(words.begin(), words.end(), '-', ' ');
    if (const auto place = place_in(words)) {
      lot.place = *place;
      return;
    }
    for (const std::string_view word : until_words) {
      if (words.starts_with(word) && (words.size() == word.size() || words[word.size()] == ' ')) {
        lot.use_by = date_after(part, word.size());
        return;
      }
    }
    if (words.starts_with("made ")) {
      made = date_after(part, 4);
      return;
    }
    if (words == "hard" || words == "unripe" || words == "not ripe" || words == "green") {
      lot.hard = true;
      return;
    }
    for (const std::string_view word : {"opened", "open", "thawed"}) {
      if (!words.starts_with(word) || (words.size() > word.size() && words[word.size()] != ' ')) {
        continue;
      }
      const auto since = words.size() > word.size() ? date_after(part, word.size()) : counted_;
      if (word == "thawed") {
        lot.thawed = true;
        lot.place = foods::Place::fridge;
      } else {
        lot.opened = since;
      }
      return;
    }
    not_understood(part, words, lot);
  }

  std::optional<text::Date> date_after(std::string_view part, std::size_t size) {
    const std::string_view words = text::trim(part.substr(size));
    const auto date = day(words);
    if (!date) {
      diagnostics_.error(errors::bad_value, at(part),
                         fmt::format("'{}' is not a date such as 2027-03-02 or 2 Mar", words));
    }
    return date;
  }

  // A slip or a date of nobody knows what is an error; a cut is kept, and anything else as well,
  // with a warning.
  void not_understood(std::string_view part, const std::string& words, StockLot& lot) {
    std::vector<std::string_view> known{"pantry", "fridge",   "freezer", "frozen",      "in",
                                        "the",    "cupboard", "until",   "use",         "by",
                                        "best",   "before",   "opened",  "thawed",      "expires",
                                        "hard",   "unripe",   "larder",  "refrigerator"};
    bool understood = true;
    for (const std::string_view word : text::split(words, ' ')) {
      if (const auto meant = text::slip_of(word, known)) {
        diagnostics_.error(errors::unread_word, at(part),
                           fmt::format("'{}' is not understood here", part),
                           fmt::format("did you mean {}?", *meant));
        return;
      }
      understood = understood &&
                   (word.empty() || is_descriptor(word) || form_of(std::string(word)).has_value());
    }
    if (day(part)) {
      diagnostics_.error(errors::unread_word, at(part),
                         fmt::format("it is not clear what happens on {}", part),
                         fmt::format("write 'until {0}' or 'opened {0}'", part));
      return;
    }
    lot.what.note += (lot.what.note.empty() ? "" : ", ") + std::string(part);
    if (!understood) {
      diagnostics_.warning(errors::unread_word, at(part),
                           fmt::format("'{}' is not understood and has no effect", part),
                           "after a comma you can write where it is and how long it is good: "
                           "'fridge', 'in the freezer', 'until 24 Apr', 'opened 3 Apr'");
    }
  }

  const Node& line_;
  std::optional<text::Date> counted_;
  Diagnostics& diagnostics_;
};

// Without a date it is good as long as such food keeps. Raw meat, fish and eggs in the fridge that
// are said to be good for longer deserve a question; what has been thawed keeps for a day or two.
void good_until(StockLot& lot, const foods::Food& food, text::Date counted,
                Diagnostics& diagnostics) {
  // What is open goes by that clock.
  if (lot.opened && food.keeps.opened && lot.place != foods::Place::freezer) {
    const text::Date open_until = *lot.opened + std::chrono::days(food.keeps.opened->value);
    lot.use_by = lot.use_by ? std::min(*lot.use_by, open_until) : open_until;
  }
  // A later date only means "for ever".
  const text::Date latest = counted + std::chrono::days(text::longest_days);
  lot.use_by = lot.use_by ? std::min(*lot.use_by, latest) : lot.use_by;
  if (const auto days = foods::keeps_hard(food); days && lot.hard && !lot.use_by) {
    lot.use_by = counted + std::chrono::days(*days);
    return;
  }
  const auto& keeps =
      lot.thawed && food.keeps.thawed ? food.keeps.thawed : food.keeps.in(lot.place);
  if (!keeps) {
    // On the counter, of fruit: nobody says how ripe it is.
    if (const auto ripe = foods::keeps_ripe(food); ripe && !lot.use_by) {
      lot.use_by = counted + std::chrono::days(*ripe);
    }
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

// Where in a line without a comma the place begins: "6 eggs in the fridge".
std::size_t place_at(std::string_view words) {
  if (text::find_comma(words) != std::string_view::npos) {
    return words.size();
  }
  for (const std::string_view place : foods::place_words()) {
    if (words.ends_with(place)) {
      for (const std::string_view before : {" in the ", " in ", " "}) {
        const std::string ending = fmt::format("{}{}", before, place);
        if (words.size() > ending.size() && words.ends_with(ending)) {
          return words.size() - ending.size();
        }
      }
    }
  }
  return words.size();
}

// "6 servings beef-chili, freezer", "8 cups vegetable stock, made 3 Apr".
bool is_made(std::string_view line) {
  const std::string words = text::lower(line);
  return words.find(" servings ") != std::string::npos ||
         words.find(" serving ") != std::string::npos || words.find(", made ") != std::string::npos;
}

} // namespace

OnHand read_on_hand(const Node& file, const measure::Customs& customs,
                    std::optional<text::Date> usual_date, Names& names, Names& recipes,
                    Diagnostics& diagnostics) {
  OnHand on_hand;
  on_hand.date = usual_date;
  on_hand.at = file.span;
  const text::Fields fields(file, keys::on_hand, diagnostics);
  if (const Node* date = fields.find("date")) {
    on_hand.date = read_date(*date, diagnostics);
    on_hand.at = date->span;
  }
  for (const Node* line : fields.list("on hand")) {
    const std::string_view words = line->scalar;
    const std::size_t comma = std::min(text::find_comma(words), place_at(words));
    const bool separated = comma < words.size() && words[comma] == ',';
    // "some garlic" is as good as "garlic".
    constexpr std::string_view some = "some ";
    const std::size_t from = words.starts_with(some) ? some.size() : 0;
    const std::string_view rest = words.substr(separated ? comma + 1 : comma);
    for (Ingredient& what : read_line(*line, words.substr(from, std::max(comma, from) - from), from,
                                      customs, is_made(words) ? recipes : names, diagnostics)) {
      if (what.amount && what.recipe() != nullptr) {
        StockLot lot{{}, 0, foods::Place::fridge, {}, false, {}};
        Parts parts(*line, on_hand.date, diagnostics);
        parts.read(rest, lot);
        on_hand.made.push_back({std::move(what), lot.place,
                                parts.made.value_or(on_hand.date.value_or(text::Date())),
                                lot.use_by});
        continue;
      }
      if (!what.amount) {
        diagnostics.warning(errors::unread_amount, line->span,
                            "no amount is given, so it is not counted",
                            customs.system == measure::System::us ? "for example '2 lb onions'"
                                                                  : "for example '500 g onions'");
        continue;
      }
      const foods::Food& food = *names.food(what.target);
      StockLot lot{std::move(what), 0, food.stored, {}, false, {}};
      Parts(*line, on_hand.date, diagnostics).read(rest, lot);
      lot.amount = foods::as_purchased(food, *lot.what.amount)->amount;
      lot.what.fresh = lot.place != foods::Place::freezer;
      if (on_hand.date) {
        good_until(lot, food, *on_hand.date, diagnostics);
      }
      on_hand.lots.push_back(std::move(lot));
    }
  }
  for (const std::string_view key : {"eaten", "thrown away"}) {
    for (const Node* line : fields.list(key)) {
      for (Ingredient& what : read_line(*line, line->scalar, 0, customs, names, diagnostics)) {
        if (!what.amount) {
          diagnostics.error(errors::unread_amount, line->span, "no amount is given",
                            "for example '2 onions'");
          continue;
        }
        const Rational amount = foods::as_purchased(*names.food(what.target), *what.amount)->amount;
        on_hand.gone.push_back({std::move(what), amount, key == "thrown away"});
      }
    }
  }
  return on_hand;
}

} // namespace manciple::kitchen
