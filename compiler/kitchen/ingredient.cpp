#include "kitchen/ingredient.hpp"

#include "kitchen/errors.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

using foods::Form;
using measure::Cursor;
using measure::Quantity;
using measure::Range;
using measure::Unit;

// Words that say what kind is meant and change no weight that the tables know.
constexpr auto descriptors = std::to_array<std::string_view>(
    {"ripe",     "fresh",  "freshly", "finely",  "roughly",  "coarsely", "thinly",   "thickly",
     "lightly",  "firmly", "cold",    "warm",    "hot",      "lukewarm", "chilled",  "boneless",
     "skinless", "crusty", "good",    "quality", "softened", "heaping",  "level",    "scant",
     "bought",   "of",     "raw",     "lean",    "the",      "plump",    "unpeeled", "trimmed",
     "washed",   "rinsed", "very",    "about"});

constexpr auto containers = std::to_array<std::string_view>(
    {"can", "tin", "package", "pkg", "packet", "jar", "bottle", "box", "bag", "carton", "tub",
     "tube", "container", "block", "pouch", "pack", "roll", "pair"});

template <std::size_t n>
bool holds(const std::array<std::string_view, n>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

// "diced", and the plural of a part: "yolks".
std::optional<Form> form_of(const std::string& word) {
  const auto form = foods::parse_form(word);
  return form ? form : foods::parse_form(text::singular(word));
}

struct Word {
  std::string text; // lower case
  std::size_t at = 0;
  std::size_t size = 0;
};

std::vector<Word> words_of(std::string_view text, std::size_t offset) {
  std::vector<Word> out;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == ' ' || text[at] == '\t') {
      ++at;
      continue;
    }
    const std::size_t end = std::min(text.find_first_of(" \t", at), text.size());
    out.push_back({text::lower(text.substr(at, end - at)), offset + at, end - at});
    at = end;
  }
  return out;
}

// A line under reading. Offsets are bytes of `line`.
class Line {
public:
  Line(const text::Node& node, std::string_view line, std::size_t offset, measure::System system,
       Names& names, text::Diagnostics& diagnostics)
      : node_(node),
        offset_(offset),
        system_(system),
        names_(names),
        diagnostics_(diagnostics),
        line_(line) {}

  std::vector<Ingredient> read();

private:
  // A name found among words, what stands before it and after it.
  struct Match {
    Target target;
    std::size_t first = 0;
    std::size_t last = 0; // one past
  };

  void take_brackets();
  void take_tail(std::string_view tail, std::size_t at);
  std::vector<Form> take_part_of(std::string& head);
  bool take_amount(Cursor& cursor);
  std::optional<Match> match(const std::vector<Word>& words) const;
  bool explain(const std::vector<Word>& words, const Match& match);
  bool is_known(const Word& word, const foods::Food* food) const;
  std::optional<Ingredient> finish(const std::vector<Word>& words);
  std::optional<Form> form_for(const foods::Food& food) const;
  bool check_measure(const Ingredient& ingredient, const foods::Food& food);
  std::vector<Ingredient> several(std::string_view head, std::size_t at);

  void error(text::Code code, std::size_t at, std::size_t size, std::string what,
             std::string fix = {}) {
    diagnostics_.error(code, node_.part(offset_ + at, size), std::move(what), std::move(fix));
  }

  const text::Node& node_;
  std::size_t offset_;
  measure::System system_;
  Names& names_;
  text::Diagnostics& diagnostics_;
  std::string line_; // brackets blanked out, so that offsets stay

  std::optional<Range> number_;
  std::optional<Unit> unit_;
  std::optional<Quantity> pack_;
  std::string piece_;
  std::string container_;
  std::vector<Form> before_;
  std::vector<Form> after_;
  bool fresh_ = false;
  bool optional_ = false;
  std::string note_;
};

void Line::take_brackets() {
  for (std::size_t open = line_.find('('); open != std::string::npos;
       open = line_.find('(', open)) {
    const std::size_t close = std::min(line_.find(')', open), line_.size() - 1);
    const std::string inside(text::trim(
        std::string_view(line_).substr(open + 1, close - open - (line_[close] == ')' ? 1 : 0))));
    if (const auto pack = measure::parse_quantity(inside, system_); pack && !pack_) {
      pack_ = pack;
    } else if (inside == "optional") {
      optional_ = true;
    } else if (!inside.empty()) {
      note_ += (note_.empty() ? "" : ", ") + inside;
    }
    std::fill(line_.begin() + static_cast<std::ptrdiff_t>(open),
              line_.begin() + static_cast<std::ptrdiff_t>(close) + 1, ' ');
  }
}

