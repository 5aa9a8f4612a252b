#include "kitchen/offer.hpp"

#include "foods/convert.hpp"
#include "foods/keys.hpp"
#include "foods/spoken.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/line_words.hpp"
#include "measure/scan.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {
namespace {

using measure::Unit;
using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

// "2 for 5.00".
std::optional<Deal> parse_deal(std::string_view words, const Currency& currency) {
  measure::Cursor cursor{words};
  const auto packs = measure::scan_number(cursor);
  const std::string_view rest = text::trim(cursor.rest());
  const auto price = rest.starts_with("for ") ? currency.parse(rest.substr(4)) : std::nullopt;
  if (!packs || denominator(*packs) != 1 || *packs < 2 || *packs >= 100 || !price) {
    return std::nullopt;
  }
  return Deal{static_cast<int>(measure::to_int64(numerator(*packs))), *price};
}

// A counter's scale is read to a tenth of a pound or to 50 g. Common practice, no source.
Rational scale_step(Unit unit) {
  switch (unit) {
  case Unit::pound:
    return {1, 10};
  case Unit::ounce:
    return 1;
  case Unit::kilogram:
    return {1, 20};
  case Unit::gram:
    return 50;
  default:
    return {1, 4};
  }
}

// So many of what a shop means by one of a food.
foods::Amount pieces_sold(const foods::Food& food, const Rational& number) {
  const auto& piece = number > 1 ? food.in_packs : food.sold_as;
  return {number, {Unit::each, piece.value_or("")}, foods::Form::plain, false};
}

constexpr int most_inside = 1000;

// Of several such pieces each is opened by itself: cans, but not the buns of a pack.
bool is_closed(const foods::Food& food, const std::string& piece) {
  const std::string one = piece.empty() ? food.count_as.value_or("") : piece;
  return is_container(one.substr(one.rfind(' ') + 1)); // "metric can"
}

class OfferReader {
public:
  OfferReader(const Household& household, Names& names, Diagnostics& diagnostics)
      : household_(household),
        customs_(household.customs()),
        names_(names),
        diagnostics_(diagnostics) {}

  std::optional<Offer> read(const Node& node, foods::FoodId food);
  /// Of a food of which the file says no more than that it is sold.
  Offer sold(const Node& node, foods::FoodId food) const {
    Offer offer;
    offer.food = food;
    offer.at = node.span;
    (void)without_pack(offer);
    return offer;
  }

private:
  bool read_words(const Node& node, Offer& offer);
  bool by_unit(const Node& node, std::string_view unit, std::string_view price, Offer& offer);
  bool by_part(const Node& node, const measure::Quantity& part, Cents price, Offer& offer);
  bool by_pack(const Node& node, std::string_view pack, Offer& offer);
  bool without_pack(Offer& offer) const;
  bool several(const Node& node, std::string_view words, Cents price, Offer& offer);
  bool size_of(const Node& node, const foods::Amount& amount, Offer& offer);
  void read_terms(const Fields& fields, Offer& offer);
  void read_sale(const Node& node, Offer& offer);
  void read_deal(const Node& node, Offer& offer);
  bool bad(const Node& node, std::string what) {
    const bool us = household_.system == measure::System::us;
    const auto price = [&](Cents cents) { return household_.currency.figure(cents); };
    diagnostics_.error(errors::bad_offer, node.span, std::move(what),
                       fmt::format("write it as '{} {}', '{}/{}', '{} each' or '12 large {}'",
                                   us ? "3 lb bag" : "1 kg bag", price(299), price(199),
                                   us ? "lb" : "kg", price(59), price(349)));
    return false;
  }

