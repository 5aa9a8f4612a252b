#include "foods/counted.hpp"

#include "foods/convert.hpp"
#include "foods/spoken.hpp"
#include "measure/at_hand.hpp"
#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace manciple::foods {
namespace {

using measure::Dimension;
using measure::Unit;

// Of smaller ones nobody counts more than a dozen.
constexpr int small_grams = 60;
constexpr int tiny_grams = 2;
constexpr int most_small = 12;
const Rational least_part(1, 4);
const Rational least_seen(1, 8);
// Of a piece, at a counter: so much may be a small one.
const Rational least_bought(3, 4);
constexpr int least_grams = 5;

Rational nearest(const Rational& amount, const Rational& step) {
  return Rational(measure::round(amount / step)) * step;
}

// On a board: parts of one, halves of a few, else whole ones.
Rational rounded(const Rational& count) {
  constexpr int few = 3;
  if (count >= few) {
    return nearest(count, 1);
  }
  return count <= 1 ? measure::by_the_piece(count, measure::Cut::quarters)
                    : nearest(count, Rational(1, 2));
}

std::string fraction(const Rational& count) {
  return measure::print({count, Unit::each});
}

bool is_weighed(const Food& food) {
  const auto unit = measure::find_unit(food.shop_in, measure::System::us);
  return basis(food) == Dimension::mass && unit &&
         measure::facts(*unit).dimension == Dimension::mass;
}

// "1/2 can crushed tomatoes", not canned ones.
std::string after_piece(const Food& food, std::string_view piece) {
  constexpr std::string_view canned = "canned ";
  Food plain;
  plain.name =
      piece == "can" && food.name.starts_with(canned) ? food.name.substr(canned.size()) : food.name;
  return name_of(plain, 0);
}

std::optional<Rational> grams_of(const Food& food, std::string_view piece) {
  if (food.piece(piece) == nullptr) {
    return std::nullopt;
  }
  const auto one = as_purchased(food, {1, {Unit::each, std::string(piece)}, Form::plain, false});
  return one && one->amount > 0 ? std::optional(one->amount) : std::nullopt;
}

struct Counted {
  std::string piece;
  Rational count;
};

// In whole pieces, and parts of them.
std::optional<Counted> whole(const Food& food, const Rational& purchased) {
  std::string piece = counted_by(food);
  if (piece.empty() && food.department == Department::produce) {
    piece = "medium";
  }
  const auto one = grams_of(food, piece);
  if (!one || basis(food) != Dimension::mass) {
    return std::nullopt;
  }
  const Rational count = purchased / *one;
  const bool too_many = is_weighed(food) && *one < small_grams && count > most_small;
  return too_many ? std::nullopt : std::optional(Counted{std::move(piece), count});
}

// As a cook counts, who weighs meat: cloves of garlic always, stalks and sprigs of less than a
// bunch or a quarter of one.
std::optional<Counted> counted(const Food& food, const Rational& purchased) {
  auto pieces = whole(food, purchased);
  if (!pieces || (is_weighed(food) && food.department != Department::produce)) {
    return std::nullopt;
  }
  const std::array<std::pair<std::string_view, bool>, 3> parts{
      {{"clove", true}, {"stalk", pieces->count < 1}, {"sprig", pieces->count < least_part}}};
  for (const auto& [part, counts] : parts) {
    const auto of = counts ? grams_of(food, part) : std::nullopt;
    if (of && *of < purchased / pieces->count) {
      return Counted{std::string(part), std::max(Rational(1), nearest(purchased / *of, 1))};
    }
  }
  pieces->count = rounded(pieces->count);
  return pieces;
}

// Of what is poured out of a carton or a bottle, the millilitres.
std::optional<Rational> poured(const Food& food, const Rational& purchased) {
  const auto unit = measure::find_unit(food.shop_in, measure::System::us);
  const bool from_carton = food.count_as == "carton" && food.volume(Form::plain) != nullptr;
  if (!from_carton && (!unit || measure::facts(*unit).dimension != Dimension::volume)) {
    return std::nullopt;
  }
  if (basis(food) == Dimension::volume) {
    return purchased;
  }
  const auto one = as_purchased(food, {1, {Unit::milliliter, {}}, Form::plain, false});
  return one && one->amount > 0 ? std::optional<Rational>(purchased / one->amount) : std::nullopt;
}

std::string weight_written(const Food& food, const Rational& purchased, measure::Writing writing) {
  // By the cup and the spoon, to half a gallon; on a measuring jug, by 10 ml.
  if (const auto ml = poured(food, purchased);
      ml && *ml < measure::facts(Unit::us_gallon).factor / 2) {
    const bool us = writing.system == measure::System::us;
    const Rational seen = us || *ml < 50 ? *ml : nearest(*ml, 10);
    return measure::print_for_kitchen({seen, Unit::milliliter}, writing);
  }
  const bool us = writing.system == measure::System::us && basis(food) != Dimension::volume;
  const Rational large = us ? measure::facts(Unit::pound).factor : Rational(1000);
  const Rational step = purchased >= large ? large / (us ? 10 : 20)
                        : us               ? measure::facts(Unit::ounce).factor / 2
                                           : Rational(least_grams);
  return customary(food, std::max(step, nearest(purchased, step)), writing);
}

// "9", "1/2 head": without the name.
std::string words_of(const Food& food, const Counted& pieces) {
  const std::string number = fraction(pieces.count);
  return counts_itself(food, pieces.piece)
             ? number
             : fmt::format("{} {}", number,
                           pieces.count > 1 ? text::plural(pieces.piece) : pieces.piece);
}

} // namespace

