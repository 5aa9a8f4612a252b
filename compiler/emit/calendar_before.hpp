#pragma once

#include <map>
#include <string>
#include <string_view>

/// The calendar that was written before, as far as a new one has to know it.
namespace manciple::emit {

/// Who makes the calendar (RFC 5545, section 3.7.3).
inline constexpr std::string_view product = "-//manciple//month plan//EN";

/// Which revision of its event is which: RFC 5545 wants SEQUENCE to rise and DTSTAMP to be later
/// when an event changes (sections 3.8.7.4 and 3.8.7.2), and a calendar takes the change by them.
class CalendarBefore {
public:
  struct Stamp {
    int sequence = 0;
    std::string time; ///< "20270301T000000Z"
  };

  /// `text` is what a file has; it counts only if this program wrote it. `first` is the time of
  /// what was never written before.
  CalendarBefore(std::string_view text, std::string first);

  /// The stamp of an event with this content (lines as they are written, without UID, DTSTAMP and
  /// SEQUENCE): as before if it is the same, else one more and a minute after the latest of before.
  [[nodiscard]] Stamp stamp_of(const std::string& uid, const std::string& content) const;

private:
  struct Event {
    Stamp stamp;
    std::string content;
  };
  std::map<std::string, Event> events_;
  std::string next_; // a minute after the latest
};

} // namespace manciple::emit
