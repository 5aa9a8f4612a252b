#include "kitchen/shop.hpp"

#include "foods/convert.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
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

constexpr std::string_view example = "'3 lb bag 2.99', '1.99/lb', '0.59 each' or '12 large 3.49'";

// "2 for 5.00".
std::optional<Deal> parse_deal(std::string_view words) {
  measure::Cursor cursor{words};
  const auto packs = measure::scan_number(cursor);
  const std::string_view rest = text::trim(cursor.rest());
  const auto price = rest.starts_with("for ") ? parse_money(rest.substr(4)) : std::nullopt;
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

class Reader {
public:
  Reader(measure::System system, Names& names, Diagnostics& diagnostics)
      : system_(system), names_(names), diagnostics_(diagnostics) {}

  std::optional<Offer> read(const Node& node, foods::FoodId food);

private:
  bool read_words(const Node& node, Offer& offer);
  bool by_unit(const Node& node, std::string_view unit, std::string_view price, Offer& offer);
  bool by_pack(const Node& node, std::string_view pack, Offer& offer);
  bool several(const Node& node, std::string_view words, Cents price, Offer& offer);
  bool size_of(const Node& node, const foods::Amount& amount, Offer& offer);
  void read_terms(const Fields& fields, Offer& offer);
  void read_sale(const Node& node, Offer& offer);
  void read_deal(const Node& node, Offer& offer);
  bool bad(const Node& node, std::string what) {
    diagnostics_.error(errors::bad_offer, node.span, std::move(what),
                       fmt::format("write it as {}", example));
    return false;
  }

  measure::System system_;
  Names& names_;
  Diagnostics& diagnostics_;
};

bool Reader::size_of(const Node& node, const foods::Amount& amount, Offer& offer) {
  const foods::Food& food = *names_.food(offer.food);
  const auto bought = foods::as_purchased(food, amount);
  if (!bought) {
    diagnostics_.error(errors::wrong_measure, node.span, bought.error().what, bought.error().fix);
    return false;
  }
  if (bought->amount <= 0) {
    return bad(node, "a pack must hold something");
  }
  offer.size = bought->amount;
  return true;
}

// "1.99/lb": by weight. "0.59 each", "1.29/bunch": by the piece.
bool Reader::by_unit(const Node& node, std::string_view unit, std::string_view price,
                     Offer& offer) {
  const auto cents = parse_money(price);
  if (!cents) {
    return bad(node, fmt::format("'{}' is not a price", price));
  }
  offer.price = *cents;
  offer.pack = std::string(unit);
  const auto known = measure::find_unit(unit, system_);
  if (known && measure::facts(*known).dimension != measure::Dimension::count) {
    const Rational step = scale_step(*known);
    offer.by_weight = true;
    offer.steps_per_price = Rational(1) / step;
    return size_of(node, {step, {*known, {}}, foods::Form::plain, false}, offer);
  }
  const std::string piece = known ? std::string() : text::singular(text::lower(unit));
  return size_of(node, {1, {known.value_or(Unit::each), piece}, foods::Form::plain, false}, offer);
}

// "3 lb bag", "14.5 oz can", "12 large", "1 gal".
bool Reader::by_pack(const Node& node, std::string_view pack, Offer& offer) {
  offer.pack = std::string(pack);
  measure::Cursor cursor{pack};
  if (const auto quantity = measure::scan_quantity(cursor, system_)) {
    return size_of(node, {quantity->amount, {quantity->unit, {}}, foods::Form::plain, false},
                   offer);
  }
  const auto number = measure::scan_number(cursor);
  if (!number || *number <= 0) {
    return bad(node, fmt::format("'{}' is not a pack size", pack));
  }
  // A count of pieces; a word that is no piece of the food only names the pack ("4 pack").
  const foods::Food& food = *names_.food(offer.food);
  for (const std::string_view word : text::split(cursor.rest(), ' ')) {
    if (food.piece(word) != nullptr) {
      return size_of(
          node, {*number, {Unit::each, food.piece(word)->name}, foods::Form::plain, false}, offer);
    }
  }
  return size_of(node, {*number, {Unit::each, {}}, foods::Form::plain, false}, offer);
}

bool Reader::read_words(const Node& node, Offer& offer) {
  const std::string_view words = text::trim(node.scalar);
  if (const std::size_t slash = words.find('/');
      slash != std::string_view::npos && words.find(' ') == std::string_view::npos) {
    return by_unit(node, words.substr(slash + 1), words.substr(0, slash), offer);
  }
  const std::size_t last = words.rfind(' ');
  if (last == std::string_view::npos) {
    return bad(node, fmt::format("'{}' is not an offer", words));
  }
  const std::string_view tail = words.substr(last + 1);
  if (parse_money(words.substr(0, last)) && !parse_money(tail)) {
    return by_unit(node, tail, words.substr(0, last), offer);
  }
  const std::string_view pack = text::trim(words.substr(0, last));
  const auto cents = parse_money(tail);
  if (!cents) {
    return bad(node, fmt::format("'{}' is not a price", tail));
  }
  if (pack == "for" || pack.ends_with(" for")) {
    return several(node, text::trim(pack.substr(0, pack.size() - 3)), *cents, offer);
  }
  offer.price = *cents;
  return by_pack(node, pack, offer);
}

// "2 for 5.00", "14.5 oz can 2 for 3.00": so many packs for a price, and a single one for its
// share, a part of a cent rounded up. Common practice, no source. "2 lb for 5.00" is a pack of 2
// lb.
bool Reader::several(const Node& node, std::string_view words, Cents price, Offer& offer) {
  const std::size_t last = words.rfind(' ');
  const std::string_view number = words.substr(last == std::string_view::npos ? 0 : last + 1);
  const std::string_view pack =
      last == std::string_view::npos ? std::string_view() : text::trim(words.substr(0, last));
  const auto deal = parse_deal(fmt::format("{} for {}", number, print_money(price)));
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
  return size_of(node, {1, {Unit::each, {}}, foods::Form::plain, false}, offer);
}

void Reader::read_sale(const Node& node, Offer& offer) {
  const Fields fields(node, keys::sale, diagnostics_);
  Sale sale;
  if (const Node* price = fields.find("price")) {
    sale.price = read_money(*price, diagnostics_).value_or(offer.price);
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
void Reader::read_deal(const Node& node, Offer& offer) {
  auto deal = parse_deal(node.scalar);
  if (offer.deal) {
    diagnostics_.error(errors::bad_offer, node.span, "this offer has two deals");
    return;
  }
  const Rational packs = deal ? deal->packs * offer.steps_per_price : Rational(0);
  if (!deal || denominator(packs) != 1 || packs < 2) {
    diagnostics_.error(errors::bad_offer, node.span, fmt::format("'{}' is not a deal", node.scalar),
                       "write it as '2 for 5.00'");
    return;
  }
  offer.deal = Deal{static_cast<int>(measure::to_int64(numerator(packs))), deal->price};
}

void Reader::read_terms(const Fields& fields, Offer& offer) {
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
    offer.member_price = read_money(*price, diagnostics_);
  }
  if (const Node* limit = fields.find("limit")) {
    offer.limit = read_count(*limit, diagnostics_, 1);
  }
}

std::optional<Offer> Reader::read(const Node& node, foods::FoodId food) {
  Offer offer;
  offer.food = food;
  offer.at = node.span;
  if (node.is_scalar()) {
    return read_words(node, offer) ? std::optional(std::move(offer)) : std::nullopt;
  }
  const Fields fields(node, keys::offer, diagnostics_);
  const Node* words = fields.find("offer");
  const bool good = words != nullptr && read_words(*words, offer);
  read_terms(fields, offer);
  return good ? std::optional(std::move(offer)) : std::nullopt;
}

void read_taxes(const std::vector<const Entry*>& entries, Shop& shop, Diagnostics& diagnostics) {
  for (const Entry* tax : entries) {
    const Entry& entry = *tax;
    const auto rate = read_percent(entry.value, diagnostics);
    const auto department = foods::parse_department(entry.key.scalar);
    if (!department) {
      const auto known = foods::department_words();
      diagnostics.error(errors::bad_value, entry.key.span,
                        fmt::format("'{}' is not a department", entry.key.scalar),
                        text::did_you_mean(entry.key.scalar, {known.begin(), known.end()}));
    } else if (rate) {
      shop.taxes.push_back({*department, *rate});
    }
  }
}

void read_reduction(const Node& node, Shop& shop, Diagnostics& diagnostics) {
  const Fields fields(node, keys::reduction, diagnostics);
  const Node* over = fields.find("over");
  const Node* off = fields.find("off");
  if (over == nullptr || off == nullptr) {
    return;
  }
  shop.reduction = Reduction{read_money(*over, diagnostics).value_or(0),
                             read_money(*off, diagnostics).value_or(0)};
  if (shop.reduction->off > shop.reduction->over) {
    diagnostics.error(errors::bad_value, off->span,
                      "a reduction cannot take off more than has to be spent");
    shop.reduction.reset();
  }
}

} // namespace

Cents Offer::cost(int packs, text::Date day) const {
  return measure::to_int64(measure::round(exact_cost(packs, day)));
}

Rational Offer::each(text::Date day) const {
  return Rational(on_sale(day) ? std::min(price, sale->price) : price) / steps_per_price;
}

std::optional<Deal> Offer::deal_on(text::Date day) const {
  return deal && Rational(deal->price) < each(day) * deal->packs ? deal : std::nullopt;
}

Rational Offer::exact_cost(int packs, text::Date day) const {
  const std::optional<Deal> better = deal_on(day);
  const int deals = better ? packs / better->packs : 0;
  const Rational by_deal = better ? Rational(better->price) * deals : Rational(0);
  return by_deal + each(day) * (packs - (better ? deals * better->packs : 0));
}

bool Offer::on_sale(text::Date day) const {
  return sale && (!sale->from || *sale->from <= day) && (!sale->until || day <= *sale->until);
}

void Shop::take_member_prices() {
  for (Offer& offer : offers) {
    if (offer.member_price) {
      offer.price = std::min(offer.price, *offer.member_price);
      if (offer.sale) {
        offer.sale->price = std::min(offer.sale->price, *offer.member_price);
      }
    }
  }
}

Rational Shop::tax_on(foods::Department department) const {
  const auto found = std::find_if(taxes.begin(), taxes.end(),
                                  [&](const Tax& t) { return t.department == department; });
  return found == taxes.end() ? Rational(0) : found->rate;
}

Shop read_shop(const Node& file, std::string slug, ShopId id, measure::System system, Names& names,
               Diagnostics& diagnostics) {
  Shop shop;
  shop.id = id;
  shop.slug = std::move(slug);
  const Fields fields(file, keys::shop, diagnostics);
  if (const Node* name = fields.find("shop")) {
    shop.name = name->scalar;
  }
  for (const Node* department : fields.list("walk")) {
    if (const auto known = foods::parse_department(department->scalar)) {
      shop.walk.push_back(*known);
    } else {
      const auto words = foods::department_words();
      diagnostics.error(errors::bad_value, department->span,
                        fmt::format("'{}' is not a department", department->scalar),
                        text::did_you_mean(department->scalar, {words.begin(), words.end()}));
    }
  }
  if (const Node* cost = fields.find("a stop costs")) {
    shop.stop_cost = read_money(*cost, diagnostics);
  }
  read_taxes(fields.named("tax"), shop, diagnostics);
  if (const Node* back = fields.find("cash back")) {
    shop.cash_back = read_percent(*back, diagnostics).value_or(0);
  }
  if (const Node* credit = fields.find("store credit")) {
    shop.credit = read_money(*credit, diagnostics).value_or(0);
  }
  if (const Node* reduction = fields.find("reduction")) {
    read_reduction(*reduction, shop, diagnostics);
  }
  Reader reader(system, names, diagnostics);
  for (const Entry* entry : fields.named("prices")) {
    const std::string& name = entry->key.scalar;
    const auto target = names.find(name);
    const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
    if (food == nullptr) {
      diagnostics.error(errors::unknown_food, entry->key.span,
                        target ? fmt::format("'{}' is a recipe, not a food that is sold", name)
                               : fmt::format("no food is called '{}'", name),
                        target ? "" : text::did_you_mean(foods::normal_name(name), names.all()));
      continue;
    }
    for (const Node* item : text::items_of(entry->value)) {
      if (auto offer = reader.read(*item, *food)) {
        offer->shop = id;
        shop.offers.push_back(std::move(*offer));
      }
    }
  }
  return shop;
}

} // namespace manciple::kitchen
