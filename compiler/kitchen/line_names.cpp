// Which food the words of a line name, and what is made of words that name none.
#include "kitchen/errors.hpp"
#include "kitchen/line.hpp"
#include "kitchen/line_words.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {
namespace {

std::string joined(const std::vector<Word>& words) {
  std::string out;
  for (const Word& word : words) {
    out += (out.empty() ? "" : " ") + word.text;
  }
  return out;
}

} // namespace

std::vector<Word> words_of(std::string_view text, std::size_t offset,
                           const measure::Customs& customs) {
  std::vector<Word> out;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == ' ' || text[at] == '\t') {
      ++at;
      continue;
    }
    const std::size_t end = std::min(text.find_first_of(" \t", at), text.size());
    out.push_back({customs.meaning(text.substr(at, end - at)), offset + at, end - at});
    at = end;
  }
  return out;
}

namespace {

// Of what a recipe makes.
bool is_serving(std::string_view word) {
  return word == "serving" || word == "servings" || word == "portion" || word == "portions";
}

} // namespace

bool Line::is_known(const Word& word, const foods::Food* food) const {
  return (food == nullptr && is_serving(word.text)) || is_descriptor(word.text) ||
         word.text == "store" || word.text == "store-bought" || form_of(word.text).has_value() ||
         is_container(text::singular(word.text)) ||
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

bool Line::understands(const std::vector<Word>& words, const Match& found) const {
  const foods::Food* food = names_.food(found.target);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if ((i < found.first || i >= found.last) && !is_known(words[i], food)) {
      return false;
    }
  }
  return true;
}

// What the words beside the name say.
void Line::explain(const std::vector<Word>& words, const Match& found) {
  const foods::Food* food = names_.food(found.target);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i >= found.first && i < found.last) {
      continue;
    }
    const Word& word = words[i];
    if (food != nullptr && food->piece(word.text) != nullptr && piece_.empty() && !unit_) {
      piece_ = food->piece(word.text)->name;
    } else if (food == nullptr && is_serving(word.text)) {
      piece_ = "serving";
    } else if (const auto form = form_of(word.text)) {
      before_.push_back(*form);
    } else if (word.text == "fresh") {
      fresh_ = true;
    }
  }
}

// An error at the words that are not known, with the nearest that are.
void Line::refuse(const std::vector<Word>& words, const std::optional<Match>& found) {
  const auto food = text::slip_of(foods::normal_name(joined(words)), names_.all());
  if (found && !food) {
    const foods::Food* known = names_.food(found->target);
    for (std::size_t i = 0; i < words.size(); ++i) {
      if ((i < found->first || i >= found->last) && !is_known(words[i], known)) {
        const auto meant = slip_of_word(words[i].text);
        error(errors::unread_word, words[i].at, words[i].size,
              fmt::format("'{}' is not understood here", words[i].text),
              meant ? fmt::format("did you mean {}?", *meant)
                    : "name the food first and put what is done to it after a comma");
        return;
      }
    }
  }
  const std::size_t at = words.empty() ? 0 : words.front().at;
  const std::size_t size = words.empty() ? line_.size() : words.back().at + words.back().size - at;
  const std::string name = joined(words);
  std::string fix = food ? fmt::format("did you mean {}?", *food)
                         : text::did_you_mean(foods::normal_name(name), names_.all());
  if (fix.empty() && !words.empty()) {
    fix = text::did_you_mean(foods::normal_name(words.back().text), names_.all());
  }
  error(errors::unknown_food, at, size,
        name.empty() ? "this line names no food"
                     : fmt::format("no food or recipe is called '{}'", name),
        fix.empty() ? "add a new food to recipes/foods.yaml" : fix);
}

// Something is a slip of the name of a food, or one of the words of a word that cooks use.
bool Line::has_slip(const std::vector<Word>& words, const std::optional<Match>& found) const {
  if (names_.find(joined(words))) {
    return false;
  }
  const std::vector<std::string_view> names = names_.all();
  if (text::slip_of(foods::normal_name(joined(words)), names)) {
    return true;
  }
  const auto is_new = [&](const Word& word) {
    return !is_known(word, nullptr) && !names_.find(foods::normal_name(word.text));
  };
  // Of several words that nobody knows, none is taken for a slip of a food.
  const bool alone = std::count_if(words.begin(), words.end(), is_new) == 1;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool named = found && i >= found->first && i < found->last;
    const std::string word = foods::normal_name(words[i].text);
    if (!named && is_new(words[i]) &&
        (slip_of_word(words[i].text) || (alone && !found && text::slip_of(word, names)))) {
      return true;
    }
  }
  return false;
}

// A food that nobody knows, as it is written: without the words around it that are understood, and
// counted by the first word where that is one to count by. Nothing, with an error, for a slip.
std::optional<Target> Line::carry(const std::vector<Word>& words,
                                  const std::optional<Match>& found) {
  std::vector<Word> core = words;
  while (!core.empty() && is_known(core.front(), nullptr)) {
    if (const auto form = form_of(core.front().text)) {
      before_.push_back(*form);
    }
    core.erase(core.begin());
  }
  std::string counted_by = container_;
  if (core.size() > 1 && number_ && !unit_ && is_piece(text::singular(core.front().text))) {
    counted_by = text::singular(core.front().text);
    core.erase(core.begin());
    if (core.size() > 1 && core.front().text == "of") {
      core.erase(core.begin());
    }
  }
  const std::string name = joined(core);
  if (const auto recipe = name.empty() ? std::nullopt : names_.find_title(name)) {
    return recipe;
  }
  if (name.empty() || has_slip(core, std::nullopt) || has_slip(words, found)) {
    refuse(words, found);
    return std::nullopt;
  }
  const measure::Dimension dimension = unit_   ? measure::facts(*unit_).dimension
                                       : pack_ ? measure::dimension(*pack_)
                                               : measure::Dimension::count;
  if (dimension != measure::Dimension::count) {
    counted_by.clear();
  }
  const auto before = names_.find(name);
  const foods::Food* like = found ? names_.food(found->target) : nullptr;
  const auto target = names_.as_written(name, dimension, counted_by, like);
  if (!target) {
    refuse(words, found);
    return std::nullopt;
  }
  if (!counted_by.empty()) {
    piece_ = counted_by;
  }
  if (!before && !free_text_ && !names_.is_given(name)) {
    const std::string near = text::did_you_mean(foods::normal_name(name), names_.all());
    diagnostics_.warning(
        errors::as_written,
        node_.part(offset_ + core.front().at, core.back().at + core.back().size - core.front().at),
        fmt::format("no food or recipe is called '{}'; it is listed as written, and nothing more "
                    "is known about it",
                    name),
        near.empty() ? "you can describe it in recipes/foods.yaml" : near);
  }
  return target;
}

} // namespace manciple::kitchen
