// What a household says of its ways.
#include "kitchen/kitchen.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

using namespace std::chrono_literals;

struct HouseholdRead {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Household household;
  explicit HouseholdRead(const std::string& text) {
    text::FilesInMemory files;
    files.texts["plans/household.yaml"] = text;
    household = read_everything(".", sources, diagnostics, files).household;
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

TEST(Households, BeginTheirWeekOnMondayUnlessTheySay) {
  const text::Date sunday = std::chrono::sys_days{2027y / 3 / 7};
  EXPECT_EQ(HouseholdRead("measures: us\n").household.day_of_week(sunday), 7U);
  EXPECT_EQ(HouseholdRead("week starts: Sunday\n").household.day_of_week(sunday), 1U);
  EXPECT_NE(HouseholdRead("week starts: Sunnday\n").said().find("[K005]"), std::string::npos);
}

TEST(Households, NameTheirTimeZoneAsTheDatabaseDoes) {
  EXPECT_EQ(HouseholdRead("time zone: Europe/Berlin\n").household.time_zone, "Europe/Berlin");
  for (const char* zone : {"Berlin", "Europe/", "CET summer", "Europe/Ber;lin"}) {
    EXPECT_NE(HouseholdRead("time zone: " + std::string(zone) + "\n").said().find("[K005]"),
              std::string::npos)
        << zone;
  }
}

TEST(Households, HaveNoWordOfNoLetters) {
  const HouseholdRead read("words: {\"\": tbsp}\n");
  EXPECT_NE(read.said().find("'' is not one word [K005]"), std::string::npos) << read.said();
  EXPECT_TRUE(read.household.words.empty());
}

} // namespace
} // namespace manciple::kitchen
