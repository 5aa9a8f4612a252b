#include "text/date.hpp"
#include "text/nearest.hpp"
#include "text/phrases.hpp"
#include "text/words.hpp"

#include <gtest/gtest.h>

namespace manciple::text {
namespace {

TEST(Words, ADecimalCommaSeparatesNothing) {
  EXPECT_EQ(find_comma("0,5 kg onions, diced"), 13U);
  EXPECT_EQ(find_comma("0,5 kg onions"), std::string_view::npos);
  EXPECT_EQ(find_comma("2 eggs,diced"), 6U);
  EXPECT_EQ(find_comma("salt, 2 eggs"), 4U);
}

TEST(Words, SingularAndPluralGoTogether) {
  for (const auto& [one, many] :
       std::initializer_list<std::pair<const char*, const char*>>{{"onion", "onions"},
                                                                  {"tomato", "tomatoes"},
                                                                  {"cherry", "cherries"},
                                                                  {"radish", "radishes"},
                                                                  {"bay leaf", "bay leaves"},
                                                                  {"loaf", "loaves"},
                                                                  {"box", "boxes"},
                                                                  {"peach", "peaches"},
                                                                  {"turkey", "turkeys"},
                                                                  {"cookie", "cookies"},
                                                                  {"slice", "slices"},
                                                                  {"avocado", "avocados"},
                                                                  {"clove", "cloves"},
                                                                  {"red chilli", "red chillies"},
                                                                  {"mince pie", "mince pies"},
                                                                  {"quiche", "quiches"},
                                                                  {"shrimp", "shrimp"}}) {
    EXPECT_EQ(plural(one), many);
    EXPECT_EQ(singular(many), one);
  }
}

TEST(Words, WhatOnlyLooksLikeAPluralStays) {
  for (const char* word : {"hummus", "couscous", "asparagus", "swiss", "molasses", "lemongrass"}) {
    EXPECT_EQ(singular(word), word);
  }
}

TEST(Words, AccentsGoAndOtherLettersStay) {
  EXPECT_EQ(without_accents("Cr\u00E8me fra\u00EEche"), "Creme fraiche");
  EXPECT_EQ(without_accents("jalape\u00F1o, \u00C9dam"), "jalapeno, Edam");
  EXPECT_EQ(without_accents("stra\u00DFe \u00BD \u4E94"), "stra\u00DFe \u00BD \u4E94");
}

TEST(Words, OnlyAnAsciiLetterIsCapitalized) {
  EXPECT_EQ(capitalized("simmer the stock"), "Simmer the stock");
  EXPECT_EQ(capitalized("2 eggs"), "2 eggs");
  EXPECT_EQ(capitalized("\u00e9clairs"), "\u00e9clairs");
  EXPECT_EQ(capitalized(""), "");
}

TEST(Words, ASlugIsAFileName) {
  EXPECT_EQ(slug("Smoky Lentil Soup"), "smoky-lentil-soup");
  EXPECT_EQ(slug("  Grandma's  pie! "), "grandmas-pie");
  EXPECT_EQ(slug("../../etc/passwd"), "etc-passwd");
}

TEST(Nearest, FindsAMistypedName) {
  EXPECT_EQ(did_you_mean("onoin", {"onion", "union", "lemon"}), "did you mean onion?");
  EXPECT_EQ(did_you_mean("xyzzy", {"onion", "lemon"}), "");
}

TEST(Nearest, DistanceIsSymmetricAndZeroOnlyForEquals) {
  for (const char* a : {"", "a", "ab", "ba", "abc", "onion"}) {
    for (const char* b : {"", "a", "ab", "ba", "abc", "onion"}) {
      EXPECT_EQ(edit_distance(a, b), edit_distance(b, a));
      EXPECT_EQ(edit_distance(a, b) == 0, std::string(a) == b);
    }
  }
  EXPECT_EQ(edit_distance("ab", "ba"), 1U); // a swap is one step
}

TEST(Dates, OnlyDaysThatExist) {
  EXPECT_TRUE(parse_date("2028-02-29"));
  EXPECT_FALSE(parse_date("2027-02-29"));
  EXPECT_FALSE(parse_date("2027-2-3"));
  EXPECT_FALSE(parse_date("2027-13-01"));
  EXPECT_EQ(print_day(*parse_date("2027-03-02")), "Tue 2 Mar");
}

TEST(Dates, PrintingThenReadingGivesTheSameDay) {
  for (Date day = *parse_date("2027-01-01"); day < *parse_date("2029-01-01");
       day += std::chrono::days(1)) {
    EXPECT_EQ(parse_date(print_date(day)), day);
  }
}

TEST(Times, OfDayAndOfWork) {
  EXPECT_EQ(parse_clock("7:05"), 7 * 60 + 5);
  EXPECT_FALSE(parse_clock("24:00"));
  EXPECT_EQ(parse_minutes("1 h 30 min"), 90);
  EXPECT_EQ(parse_minutes("1.5 hours"), 90);
  EXPECT_FALSE(parse_minutes("soon"));
  EXPECT_FALSE(parse_minutes("5"));
  EXPECT_EQ(parse_days("3 months"), 90);
  EXPECT_EQ(parse_days("1 week 2 days"), 9);
  EXPECT_EQ(print_days(14), "2 weeks");
}

TEST(Dates, AreReadAsPeopleWriteThem) {
  const Date near = *parse_date("2027-01-10");
  EXPECT_EQ(parse_day("2027-03-02", near), parse_date("2027-03-02"));
  EXPECT_EQ(parse_day("2 Mar", near), parse_date("2027-03-02"));
  EXPECT_EQ(parse_day("March 2", near), parse_date("2027-03-02"));
  EXPECT_EQ(parse_day("2 mar 2028", near), parse_date("2028-03-02"));
  EXPECT_EQ(parse_day("28 Dec", near), parse_date("2026-12-28")); // the nearest
  for (const char* wrong : {"", "2", "Mar", "31 Feb", "2 Mai 27", "soon", "2 3 Mar"}) {
    EXPECT_FALSE(parse_day(wrong, near)) << wrong;
  }
}

TEST(Slips, AreOneLetterOffOrTwoInALongWord) {
  const std::vector<std::string_view> names{"onion", "macaroni", "tsp", "freezer bag"};
  EXPECT_EQ(slip_of("onoin", names), "onion");
  EXPECT_EQ(slip_of("tps", names), "tsp");
  EXPECT_EQ(slip_of("freezr bags", names), "freezer bag");
  EXPECT_FALSE(slip_of("mascarpone", names));
  EXPECT_FALSE(slip_of("chicken taco", {"chicken back"})); // another second word
  EXPECT_FALSE(slip_of("onion", names));                   // it is the name itself
  EXPECT_FALSE(slip_of("el", names));
}

TEST(Names, OfWhatIsFreeOfSomethingAreNotAnsweredWithIt) {
  EXPECT_EQ(did_you_mean("gluten free flour", {"gluten flour"}), "");
  EXPECT_EQ(did_you_mean("gluten free flour", {"gluten flour", "gluten free flours"}),
            "did you mean gluten free flours?");
  EXPECT_EQ(did_you_mean("dairy free flour", {"gluten free flour"}), "");
  EXPECT_EQ(did_you_mean("vegan cheese", {"cream cheese"}), "");
  EXPECT_EQ(taken_away("a gluten free flour"), "gluten free");
  EXPECT_FALSE(takes_away("freezer bag"));
  EXPECT_TRUE(takes_away("cake without nuts"));
}

TEST(Phrases, NameAThingByWholeWords) {
  EXPECT_TRUE(names("Slice the Carrots", "carrot"));
  EXPECT_TRUE(names("Slice the carrot", "carrots"));
  EXPECT_TRUE(names("Tear the bay leaves", "leaf"));
  EXPECT_FALSE(names("Peel them", "eel"));
  EXPECT_FALSE(names("Season the sausages", "sage"));
}

} // namespace
} // namespace manciple::text
