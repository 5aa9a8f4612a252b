#include "cli/price_edit.hpp"

#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::cli {
namespace {

using history::NewPrice;

std::vector<std::string_view> lines_of(std::string_view file) {
  std::vector<std::string_view> out;
  while (!file.empty()) {
    const std::size_t end = std::min(file.size(), file.find('\n'));
    out.push_back(file.substr(0, end));
    file.remove_prefix(std::min(file.size(), end + 1));
  }
  return out;
}

std::size_t line_at(std::string_view file, std::size_t offset) {
  return static_cast<std::size_t>(
      std::count(file.begin(), file.begin() + static_cast<std::ptrdiff_t>(offset), '\n'));
}

// An offer's price with another in its place, on the line that it stands on; nothing where the
// text of the offer does not show it.
std::string with_price(std::string_view file, std::string_view line, std::size_t begins,
                       const kitchen::Offer& offer, const NewPrice& price,
                       const kitchen::Currency& currency) {
  const std::string old = currency.figure(price.old.value_or(0));
  const std::string_view text = file.substr(offer.at.begin, offer.at.end - offer.at.begin);
  const std::size_t at = price.old ? text.rfind(old) : text.rfind('?');
  if (at == std::string_view::npos) {
    return {};
  }
  std::string out(line);
  out.replace(offer.at.begin - begins + at, price.old ? old.size() : 1, currency.figure(price.now));
  return out;
}

} // namespace

std::vector<LineEdit> price_edits(std::string_view file, const kitchen::Kitchen& kitchen,
                                  const kitchen::Receipt& receipt,
                                  const history::Settled& settled) {
  const kitchen::Shop& shop = kitchen.shop(receipt.shop);
  const kitchen::Currency& currency = kitchen.household.currency;
  const std::vector<std::string_view> lines = lines_of(file);
  std::vector<LineEdit> out;
  for (const NewPrice& price : settled.prices) {
    if (price.why != NewPrice::Why::changed || !price.offer) {
      continue;
    }
    const kitchen::Offer& offer = shop.offers[*price.offer];
    const std::size_t index = line_at(file, offer.at.begin);
    const std::string_view line = lines.at(index);
    const auto begins = static_cast<std::size_t>(line.data() - file.data());
    const bool known = std::any_of(out.begin(), out.end(),
                                   [&](const LineEdit& edit) { return edit.line == index + 1; });
    std::string after = known ? "" : with_price(file, line, begins, offer, price, currency);
    if (after.empty()) {
      continue; // two prices on one line: the next receipt takes the other
    }
    if (price.old) {
      after +=
          fmt::format("{} {} until {}", line.find(" #") == std::string_view::npos ? "  #" : ";",
                      currency.figure(*price.old), text::print_date(receipt.date));
    }
    out.push_back({index + 1, std::string(line), std::move(after)});
  }
  std::sort(out.begin(), out.end(),
            [](const LineEdit& a, const LineEdit& b) { return a.line < b.line; });
  return out;
}

std::string edited(std::string_view file, const std::vector<LineEdit>& edits) {
  std::string out;
  const std::vector<std::string_view> lines = lines_of(file);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto edit = std::find_if(edits.begin(), edits.end(),
                                   [&](const LineEdit& one) { return one.line == i + 1; });
    out += edit == edits.end() ? std::string(lines[i]) : edit->after;
    out += '\n';
  }
  if (!file.ends_with('\n') && !out.empty()) {
    out.pop_back();
  }
  return out;
}

} // namespace manciple::cli
