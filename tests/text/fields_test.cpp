// A mapping read by its table of keys: what is refused, where, and what a reader is handed.
#include "text/fields.hpp"

#include <gtest/gtest.h>

#include <array>
#include <stdexcept>

namespace manciple::text {
namespace {

constexpr Value text_value = word("a text", "soup");
constexpr Value texts = list_of(text_value, "a list of texts", "[soup, stew]");
constexpr Value prices =
    by_name("a food", texts, "a mapping from foods to prices", "{onion: 1.00}");
constexpr std::array inner_keys{Key{"over", &text_value, ""}};
constexpr Keys inner{"a reduction", inner_keys};
constexpr Value reduction = mapping(inner, "{over: 1}");
constexpr Value either = word_or_mapping(inner, "a dish", "soup");
constexpr std::array keys{
    Key{"name", &text_value, "", true}, Key{"stops", &texts, ""}, Key{"prices", &prices, ""},
    Key{"reduction", &reduction, ""},   Key{"dish", &either, ""},
};
constexpr Keys thing{"a thing", keys};

struct Read {
  Sources sources;
  Diagnostics diagnostics;
  std::optional<Node> node;
  std::optional<Fields> fields;
  explicit Read(const std::string& text) {
    node = parse_yaml(sources.add("f.yaml", text), sources, diagnostics);
    fields.emplace(*node, thing, diagnostics);
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

TEST(Fields, OfferTheNearestKeyForAMistypedOne) {
  const Read read("name: x\nstpos: corner\n");
  EXPECT_NE(read.said().find("f.yaml:2:1: error: a thing has no key 'stpos' [T006]"),
            std::string::npos)
      << read.said();
  EXPECT_NE(read.said().find("help: did you mean stops?"), std::string::npos) << read.said();
}

TEST(Fields, SayWhatIsMissing) {
  EXPECT_NE(Read("stops: corner\n").said().find("a thing needs 'name' [T007]"), std::string::npos);
}

TEST(Fields, TakeOneValueForAListOfOne) {
  const Read read("{name: x, stops: corner}\n");
  ASSERT_EQ(read.fields->list("stops").size(), 1U);
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
}

TEST(Fields, TakeNothingWrittenForNothingWhereAListCouldStand) {
  const Read read("name: x\nstops:\nprices:\n");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_TRUE(read.fields->list("stops").empty());
  EXPECT_TRUE(read.fields->named("prices").empty());
}

// Each stands at a key whose table says another shape.
TEST(Fields, RefuseEveryOtherShapeAndHandNothingOfItOut) {
  for (const char* wrong :
       {"name: [x]", "name: {x: y}", "name:", "name: x\nstops: {a: b}", "name: x\nstops: [[a]]",
        "name: x\nstops: [a, {b: c}]", "name: x\nprices: 5", "name: x\nprices: [a]",
        "name: x\nprices: {onion: {a: b}}", "name: x\nreduction: 5", "name: x\nreduction: [a]",
        "name: x\nreduction:", "name: x\ndish: [a]", "name: x\ndish:"}) {
    const Read read(std::string(wrong) + "\n");
    EXPECT_EQ(read.diagnostics.errors(), 1U) << wrong << "\n" << read.said();
    EXPECT_NE(read.said().find("[T008]"), std::string::npos) << wrong << "\n" << read.said();
  }
  EXPECT_EQ(Read("{name: x, stops: [a, {b: c}]}").fields->list("stops").size(), 1U);
  EXPECT_EQ(Read("name: [x]").fields->find("name"), nullptr);
  EXPECT_EQ(Read("{name: x, prices: {onion: 1, leek: {a: b}}}").fields->named("prices").size(), 1U);
}

TEST(Fields, AreAskedOnlyForWhatIsInTheTable) {
  const Read read("name: x\n");
  EXPECT_THROW((void)read.fields->find("nmae"), std::logic_error);
}

} // namespace
} // namespace manciple::text