std::string as_seen(const Food& food, const Rational& purchased, measure::Writing writing) {
  const auto pieces = counted(food, purchased);
  if (!pieces) {
    return basis(food) == Dimension::count
               ? with_name(food, std::max(Rational(1), nearest(purchased, 1)), writing)
               : fmt::format("{} {}", weight_written(food, purchased, writing),
                             name_of(food, purchased));
  }
  const std::string name = !counts_itself(food, pieces->piece) ? after_piece(food, pieces->piece)
                           : pieces->count > 1                 ? text::plural(food.name)
                                                               : food.name;
  const std::string all = fmt::format("{} {}", words_of(food, *pieces), name);
  return is_weighed(food) ? fmt::format("{} ({})", all, weight_written(food, purchased, writing))
                          : all;
}

std::string amount_seen(const Food& food, const Rational& purchased, measure::Writing writing) {
  const auto pieces = counted(food, purchased);
  if (pieces && !is_weighed(food)) {
    return words_of(food, *pieces);
  }
  return basis(food) == Dimension::count ? customary(food, purchased, writing, 0)
                                         : weight_written(food, purchased, writing);
}

std::optional<Pieces> pieces_in(const Food& food, const Rational& purchased) {
  auto pieces = whole(food, purchased);
  // A counter cuts slices as thick as it is asked to.
  if (!pieces || pieces->piece == "slice" || pieces->count < least_bought) {
    return std::nullopt;
  }
  pieces->count = nearest(pieces->count, 1);
  return Pieces{words_of(food, *pieces), pieces->count > 1 && counts_itself(food, pieces->piece)};
}

std::string pieces_to_take(const Food& food, const Rational& number, std::string_view piece) {
  const auto one = grams_of(food, piece.empty() ? counted_by(food) : piece);
  const bool weighs = one && basis(food) == Dimension::mass;
  const measure::Cut cut = weighs && *one <= tiny_grams   ? measure::Cut::whole
                           : weighs && *one < small_grams ? measure::Cut::halves
                                                          : measure::Cut::quarters;
  return fraction(measure::by_the_piece(number, cut));
}

std::string part_of(const Rational& share) {
  const Rational part = rounded(std::min(Rational(1), share));
  return part == 1 ? "nearly all" : "about " + fraction(part);
}

bool is_seen(const Food& food, const Rational& purchased) {
  const auto one = grams_of(food, counted_by(food));
  return one && basis(food) == Dimension::mass ? purchased >= *one * least_seen
         : basis(food) == Dimension::count     ? purchased >= least_seen
                                               : purchased >= least_grams;
}

} // namespace manciple::foods
