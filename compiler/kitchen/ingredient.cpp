#include "kitchen/ingredient.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/line.hpp"
#include "kitchen/line_words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {

using foods::Form;
using measure::Cursor;
using measure::Unit;

void Line::take_brackets() {
  for (std::size_t open = line_.find('('); open != std::string::npos;
       open = line_.find('(', open)) {
    const std::size_t close = std::min(line_.find(')', open), line_.size() - 1);
    const std::string inside(text::trim(
        std::string_view(line_).substr(open + 1, close - open - (line_[close] == ')' ? 1 : 0))));
    std::string_view size = inside; // "(400 g each)", "(about 1.6 kg)"
    if (size.ends_with(" each")) {
      size.remove_suffix(std::string_view(" each").size());
    }
    for (const std::string_view roughly :
         {"about ", "approximately ", "approx ", "approx. ", "ca. "}) {
      if (size.starts_with(roughly)) {
        size.remove_prefix(roughly.size());
        break;
      }
    }
    Cursor cursor{size};
    const auto number = measure::scan_number(cursor);
    const std::string_view piece = text::trim(cursor.rest());
    if (const auto pack = measure::parse_quantity(size, customs_); pack && !pack_) {
      pack_ = pack;
    } else if (number && !pieces_ && piece.find(' ') == std::string_view::npos) {
      pieces_ = Pieces{*number, text::singular(piece), inside};
    } else if (inside == "optional") {
      optional_ = true;
    } else if (!inside.empty()) {
      note_ += (note_.empty() ? "" : ", ") + inside;
    }
    std::fill(line_.begin() + static_cast<std::ptrdiff_t>(open),
              line_.begin() + static_cast<std::ptrdiff_t>(close) + 1, ' ');
  }
}

// What is done to the food: cuts and states are understood, the rest is kept as a note. A slip of
// one of them is an error; that another food or something "free of" is named there is a warning,
// for it changes nothing.
void Line::take_tail(std::string_view tail, std::size_t at) {
  bool only_forms = true;
  const std::string_view first = text::trim(tail);
  const bool phrase = first.starts_with("in ") || first.starts_with("with ") ||
                      first.starts_with("for ") || first.starts_with("from ");
  for (const Word& word : words_of(tail, at, customs_)) {
    std::string plain = word.text;
    std::erase_if(plain, [](char c) { return c == ',' || c == ';'; });
    if (word.at == at + static_cast<std::size_t>(first.data() - tail.data()) &&
        (is_kind(plain) || !form_of(plain))) {
      first_after_ = plain;
    }
    if (const auto form = form_of(plain)) {
      after_.push_back(*form);
    } else if (plain == "fresh") {
      fresh_ = true;
    } else if (plain == "optional") {
      optional_ = true;
    } else if (plain != "and" && !plain.empty()) {
      only_forms = false;
      const auto meant = slip_of_form(plain);
      if (meant && !names_.find(plain)) {
        error(errors::unread_word, word.at, plain.size(),
              fmt::format("'{}' is not understood here", plain),
              fmt::format("did you mean {}?", *meant));
      } else if (plain.ends_with("-free") ||
                 (!phrase && plain.size() > 3 && names_.find(plain) && !is_descriptor(plain))) {
        notes_.push_back(word);
      }
    }
  }
  if (!only_forms) {
    note_ += (note_.empty() ? "" : ", ") + std::string(text::trim(tail));
  }
}

// "juice of 2 lemons", "zest and juice of 1 lemon": the parts; the words are blanked.
std::vector<Form> Line::take_part_of(std::string& head) {
  static constexpr std::array<std::pair<std::string_view, std::array<Form, 2>>, 6> openings{{
      {"juice and zest of ", {Form::juice, Form::zest}},
      {"zest and juice of ", {Form::zest, Form::juice}},
      {"grated zest of ", {Form::zest, Form::zest}},
      {"finely grated zest of ", {Form::zest, Form::zest}},
      {"juice of ", {Form::juice, Form::juice}},
      {"zest of ", {Form::zest, Form::zest}},
  }};
  const std::string lowered = text::lower(head);
  const std::size_t start = std::min(lowered.find_first_not_of(' '), lowered.size());
  for (const auto& [opening, forms] : openings) {
    if (std::string_view(lowered).substr(start).starts_with(opening)) {
      std::fill_n(head.begin() + static_cast<std::ptrdiff_t>(start), opening.size(), ' ');
      return forms[0] == forms[1] ? std::vector<Form>{forms[0]}
                                  : std::vector<Form>{forms[0], forms[1]};
    }
  }
  return {};
}

