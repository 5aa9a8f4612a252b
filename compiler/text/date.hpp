#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace manciple::text {

/// A calendar day, without time zone.
using Date = std::chrono::sys_days;

/// "2027-03-02" (ISO 8601). Nothing for any other form or a day that does not exist.
std::optional<Date> parse_date(std::string_view text);
std::string print_date(Date date);
/// A day as people write it: "2027-03-02", "2 Mar", "Mar 2", "2 March 2027"; without a year the one
/// nearest to `near`.
std::optional<Date> parse_day(std::string_view text, Date near);

/// "Monday" to "Sunday", in any case, also as three letters ("sat").
std::optional<std::chrono::weekday> parse_weekday(std::string_view text);
/// "Mon".
std::string_view short_weekday(Date date);
std::string_view weekday_name(Date date);
/// "Tue 2 Mar".
std::string print_day(Date date);

/// A time of day in minutes from midnight: "13:00", "7:30".
std::optional<int> parse_clock(std::string_view text);
std::string print_clock(int minutes);

inline constexpr int minutes_an_hour = 60;
inline constexpr int minutes_a_day = 24 * minutes_an_hour;

/// The longest of what a kitchen does or keeps; more is a slip.
inline constexpr int longest_minutes = 60 * minutes_a_day;
inline constexpr int longest_days = 100 * 365;

/// A length of time in minutes: "8 min", "1 h 30 min", "1.5 hours", "2 days"; at most 60 days.
std::optional<int> parse_minutes(std::string_view text);
/// "1 h 30 min".
std::string print_minutes(int minutes);

/// A keeping time in days: "4 days", "2 weeks", "3 months" (of 30 days), "1 year" (of 365); at
/// most 100 years.
std::optional<int> parse_days(std::string_view text);
/// The same in the largest whole unit: "4 days", "2 weeks", "3 months".
std::string print_days(int days);

} // namespace manciple::text
