#include "emit/calendar_before.hpp"

#include "house.hpp"

#include <gtest/gtest.h>

namespace manciple::emit {
namespace {

constexpr std::string_view first = "20270301T000000Z";

std::string calendar(std::string_view event) {
  return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:" + std::string(product) + "\r\n" +
         std::string(event) + "END:VCALENDAR\r\n";
}

constexpr std::string_view soup =
    "BEGIN:VEVENT\r\nUID:soup\r\nDTSTAMP:20270228T235900Z\r\nSEQUENCE:3\r\nSUMMARY:Soup with "
    "a\r\n  long name\r\nBEGIN:VALARM\r\nTRIGGER:PT0S\r\nEND:VALARM\r\nEND:VEVENT\r\n";
constexpr std::string_view content =
    "SUMMARY:Soup with a\r\n  long name\r\nBEGIN:VALARM\r\nTRIGGER:PT0S\r\nEND:VALARM\r\n";

TEST(CalendarBefore, KeepsTheRevisionOfWhatIsTheSame) {
  const CalendarBefore before(calendar(soup), std::string(first));
  const auto stamp = before.stamp_of("soup", std::string(content));
  EXPECT_EQ(stamp.sequence, 3);
  EXPECT_EQ(stamp.time, "20270228T235900Z");
}

TEST(CalendarBefore, CountsAChangeOnAndStampsItLater) {
  const CalendarBefore before(calendar(soup), std::string(first));
  const auto stamp = before.stamp_of("soup", "SUMMARY:Stew\r\n");
  EXPECT_EQ(stamp.sequence, 4);
  EXPECT_EQ(stamp.time, "20270301T000000Z") << "a minute later, which is another month";
  EXPECT_EQ(before.stamp_of("cake", "SUMMARY:Cake\r\n").sequence, 0);
  EXPECT_EQ(before.stamp_of("cake", "SUMMARY:Cake\r\n").time, "20270301T000000Z");
}

TEST(CalendarBefore, BeginsAnewWhereThereIsNoneOrAnother) {
  std::string foreign = calendar(soup);
  foreign.replace(foreign.find("manciple"), 8, "anothers");
  for (const std::string& text :
       {std::string(), std::string("no calendar"), foreign, calendar("BEGIN:VEVENT\r\n"),
        calendar(
            "BEGIN:VEVENT\r\nUID:soup\r\nDTSTAMP:yesterday\r\nSEQUENCE:x\r\nEND:VEVENT\r\n")}) {
    const auto stamp =
        CalendarBefore(text, std::string(first)).stamp_of("soup", "SUMMARY:Soup\r\n");
    EXPECT_EQ(stamp.sequence, 0) << text;
    EXPECT_EQ(stamp.time, first) << text;
  }
}

} // namespace
} // namespace manciple::emit