namespace {

// A heaped spoon holds half as much again as a level one. Common practice, no source.
const Rational heaped_share(3, 2);

// "2 heaped tbsp": passes the word by.
bool take_heaped(Cursor& cursor) {
  Cursor look = cursor;
  look.skip_spaces();
  for (const std::string_view word : {"heaped ", "heaping "}) {
    if (look.rest().starts_with(word)) {
      look.at += word.size();
      cursor = look;
      return true;
    }
  }
  return false;
}

// The piece of a food that a container is: a tin is a can, and a packet may be called a pack.
std::string piece_of(const foods::Food& food, const std::string& container) {
  if (container == "tin") {
    return "can";
  }
  constexpr std::array<std::string_view, 4> packs{"package", "pack", "packet", "pkg"};
  if (food.piece(container) == nullptr &&
      std::find(packs.begin(), packs.end(), container) != packs.end()) {
    for (const std::string_view pack : packs) {
      if (food.piece(pack) != nullptr) {
        return std::string(pack);
      }
    }
  }
  return container;
}

} // namespace

// The number, the measure and the size of a pack, in the orders that cooks use. False on an error.
bool Line::take_amount(Cursor& cursor) {
  cursor.skip_spaces();
  const std::size_t start = cursor.at;
  Cursor look = cursor;
  number_ = measure::scan_range(look);
  if (!number_) {
    if (!look.done() && (text::is_digit(look.rest().front()) || look.rest().starts_with('-'))) {
      error(errors::unread_amount, start,
            std::min(look.rest().find_first_of(" ,"), look.rest().size()),
            "this amount cannot be read",
            "write it as 2, 1 1/2, 0.75, 0,75 or 1-2, and thousands without a comma");
      return false;
    }
    return true;
  }
  // "a few", "an" before a vowel, but not "a" of "apple": a number word ends at a word's end.
  cursor = look;
  if (cursor.rest().starts_with('-')) {
    ++cursor.at; // "8-oz package"
  }
  // "one 3-lb chicken", "2 15-oz cans", "2 x 400 g cans": the size of each.
  Cursor size = cursor;
  size.skip_spaces();
  if (size.at > cursor.at) {
    if (size.rest().starts_with("x ")) {
      ++size.at;
      size.skip_spaces();
    }
    if (const auto each = measure::scan_quantity(size, customs_);
        each && each->unit != Unit::each && each->unit != Unit::dozen) {
      pack_ = each;
      cursor = size;
    }
  }
  const bool heaped = take_heaped(cursor);
  if (!pack_) {
    Cursor after = cursor;
    if ((unit_ = measure::scan_unit(after, customs_))) {
      if (heaped && measure::facts(*unit_).dimension == measure::Dimension::volume) {
        number_ = measure::Range{number_->low * heaped_share, number_->high * heaped_share};
      }
      // "1 lb 4 oz": what follows in the same dimension is added.
      Cursor more = after;
      const auto added = measure::scan_quantity(more, customs_);
      const auto& f = measure::facts(*unit_);
      if (added && measure::dimension(*added) == f.dimension &&
          f.dimension != measure::Dimension::count) {
        const Rational extra = measure::convert(*added, *unit_).amount;
        number_ = measure::Range{number_->low + extra, number_->high + extra};
        after = more;
      }
      cursor = after;
    }
  }
  return true;
}

// The form that decides the weight: the last one that the tables weigh, else the last one named.
std::optional<Form> Line::form_for(const foods::Food& food) const {
  std::vector<Form> all = before_;
  all.insert(all.end(), after_.begin(), after_.end());
  if (all.empty()) {
    return std::nullopt;
  }
  const auto weighed = std::find_if(all.rbegin(), all.rend(), [&](Form form) {
    return food.volume(form) != nullptr || food.yield(form) != nullptr;
  });
  return weighed == all.rend() ? all.back() : *weighed;
}

