// What a household says of its ways.
#include "kitchen/appliances.hpp"
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

// Whether rolling on an appliance is a hot step, in a house that says so much about appliances.
bool rolls_hot(const std::string& on, const std::string& appliances) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  text::FilesInMemory files;
  files.texts["plans/household.yaml"] = "appliances: {burner: 4, " + appliances + "}\n";
  files.texts["recipes/pasta.yaml"] = "name: Pasta\nserves: 2\ningredients: [2 eggs]\n"
                                      "method: [{do: Roll, hands on: 5 min, on: " +
                                      on + "}]\n";
  const Kitchen kitchen = read_everything(".", sources, diagnostics, files);
  EXPECT_EQ(diagnostics.errors(), 0U) << render(diagnostics, sources);
  return is_heated(kitchen.recipes.at(0));
}

TEST(Appliances, HeatUnlessTheirNameOrTheHouseholdSaysNot) {
  EXPECT_TRUE(rolls_hot("pasta machine", "pasta machine: 1"));
  EXPECT_TRUE(rolls_hot("pasta machine", "pasta machine: {count: 1}"));
  EXPECT_FALSE(rolls_hot("pasta machine", "pasta machine: {count: 1, heats: no}"));
  EXPECT_FALSE(rolls_hot("mixer", "mixer: 1"));
  EXPECT_TRUE(rolls_hot("mixer", "mixer: {heats: yes}"));
}

TEST(Appliances, OfAMappingAreCountedByIt) {
  const HouseholdRead read("appliances: {oven: {count: 3, heats: yes}, mixer: {heats: no}}\n");
  ASSERT_NE(read.household.appliance("oven"), nullptr) << read.said();
  EXPECT_EQ(read.household.appliance("oven")->count, 3);
  EXPECT_EQ(read.household.appliance("mixer")->count, 1);
  EXPECT_EQ(read.household.appliance("burner"), nullptr);
}

} // namespace
} // namespace manciple::kitchen
