#include "text/date.hpp"

#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace manciple::text {
namespace {

constexpr std::array<std::string_view, 7> weekdays{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                   "Thursday", "Friday", "Saturday"};
constexpr std::array<std::string_view, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

std::optional<int> whole_number(std::string_view digits) {
  int value = 0;
  const char* const end = digits.data() + digits.size();
  const auto [stop, error] = std::from_chars(digits.data(), end, value);
  if (digits.empty() || error != std::errc() || stop != end || digits.front() == '-') {
    return std::nullopt;
  }
  return value;
}

// "1.5 h 20 min" as a sum up to `most`, each unit's worth given by `worth` (0 when the unit is not
// one).
template <typename Worth>
std::optional<int> sum_of_parts(std::string_view text, int most, Worth worth) {
  double total = 0;
  bool any = false;
  std::size_t at = 0;
  const auto skip = [&] {
    while (at < text.size() && text[at] == ' ') {
      ++at;
    }
  };
  for (skip(); at < text.size(); skip()) {
    const std::size_t start = at;
    while (at < text.size() && (is_digit(text[at]) || text[at] == '.' || text[at] == ',')) {
      ++at;
    }
    std::string digits(text.substr(start, at - start));
    std::replace(digits.begin(), digits.end(), ',', '.');
    double number = 0;
    const char* const end = digits.data() + digits.size();
    const auto [stop, error] = std::from_chars(digits.data(), end, number);
    if (error != std::errc() || stop != end || number > 1e6) {
      return std::nullopt;
    }
    skip();
    const std::size_t word = at;
    while (at < text.size() && is_letter(text[at])) {
      ++at;
    }
    const double each = worth(lower(text.substr(word, at - word)));
    if (each <= 0) {
      return std::nullopt;
    }
    total += number * each;
    any = true;
  }
  if (!any || total > most) {
    return std::nullopt;
  }
  return static_cast<int>(std::lround(total));
}

std::string plural(int n, std::string_view unit) {
  return fmt::format("{} {}{}", n, unit, n == 1 ? "" : "s");
}

} // namespace

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
    return std::nullopt;
  }
  const auto year = whole_number(text.substr(0, 4));
  const auto month = whole_number(text.substr(5, 2));
  const auto day = whole_number(text.substr(8, 2));
  if (!year || !month || !day) {
    return std::nullopt;
  }
  const std::chrono::year_month_day date{std::chrono::year{*year},
                                         std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day)}};
  return date.ok() ? std::optional<Date>(date) : std::nullopt;
}

namespace {

// "Mar", "march": 3.
std::optional<unsigned> month_number(std::string_view word) {
  constexpr std::array<std::string_view, 12> full{"january",   "february", "march",    "april",
                                                  "may",       "june",     "july",     "august",
                                                  "september", "october",  "november", "december"};
  const std::string low = lower(word);
  for (unsigned m = 0; m < full.size(); ++m) {
    if (low == full[m] || (low.size() >= 3 && low.size() <= 4 && full[m].starts_with(low))) {
      return m + 1;
    }
  }
  return std::nullopt;
}

std::optional<Date> date_of(int year, unsigned month, int day) {
  const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{month},
                                         std::chrono::day{static_cast<unsigned>(day)}};
  return date.ok() ? std::optional<Date>(date) : std::nullopt;
}

} // namespace

std::optional<Date> parse_day(std::string_view text, Date near) {
  text = trim(text);
  if (const auto exact = parse_date(text)) {
    return exact;
  }
  std::optional<int> day;
  std::optional<unsigned> month;
  std::optional<int> year;
  std::string plain(text);
  for (char& c : plain) {
    c = c == ',' || c == '.' ? ' ' : c;
  }
  for (const std::string_view word : split(plain, ' ')) {
    const auto number = whole_number(word);
    if (word.empty()) {
      continue;
    }
    if (const auto named = month_number(word); named && !month) {
      month = named;
    } else if (number && !day && *number >= 1 && *number <= 31) {
      day = number;
    } else if (number && !year && *number >= 1900 && *number <= 2999) {
      year = number;
    } else {
      return std::nullopt;
    }
  }
  if (!day || !month) {
    return std::nullopt;
  }
  if (year) {
    return date_of(*year, *month, *day);
  }
  const int here = static_cast<int>(std::chrono::year_month_day(near).year());
  std::optional<Date> best;
  for (const int one : {here - 1, here, here + 1}) {
    const auto date = date_of(one, *month, *day);
    if (date && (!best || std::chrono::abs(*date - near) < std::chrono::abs(*best - near))) {
      best = date;
    }
  }
  return best;
}

std::string print_date(Date date) {
  const std::chrono::year_month_day d{date};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(d.year()),
                     static_cast<unsigned>(d.month()), static_cast<unsigned>(d.day()));
}

std::optional<std::chrono::weekday> parse_weekday(std::string_view text) {
  const std::string word = lower(text);
  for (unsigned i = 0; i < weekdays.size(); ++i) {
    const std::string name = lower(weekdays[i]);
    if (word == name || word == name.substr(0, 3)) {
      return std::chrono::weekday{i};
    }
  }
  return std::nullopt;
}

std::string_view weekday_name(Date date) {
  return weekdays[std::chrono::weekday{date}.c_encoding()];
}

std::string_view short_weekday(Date date) {
  return weekday_name(date).substr(0, 3);
}

std::string print_day(Date date) {
  const std::chrono::year_month_day d{date};
  return fmt::format("{} {} {}", short_weekday(date), static_cast<unsigned>(d.day()),
                     months[static_cast<unsigned>(d.month()) - 1]);
}

std::optional<int> parse_clock(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || text.size() - colon != 3) {
    return std::nullopt;
  }
  const auto hours = whole_number(text.substr(0, colon));
  const auto minutes = whole_number(text.substr(colon + 1));
  if (!hours || !minutes || *hours > 23 || *minutes > 59) {
    return std::nullopt;
  }
  return *hours * 60 + *minutes;
}

std::string print_clock(int minutes) {
  return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
}

std::optional<int> parse_minutes(std::string_view text) {
  return sum_of_parts(text, longest_minutes, [](std::string_view unit) -> double {
    if (unit == "min" || unit == "mins" || unit == "minute" || unit == "minutes") {
      return 1;
    }
    if (unit == "h" || unit == "hr" || unit == "hrs" || unit == "hour" || unit == "hours") {
      return 60;
    }
    return unit == "day" || unit == "days" ? minutes_a_day : 0;
  });
}

std::string print_minutes(int minutes) {
  if (minutes < 60) {
    return fmt::format("{} min", minutes);
  }
  return minutes % 60 == 0 ? fmt::format("{} h", minutes / 60)
                           : fmt::format("{} h {} min", minutes / 60, minutes % 60);
}

std::optional<int> parse_days(std::string_view text) {
  return sum_of_parts(text, longest_days, [](std::string_view unit) -> double {
    if (unit == "day" || unit == "days") {
      return 1;
    }
    if (unit == "week" || unit == "weeks") {
      return 7;
    }
    if (unit == "month" || unit == "months") {
      return 30;
    }
    return unit == "year" || unit == "years" ? 365 : 0;
  });
}

std::string print_days(int days) {
  if (days > 0 && days % 365 == 0) {
    return plural(days / 365, "year");
  }
  if (days > 0 && days % 30 == 0) {
    return plural(days / 30, "month");
  }
  return days > 0 && days % 7 == 0 ? plural(days / 7, "week") : plural(days, "day");
}

} // namespace manciple::text