// An amount that the food is not known by is carried as it is written.
bool Line::check_measure(Ingredient& ingredient, const foods::Food& food) {
  const auto bought = foods::as_purchased(food, *ingredient.amount);
  if (bought) {
    return true;
  }
  const foods::Measure& measure = ingredient.amount->measure;
  const auto target = names_.as_written(
      food.name,
      measure.is_counted() ? measure::Dimension::count : measure::facts(measure.unit).dimension,
      measure.piece, &food);
  if (!target) {
    error(errors::wrong_measure, 0, line_.size(), bought.error().what, bought.error().fix);
    return false;
  }
  ingredient.target = *target;
  ingredient.amount->form = Form::plain;
  if (!food.as_written && !free_text_) {
    diagnostics_.warning(errors::wrong_measure, node_.part(offset_, line_.size()),
                         bought.error().what + "; it is listed as written", bought.error().fix);
  }
  return true;
}

// Takes the container, and "of" before and after it, from the words: "2 cans of tomatoes".
void Line::take_container(std::vector<Word>& words) {
  const auto take_of = [&] {
    if (!words.empty() && words.front().text == "of") {
      words.erase(words.begin());
    }
  };
  take_of();
  if (!words.empty() && is_container(text::singular(words.front().text)) && number_) {
    container_ = text::singular(words.front().text);
    words.erase(words.begin());
    take_of();
  }
}

// Which food is meant where another goes by the name alone: "peas, frozen" are frozen peas.
void Line::settle_kind(const std::vector<Word>& words, Match& found) {
  if (!first_after_.empty()) {
    std::string name = first_after_;
    for (std::size_t i = found.first; i < found.last; ++i) {
      name += " " + words[i].text;
    }
    if (const auto kind = names_.find(name)) {
      found.target = *kind;
      std::erase(after_, form_of(first_after_).value_or(Form::plain));
    }
  }
  if (number_ && !unit_ && !pack_ && container_.empty() && words.size() == 1 &&
      foods::normal_name(words.front().text) == "pepper") {
    found.target = names_.find("bell pepper").value_or(found.target); // nobody counts the spice
  }
}

void Line::warn_of_notes(const Target& target) {
  for (const Word& word : notes_) {
    if (names_.find(word.text) != target) {
      diagnostics_.warning(
          errors::unread_word, node_.part(offset_ + word.at, word.size),
          fmt::format("'{}' after the comma has no effect", word.text),
          "name the food before the comma, and put each food on a line of its own");
    }
  }
}

// What one of the number is, before any form: a pack or a piece of its size, as bought, what the
// food comes in, or the measure that is written.
foods::Amount Line::one_of(const foods::Food* food, bool packed_pieces) const {
  if (pack_ && (!unit_ || !container_.empty())) {
    return {pack_->amount, {pack_->unit, {}}, Form::plain, false};
  }
  if (packed_pieces) {
    return {pieces_->number, {Unit::each, pieces_->piece}, Form::plain, false};
  }
  foods::Amount out{1, {unit_.value_or(Unit::each), piece_}, Form::plain, !before_.empty()};
  if (!container_.empty() && food != nullptr && piece_.empty() && !unit_) {
    out.measure.piece = piece_of(*food, container_);
    const foods::Piece* metric = customs_.system != measure::System::us
                                     ? food->piece("metric " + out.measure.piece)
                                     : nullptr;
    if (metric != nullptr) {
      return {metric->grams, {Unit::gram, {}}, Form::plain, false};
    }
  }
  return out;
}

// Gives the ingredient its amount. False on an error.
bool Line::put_amount(Ingredient& ingredient, const foods::Food* food, bool packed_pieces) {
  foods::Amount amount = one_of(food, packed_pieces);
  const Rational low = amount.number * number_->low;
  amount.number *= number_->high;
  if (food != nullptr) {
    amount.form = form_for(*food).value_or(Form::plain);
    const bool drained_pack = amount.form == Form::drained && (pack_ || !container_.empty());
    if (drained_pack) {
      amount.form = Form::plain; // the can is bought whole
      ingredient.drained_can = true;
    }
    if (amount.number <= 0) {
      error(errors::unread_amount, 0, line_.size(), "an amount must be more than zero");
      return false;
    }
  }
  if (low != amount.number) {
    ingredient.low = low;
  }
  if (!container_.empty() || is_container(amount.measure.piece)) {
    ingredient.containers = number_->high;
    ingredient.any_size = !pack_ && !unit_ && !packed_pieces;
  }
  ingredient.amount = amount;
  return true;
}

