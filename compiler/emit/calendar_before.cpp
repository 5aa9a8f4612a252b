#include "emit/calendar_before.hpp"

#include "text/date.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <vector>

namespace manciple::emit {
namespace {

constexpr std::string_view line_end = "\r\n";

// The lines of a file, each with what continues it.
std::vector<std::string> folded_lines(std::string_view text) {
  std::vector<std::string> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(line_end), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + line_end.size(), text.size()));
    if (line.starts_with(' ') && !out.empty()) {
      out.back().append(line_end).append(line);
    } else {
      out.emplace_back(line);
    }
  }
  return out;
}

std::string unfolded(std::string line) {
  for (std::size_t at = line.find("\r\n "); at != std::string::npos; at = line.find("\r\n ")) {
    line.erase(at, 3);
  }
  return line;
}

std::optional<int> number_in(std::string_view digits) {
  int value = 0;
  const auto [end, failed] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return failed == std::errc() && end == digits.data() + digits.size() ? std::optional(value)
                                                                       : std::nullopt;
}

// "20270301T000000Z", a minute later; nothing for another text.
std::optional<std::string> minute_later(std::string_view stamp) {
  constexpr std::size_t size = 16;
  if (stamp.size() != size || stamp[8] != 'T' || stamp.back() != 'Z') {
    return std::nullopt;
  }
  const auto date = text::parse_date(
      fmt::format("{}-{}-{}", stamp.substr(0, 4), stamp.substr(4, 2), stamp.substr(6, 2)));
  const auto hour = number_in(stamp.substr(9, 2));
  const auto minute = number_in(stamp.substr(11, 2));
  if (!date || !hour || !minute || *hour > 23 || *minute > 59) {
    return std::nullopt;
  }
  const int later = *hour * text::minutes_an_hour + *minute + 1;
  const std::chrono::year_month_day day(*date + std::chrono::days(later / text::minutes_a_day));
  const int of_day = later % text::minutes_a_day;
  return fmt::format("{:04}{:02}{:02}T{:02}{:02}00Z", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
                     of_day / text::minutes_an_hour, of_day % text::minutes_an_hour);
}

} // namespace

CalendarBefore::CalendarBefore(std::string_view text, std::string first) : next_(std::move(first)) {
  if (text.find(fmt::format("PRODID:{}\r\n", product)) == std::string_view::npos) {
    return;
  }
  std::string uid;
  Event event;
  std::string latest;
  bool inside = false;
  for (const std::string& line : folded_lines(text)) {
    const std::string whole = unfolded(line);
    const auto value_of = [&](std::string_view property) {
      return whole.starts_with(property) ? std::optional(whole.substr(property.size()))
                                         : std::nullopt;
    };
    if (whole == "BEGIN:VEVENT") {
      uid.clear();
      event = {};
      inside = true;
    } else if (whole == "END:VEVENT") {
      if (!uid.empty() && minute_later(event.stamp.time)) {
        latest = std::max(latest, event.stamp.time);
        events_[uid] = std::move(event);
      }
      event = {};
      inside = false;
    } else if (!inside) {
      continue;
    } else if (const auto name = value_of("UID:")) {
      uid = *name;
    } else if (const auto time = value_of("DTSTAMP:")) {
      event.stamp.time = *time;
    } else if (const auto count = value_of("SEQUENCE:")) {
      event.stamp.sequence = number_in(*count).value_or(0);
    } else {
      event.content.append(line).append(line_end);
    }
  }
  if (const auto later = minute_later(latest)) {
    next_ = *later;
  }
}

CalendarBefore::Stamp CalendarBefore::stamp_of(const std::string& uid,
                                               const std::string& content) const {
  const auto before = events_.find(uid);
  if (before == events_.end()) {
    return {0, next_};
  }
  const auto& [stamp, was] = before->second;
  return was == content ? stamp : Stamp{stamp.sequence + 1, next_};
}

} // namespace manciple::emit
