#include "text/yaml.hpp"

#include "text/printable.hpp"

#include <gtest/gtest.h>

namespace manciple::text {
namespace {

struct ReadYaml {
  Sources sources;
  Diagnostics diagnostics;
  std::optional<Node> node;
  explicit ReadYaml(const std::string& text) {
    node = parse_yaml(sources.add("f.yaml", text), sources, diagnostics);
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

TEST(Yaml, KnowsWhereAWordStands) {
  const ReadYaml read("name: Soup\nlines:\n  - 2 cups rice\n  - \"1 cup water\"\n");
  ASSERT_TRUE(read.node);
  const Node& quoted = read.node->entries[1].value.items[1];
  const Position at = read.sources.position(quoted.span.file, quoted.part(2, 3).begin);
  EXPECT_EQ(at.line, 4U);
  EXPECT_EQ(at.column, 8U); // inside the quotes, after "1 "
}

TEST(Yaml, CountsColumnsInCharactersNotBytes) {
  const ReadYaml read("a: \u00BD cup cr\u00E8me\nb: {c: d, zz: e}\n");
  ASSERT_TRUE(read.node);
  const Span at = read.node->entries[1].value.entries[1].key.span;
  EXPECT_EQ(read.sources.position(at.file, at.begin).column, 11U);
}

TEST(Yaml, RefusesAKeyThatStandsTwiceAndShowsBoth) {
  const ReadYaml read("a: 1\nb: 2\na: 3\n");
  EXPECT_NE(read.said().find("f.yaml:3:1: error: 'a' is given twice"), std::string::npos)
      << read.said();
  EXPECT_NE(read.said().find("note: f.yaml:1:1"), std::string::npos) << read.said();
}

TEST(Yaml, RefusesWhatIsNotYaml) {
  for (const char* text : {"a: [1, 2", "\t- x: {", "a: b: c: d", "\"open"}) {
    const ReadYaml read(text);
    EXPECT_EQ(read.diagnostics.errors(), 1U) << text;
    EXPECT_NE(read.said().find("[T003]"), std::string::npos) << read.said();
  }
}

TEST(Yaml, RefusesAnEmptyFileAndAFileOfComments) {
  for (const char* text : {"", "\n\n", "# nothing\n"}) {
    const ReadYaml read(text);
    EXPECT_FALSE(read.node);
    EXPECT_NE(read.said().find("[T004]"), std::string::npos) << "'" << text << "' " << read.said();
  }
}

TEST(Yaml, RefusesAliasesSoThatNoFileGrowsWithoutEnd) {
  const ReadYaml read("a: &x [1, 2]\nb: *x\n");
  EXPECT_EQ(read.diagnostics.errors(), 2U) << read.said();
}

TEST(Yaml, RefusesADecimalCommaInBracketsWhichCutsAnItemInTwo) {
  const ReadYaml list("a: [500 g 2,49, 1 kg 3.99]\n");
  EXPECT_EQ(list.diagnostics.errors(), 1U) << list.said();
  EXPECT_NE(list.said().find("f.yaml:1:5: error: within brackets YAML cuts '500 g 2,49' in two at "
                             "the comma [T012]"),
            std::string::npos)
      << list.said();
  EXPECT_NE(list.said().find("help: quote it: \"500 g 2,49\""), std::string::npos) << list.said();
  ASSERT_TRUE(list.node);
  EXPECT_EQ(list.node->entries[0].value.items.size(), 2U); // nothing more is said of the rest
  const ReadYaml map("a: {price: 2,49, from: 2027-03-02}\n");
  EXPECT_EQ(map.diagnostics.errors(), 1U) << map.said();
  ASSERT_TRUE(map.node);
  EXPECT_EQ(map.node->entries[0].value.entries.size(), 2U);
}

TEST(Yaml, TakesOtherCommasInBracketsForWhatTheyAre) {
  for (const char* text : {"a: [1, 2]", "a: [\"2,49\", 3]", "a: [2027-03-02,2027-03-03]",
                           "a: [salt,2 eggs]", "a: 2,49", "- 500 g 2,49"}) {
    const ReadYaml read(text);
    EXPECT_EQ(read.diagnostics.errors(), 0U) << text << "\n" << read.said();
  }
}

TEST(Yaml, RefusesABinaryFile) {
  const ReadYaml read(std::string("a: \0b", 5));
  EXPECT_NE(read.said().find("not a text file"), std::string::npos);
}

TEST(Yaml, RefusesWhatIsNotUtf8AtItsPlace) {
  // A lone byte, an overlong slash, a surrogate, and a byte that begins nothing.
  for (const char* bad : {"\xE9", "\xC0\xAF", "\xED\xA0\x80", "\xFF"}) {
    const ReadYaml read(std::string("a: 1\nb: caf") + bad + "\n");
    EXPECT_FALSE(read.node);
    EXPECT_NE(read.said().find("f.yaml:2:7: error: this byte is not UTF-8 [T011]"),
              std::string::npos)
        << read.said();
  }
}

TEST(Yaml, RefusesCharactersThatSteerATerminal) {
  for (const char* bad : {"\"x\\e[31m\"", "\"\\x07\"", "\"\\x9b2J\"", "\"\\0\"", "x \xC2\x9B y",
                          "\"\\N\"", "\"\\x7f\""}) {
    const ReadYaml read(std::string("a: ") + bad + "\n");
    EXPECT_NE(read.said().find("f.yaml:1:4: error:"), std::string::npos) << bad << read.said();
    EXPECT_NE(read.said().find("[T011]"), std::string::npos) << bad << read.said();
    EXPECT_FALSE(find_unprintable(printable(read.said(), false))) << bad;
  }
}

TEST(Yaml, TakesLineEndsAndTabsInATextForBlanks) {
  const ReadYaml read("a: |\n  one\n  two\nb: \"x\\ny\\tz\"\nc: \"v\\Lw\"\n");
  ASSERT_TRUE(read.node) << read.said();
  EXPECT_EQ(read.node->entries[0].value.scalar, "one two");
  EXPECT_EQ(read.node->entries[1].value.scalar, "x y z");
  EXPECT_EQ(read.node->entries[2].value.scalar, "v w");
}

TEST(Diagnostics, ShowTheLineWithACaretUnderThePlace) {
  Sources sources;
  const FileId file = sources.add("p.yaml", "x: 2 cupz rice\n");
  Diagnostics diagnostics;
  diagnostics.error({"K004"}, Span{file, 5, 9}, "'cupz' is not understood here");
  EXPECT_EQ(render(diagnostics, sources),
            "p.yaml:1:6: error: 'cupz' is not understood here [K004]\n"
            "  x: 2 cupz rice\n"
            "       ^~~~\n");
}

TEST(Diagnostics, ComeInTheOrderOfFilesAndPlaces) {
  Sources sources;
  const FileId b = sources.add("b.yaml", "one\ntwo\n");
  const FileId a = sources.add("a.yaml", "one\n");
  Diagnostics diagnostics;
  diagnostics.error({"X"}, Span{b, 4, 5}, "third");
  diagnostics.error({"X"}, Span{b, 0, 1}, "second");
  diagnostics.error({"X"}, Span{a, 0, 1}, "first");
  const std::string all = render(diagnostics, sources);
  EXPECT_LT(all.find("first"), all.find("second"));
  EXPECT_LT(all.find("second"), all.find("third"));
}

TEST(Diagnostics, NeverSendControlCharactersToTheTerminal) {
  Sources sources;
  const FileId file = sources.add("p.yaml", "x: \x1b[31mred\n");
  Diagnostics diagnostics;
  diagnostics.error({"X"}, Span{file, 3, 8}, "odd \x1b[0m");
  EXPECT_EQ(render(diagnostics, sources).find('\x1b'), std::string::npos);
}

} // namespace
} // namespace manciple::text
