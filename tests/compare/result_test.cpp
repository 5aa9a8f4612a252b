#include "compare/result.hpp"

#include "dice.hpp"
#include "emit/emit.hpp"
#include "house.hpp"

#include <nlohmann/json.hpp>

namespace manciple {
namespace {

std::string good_result() {
  House house;
  house.recipe("stew", "1 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  return emit::result_json(house.good());
}

std::string refusal(const std::string& json) {
  const auto result = compare::read_result(json);
  return result ? "" : result.error();
}

TEST(ResultReading, WhatABuildWritesIsRead) {
  const auto result = compare::read_result(good_result());
  ASSERT_TRUE(result) << result.error();
  EXPECT_EQ(result->plan, "P");
  EXPECT_EQ(result->paid, 100);
  ASSERT_EQ(result->lines.size(), 1U);
  EXPECT_EQ(result->lines[0].name, "onions");
  EXPECT_EQ(result->stops.at(0).shop, "Corner");
  EXPECT_EQ(result->meals.at(0).dishes.at(0).name, "stew");
}

TEST(ResultReading, WhatIsNoResultIsRefused) {
  for (const std::string text : {"", "{", "[]", "{}", "3", R"({"plan": "P"})", "plan: P"}) {
    EXPECT_EQ(refusal(text), "is not the result of a build") << text;
  }
}

TEST(ResultReading, AnotherFormIsRefusedAndSaysWhatToDo) {
  auto json = nlohmann::json::parse(good_result());
  json["form"] = 99;
  EXPECT_NE(refusal(json.dump()).find("another version"), std::string::npos);
  json.erase("form");
  EXPECT_NE(refusal(json.dump()).find("build it again"), std::string::npos);
}

TEST(ResultReading, EveryPartThatIsNeededIsLookedAt) {
  const auto good = nlohmann::json::parse(good_result());
  for (const char* key : {"from", "until", "currency", "paid", "cash_back", "budget", "visits",
                          "still_to_find", "meals", "makings", "sessions", "reminders"}) {
    auto json = good;
    json[key] = "odd";
    EXPECT_NE(refusal(json.dump()), "") << key;
    json.erase(key);
    EXPECT_NE(refusal(json.dump()), "") << key;
  }
  auto json = good;
  json["purchases"][0]["visit"] = 1;
  EXPECT_EQ(refusal(json.dump()), "is not what a build writes, at 'visit'; build it again");
  json = good;
  json["paid"] = 1e300;
  EXPECT_NE(refusal(json.dump()), "");
  json["paid"] = std::uint64_t{1} << 63U;
  EXPECT_NE(refusal(json.dump()), "");
}

TEST(ResultReading, NamesCannotSteerATerminal) {
  auto json = nlohmann::json::parse(good_result());
  json["plan"] = "P\x1b[2J\nQ";
  const auto result = compare::read_result(json.dump());
  ASSERT_TRUE(result);
  EXPECT_EQ(result->plan, "P [2J Q");
}

TEST(ResultReading, WhateverIsSpoiltEndsWithAResultOrAReason) {
  const std::string good = good_result();
  Dice dice(7);
  for (int i = 0; i < 3000; ++i) {
    std::string spoilt = good;
    spoilt[dice.index(good.size())] = "0-[]{}\",:x9\xff"[dice.index(12)];
    const auto result = compare::read_result(spoilt);
    EXPECT_TRUE(result || !result.error().empty());
  }
}

} // namespace
} // namespace manciple
