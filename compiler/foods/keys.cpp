#include "foods/keys.hpp"

#include <array>

namespace manciple::foods::keys {
namespace {

using text::by_name;
using text::Key;
using text::Keys;
using text::list_of;
using text::Value;
using text::with_metric;
using text::word;

constexpr Value text_value = word("a text", "in the fridge overnight");
constexpr Value name = word("a name", "scallion");
constexpr Value names = list_of(name, "a list of names", "[scallion, spring onion]");
constexpr Value department = word("a department", "produce");
constexpr Value place = word("a place: pantry, fridge or freezer", "fridge");
constexpr Value number = word("a number", "11282");
constexpr Value piece = word("a piece of the food", "medium");
constexpr Value yes_no = word("yes or no", "yes");
constexpr Value well_or_poorly = word("well, poorly or for cooking", "well");
constexpr Value unit = with_metric(word("a measure", "lb"), "kg");
constexpr Value allergen = word("an allergen class", "milk");
constexpr Value allergen_list = list_of(allergen, "a list of allergen classes", "[milk, egg]");
constexpr Value part = word("a figure or its source", "our scales");
constexpr Value weight_of_volume =
    with_metric(list_of(part, "a weight and its source", "[160 g/cup, SR28 11282.1]"),
                "[0.64 g/ml, our scales]");
constexpr Value weight = list_of(part, "a weight and its source", "[110 g, SR28 11282.6]");
constexpr Value share = list_of(part, "a share and its source", "[90 %, SR28 11282 refuse]");
constexpr Value days = list_of(part, "a time and its source", "[5 days, FSIS 21]");
constexpr Value temperature = list_of(part, "a temperature and its source", "[165 F, FSIS 21]");
constexpr Value volumes =
    with_metric(by_name("a form", weight_of_volume, "a mapping from forms to what a volume weighs",
                        "{chopped: [160 g/cup, SR28 11282.1]}"),
                "{chopped: [0.64 g/ml, our scales]}");
constexpr Value pieces = by_name("a piece", weight, "a mapping from pieces to what one weighs",
                                 "{medium: [110 g, SR28 11282.6]}");
constexpr Value yields = by_name("'edible' or a form", share,
                                 "a mapping from forms to the share of the weight as bought",
                                 "{edible: [90 %, SR28 11282 refuse]}");
constexpr Value energy = word("an amount in kcal", "40 kcal");
constexpr Value gram = word("an amount in g", "1.1 g");
constexpr Value milligram = word("an amount in mg", "4 mg");

constexpr std::array keeps_keys{
    Key{"pantry", &days, "in the pantry"},
    Key{"fridge", &days, "in the fridge"},
    Key{"freezer", &days, "in the freezer"},
    Key{"opened", &days, "in the fridge, once opened or cut"},
    Key{"thawed", &days, "in the fridge, once thawed"},
    Key{"hard", &days, "in the fridge, hard, of fruit that ripens afterwards"},
    Key{"frozen juice", &days,
        "juice and zest in the freezer, of fruit that does not freeze itself"},
};
constexpr std::array allergens_keys{
    Key{"contains", &allergen_list, "what is in it"},
    Key{"check label", &allergen_list, "what differs by maker"},
};
constexpr std::array nutrients_keys{
    Key{"energy", &energy, "of 100 g edible"}, Key{"protein", &gram, "of 100 g edible"},
    Key{"fat", &gram, "of 100 g edible"},      Key{"carbohydrate", &gram, "of 100 g edible"},
    Key{"fiber", &gram, "of 100 g edible"},    Key{"sodium", &milligram, "of 100 g edible"},
};

} // namespace

constexpr Keys keeps{"'keeps' of a food", keeps_keys};
constexpr Keys allergens{"'allergens' of a food", allergens_keys};
constexpr Keys nutrients{"'nutrients' of a food", nutrients_keys};

namespace {

constexpr Value keeps_value = text::mapping(keeps, "{fridge: [5 days, FSIS 21]}");
constexpr Value allergens_value = text::mapping(allergens, "{contains: [milk]}");
constexpr Value nutrients_value = text::mapping(nutrients, "{energy: 40 kcal}");

constexpr std::array food_keys{
    Key{"aliases", &names, "other names of it"},
    Key{"department", &department, "where a shop keeps it; needed of a food of your own"},
    Key{"usda", &number, "its number in the USDA SR28 tables"},
    Key{"stored", &place, "where a house keeps it (default: pantry)"},
    Key{"volume", &volumes, "what a volume of it weighs, by form"},
    Key{"pieces", &pieces, "what its pieces weigh, edible; 'AP' after the weight: as bought"},
    Key{"count as", &piece, "the piece that a bare count means"},
    Key{"sold as", &piece, "the piece that a shop means by one, if another ('0.59 each')"},
    Key{"in packs", &piece, "the piece that a pack of several holds, if another ('6 pack')"},
    Key{"yields", &yields, "what is left of the weight as bought"},
    Key{"keeps", &keeps_value, "how long it keeps"},
    Key{"freezes", &well_or_poorly, "how it freezes"},
    Key{"thaw", &text_value, "how it is thawed"},
    Key{"ripens", &days, "days on the counter until what is bought hard is ripe"},
    Key{"soak", &days, "how long it soaks before it is cooked"},
    Key{"safe at", &temperature, "the lowest safe temperature in the middle"},
    Key{"allergens", &allergens_value, "what an eater who must avoid something has to know"},
    Key{"shop in", &unit, "the measure that a shopper says (lb; each for household things)"},
    Key{"nutrients", &nutrients_value, "of 100 g edible"},
    Key{"from the tap", &yes_no, "never bought (default: no)"},
};

} // namespace

constexpr Keys food{"a food", food_keys};

namespace {
constexpr Value record = text::mapping(food, "{department: produce}");
} // namespace

constexpr Value file =
    by_name("a food", record, "a mapping from foods to records", "{leek: {department: produce}}");

} // namespace manciple::foods::keys