// What is done to the food: cuts and states are understood, the rest is kept as a note.
void Line::take_tail(std::string_view tail, std::size_t at) {
  bool only_forms = true;
  for (const Word& word : words_of(tail, at)) {
    std::string plain = word.text;
    std::erase_if(plain, [](char c) { return c == ',' || c == ';'; });
    if (const auto form = form_of(plain)) {
      after_.push_back(*form);
    } else if (plain == "fresh") {
      fresh_ = true;
    } else if (plain == "optional") {
      optional_ = true;
    } else if (plain != "and" && !plain.empty()) {
      only_forms = false;
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
            "this amount cannot be read", "write it as 2, 1 1/2, 0.75 or 1-2");
      return false;
    }
    return true;
  }
  // "a few", "an" before a vowel, but not "a" of "apple": a number word ends at a word's end.
  cursor = look;
  if (cursor.rest().starts_with('-')) {
    ++cursor.at; // "8-oz package"
  }
  // "one 3-lb chicken", "2 15-oz cans": the size of each.
  Cursor size = cursor;
  size.skip_spaces();
  if (size.at > cursor.at) {
    if (const auto each = measure::scan_quantity(size, system_);
        each && each->unit != Unit::each && each->unit != Unit::dozen) {
      pack_ = each;
      cursor = size;
    }
  }
  if (!pack_) {
    Cursor after = cursor;
    if ((unit_ = measure::scan_unit(after, system_))) {
      // "1 lb 4 oz": what follows in the same dimension is added.
      Cursor more = after;
      const auto added = measure::scan_quantity(more, system_);
      const auto& f = measure::facts(*unit_);
      if (added && measure::dimension(*added) == f.dimension &&
          f.dimension != measure::Dimension::count) {
        const Rational extra = measure::convert(*added, *unit_).amount;
        number_ = Range{number_->low + extra, number_->high + extra};
        after = more;
      }
      cursor = after;
    }
  }
  return true;
}

bool Line::is_known(const Word& word, const foods::Food* food) const {
  return holds(descriptors, word.text) || word.text == "store" || word.text == "store-bought" ||
         form_of(word.text).has_value() || holds(containers, text::singular(word.text)) ||
         (food != nullptr && food->piece(word.text) != nullptr);
}

// The longest name among the words whose neighbours are all understood; failing that the longest.
std::optional<Line::Match> Line::match(const std::vector<Word>& words) const {
  std::optional<Match> unexplained;
  const std::size_t longest = std::min<std::size_t>(words.size(), 6);
  for (std::size_t size = longest; size > 0; --size) {
    for (std::size_t first = 0; first + size <= words.size(); ++first) {
      std::string name;
      for (std::size_t i = first; i < first + size; ++i) {
        name += (i > first ? " " : "") + words[i].text;
      }
      auto target =
          container_ == "can" || container_ == "tin" ? names_.find("canned " + name) : std::nullopt;
      if (!target) {
        target = names_.find(name);
      }
      if (!target) {
        continue;
      }
      const foods::Food* food = names_.food(*target);
      bool all = true;
      for (std::size_t i = 0; i < words.size(); ++i) {
        all = all && ((i >= first && i < first + size) || is_known(words[i], food));
      }
      const Match found{*target, first, first + size};
      if (all) {
        return found;
      }
      if (!unexplained) {
        unexplained = found;
      }
    }
  }
  return unexplained;
}

// What the words beside the name say. False, with an error, when one says nothing that is known.
bool Line::explain(const std::vector<Word>& words, const Match& found) {
  const foods::Food* food = names_.food(found.target);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i >= found.first && i < found.last) {
      continue;
    }
    const Word& word = words[i];
    if (food != nullptr && food->piece(word.text) != nullptr && piece_.empty() && !unit_) {
      piece_ = food->piece(word.text)->name;
    } else if (const auto form = form_of(word.text)) {
      before_.push_back(*form);
    } else if (word.text == "fresh") {
      fresh_ = true;
    } else if (!is_known(word, food)) {
      error(errors::unread_word, word.at, word.size,
            fmt::format("'{}' is not understood here", word.text),
            "name the food first and put what is done to it after a comma");
      return false;
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
  for (auto form = all.rbegin(); form != all.rend(); ++form) {
    if (food.volume(*form) != nullptr || food.yield(*form) != nullptr) {
      return *form;
    }
  }
  return all.back();
}

bool Line::check_measure(const Ingredient& ingredient, const foods::Food& food) {
  const auto bought = foods::as_purchased(food, *ingredient.amount);
  if (!bought) {
    error(errors::wrong_measure, 0, line_.size(), bought.error().what, bought.error().fix);
  }
  return bought.has_value();
}

