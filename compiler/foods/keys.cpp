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

constexpr Value text_value = word("text", "in the fridge overnight");
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
constexpr Value days_or_when_used =
    list_of(part, "a time, or 'when used', and its source", "[2 days, our kitchen]");
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
constexpr Value microgram = word("an amount in ug", "19 ug");
constexpr Value diet_class = word("a class of foods", "pork");
constexpr Value diet_class_list =
    list_of(diet_class, "a list of classes of foods", "[pork, stock]");
constexpr Value caution = word("a class of foods to be careful with", "soft cheese");
constexpr Value caution_list =
    list_of(caution, "a list of classes of foods to be careful with", "[soft cheese]");
constexpr Value safety_class = word("a food safety class", "raw poultry");
constexpr Value safety_class_list =
    list_of(safety_class, "a list of food safety classes", "[raw poultry]");
constexpr Value roasting_time =
    list_of(part, "a roasting time and its source", "[20 min/lb at 350 F, FSIS 113]");
constexpr Value roasting_times =
    by_name("a weight", roasting_time, "a mapping from weights to roasting times",
            "{7 lb: [20 min/lb at 350 F, FSIS 113]}");
constexpr Value forms_by_number =
    by_name("a form", number, "a mapping from forms to numbers of the USDA SR28 tables",
            "{white: 1124, yolk: 1125}");

constexpr std::array keeps_keys{
    Key{"pantry", &days, "in the pantry"},
    Key{"fridge", &days, "in the fridge"},
    Key{"freezer", &days, "in the freezer"},
    Key{"opened", &days, "in the fridge, once opened or cut"},
    Key{"thawed", &days, "in the fridge, once thawed"},
    Key{"hard", &days, "in the fridge while hard, for fruit that ripens afterwards"},
    Key{"cut", &days_or_when_used,
        "in the fridge, once cut, if less than opened; 'when used': it is never cut ahead"},
    Key{"frozen juice", &days,
        "its juice and zest in the freezer, for fruit that does not freeze whole"},
};
constexpr std::array allergens_keys{
    Key{"contains", &allergen_list, "what is in it"},
    Key{"check label", &allergen_list, "what differs by maker"},
};
constexpr std::array classes_keys{
    Key{"contains", &diet_class_list, "what is in it that diets ask about"},
    Key{"check label", &diet_class_list, "what differs by maker"},
    Key{"source", &text_value, "who says so"},
};
constexpr std::array safety_keys{
    Key{"classes", &safety_class_list, "what it is of these; an empty list: none of them"},
    Key{"source", &text_value, "who says so"},
};
constexpr std::array expecting_keys{
    Key{"classes", &caution_list, "what it is of these; an empty list: none of them"},
    Key{"source", &text_value, "who says so"},
};
constexpr std::string_view of_100_g = "in 100 g of the edible part";
constexpr std::array nutrients_keys{
    Key{"water", &gram, of_100_g},
    Key{"energy", &energy, of_100_g},
    Key{"protein", &gram, of_100_g},
    Key{"fat", &gram, of_100_g},
    Key{"saturated fat", &gram, of_100_g},
    Key{"monounsaturated fat", &gram, of_100_g},
    Key{"polyunsaturated fat", &gram, of_100_g},
    Key{"cholesterol", &milligram, of_100_g},
    Key{"carbohydrate", &gram, of_100_g},
    Key{"fiber", &gram, of_100_g},
    Key{"sugars", &gram, of_100_g},
    Key{"sodium", &milligram, of_100_g},
    Key{"potassium", &milligram, of_100_g},
    Key{"calcium", &milligram, of_100_g},
    Key{"iron", &milligram, of_100_g},
    Key{"magnesium", &milligram, of_100_g},
    Key{"phosphorus", &milligram, of_100_g},
    Key{"zinc", &milligram, of_100_g},
    Key{"vitamin C", &milligram, of_100_g},
    Key{"vitamin A", &microgram, of_100_g},
    Key{"vitamin B12", &microgram, of_100_g},
    Key{"vitamin D", &microgram, of_100_g},
    Key{"folate", &microgram, of_100_g},
};

} // namespace

constexpr Keys keeps{"'keeps' of a food", keeps_keys};
constexpr Keys allergens{"'allergens' of a food", allergens_keys};
constexpr Keys classes{"'classes' of a food", classes_keys};
constexpr Keys safety{"'safety' of a food", safety_keys};
constexpr Keys expecting{"'expecting' of a food", expecting_keys};
constexpr Keys nutrients{"'nutrients' of a food", nutrients_keys};

namespace {

constexpr Value keeps_value = text::mapping(keeps, "{fridge: [5 days, FSIS 21]}");
constexpr Value allergens_value = text::mapping(allergens, "{contains: [milk]}");
constexpr Value classes_value = text::mapping(classes, "{contains: [pork], source: the label}");
constexpr Value safety_value = text::mapping(safety, "{classes: [raw poultry], source: the label}");
constexpr Value expecting_value =
    text::mapping(expecting, "{classes: [soft cheese], source: the label}");
constexpr Value nutrients_value = text::mapping(nutrients, "{energy: 40 kcal}");

constexpr std::array food_keys{
    Key{"aliases", &names, "other names for it"},
    Key{"department", &department, "where a shop keeps it; required for a food of your own"},
    Key{"usda", &number, "its number in the USDA SR28 tables"},
    Key{"usda cooked", &number,
        "the number of the same food cooked without salt, which shows how much of its vitamins is "
        "left"},
    Key{"usda of forms", &forms_by_number, "the numbers of forms that have their own"},
    Key{"stored", &place, "where a house keeps it (default: pantry)"},
    Key{"volume", &volumes, "what a volume of it weighs, by form"},
    Key{"pieces", &pieces, "what its pieces weigh, edible; 'AP' after the weight: as bought"},
    Key{"count as", &piece, "the piece that a bare count means"},
    Key{"sold as", &piece, "the piece that a shop means by one, if different ('0.59 each')"},
    Key{"in packs", &piece, "the piece that a pack of several holds, if different ('6 pack')"},
    Key{"yields", &yields, "what is left of the weight as bought"},
    Key{"keeps", &keeps_value, "how long it keeps"},
    Key{"freezes", &well_or_poorly, "how it freezes"},
    Key{"thaw", &text_value, "how it is thawed"},
    Key{"ripens", &days, "days on the counter until fruit bought hard is ripe"},
    Key{"soak", &days, "how long it soaks before it is cooked"},
    Key{"safe at", &temperature, "the lowest safe temperature in the middle"},
    Key{"roasts", &roasting_times, "the least roasting time, by the weight up to which it applies"},
    Key{"allergens", &allergens_value, "what an eater who must avoid something has to know"},
    Key{"classes", &classes_value, "what a diet has to know; without it, nothing is known"},
    Key{"safety", &safety_value,
        "what matters about it for food safety; without it, its department decides"},
    Key{"expecting", &expecting_value,
        "why somebody who is pregnant or nursing has to be careful; without it, its name decides"},
    Key{"shop in", &unit, "the measure that shoppers use (lb; each for household things)"},
    Key{"nutrients", &nutrients_value, "what is in 100 g of the edible part"},
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