std::optional<Ingredient> Line::finish(std::vector<Word> words) {
  take_container(words);
  auto found = match(words);
  if (found) {
    settle_kind(words, *found);
  }
  const bool understood = found && understands(words, *found);
  const auto unknown = understood ? std::nullopt : carry(words, found);
  if (!understood && !unknown) {
    return std::nullopt;
  }
  if (understood) {
    explain(words, *found);
  }
  const Target target = unknown ? *unknown : found->target;
  warn_of_notes(target);
  const foods::Food* food = names_.food(target);
  const bool packed_pieces = pieces_ && !container_.empty() && !pack_ && food != nullptr &&
                             (pieces_->piece.empty() || food->piece(pieces_->piece) != nullptr);
  if (pieces_ && !packed_pieces) {
    note_ += (note_.empty() ? "" : ", ") + pieces_->words;
  }
  const std::string_view written =
      std::string_view(node_.scalar).substr(std::min(offset_, node_.scalar.size()), line_.size());
  Ingredient out{std::string(text::trim(written)),
                 node_.part(offset_, line_.size()),
                 target,
                 {},
                 {},
                 fresh_,
                 optional_,
                 note_};
  if (number_ && !put_amount(out, food, packed_pieces)) {
    return std::nullopt;
  }
  return out;
}

// "salt and pepper": two foods without an amount.
std::vector<Ingredient> Line::several(std::string_view head, std::size_t at) {
  const std::size_t conjunction = head.find(" and ");
  if (number_ || conjunction == std::string_view::npos) {
    return {};
  }
  const auto first = match(words_of(head.substr(0, conjunction), at, customs_));
  const auto second = match(words_of(head.substr(conjunction + 5), at + conjunction + 5, customs_));
  // A name that holds the conjunction itself ("macaroni and cheese") is one thing.
  const std::vector<Word> all = words_of(head, at, customs_);
  const auto whole = match(all);
  if (!first || !second || (whole && whole->first == 0 && whole->last == all.size())) {
    return {};
  }
  std::vector<Ingredient> out;
  for (const auto& found : {first, second}) {
    out.push_back({std::string(text::trim(line_)),
                   node_.part(offset_, line_.size()),
                   found->target,
                   {},
                   {},
                   fresh_,
                   optional_,
                   note_});
  }
  return out;
}

std::vector<Ingredient> Line::read() {
  take_brackets();
  const std::size_t comma = std::min(text::find_comma(line_), line_.size());
  std::string head = line_.substr(0, comma);
  if (comma < line_.size()) {
    take_tail(std::string_view(line_).substr(comma + 1), comma + 1);
  }
  for (const std::string_view ending : {" to taste", " to serve", " for serving", " as needed"}) {
    if (std::string_view(head).ends_with(ending)) {
      head.resize(head.size() - ending.size());
    }
  }
  for (const std::string_view roughly : {"about ", "approximately ", "scant "}) {
    if (const std::size_t at = head.find_first_not_of(' ');
        at != std::string::npos && std::string_view(head).substr(at).starts_with(roughly)) {
      std::fill_n(head.begin() + static_cast<std::ptrdiff_t>(at), roughly.size(), ' ');
    }
  }
  const std::vector<Form> parts = take_part_of(head);
  Cursor cursor{head};
  if (!take_amount(cursor)) {
    return {};
  }
  std::vector<Word> words = words_of(cursor.rest(), cursor.at, customs_);
  if (std::vector<Ingredient> two = several(cursor.rest(), cursor.at); !two.empty()) {
    return two;
  }
  auto ingredient = finish(std::move(words));
  if (!ingredient) {
    return {};
  }
  if (!ingredient->amount) {
    return {std::move(*ingredient)};
  }
  // What is taken of the whole is so much of the whole, in whatever measure it is given.
  ingredient->amount->taken_from_whole = !parts.empty();
  const foods::Food* food = names_.food(ingredient->target);
  if (food != nullptr && !check_measure(*ingredient, *food)) {
    return {};
  }
  if (parts.empty()) {
    return {std::move(*ingredient)};
  }
  std::vector<Ingredient> out;
  for (const Form part : parts) {
    out.push_back(*ingredient);
    out.back().amount->form = part;
  }
  return out;
}

std::vector<Ingredient> read_line(const text::Node& line, std::string_view words,
                                  std::size_t offset, const measure::Customs& customs, Names& names,
                                  text::Diagnostics& diagnostics, bool free_text) {
  return Line(line, words, offset, customs, names, diagnostics, free_text).read();
}

} // namespace manciple::kitchen