std::optional<Ingredient> Line::finish(const std::vector<Word>& words) {
  std::vector<Word> rest = words;
  if (!rest.empty() && rest.front().text == "of") {
    rest.erase(rest.begin());
  }
  if (!rest.empty() && holds(containers, text::singular(rest.front().text)) && number_) {
    container_ = text::singular(rest.front().text);
    rest.erase(rest.begin());
    if (!rest.empty() && rest.front().text == "of") {
      rest.erase(rest.begin());
    }
  }
  const auto found = match(rest);
  if (!found) {
    const std::size_t at = rest.empty() ? 0 : rest.front().at;
    const std::size_t size = rest.empty() ? line_.size() : rest.back().at + rest.back().size - at;
    std::string name;
    for (const Word& word : rest) {
      name += (name.empty() ? "" : " ") + word.text;
    }
    std::string fix = text::did_you_mean(foods::normal_name(name), names_.all());
    if (fix.empty() && !rest.empty()) {
      fix = text::did_you_mean(foods::normal_name(rest.back().text), names_.all());
    }
    error(errors::unknown_food, at, size,
          name.empty() ? "this line names no food"
                       : fmt::format("no food or recipe is called '{}'", name),
          fix.empty() ? "add a new food to recipes/foods.yaml" : fix);
    return std::nullopt;
  }
  if (!explain(rest, *found)) {
    return std::nullopt;
  }
  Ingredient out{std::string(text::trim(line_)),
                 node_.part(offset_, line_.size()),
                 found->target,
                 {},
                 {},
                 fresh_,
                 optional_,
                 note_};
  out.text = std::string(text::trim(
      std::string_view(node_.scalar).substr(std::min(offset_, node_.scalar.size()), line_.size())));
  const foods::Food* food = names_.food(found->target);
  if (!number_) {
    return out;
  }
  foods::Amount amount{
      number_->high, {unit_.value_or(Unit::each), piece_}, Form::plain, !before_.empty()};
  std::optional<Rational> low = number_->low;
  if (pack_ && (!unit_ || !container_.empty())) {
    // So many packs or pieces of that size, as bought.
    amount = {number_->high * pack_->amount, {pack_->unit, {}}, Form::plain, false};
    low = number_->low * pack_->amount;
  } else if (!container_.empty() && food != nullptr && piece_.empty() && !unit_) {
    amount.measure.piece = container_ == "tin" ? "can" : container_;
    const foods::Piece* metric = system_ == measure::System::metric
                                     ? food->piece("metric " + amount.measure.piece)
                                     : nullptr;
    if (metric != nullptr) {
      amount = {number_->high * metric->grams, {Unit::gram, {}}, Form::plain, false};
      low = number_->low * metric->grams;
    }
  }
  if (food != nullptr) {
    amount.form = form_for(*food).value_or(Form::plain);
    const bool drained_pack = amount.form == Form::drained && (pack_ || !container_.empty());
    if (drained_pack) {
      amount.form = Form::plain; // the can is bought whole
    }
    if (amount.number <= 0) {
      error(errors::unread_amount, 0, line_.size(), "an amount must be more than zero");
      return std::nullopt;
    }
  }
  if (low && *low != amount.number) {
    out.low = low;
  }
  if (!container_.empty() || holds(containers, amount.measure.piece)) {
    out.containers = number_->high;
    out.any_size = !pack_ && !unit_;
  }
  out.amount = amount;
  return out;
}

// "salt and pepper": two foods without an amount.
std::vector<Ingredient> Line::several(std::string_view head, std::size_t at) {
  const std::size_t conjunction = head.find(" and ");
  if (number_ || conjunction == std::string_view::npos) {
    return {};
  }
  const auto first = match(words_of(head.substr(0, conjunction), at));
  const auto second = match(words_of(head.substr(conjunction + 5), at + conjunction + 5));
  // A name that holds the conjunction itself ("macaroni and cheese") is one thing.
  const std::vector<Word> all = words_of(head, at);
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
  const std::size_t comma = std::min(line_.find(','), line_.size());
  std::string head = line_.substr(0, comma);
  if (comma < line_.size()) {
    take_tail(std::string_view(line_).substr(comma + 1), comma + 1);
  }
  for (const std::string_view ending : {" to taste", " to serve", " for serving", " as needed"}) {
    if (std::string_view(head).ends_with(ending)) {
      head.resize(head.size() - ending.size());
    }
  }
  for (const std::string_view roughly : {"about ", "approximately ", "scant ", "heaping "}) {
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
  const std::vector<Word> words = words_of(cursor.rest(), cursor.at);
  if (std::vector<Ingredient> two = several(cursor.rest(), cursor.at); !two.empty()) {
    return two;
  }
  auto ingredient = finish(words);
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

} // namespace

std::vector<Ingredient> read_line(const text::Node& line, std::string_view words,
                                  std::size_t offset, measure::System system, Names& names,
                                  text::Diagnostics& diagnostics) {
  return Line(line, words, offset, system, names, diagnostics).read();
}

} // namespace manciple::kitchen
