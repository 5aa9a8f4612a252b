#include "kitchen/receipt.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "text/errors.hpp"
#include "text/fields.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Fields;
using text::Node;

// What stands after a word at the beginning of a text: "4.5 lb" of "freeze 4.5 lb".
std::optional<std::string_view> after(std::string_view text, std::string_view word) {
  if (!text.starts_with(word) || (text.size() > word.size() && text[word.size()] != ' ')) {
    return std::nullopt;
  }
  return text::trim(text.substr(word.size()));
}

class ReceiptReader {
public:
  ReceiptReader(const ReceiptContext& context, text::Date date, Diagnostics& diagnostics)
      : context_(context), date_(date), diagnostics_(diagnostics) {}

  std::optional<Bought> line(const Node& node);

private:
  std::optional<Bought> words(const Node& node);
  std::optional<Ingredient> what(const Node& node, std::string_view words);
  void part(const Node& node, std::string_view part, Bought& out);
  void freeze(const Node& node, std::string_view amount, Bought& out);
  [[nodiscard]] text::Span at(const Node& node, std::string_view part) const {
    return node.part(static_cast<std::size_t>(part.data() - node.scalar.data()), part.size());
  }

  const ReceiptContext& context_;
  text::Date date_;
  Diagnostics& diagnostics_;
};

std::optional<Ingredient> ReceiptReader::what(const Node& node, std::string_view words) {
  const auto offset = static_cast<std::size_t>(words.data() - node.scalar.data());
  auto read = read_line(node, words, offset, context_.household.customs(), context_.foods,
                        diagnostics_, true);
  if (read.empty()) {
    return std::nullopt;
  }
  if (read.size() > 1 || !read.front().amount) {
    diagnostics_.error(errors::unread_amount, at(node, words),
                       read.size() > 1 ? "this line has several things" : "no amount is given",
                       read.size() > 1 ? "give each a line of its own"
                                       : "for example '2 lb onions'");
    return std::nullopt;
  }
  return std::move(read.front());
}

// "24.99", at the end of what was bought: a price needs no comma.
std::string_view price_at_end(std::string_view words, const Currency& currency) {
  const std::size_t space = words.rfind(' ');
  if (space == std::string_view::npos) {
    return {};
  }
  const std::string_view last = words.substr(space + 1);
  const bool pointed = last.find_first_of(".,") != std::string_view::npos;
  return pointed && currency.parse(last) ? last : std::string_view();
}

std::optional<Bought> ReceiptReader::words(const Node& node) {
  std::string_view rest = node.scalar;
  const auto next = [&] {
    const std::size_t comma = std::min(rest.size(), text::find_comma(rest));
    const std::string_view part = text::trim(rest.substr(0, comma));
    rest.remove_prefix(std::min(rest.size(), comma + 1));
    return part;
  };
  std::string_view first = next();
  const std::string_view price = price_at_end(first, context_.household.currency);
  if (!price.empty()) {
    first = text::trim(first.substr(0, first.size() - price.size()));
  }
  auto read = what(node, first);
  if (!read) {
    return std::nullopt;
  }
  const foods::Food& food = *context_.foods.food(read->target);
  const auto amount = foods::as_purchased(food, *read->amount);
  Bought out;
  out.amount = amount ? amount->amount : Rational(0);
  out.what = std::move(*read);
  out.at = node.span;
  if (!price.empty()) {
    part(node, price, out);
  }
  while (!rest.empty()) {
    if (const std::string_view one = next(); !one.empty()) {
      part(node, one, out);
    }
  }
  return out;
}

void ReceiptReader::part(const Node& node, std::string_view part, Bought& out) {
  const std::string words = text::lower(part);
  for (const std::string_view word : {"freeze", "froze", "frozen"}) {
    if (const auto amount = after(words, word)) {
      freeze(node, part.substr(part.size() - amount->size()), out);
      return;
    }
  }
  for (const std::string_view word : {"until", "use by", "best before", "good until"}) {
    if (const auto day = after(words, word)) {
      out.use_by = text::parse_day(*day, date_);
      if (!out.use_by) {
        diagnostics_.error(errors::bad_value, at(node, part),
                           fmt::format("'{}' is not a date such as 2027-03-02 or 2 Mar", *day));
      }
      return;
    }
  }
  if (words == "sale" || words == "on sale") {
    out.sale = true;
    return;
  }
  if (const auto instead = after(words, "instead of")) {
    out.instead_of = part.substr(part.size() - instead->size());
    return;
  }
  if (const auto paid = context_.household.currency.parse(part)) {
    if (out.paid) {
      diagnostics_.error(errors::bad_value, at(node, part), "its cost is given twice");
    }
    out.paid = paid;
    return;
  }
  diagnostics_.warning(errors::unread_word, at(node, part),
                       fmt::format("'{}' is not understood and has no effect", part),
                       "after commas you can write what it cost in all, 'freeze 2 lb', 'until 9 "
                       "Apr', 'sale' and 'instead of ...'");
}