  const Household& household_;
  measure::Customs customs_;
  Names& names_;
  Diagnostics& diagnostics_;
};

bool OfferReader::size_of(const Node& node, const foods::Amount& amount, Offer& offer) {
  const foods::Food& food = *names_.food(offer.food);
  const auto bought = foods::as_purchased(food, amount);
  if (!bought) {
    diagnostics_.warning(errors::wrong_measure, node.span,
                         bought.error().what + "; this price is left out", bought.error().fix);
    return false;
  }
  if (bought->amount <= 0) {
    return bad(node, "a pack must hold something");
  }
  offer.size = bought->amount;
  return true;
}

// "1.99/100 g" is a price for a kilogram.
bool OfferReader::by_part(const Node& node, const measure::Quantity& part, Cents price,
                          Offer& offer) {
  const bool grams = part.unit == Unit::gram || part.unit == Unit::milliliter;
  if (part.amount <= 0) {
    return bad(node, "a price must be for something");
  }
  const Rational whole = Rational(1000) / part.amount * price;
  if (!grams || denominator(whole) != 1) {
    return bad(node, "a price is for a unit, for 100 g or for 100 ml");
  }
  return by_unit(node, part.unit == Unit::gram ? "kg" : "l",
                 household_.currency.figure(measure::to_int64(numerator(whole))), offer);
}

// "1.99/lb": by weight. "0.59 each", "1.29/bunch": by the piece.
bool OfferReader::by_unit(const Node& node, std::string_view unit, std::string_view price,
                          Offer& offer) {
  const auto cents = household_.currency.parse(price);
  if (!cents) {
    return bad(node, fmt::format("'{}' is not a price", price));
  }
  if (const auto part = measure::parse_quantity(unit, customs_); part && part->amount != 1) {
    return by_part(node, *part, *cents, offer);
  }
  offer.price = *cents;
  offer.pack = std::string(unit);
  const auto known = measure::find_unit(unit, customs_);
  if (known && measure::facts(*known).dimension != measure::Dimension::count) {
    const Rational step = scale_step(*known);
    offer.by_weight = true;
    offer.steps_per_price = Rational(1) / step;
    return size_of(node, {step, {*known, {}}, foods::Form::plain, false}, offer);
  }
  if (std::any_of(unit.begin(), unit.end(), text::is_digit)) {
    return bad(node, fmt::format("'{}' is not something that a price can be for", unit));
  }
  if (known == Unit::each) {
    return size_of(node, pieces_sold(*names_.food(offer.food), 1), offer);
  }
  const std::string piece = known ? std::string() : text::singular(customs_.meaning(unit));
  return size_of(node, {1, {known.value_or(Unit::each), piece}, foods::Form::plain, false}, offer);
}

// "3 lb bag", "14.5 oz can", "12 large", "1 gal", "6 x 15 oz cans".
bool OfferReader::by_pack(const Node& node, std::string_view pack, Offer& offer) {
  offer.pack = std::string(pack);
  const auto inside = several_in_one(pack);
  if (inside) {
    offer.inside = inside->first;
    pack = inside->second;
  }
  measure::Cursor cursor{pack};
  if (const auto unit = measure::find_unit(pack, customs_); unit && *unit != Unit::each) {
    offer.pack = (inside ? "" : "1 ") + offer.pack;
    return size_of(node, {offer.inside, {*unit, {}}, foods::Form::plain, false}, offer);
  }
  if (const auto quantity = measure::scan_quantity(cursor, customs_)) {
    return size_of(
        node, {quantity->amount * offer.inside, {quantity->unit, {}}, foods::Form::plain, false},
        offer);
  }
  auto number = measure::scan_number(cursor);
  const foods::Food& food = *names_.food(offer.food);
  const bool one = food.piece(customs_.meaning(pack)) != nullptr || // "bunch 1.49"
                   foods::basis(food) == measure::Dimension::count;
  if (inside || one) {
    offer.pack = (number || inside ? "" : "1 ") + offer.pack;
    number = number.value_or(1) * offer.inside;
  }
  if (!number || *number <= 0) {
    return bad(node, fmt::format("'{}' is not a pack size", pack));
  }
  // A count of pieces; a word that is no piece of the food only names the pack ("4 pack").
  foods::Amount held = pieces_sold(food, *number);
  for (const std::string_view written : text::split(cursor.rest(), ' ')) {
    const std::string word = customs_.meaning(written);
    if (food.piece(word) != nullptr) {
      held.measure.piece = food.piece(word)->name;
      break;
    }
  }
  if (offer.inside == 1 && is_closed(food, held.measure.piece) && denominator(*number) == 1 &&
      *number <= most_inside) {
    offer.inside = static_cast<int>(measure::to_int64(numerator(*number)));
  }
  return size_of(node, held, offer);
}

// A price for a unit, where it is written so: "1.99/lb", "1,99 / 100 g", "2.49 per kg". "1/2 gal"
// is an amount.
std::optional<std::pair<std::string_view, std::string_view>> price_per(std::string_view words,
                                                                       const Currency& currency) {
  for (const std::string_view per : {"/", " per "}) {
    const std::size_t at = words.find(per);
    if (at == std::string_view::npos || !currency.parse(words.substr(0, at))) {
      continue;
    }
    const std::string_view price = text::trim(words.substr(0, at));
    const std::string_view unit = text::trim(words.substr(at + per.size()));
    const bool fraction = per == "/" && !unit.empty() && text::is_digit(unit.front()) &&
                          price.find_first_of(".,") == std::string_view::npos;
    if (!fraction) {
      return std::pair(price, unit);
    }
  }
  return std::nullopt;
}

bool OfferReader::read_words(const Node& node, Offer& offer) {
  // "2,49 €" is one word as "€2.49" is.
  const std::string_view words = household_.currency.without_sign(node.scalar);
  if (const auto per = price_per(words, household_.currency)) {
    return by_unit(node, per->second, per->first, offer);
  }
  if (words == "?") {
    return without_pack(offer);
  }
  const std::size_t last = words.rfind(' ');
  if (last == std::string_view::npos) {
    // A price alone is for one, of what is not weighed.
    const foods::Food& food = *names_.food(offer.food);
    return household_.currency.parse(words) && !foods::shop_unit(food, customs_.system).by_weight
               ? by_unit(node, "each", words, offer)
               : bad(node, fmt::format("'{}' is not an offer", words));
  }
  const std::string_view tail = words.substr(last + 1);
  if (household_.currency.parse(words.substr(0, last)) && !household_.currency.parse(tail) &&
      tail != "?") {
    return by_unit(node, tail, words.substr(0, last), offer);
  }
  const std::string_view pack = household_.currency.without_sign(words.substr(0, last));
  // "400 g can ?" and "400 g can": the price is not known.
  if (tail == "?" || (text::is_digit(words.front()) && text::is_letter(tail.front()))) {
    return by_pack(node, tail == "?" ? pack : words, offer);
  }
  const auto cents = household_.currency.parse(tail);
  if (!cents) {
    return bad(node, fmt::format("'{}' is not a price", tail));
  }
  if (pack == "for" || pack.ends_with(" for")) {
    return several(node, text::trim(pack.substr(0, pack.size() - 3)), *cents, offer);
  }
  offer.price = *cents;
  return by_pack(node, pack, offer);
}

// Sold here, in nobody knows which packs and for how much.
bool OfferReader::without_pack(Offer& offer) const {
  const foods::ShopUnit unit = foods::shop_unit(*names_.food(offer.food), household_.system);
  offer.pack = unit.word;
  offer.size = unit.size;
  offer.by_weight = unit.by_weight;
  offer.likely = true;
  return true;
}

// "2 for 5.00", "14.5 oz can 2 for 3.00": so many packs for a price, and a single one for its
// share, a part of a cent rounded up. Common practice, no source. "2 lb for 5.00" is a pack of 2
// lb.
bool OfferReader::several(const Node& node, std::string_view words, Cents price, Offer& offer) {
  const std::size_t last = words.rfind(' ');
  const std::string_view number = words.substr(last == std::string_view::npos ? 0 : last + 1);
  const std::string_view pack =
      last == std::string_view::npos ? std::string_view() : text::trim(words.substr(0, last));
  const auto deal = parse_deal(fmt::format("{} for {}", number, household_.currency.figure(price)),
                               household_.currency);
  if (!deal) {
    offer.price = price;
    return by_pack(node, words, offer);
  }
  offer.price = (price + deal->packs - 1) / deal->packs;
  offer.deal = *deal;
  if (!pack.empty()) {
    return by_pack(node, pack, offer);
  }
  offer.pack = "each";
  return size_of(node, pieces_sold(*names_.food(offer.food), 1), offer);
}

void OfferReader::read_sale(const Node& node, Offer& offer) {
  const Fields fields(node, keys::sale, diagnostics_);
  Sale sale;
  if (const Node* price = fields.find("price")) {
    sale.price = read_money(*price, household_.currency, diagnostics_).value_or(0);
  }
  if (const Node* from = fields.find("from")) {
    sale.from = read_date(*from, diagnostics_);
  }
  if (const Node* until = fields.find("until")) {
    sale.until = read_date(*until, diagnostics_);
  }
  if (sale.from && sale.until && *sale.until < *sale.from) {
    diagnostics_.error(errors::wrong_order, node.span, "this sale ends before it begins");
  }
  offer.sale = sale;
}

// By weight, "2 for 5.00" is two of the unit that the price is for, in steps of the scale.
void OfferReader::read_deal(const Node& node, Offer& offer) {
  auto deal = parse_deal(node.scalar, household_.currency);
  if (offer.deal) {
    diagnostics_.error(errors::bad_offer, node.span, "this offer has two deals");
    return;
  }
  const Rational packs = deal ? deal->packs * offer.steps_per_price : Rational(0);
  if (!deal || denominator(packs) != 1 || packs < 2) {
    diagnostics_.error(errors::bad_offer, node.span, fmt::format("'{}' is not a deal", node.scalar),
                       fmt::format("write it as '2 for {}'", household_.currency.figure(500)));
    return;
  }
  offer.deal = Deal{static_cast<int>(measure::to_int64(numerator(packs))), deal->price};
}

void OfferReader::read_terms(const Fields& fields, Offer& offer) {
  if (const Node* from = fields.find("from")) {
    offer.from = read_date(*from, diagnostics_);
  }
  if (const Node* until = fields.find("until")) {
    offer.until = read_date(*until, diagnostics_);
    if (offer.from && offer.until && *offer.until < *offer.from) {
      diagnostics_.error(errors::wrong_order, until->span, "this offer ends before it begins");
    }
  }
  if (const Node* sale = fields.find("sale")) {
    read_sale(*sale, offer);
  }
  if (const Node* deal = fields.find("deal")) {
    read_deal(*deal, offer);
  }
  if (const Node* price = fields.find("member price")) {
    offer.member_price = read_money(*price, household_.currency, diagnostics_);
  }
  if (const Node* limit = fields.find("limit")) {
    offer.limit = read_count(*limit, diagnostics_, 1);
  }
  if (const Node* allergens = fields.find("allergens")) {
    const Fields lists(*allergens, foods::keys::allergens, diagnostics_);
    offer.allergens = foods::Allergens{read_allergens(lists.list("contains"), diagnostics_),
                                       read_allergens(lists.list("check label"), diagnostics_)};
  }
}

std::optional<Offer> OfferReader::read(const Node& node, foods::FoodId food) {
  Offer offer;
  offer.food = food;
  offer.at = node.span;
  if (node.is_scalar()) {
    return read_words(node, offer) ? std::optional(std::move(offer)) : std::nullopt;
  }
  const Fields fields(node, keys::offer, diagnostics_);
  const Node* words = fields.find("offer");
  const bool good = words != nullptr && read_words(*words, offer);
  offer.at = words != nullptr ? words->span : offer.at;
  read_terms(fields, offer);
  return good ? std::optional(std::move(offer)) : std::nullopt;
}

// Whether the offers of a food are of cans or tins.
bool is_sold_in_cans(const Node& offers) {
  const auto says = [](const Node& node) {
    const std::vector<std::string_view> words = text::split(node.scalar, ' ');
    return std::any_of(words.begin(), words.end(), [](std::string_view word) {
      const std::string one = text::singular(text::lower(word));
      return one == "can" || one == "tin";
    });
  };
  const std::vector<const Node*> items = text::items_of(offers);
  return std::any_of(items.begin(), items.end(), [&](const Node* item) {
    return says(*item) ||
           std::any_of(item->entries.begin(), item->entries.end(), [&](const Entry& entry) {
             return entry.key.scalar == "offer" && says(entry.value);
           });
  });
}

// The prices of a food that nobody knows, for recipes that speak of it as well.
std::vector<Offer> of_unknown_food(const Entry& entry, const Household& household, Names& names,
                                   Diagnostics& diagnostics) {
  std::vector<Offer> out;
  const std::string& name = entry.key.scalar;
  for (const Node* item : text::items_of(entry.value)) {
    // By what a price or a pack is for.
    const Node* words = item;
    for (const Entry& key : item->entries) {
      words = key.key.scalar == "offer" ? &key.value : words;
    }
    measure::Dimension dimension = measure::Dimension::count;
    const auto per = price_per(words->scalar, household.currency);
    measure::Cursor pack{words->scalar};
    if (const auto inside = several_in_one(words->scalar)) {
      pack = {inside->second};
    }
    if (const auto quantity = measure::scan_quantity(pack, household.customs()); quantity && !per) {
      dimension = measure::dimension(*quantity);
    } else if (per) {
      measure::Cursor unit{per->second};
      (void)measure::scan_number(unit);
      const auto known = measure::scan_unit(unit, household.customs());
      dimension = known ? measure::facts(*known).dimension : dimension;
    }
    const auto target = names.as_written(name, dimension, {}, nullptr);
    const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
    auto offer = food != nullptr ? OfferReader(household, names, diagnostics).read(*item, *food)
                                 : std::optional<Offer>();
    if (offer) {
      out.push_back(std::move(*offer));
    }
  }
  const std::string near = text::did_you_mean(foods::normal_name(name), names.all());
  diagnostics.warning(errors::as_written, entry.key.span,
                      fmt::format("no food is called '{}'; it is listed as written", name),
                      near.empty() ? "you can describe it in recipes/foods.yaml" : near);
  return out;
}

} // namespace

