#include "compare/align.hpp"
#include "compare/parts.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <map>

namespace manciple::compare {
namespace {

// A session that ends so many minutes earlier or later is no other one.
constexpr int least_minutes = 10;

std::string place_of(const Making& making) {
  return fmt::format("{}{}", text::print_day(making.date), making.in_session ? " session" : "");
}

// To the half, as what is left over is told.
std::string servings_of(const Making& making) {
  return parts(making.servings, 2);
}
std::string for_so_many(const Making& making) {
  const std::string number = servings_of(making);
  return fmt::format("{} {}", number, number == "1" || number == "1/2" ? "serving" : "servings");
}

// Half a serving in a pot of twenty is no change.
bool same_amount(const Making& a, const Making& b) {
  constexpr double least = 0.05;
  return servings_of(a) == servings_of(b) ||
         std::abs(a.servings - b.servings) <= least * std::max(a.servings, b.servings);
}

bool same_place(const Making& a, const Making& b) {
  return a.date == b.date && a.in_session == b.in_session;
}

// Nothing where it goes with its meal, of which more is told elsewhere.
std::string change_of(const Pair<Making>& pair) {
  const auto goes_without_saying = [](const Making& one) {
    return one.for_the_day && !one.in_session;
  };
  if (pair.before == nullptr || pair.after == nullptr) {
    const Making& one = pair.after != nullptr ? *pair.after : *pair.before;
    return goes_without_saying(one)
               ? std::string()
               : fmt::format("{}: {}{}{}", place_of(one), pair.after != nullptr ? "" : "no ",
                             one.recipe,
                             pair.after != nullptr ? ", " + for_so_many(one) : std::string());
  }
  const bool other_amount = !same_amount(*pair.before, *pair.after);
  const std::string amount =
      other_amount
          ? fmt::format(", {} instead of {}", for_so_many(*pair.after), servings_of(*pair.before))
          : std::string();
  if (same_place(*pair.before, *pair.after)) {
    return other_amount ? fmt::format("{}: {}{}", place_of(*pair.after), pair.after->recipe, amount)
                        : std::string();
  }
  return fmt::format("{}: {}, previously on {}{}", place_of(*pair.after), pair.after->recipe,
                     place_of(*pair.before), amount);
}

template <typename T, typename Key>
auto grouped(const std::vector<T>& before, const std::vector<T>& after, Key key) {
  std::map<decltype(key(before.front())), Group<T>> out;
  for (const T& one : before) {
    out[key(one)].before.push_back(&one);
  }
  for (const T& one : after) {
    out[key(one)].after.push_back(&one);
  }
  return out;
}

// Changes with their days, to be told by day.
class ByDay {
public:
  explicit ByDay(Part part) : part_(part) {}
  void add(Date day, std::string what) {
    if (!what.empty()) {
      all_.emplace(day, std::move(what));
    }
  }
  [[nodiscard]] std::vector<Change> told() const {
    std::vector<Change> out;
    for (const auto& [day, what] : all_) {
      out.push_back({part_, what});
    }
    return out;
  }

private:
  Part part_;
  std::multimap<Date, std::string> all_;
};

template <typename T>
Date day_of(const Pair<T>& pair) {
  return pair.after != nullptr ? pair.after->date : pair.before->date;
}

bool is_number_or_day(std::string_view word) {
  static constexpr std::array<std::string_view, 19> days{
      "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun", "Jan", "Feb", "Mar",
      "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::size_t first = word.find_first_not_of('(');
  word.remove_prefix(std::min(first, word.size()));
  word = word.substr(0, word.find_last_not_of("):,") + 1);
  return std::any_of(word.begin(), word.end(), text::is_digit) ||
         std::find(days.begin(), days.end(), word) != days.end();
}

// The words of a reminder without its amounts and days.
std::string subject(const Reminder& reminder) {
  std::string out = reminder.kind + ":";
  for (const std::string_view word : text::split(reminder.what, ' ')) {
    if (!is_number_or_day(word)) {
      out += fmt::format(" {}", word);
    }
  }
  return out;
}

} // namespace

std::vector<Change> prep_changes(const Result& before, const Result& after) {
  ByDay out(Part::prep);
  for (const auto& [recipe, group] :
       grouped(before.makings, after.makings, [](const Making& one) { return one.recipe; })) {
    for (const Pair<Making>&pair : align<Making>(
             group.before, group.after,
             {[](const Making&a, const Making&b) { return same_place(a, b) && same_amount(a, b); },
              same_place,
              [](const Making&a, const Making&b) {
                return a.for_the_day == b.for_the_day && same_amount(a, b) && !a.for_the_day;
              },
              [](const Making&a, const Making&b) { return !a.for_the_day && !b.for_the_day; }})) {
      out.add(day_of(pair), change_of(pair));
    }
  }
  for (const auto& [when, group] : grouped(before.sessions, after.sessions, [](const Session& one) {
         return std::pair(one.date, one.from);
       })) {
    for (const Pair<Session>& pair : align<Session>(
             group.before, group.after, {[](const Session&, const Session&) { return true; }})) {
      const std::string name = text::print_day(when.first) + " session";
      if (pair.before == nullptr) {
        out.add(when.first,
                fmt::format("{}: new, takes {}", name, text::print_minutes(pair.after->minutes)));
      } else if (pair.after == nullptr) {
        out.add(when.first, name + ": no longer held");
      } else if (std::abs(pair.after->minutes - pair.before->minutes) >= least_minutes) {
        out.add(when.first, fmt::format("{}: takes {} instead of {}", name,
                                        text::print_minutes(pair.after->minutes),
                                        text::print_minutes(pair.before->minutes)));
      }
    }
  }
  return out.told();
}

std::vector<Change> day_changes(const Result& before, const Result& after) {
  ByDay out(Part::days);
  for (const auto& [words, group] : grouped(before.reminders, after.reminders, subject)) {
    if (words.starts_with("use up:")) { // no work, and told by what else changes
      continue;
    }
    for (const Pair<Reminder>&pair :
         align<Reminder>(group.before, group.after,
                         {[](const Reminder&a, const Reminder&b) {
                            return a.date == b.date && a.what == b.what;
                          },
                          [](const Reminder&a, const Reminder&b) { return a.date == b.date; },
                          [](const Reminder&, const Reminder&) { return true; }})) {
      const Date day = day_of(pair);
      if (pair.before == nullptr) {
        out.add(day, fmt::format("{}: {}", text::print_day(day), pair.after->what));
      } else if (pair.after == nullptr) {
        out.add(day, fmt::format("{}, no longer: {}", text::print_day(day), pair.before->what));
      } else if (pair.before->date != day) {
        out.add(day, fmt::format("{} instead of {}: {}", text::print_day(day),
                                 text::print_day(pair.before->date), pair.after->what));
      } else if (pair.before->what != pair.after->what) {
        out.add(day, fmt::format("{}: {} (before: {})", text::print_day(day), pair.after->what,
                                 pair.before->what));
      }
    }
  }
  return out.told();
}

} // namespace manciple::compare