void ReceiptReader::freeze(const Node& node, std::string_view amount, Bought& out) {
  if (amount.empty() || amount == "all" || amount == "it") {
    out.frozen = out.amount;
    return;
  }
  if (amount == "none") {
    out.frozen = 0;
    return;
  }
  const foods::Food& food = *context_.foods.food(out.what.target);
  const std::string words = fmt::format("{} {}", amount, food.name);
  const auto offset = static_cast<std::size_t>(amount.data() - node.scalar.data());
  const auto read = read_line(node, words, offset, context_.household.customs(), context_.foods,
                              diagnostics_, true);
  if (read.size() == 1 && read.front().amount && read.front().food() != nullptr &&
      *read.front().food() == *out.what.food()) {
    if (const auto frozen = foods::as_purchased(food, *read.front().amount)) {
      out.frozen = std::min(out.amount, frozen->amount);
      return;
    }
  }
  diagnostics_.error(errors::unread_amount, at(node, amount),
                     fmt::format("'{}' is not an amount of {}", amount, food.name),
                     "write it as 'freeze 2 lb', or 'freeze all'");
}

std::optional<Bought> ReceiptReader::line(const Node& node) {
  if (node.is_scalar()) {
    return words(node);
  }
  const Fields fields(node, keys::bought, diagnostics_);
  const Node* bought = fields.find("bought");
  auto out = bought != nullptr ? words(*bought) : std::nullopt;
  if (!out) {
    return std::nullopt;
  }
  if (const Node* paid = fields.find("paid")) {
    out->paid = read_money(*paid, context_.household.currency, diagnostics_);
  }
  if (const Node* frozen = fields.find("freeze")) {
    freeze(*frozen, frozen->scalar, *out);
  }
  if (const Node* until = fields.find("until")) {
    out->use_by = read_date(*until, diagnostics_);
  }
  if (const Node* sale = fields.find("sale")) {
    out->sale = read_yes_no(*sale, diagnostics_).value_or(false);
  }
  if (const Node* instead = fields.find("instead of")) {
    out->instead_of = instead->scalar;
  }
  return out;
}

} // namespace

Cents Receipt::goods() const {
  Cents sum = 0;
  for (const Bought& line : bought) {
    sum += line.paid.value_or(0);
  }
  return sum;
}

void by_date(std::vector<Receipt>& receipts) {
  std::stable_sort(receipts.begin(), receipts.end(),
                   [](const Receipt& a, const Receipt& b) { return a.date < b.date; });
}

std::optional<Receipt> read_receipt(const Node& file, std::string slug,
                                    const ReceiptContext& context, Diagnostics& diagnostics) {
  Receipt out;
  out.slug = std::move(slug);
  out.at = file.span;
  const Fields fields(file, keys::receipt, diagnostics);
  const Node* shop = fields.find("shop");
  const Node* date = fields.find("date");
  const auto day = date != nullptr ? read_date(*date, diagnostics) : day_in_name(out.slug);
  if (date == nullptr && !day && !fields.has("date")) {
    diagnostics.error(text::errors::missing_key, file.span, "a receipt needs a 'date'",
                      "write it, or begin the name of the file with it: 2027-03-06-corner.yaml");
  }
  const auto id = shop != nullptr ? shop_named(shop->scalar, shop->span, context.shops, diagnostics)
                                  : std::nullopt;
  if (!day || !id) {
    return std::nullopt;
  }
  out.date = *day;
  out.shop = *id;
  out.at = shop->span;
  ReceiptReader reader(context, out.date, diagnostics);
  for (const Node* line : fields.list("lines")) {
    if (auto read = reader.line(*line)) {
      out.bought.push_back(std::move(*read));
    }
  }
  for (const Node* line : fields.list("missing")) {
    for (Ingredient& what : read_line(*line, line->scalar, 0, context.household.customs(),
                                      context.foods, diagnostics, true)) {
      out.missing.push_back(std::move(what));
    }
  }
  if (const Node* tax = fields.find("tax")) {
    out.tax = read_money(*tax, context.household.currency, diagnostics);
  }
  if (const Node* credit = fields.find("credit")) {
    out.credit = read_money(*credit, context.household.currency, diagnostics).value_or(0);
  }
  if (const Node* off = fields.find("off")) {
    out.off = read_money(*off, context.household.currency, diagnostics).value_or(0);
  }
  if (const Node* total = fields.find("total")) {
    out.total = read_money(*total, context.household.currency, diagnostics);
  }
  return out;
}

std::optional<text::Date> day_in_name(std::string_view name) {
  constexpr std::size_t length = 10; // 2027-03-06
  const bool ends = name.size() == length || (name.size() > length && name[length] == '-');
  return ends ? text::parse_date(name.substr(0, length)) : std::nullopt;
}

} // namespace manciple::kitchen
