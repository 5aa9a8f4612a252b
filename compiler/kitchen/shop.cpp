#include "kitchen/shop.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/offer.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

// "Sat", "Thu 16:00-20:00", "Mon-Fri 09:00-18:00".
void read_opening(const Node& node, Shop& shop, Diagnostics& diagnostics) {
  const std::vector<std::string_view> words = text::split(text::trim(node.scalar), ' ');
  const std::vector<std::string_view> days = text::split(words.front(), '-');
  const auto first = text::parse_weekday(days.front());
  const auto last = text::parse_weekday(days.back());
  const std::vector<std::string_view> hours =
      words.size() == 2 ? text::split(words.back(), '-') : std::vector<std::string_view>();
  const auto from = hours.size() == 2 ? text::parse_clock(hours.front()) : std::nullopt;
  const auto until = hours.size() == 2 ? text::parse_clock(hours.back()) : std::nullopt;
  if (!first || !last || days.size() > 2 || words.size() > 2 ||
      (words.size() == 2 && (!from || !until || *until <= *from))) {
    diagnostics.error(errors::bad_value, node.span,
                      fmt::format("'{}' is not an opening time", node.scalar),
                      "write it as 'Sat', 'Mon-Fri' or 'Thu 07:00-13:00'");
    return;
  }
  for (std::chrono::weekday day = *first;; ++day) {
    shop.open.push_back({day, from, until});
    if (day == *last) {
      return;
    }
  }
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

void read_reduction(const Node& node, const Currency& currency, Shop& shop,
                    Diagnostics& diagnostics) {
  const Fields fields(node, keys::reduction, diagnostics);
  const Node* over = fields.find("over");
  const Node* off = fields.find("off");
  if (over == nullptr || off == nullptr) {
    return;
  }
  shop.reduction = Reduction{read_money(*over, currency, diagnostics).value_or(0),
                             read_money(*off, currency, diagnostics).value_or(0)};
  if (shop.reduction->off > shop.reduction->over) {
    diagnostics.error(errors::bad_value, off->span,
                      "a reduction cannot take off more than has to be spent");
    shop.reduction.reset();
  }
}

} // namespace

void Shop::take_member_prices() {
  for (Offer& offer : offers) {
    if (offer.member_price) {
      offer.others_price = offer.price;
      offer.price = std::min(offer.price.value_or(*offer.member_price), *offer.member_price);
      if (offer.sale) {
        offer.sale->price = std::min(offer.sale->price, *offer.member_price);
      }
    }
  }
}

bool Shop::is_open(text::Date day, int home) const {
  return open.empty() || std::any_of(open.begin(), open.end(), [&](const Opening& one) {
           return one.day == std::chrono::weekday(day) && one.from.value_or(0) <= home;
         });
}

Rational Shop::tax_on(foods::Department department) const {
  const auto found = std::find_if(taxes.begin(), taxes.end(),
                                  [&](const Tax& t) { return t.department == department; });
  return found == taxes.end() ? Rational(0) : found->rate;
}

Cents Shop::comes_back(Cents goods, Cents by_credit) const {
  return measure::to_int64(measure::round(cash_back * std::max<Cents>(0, goods - by_credit)));
}

std::optional<ShopId> shop_named(std::string_view words, text::Span at, std::vector<Shop>& shops,
                                 Diagnostics& diagnostics) {
  const std::string slug = text::slug(words);
  std::vector<std::string_view> known;
  for (const Shop& shop : shops) {
    if (shop.slug == slug || text::slug(shop.name) == slug) {
      return shop.id;
    }
    known.push_back(shop.slug);
  }
  if (const auto meant = text::slip_of(slug, known); meant || slug.empty()) {
    diagnostics.error(errors::unknown_shop, at, fmt::format("there is no shop '{}'", words),
                      meant ? fmt::format("did you mean {}?", *meant) : "");
    return std::nullopt;
  }
  Shop& shop = shops.emplace_back();
  shop.id = ShopId{static_cast<std::uint32_t>(shops.size() - 1)};
  shop.slug = slug;
  shop.name = text::title(slug);
  return shop.id;
}

Shop read_shop(const Node& file, std::string slug, ShopId id, const Household& household,
               Names& names, Diagnostics& diagnostics) {
  Shop shop;
  shop.id = id;
  shop.slug = std::move(slug);
  shop.name = text::title(shop.slug);
  shop.has_file = true;
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
  for (const Node* day : fields.list("open")) {
    read_opening(*day, shop, diagnostics);
  }
  if (const Node* cost = fields.find("a stop costs")) {
    shop.stop_cost = read_money(*cost, household.currency, diagnostics);
  }
  if (const Node* cost = fields.find("membership")) {
    shop.membership = read_money(*cost, household.currency, diagnostics);
  }
  read_taxes(fields.named("tax"), shop, diagnostics);
  if (const Node* back = fields.find("cash back")) {
    shop.cash_back = read_percent(*back, diagnostics).value_or(0);
  }
  if (const Node* credit = fields.find("store credit")) {
    shop.credit = read_money(*credit, household.currency, diagnostics).value_or(0);
  }
  if (const Node* reduction = fields.find("reduction")) {
    read_reduction(*reduction, household.currency, shop, diagnostics);
  }
  for (const Entry* entry : fields.named("prices")) {
    for (Offer& offer : read_offers(*entry, id, household, names, diagnostics)) {
      shop.offers.push_back(std::move(offer));
    }
  }
  return shop;
}

} // namespace manciple::kitchen