std::optional<std::pair<int, std::string_view>> several_in_one(std::string_view pack) {
  measure::Cursor cursor{pack};
  const auto number = measure::scan_number(cursor);
  const std::string_view rest = text::trim(cursor.rest());
  for (const std::string_view times : {"x ", "X ", "\u00d7", "*"}) {
    if (number && denominator(*number) == 1 && *number >= 1 && *number <= most_inside &&
        rest.starts_with(times)) {
      return std::pair(static_cast<int>(measure::to_int64(numerator(*number))),
                       text::trim(rest.substr(times.size())));
    }
  }
  return std::nullopt;
}

std::vector<Offer> read_offers(const Entry& entry, ShopId shop, const Household& household,
                               Names& names, Diagnostics& diagnostics) {
  const std::string& name = entry.key.scalar;
  auto target = names.find(name);
  if (!target && is_sold_in_cans(entry.value)) { // "chopped tomatoes: 400 g tin 0.69"
    target = names.find("canned " + name);
  }
  const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
  std::vector<Offer> out;
  if (!target && !text::slip_of(foods::normal_name(name), names.all())) {
    out = of_unknown_food(entry, household, names, diagnostics);
  } else if (food == nullptr) {
    diagnostics.error(errors::unknown_food, entry.key.span,
                      target ? fmt::format("'{}' is a recipe, not a food that is sold", name)
                             : fmt::format("no food is called '{}'", name),
                      target ? "" : text::did_you_mean(foods::normal_name(name), names.all()));
  } else {
    OfferReader reader(household, names, diagnostics);
    const std::vector<const Node*> items = text::items_of(entry.value);
    for (const Node* item : items) {
      if (auto offer = reader.read(*item, *food)) {
        out.push_back(std::move(*offer));
      }
    }
    if (items.empty()) {
      out.push_back(reader.sold(entry.key, *food));
    }
  }
  for (Offer& offer : out) {
    offer.shop = shop;
  }
  return out;
}

} // namespace manciple::kitchen
