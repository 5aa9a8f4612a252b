// Who eats what a plan has: who is away, guests, and what somebody has otherwise in a dish.
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/plan_reader.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {

using text::Entry;
using text::Fields;
using text::Node;

// A household that names nobody is of those whom the plan names.
bool PlanReader::is_known(const Node& who) {
  const std::vector<Person>& people = context_.household.people;
  const bool guest = std::any_of(plan_.guests.begin(), plan_.guests.end(),
                                 [&](const Guest& one) { return one.person.name == who.scalar; });
  if (guest || people.empty() || context_.household.person(who.scalar)) {
    return true;
  }
  std::vector<std::string_view> known;
  for (const Person& person : people) {
    known.push_back(person.name);
  }
  for (const Guest& one : plan_.guests) {
    known.push_back(one.person.name);
  }
  diagnostics_.error(errors::unknown_person, who.span,
                     fmt::format("{} is neither in the household nor a guest", who.scalar),
                     text::did_you_mean(who.scalar, known));
  return false;
}

// "halloumi instead of chicken breast", "4 oz tofu instead of ground beef", "without mushrooms".
std::optional<Swap> PlanReader::swap(const Node& node) {
  constexpr std::string_view instead = " instead of ";
  const std::string_view words = node.scalar;
  Swap out;
  out.at = node.span;
  out.text = node.scalar;
  std::size_t from = 0;
  const std::size_t at = words.find(instead);
  if (at != std::string_view::npos) {
    from = at + instead.size();
  } else if (words.starts_with("without ")) {
    from = std::string_view("without ").size();
  } else if (words.starts_with("no ")) {
    from = std::string_view("no ").size();
  } else {
    diagnostics_.error(errors::no_such_swap, node.span,
                       fmt::format("'{}' does not say what is different", words),
                       "write '... instead of ...' or 'without ...'");
    return std::nullopt;
  }
  const std::string_view old = text::trim(words.substr(from));
  out.in_place_of = old;
  out.replaced = context_.recipes.find(old);
  out.replaced_classes = out.replaced ? std::vector<foods::AnyClass>() : foods::classes_called(old);
  if (!out.replaced && out.replaced_classes.empty()) {
    // A recipe may not be written yet; then whoever must not have what is in it is told.
    const bool slip = text::slip_of(old, context_.recipes.all()).has_value();
    const std::string what = fmt::format("no food or recipe is called '{}'", old);
    const std::string fix = text::did_you_mean(old, context_.recipes.all());
    slip ? diagnostics_.error(errors::unknown_food, node.part(from, old.size()), what, fix)
         : diagnostics_.warning(errors::unknown_food, node.part(from, old.size()),
                                what + "; nothing is served in its place", fix);
    return std::nullopt;
  }
  if (at == std::string_view::npos) {
    return out;
  }
  const std::string_view fresh = text::trim(words.substr(0, at));
  if (const auto target = context_.recipes.find(fresh)) {
    out.what = Ingredient{std::string(fresh), node.part(0, at), *target, {}, {}, false, false, {}};
    return out;
  }
  if (fresh.empty() || text::is_letter(fresh.front())) {
    diagnostics_.error(errors::unknown_food, node.part(0, at),
                       fmt::format("no food or recipe is called '{}'", fresh),
                       text::did_you_mean(fresh, context_.recipes.all()));
    return std::nullopt;
  }
  out.what = one(node, fresh, 0, context_.recipes);
  return out.what ? std::optional(std::move(out)) : std::nullopt;
}

std::optional<Variant> PlanReader::variant(const Entry& entry) {
  Variant out{entry.key.scalar, {}, entry.key.span};
  bool good = is_known(entry.key);
  for (const Node* node : text::items_of(entry.value)) {
    if (auto read = swap(*node)) {
      out.swaps.push_back(std::move(*read));
    } else {
      good = false;
    }
  }
  return good ? std::optional(std::move(out)) : std::nullopt;
}

// Who cooks on a day of the plan, or on all such days.
void PlanReader::cooks(const Node& node) {
  const Fields fields(node, keys::cooks_of_plan, diagnostics_);
  CookRule rule = read_cook(fields, context_.household, diagnostics_);
  rule.dates = dates_of(fields, node, "who cooks");
  bool good = !rule.dates.empty();
  for (const Node* who : fields.list("who")) {
    good = is_known(*who) && good;
  }
  if (good) {
    plan_.cooks.push_back(std::move(rule));
  }
}

void PlanReader::away(const Node& node) {
  const Fields fields(node, keys::absence, diagnostics_);
  const Node* who = fields.find("who");
  const auto [from, until] = span_of(fields);
  const auto at = slots(fields.list("meals"));
  if (who == nullptr) {
    return;
  }
  if (!is_known(*who)) {
    return;
  }
  plan_.away.push_back({who->scalar, from, until, at});
}

void PlanReader::guest(const Node& node) {
  const Fields fields(node, keys::guest, diagnostics_);
  Guest guest;
  guest.person.at = node.span;
  if (const Node* who = fields.find("who")) {
    guest.person.name = who->scalar;
  }
  if (const Node* count = fields.find("count")) {
    guest.person.heads = read_count(*count, diagnostics_, 1).value_or(1);
  }
  read_about(fields, guest.person, context_.household.diets, context_.foods, diagnostics_);
  std::tie(guest.from, guest.until) = span_of(fields);
  guest.slots = slots(fields.list("meals"));
  plan_.guests.push_back(std::move(guest));
}

} // namespace manciple::kitchen
