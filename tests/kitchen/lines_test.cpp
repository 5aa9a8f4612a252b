// Ingredient lines as cooks write them, and as they should not.
#include "kitchen/ingredient.hpp"
#include "text/diagnostics.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

class BookNames final : public Names {
public:
  std::optional<Target> find(std::string_view name) override {
    const auto id = book.find(name);
    return id ? std::optional<Target>(*id) : std::nullopt;
  }
  [[nodiscard]] const foods::Food* food(const Target& target) const override {
    return &book.get(std::get<foods::FoodId>(target));
  }
  [[nodiscard]] std::vector<std::string_view> all() const override { return book.names(); }
  foods::Book book;
};

struct LineRead {
  BookNames names;
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::vector<Ingredient> lines;

  explicit LineRead(const std::string& line, const measure::Customs& customs = {}) {
    text::Node node;
    node.kind = text::Node::Kind::scalar;
    node.scalar = line;
    node.span = {sources.add("line", line), 0, static_cast<std::uint32_t>(line.size())};
    lines = read_line(node, line, 0, customs, names, diagnostics);
  }
  [[nodiscard]] std::string food() const {
    return lines.empty() ? "" : names.book.get(*lines.front().food()).name;
  }
  /// As purchased, in grams, to the nearest tenth.
  [[nodiscard]] double grams() const {
    if (lines.empty() || !lines.front().amount) {
      return 0;
    }
    const auto bought =
        foods::as_purchased(names.book.get(*lines.front().food()), *lines.front().amount);
    return bought ? to_double(bought->amount) : -1;
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

struct Line {
  const char* text;
  const char* food;
  double grams; ///< as purchased; 0 where the line gives no amount
};

// The grams follow from the reference: SR28 gram weights over the share that is edible. 2 cups of
// chopped onion are 2 x 160 g = 320 g, and 320 g / 90 % = 355.6 g as bought.
const Line good_lines[] = {
    {"2 cups onion, chopped", "onion", 355.6},
    {"2 cups chopped onion", "onion", 355.6},
    {"1 cup pineapple, chunks", "pineapple", 323.5}, // SR28 9266.1, 51 % edible
    {"1 cup almonds, sliced", "almond", 92},
    {"1 cup slivered almonds", "slivered almond", 108},
    {"3 rashers bacon", "bacon", 84},
    {"3 peppers", "green bell pepper", 0},
    {"1 whole chicken (about 1.6 kg)", "whole chicken", 1600},
    {"8 small corn tortillas", "corn tortilla", 0},
    {"2 nests egg noodles", "egg noodle", 120},
    {"1 tsp pepper", "black pepper", 0},
    {"2 heads of broccoli", "broccoli", 700},
    {"1 packet frozen peas", "frozen pea", 284}, // SR28 11312.2, a package
    {"1 tube tomato paste", "tomato paste", 200},
    // What kind it is may stand after the comma, as in a catalogue.
    {"2 cups peas, frozen", "frozen pea", 0},
    {"1 tsp thyme, dried", "dried thyme", 0},
    {"1 cup sugar, brown", "brown sugar", 0},
    {"2 lb chicken, cooked", "cooked chicken", 0},
    {"2 onions, red, sliced", "red onion", 0},
    {"2 lb chicken, whole", "whole chicken", 0},
    {"a thumb of ginger", "ginger root", 32.3},
    {"3 rashers of back bacon", "back bacon", 105},
    {"1 rib celery", "celery", 44.9},
    {"2 sticks celery", "celery", 89.9},
    {"1 knob butter", "butter", 15},
    {"2 dessertspoons olive oil", "olive oil", 18.3},
    {"2 dsp olive oil", "olive oil", 18.3},
    // 1.5 level tablespoons of 125 g/cup.
    {"1 heaped tbsp all-purpose flour", "all-purpose flour", 11.7},
    {"1 heaping tbsp all-purpose flour", "all-purpose flour", 11.7},
    {"2 large onions, diced", "onion", 333.3},
    {"2 onions", "onion", 244.4},
    {"half an onion", "onion", 61.1},
    {"1 lb onions, diced", "onion", 453.6},
    {"1 lb diced onions", "onion", 504.0},
    {"1\u00BD\u20132 cups onion, chopped", "onion", 355.6},
    {"1 to 2 onions", "onion", 244.4},
    {"3 cloves garlic, minced", "garlic", 0},
    {"3 garlic cloves", "garlic", 0},
    {"1 head garlic", "garlic", 0},
    {"2 stalks celery, sliced", "celery", 0},
    {"1 bunch parsley", "parsley", 0},
    {"a handful of parsley", "parsley", 0},
    {"3 large eggs, beaten", "egg", 0},
    {"a dozen eggs", "egg", 0},
    {"2 egg yolks", "egg", 0},
    {"250 g all-purpose flour", "all-purpose flour", 250},
    {"2 cups all-purpose flour", "all-purpose flour", 250},
    {"1 c all-purpose flour", "all-purpose flour", 125},
    {"1 stick butter", "butter", 0},
    {"2 T butter", "butter", 28.4},
    {"2 Tbsp butter", "butter", 28.4},
    {"2 tablespoons butter", "butter", 28.4},
    {"6 tsp butter", "butter", 28.4},
    {"2 tbsp. butter, softened", "butter", 28.4},
    {"1 lb 4 oz ground beef", "ground beef", 567.0},
    {"1.5 lb ground beef", "ground beef", 680.4},
    {"2 (15 oz) cans black beans, drained", "canned black bean", 850.5},
    {"2 15-oz cans black beans", "canned black bean", 850.5},
    {"1 can (14.5 oz) diced tomatoes", "canned diced tomato", 411.1},
    {"one 3-lb chicken", "whole chicken", 1360.8},
    {"8-oz package cream cheese", "cream cheese", 226.8},
    {"1 (8 oz) package cream cheese, softened", "cream cheese", 226.8},
    {"juice of 2 lemons", "lemon", 0},
    {"zest of 1 lemon", "lemon", 0},
    {"1 gallon whole milk", "whole milk", 3904},
    {"2 cups whole milk", "whole milk", 488},
    {"1 cup white rice", "white rice", 185},
    {"salt, to taste", "salt", 0},
    {"black pepper to taste", "black pepper", 0},
    {"1 tsp salt", "salt", 6},
    {"a pinch of salt", "salt", 0},
    {"1 cup brown sugar, packed", "brown sugar", 220},
    {"1 cup packed brown sugar", "brown sugar", 220},
    {"2 ripe bananas, mashed", "banana", 0},
    {"1 lb bananas", "banana", 453.6},
    {"4 medium carrots, sliced", "carrot", 0},
    {"3 carrots", "carrot", 0},
    {"1 cup shredded cheddar cheese", "cheddar cheese", 113},
    {"4 oz cheddar cheese, shredded", "cheddar cheese", 113.4},
    {"1/2 cup olive oil", "olive oil", 108},
    {"2 medium potatoes, peeled and cubed", "potato", 0},
    {"1 head lettuce", "iceberg lettuce", 0},
    {"2 cups baby spinach", "baby spinach", 0},
    {"2 cups fresh spinach", "spinach", 0},
    {"1 lb boneless chicken thigh", "boneless chicken thigh", 453.6},
    {"8 slices bacon", "bacon", 0},
    {"1 lb spaghetti", "spaghetti", 453.6},
    {"1 tbsp soy sauce", "soy sauce", 15.9},
    {"1/4 cup honey", "honey", 84.8},
    {"1 cup rolled oats", "rolled oat", 81},
    {"1 cup frozen peas", "frozen pea", 0},
    {"2 ears sweet corn", "corn on the cob", 0},
    {"1 lime", "lime", 0},
    {"1 cucumber", "cucumber", 0},
    {"1 red bell pepper, diced", "red bell pepper", 0},
    {"8 oz mushrooms, sliced", "mushroom", 226.8},
    {"1 sweet potato", "sweet potato", 0},
    {"1 avocado", "avocado", 0},
    {"2 apples", "apple", 0},
    {"1 tsp cinnamon", "cinnamon", 2.6},
    {"1 tsp ground cumin", "cumin", 0},
    {"2 tsp chili powder", "chili powder", 5.4},
    {"1 tbsp baking powder", "baking powder", 13.8},
    {"1/2 tsp baking soda", "baking soda", 2.3},
    {"1 tsp vanilla extract", "vanilla extract", 4.2},
    {"1 cup granulated sugar", "granulated sugar", 200},
    {"1 cup walnuts, chopped", "walnut", 117},
    {"2 cups water", "water", 0},
    {"1 cup sour cream", "sour cream", 230},
    {"1 cup plain yogurt", "plain yogurt", 245},
    {"2 slices whole wheat bread", "whole wheat bread", 0},
    {"4 flour tortillas", "flour tortilla", 0},
    {"1 bay leaf", "bay leaf", 0},
    {"2 bay leaves", "bay leaf", 0},
    {"1 cup cooked white rice", "white rice", 0},
    {"1 lb dried black beans", "dried black bean", 453.6},
    {"1 inch ginger root", "ginger root", 0},
    {"2 scallions, sliced", "green onion", 0},
    {"1 pint cherry tomatoes", "cherry tomato", 0},
    {"3 Roma tomatoes", "plum tomato", 0},
    {"1 lb salmon fillet", "salmon fillet", 453.6},
    {"12 oz shrimp, peeled", "shrimp", 340.2},
    {"1/2 cup mayonnaise", "mayonnaise", 0},
    {"2 tbsp Dijon mustard", "dijon mustard", 0},
    {"1 tbsp cornstarch", "cornstarch", 8},
    {"(optional) 1 tbsp capers", "caper", 0},
    {"2 tbsp capers (optional)", "caper", 0},
    {"about 2 cups chopped onion", "onion", 355.6},
};

TEST(Lines, AreReadAsACookMeansThem) {
  int right = 0;
  for (const Line& line : good_lines) {
    const LineRead read(line.text);
    EXPECT_FALSE(read.lines.empty()) << line.text << "\n" << read.said();
    EXPECT_EQ(read.food(), line.food) << line.text;
    if (line.grams > 0) {
      EXPECT_NEAR(read.grams(), line.grams, 0.06) << line.text;
    }
    right += read.food() == line.food ? 1 : 0;
  }
  std::printf("published: ingredient lines of our own: %d of %zu read right\n", right,
              std::size(good_lines));
}

const char* const nonsense[] = {
    "",
    "   ",
    ",",
    "2",
    "2 cups",
    "cups onion onion",
    "1/0 cup flour",
    "-3 onions",
    "99999999999 onions",
    "0 onions",
    "2 cupz onion",
    "2 cups onoin",
    "xyzzy",
    "2 gallons of nothing",
    "1 stick onion",
    "2 cloves butter",
    "3 inches of milk",
    "1 cup quuxberries",
    "two and a half",
    "=SUM(A1)",
    "<script>alert(1)</script>",
    "2 cups \xF0\x9F\x8D\x95",
    "1 lb freezer bags",
    "1 cup dish soap lemon",
    "some of that stuff",
    "onion flavoured sky",
    "2 x onion",
    "1 tsp 2 lb",
    "1 kilo joule",
    "3 slabs of onion",
    "1 (15 oz",
    "1 cup of",
    "1..5 cups flour",
    "5e3 cups flour",
    "NaN onions",
    "1 ear garlic",
    "4 tablespoons eggs, julienned",
    "1 cup broccoli juice",
    "2 drumsticks salt",
    "1 cup onion, zest",
};

TEST(Lines, NonsenseIsRefusedWithAMessageThatHelps) {
  int refused = 0;
  for (const char* text : nonsense) {
    const LineRead read(text);
    EXPECT_TRUE(read.lines.empty()) << text;
    EXPECT_GE(read.diagnostics.errors(), 1U) << text;
    for (const auto& d : read.diagnostics.all()) {
      EXPECT_FALSE(d.what.empty()) << text;
      EXPECT_FALSE(d.fix.empty() && d.code.number != "K003") << text << ": " << d.what;
    }
    refused += read.lines.empty() ? 1 : 0;
  }
  std::printf("published: nonsense lines of our own: %d of %zu refused\n", refused,
              std::size(nonsense));
}

TEST(Lines, TheSizeOfACanIsReadInAnyUsualWay) {
  for (const char* const line :
       {"2 x 400 g cans chickpeas", "2 cans chickpeas (400 g each)", "2 400-g cans chickpeas"}) {
    const LineRead read(line);
    EXPECT_EQ(read.grams(), 800) << line;
    EXPECT_EQ(read.lines.at(0).containers, 2) << line;
    EXPECT_FALSE(read.lines.at(0).any_size) << line;
  }
  EXPECT_TRUE(LineRead("2 cans chickpeas").lines.at(0).any_size);
  EXPECT_EQ(LineRead("2 onions (one for each)").lines.at(0).note, "one for each");
}

TEST(Lines, ARangeIsBoughtForItsUpperEnd) {
  const LineRead read("1-2 tsp salt");
  ASSERT_EQ(read.lines.size(), 1U);
  EXPECT_EQ(read.lines[0].amount->number, 2);
  EXPECT_EQ(read.lines[0].low, Rational(1));
}

TEST(Lines, SaltAndPepperAreTwoThings) {
  const LineRead read("salt and black pepper, to taste");
  ASSERT_EQ(read.lines.size(), 2U) << read.said();
  EXPECT_FALSE(read.lines[0].amount);
  EXPECT_FALSE(read.lines[1].amount);
}

TEST(Lines, ZestAndJuiceOfALemonAreTwoPartsOfIt) {
  const LineRead read("zest and juice of 2 lemons");
  ASSERT_EQ(read.lines.size(), 2U) << read.said();
  EXPECT_EQ(read.lines[0].amount->form, foods::Form::zest);
  EXPECT_EQ(read.lines[1].amount->form, foods::Form::juice);
}

// Whatever measure the whole is given in, and whether or not the tables say how much juice comes of
// it: the whole is what is bought.
TEST(Lines, AWholeOfWhichAPartIsTakenIsBoughtWhole) {
  EXPECT_EQ(LineRead("juice of 1 lb tomatoes").grams(), LineRead("1 lb tomatoes").grams());
  EXPECT_EQ(LineRead("zest of 1 lb tomatoes").grams(), LineRead("1 lb tomatoes").grams());
  EXPECT_EQ(LineRead("juice of 1 lb lemons").grams(), LineRead("1 lb lemons").grams());
  EXPECT_EQ(LineRead("juice of 2 lemons").grams(), LineRead("2 lemons").grams());
  EXPECT_EQ(LineRead("juice of 2 cups cherries").grams(), LineRead("2 cups cherries").grams());
  const LineRead both("zest and juice of 2 lb lemons");
  ASSERT_EQ(both.lines.size(), 2U) << both.said();
  EXPECT_EQ(both.lines[0].amount->form, foods::Form::zest);
  // A cup of juice is not a cup of fruit.
  EXPECT_GT(LineRead("1 cup lemon juice").grams(), 236);
}

TEST(Lines, APartOfAMeasureThatTheFoodDoesNotHaveIsRefused) {
  for (const char* line : {"juice of 1 clove tomato", "zest of 1 stick lemon",
                           "juice of 1 cup freezer bags", "grated zest of 2 gal cinnamon stick"}) {
    const LineRead read(line);
    EXPECT_TRUE(read.lines.empty()) << line;
    EXPECT_GE(read.diagnostics.errors(), 1U) << line;
  }
}

// A cup of what is cut before it goes into one: USDA SR28 11282 (onions, chopped: 160 g), 1009
// (cheddar, shredded: 113 g), 11090 (broccoli, chopped: 91 g).
TEST(Lines, ACupOfWhatIsCutFirstIsOfSmallPieces) {
  EXPECT_EQ(LineRead("1 cup onions").grams(), LineRead("1 cup chopped onions").grams());
  EXPECT_EQ(LineRead("1 cup cheddar cheese").grams(),
            LineRead("1 cup shredded cheddar cheese").grams());
  EXPECT_EQ(LineRead("1 cup broccoli").grams(), LineRead("1 cup chopped broccoli").grams());
  EXPECT_EQ(LineRead("1/4 cup parsley").grams(), LineRead("1/4 cup chopped parsley").grams());
  // What has a figure of its own keeps it.
  EXPECT_NE(LineRead("1 cup parmesan cheese").grams(),
            LineRead("1 cup shredded parmesan cheese").grams());
}

TEST(Lines, AreReadWithADecimalComma) {
  EXPECT_NEAR(LineRead("0,5 kg onions, diced").grams(), 500, 0.1);
  EXPECT_EQ(LineRead("0,5 kg onions, diced").lines.at(0).amount->form, foods::Form::diced);
  const LineRead thousand("1,500 g onions");
  EXPECT_NE(thousand.said().find("[K003]"), std::string::npos) << thousand.said();
}

TEST(Lines, AreReadWithTheWordsOfTheHouse) {
  const measure::Customs own(
      measure::System::metric,
      {{"el", "tbsp"}, {"bund", "bunch"}, {"dosen", "can"}, {"zehen", "clove"}});
  EXPECT_NEAR(LineRead("2 EL sugar", own).grams(), LineRead("30 ml sugar").grams(), 0.1);
  EXPECT_EQ(LineRead("1/2 Bund parsley, chopped", own).grams(),
            LineRead("1/2 bunch parsley").grams());
  EXPECT_EQ(LineRead("3 Zehen garlic", own).grams(), LineRead("3 cloves garlic").grams());
  const LineRead cans("2 Dosen chickpeas", own);
  EXPECT_EQ(cans.food(), "canned chickpea") << cans.said();
  EXPECT_EQ(cans.lines.at(0).containers, Rational(2));
}

TEST(Lines, FreshIsNotFromTheFreezer) {
  EXPECT_TRUE(LineRead("2 cups spinach, fresh").lines.at(0).fresh);
  EXPECT_FALSE(LineRead("2 cups spinach").lines.at(0).fresh);
}

TEST(Lines, TheCutDecidesWhatACupWeighs) {
  EXPECT_NEAR(LineRead("1 cup onion, sliced").grams(), 115 / 0.9, 0.1);
  EXPECT_NEAR(LineRead("1 cup onion, chopped").grams(), 160 / 0.9, 0.1);
}

TEST(Lines, WordsThatChangeNoMeasureAreKeptAsANote) {
  const LineRead read("2 onions, cut into thin wedges");
  ASSERT_EQ(read.lines.size(), 1U) << read.said();
  EXPECT_EQ(read.lines[0].note, "cut into thin wedges");
}

} // namespace
} // namespace manciple::kitchen
