#pragma once

#include "kitchen/ingredient.hpp"

namespace manciple::kitchen {

/// A word of a line.
struct Word {
  std::string text; // lower case; of a word of the house's own, what it means
  std::size_t at = 0;
  std::size_t size = 0;
};

/// The words of a text, each with what it means in the house.
std::vector<Word> words_of(std::string_view text, std::size_t offset,
                           const measure::Customs& customs);

/// A line under reading. Offsets are bytes of `line`.
class Line {
public:
  Line(const text::Node& node, std::string_view line, std::size_t offset,
       const measure::Customs& customs, Names& names, text::Diagnostics& diagnostics,
       bool free_text)
      : node_(node),
        offset_(offset),
        customs_(customs),
        names_(names),
        diagnostics_(diagnostics),
        free_text_(free_text),
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
  std::vector<foods::Form> take_part_of(std::string& head);
  bool take_amount(measure::Cursor& cursor);
  std::optional<Match> match(const std::vector<Word>& words) const;
  bool understands(const std::vector<Word>& words, const Match& match) const;
  void explain(const std::vector<Word>& words, const Match& match);
  std::optional<Target> carry(const std::vector<Word>& words, const std::optional<Match>& found);
  bool has_slip(const std::vector<Word>& words, const std::optional<Match>& found) const;
  void refuse(const std::vector<Word>& words, const std::optional<Match>& found);
  bool is_known(const Word& word, const foods::Food* food) const;
  void take_container(std::vector<Word>& words);
  void settle_kind(const std::vector<Word>& words, Match& found);
  void warn_of_notes(const Target& target);
  [[nodiscard]] foods::Amount one_of(const foods::Food* food, bool packed_pieces) const;
  bool put_amount(Ingredient& ingredient, const foods::Food* food, bool packed_pieces);
  std::optional<Ingredient> finish(std::vector<Word> words);
  std::optional<foods::Form> form_for(const foods::Food& food) const;
  bool check_measure(Ingredient& ingredient, const foods::Food& food);
  std::vector<Ingredient> several(std::string_view head, std::size_t at);

  void error(text::Code code, std::size_t at, std::size_t size, std::string what,
             std::string fix = {}) {
    diagnostics_.error(code, node_.part(offset_ + at, size), std::move(what), std::move(fix));
  }

  const text::Node& node_;
  std::size_t offset_;
  const measure::Customs& customs_;
  Names& names_;
  text::Diagnostics& diagnostics_;
  bool free_text_;
  std::string line_; // brackets blanked out, so that offsets stay

  std::optional<measure::Range> number_;
  std::optional<measure::Unit> unit_;
  std::optional<measure::Quantity> pack_;
  /// "(12 slices)": how many of which pieces, and the words.
  struct Pieces {
    Rational number;
    std::string piece;
    std::string words;
  };
  std::optional<Pieces> pieces_;
  std::string piece_;
  std::string container_;
  std::vector<foods::Form> before_;
  std::vector<foods::Form> after_;
  std::string first_after_; // the word after the comma, where it may say of which kind the food is
  bool fresh_ = false;
  bool optional_ = false;
  std::string note_;
  std::vector<Word> notes_; // words of the note that a reader may take for more
};

} // namespace manciple::kitchen
