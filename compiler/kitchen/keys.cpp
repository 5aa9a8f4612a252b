#include "kitchen/keys.hpp"

#include "foods/keys.hpp"

#include <array>

namespace manciple::kitchen::keys {
namespace {

using text::by_name;
using text::Key;
using text::Keys;
using text::list_of;
using text::mapping;
using text::Value;
using text::with_metric;
using text::word;
using text::word_or_mapping;

// What more than one kind of file has.
constexpr Value name = word("a name", "Ada");
constexpr Value words = word("text", "with a little stock");
constexpr Value number = word("a number", "4");
constexpr Value count = word("a whole number", "2");
constexpr Value yes_no = word("yes or no", "yes");
constexpr Value date = word("a date", "2027-03-02");
constexpr Value weekday = word("a day of the week", "Saturday");
constexpr Value clock = word("a time of day", "\"14:00\"");
constexpr Value later = word("a time of day", "\"17:00\"");
constexpr Value minutes = word("a time", "1 h 30 min");
constexpr Value longest = word("a time", "at most 30 min");
constexpr Value days = word("a time", "4 days");
constexpr Value age = word("an age", "8 months");
constexpr Value money = word("an amount of money", "12.50");
constexpr Value share = word("a share", "8.25 %");
constexpr Value measures =
    with_metric(word("a system of measures: us, imperial, metric or australian", "us"), "metric");
constexpr Value line = word("an ingredient", "2 onions, diced");
constexpr Value lines =
    with_metric(list_of(line, "a list of ingredients", "[\"2 onions, diced\", 1 lb carrots]"),
                "[\"2 onions, diced\", 500 g carrots]");
constexpr Value avoided = word("an allergen, a class of foods or a food", "peanut");
constexpr Value avoids =
    list_of(avoided, "a list of allergens, classes of foods and foods", "[peanut, pork, cilantro]");
constexpr Value diet_name = word("a diet", "vegetarian");
constexpr Value diet_names = list_of(diet_name, "a diet or a list of diets", "vegetarian");
constexpr Value sex = word("female or male", "female");
constexpr Value appetites =
    by_name("a meal", number, "a mapping from meals to numbers", "{breakfast: 1/2}");
constexpr std::string_view portion_doc =
    "how much of an adult's serving they eat (default: 1; for a child, by age)";
constexpr std::string_view diet_doc =
    "vegetarian, vegan, pescatarian, gluten-free, low lactose, 'no ...' with any class or food, or "
    "one of the household's own";
constexpr std::string_view age_doc = "in years or months, for a child's portion, for foods that "
                                     "are not safe for young children, and for the recommended "
                                     "intakes";
constexpr std::string_view sex_doc = "used for the recommended intakes";
constexpr std::string_view stage_doc =
    "used for the recommended intakes, and for foods to avoid (default: no)";
constexpr std::string_view appetite_doc =
    "how much they eat at a meal, as a multiple of their portion (default: 1)";
constexpr Value shop_name = word("a shop, by the name of its file", "corner");
constexpr Value shop_names = list_of(shop_name, "a list of shops", "[corner]");
constexpr Value meal = word("a meal of the household", "dinner");
constexpr Value meals = list_of(meal, "a list of meals", "[dinner]");

// Recipes.
constexpr Value amount = with_metric(word("an amount", "8 cups"), "2 l");
constexpr Value amounts =
    with_metric(list_of(amount, "an amount or a list of amounts", "8 cups"), "2 l");
constexpr Value suited_meal = word("a meal of the household, or side", "dinner");
constexpr Value suited = list_of(suited_meal, "a list of meals, or side", "[lunch, dinner]");
constexpr Value made_in = word("whole, halves, quarters or exactly", "halves");
constexpr Value appliance_name = word("an appliance", "oven");
constexpr Value vessel = word("a pot, a pan, a tray or another vessel", "tray");
constexpr Value fits = word("an amount of what the recipe makes, or of servings", "12 servings");
constexpr Value temperature = with_metric(word("a temperature", "425 F"), "220 C");
constexpr Value allergen = word("an allergen class", "egg");
constexpr Value allergens = list_of(allergen, "a list of allergen classes", "[egg]");

constexpr std::array step_keys{
    Key{"do", &words, "what is done", true},
    Key{"hands on", &minutes, "how long a cook is busy with it"},
    Key{"then", &minutes, "how long it then goes on by itself"},
    Key{"on", &appliance_name, "the appliance that it needs: burner, oven, ..."},
    Key{"at", &temperature, "the temperature of the oven"},
    Key{"in", &vessel,
        "what it is done in: pot, pan, tray, ... (default: a pot for what simmers on a burner)"},
    Key{"fits", &fits,
        "how much of what the recipe makes fits into one; the step's time is then for one load, "
        "and a larger amount is done in several"},
    Key{"wait", &longest,
        "how long it may wait for the next step (default: half an hour for what rises or was on "
        "the heat, two hours for the rest)"},
};
constexpr std::array keeps_keys{
    Key{"pantry", &days, "in the pantry"},
    Key{"fridge", &days, "in the fridge"},
    Key{"freezer", &days, "in the freezer"},
};

} // namespace

constexpr Keys step{"a step", step_keys};
constexpr Keys keeps{"'keeps' of a recipe", keeps_keys};

namespace {

constexpr Value step_value =
    word_or_mapping(step, "a step", "{do: Simmer, hands on: 2 min, then: 35 min, on: burner}");
constexpr Value steps = list_of(step_value, "a list of steps",
                                "[{do: Simmer, hands on: 2 min, then: 35 min, on: burner}]");
constexpr Value keeps_value = mapping(keeps, "{fridge: 4 days, freezer: 3 months}");
constexpr Value left_over = word("an amount of something", "1 ham bone");
constexpr Value lines_of = list_of(name, "an ingredient or a list of ingredients", "onion");
constexpr std::array by_product_keys{
    Key{"what", &left_over, "what it is, named as in the recipes that use it, and how much", true},
    Key{"keeps", &keeps_value, "how long it keeps (default: as long as the recipe)"},
    Key{"of", &lines_of,
        "which of the ingredients are in it, for allergens and diets (default: any of them)"},
};

} // namespace

constexpr Keys by_product{"a by-product", by_product_keys};

namespace {

constexpr Value by_product_value =
    word_or_mapping(by_product, "what is left over, and how much", "1 ham bone");
constexpr Value by_products =
    list_of(by_product_value, "a list of by-products",
            "[{what: 1 ham bone, keeps: {fridge: 4 days, freezer: 3 months}}]");

constexpr std::array recipe_keys{
    Key{"name", &name, "what it is called (default: the name of its file)"},
    Key{"measures", &measures, "which system's cups and pints it uses (default: the household's)"},
    Key{"serves", &number, "how many adults it feeds, made as written (default: 4)"},
    Key{"makes", &amounts, "how much it makes, for recipes that use it"},
    Key{"suits", &suited,
        "the meals that it can be the main dish of, or side if it goes with one. Used to suggest "
        "dishes that would help to meet a plan's aims"},
    Key{"ingredients", &lines, "what goes in, a line each, as cooks write them", true},
    Key{"method", &steps, "the steps, with times"},
    Key{"keeps", &keeps_value, "how long it keeps once made"},
    Key{"gives", &by_products,
        "what is left over each time that other recipes can use: a ham bone, the meat from a "
        "stock"},
    Key{"make ahead", &yes_no,
        "made in a prep session even when it is a meal in itself (default: no)"},
    Key{"made in", &made_in, "the steps in which the recipe is scaled"},
    Key{"give", &share, "how much less than their share is enough for the eaters"},
    Key{"marinate", &minutes, "how long before the meal it must begin"},
    Key{"reheat", &words, "how it is warmed up"},
    Key{"may contain", &allergens, "allergens that its ingredients do not show"},
};

// The household.
constexpr std::array person_keys{
    Key{"name", &name, "who it is", true},
    Key{"portion", &number, portion_doc},
    Key{"avoids", &avoids, "what they must not have"},
    Key{"diet", &diet_names, diet_doc},
    Key{"age", &age, age_doc},
    Key{"sex", &sex, sex_doc},
    Key{"pregnant", &yes_no, stage_doc},
    Key{"nursing", &yes_no, stage_doc},
    Key{"appetite", &appetites, appetite_doc},
};
constexpr Value on_days = word("a day, weekdays, weekends or every day", "weekdays");
constexpr Value days_list = list_of(on_days, "a list of days", "[Mon, Tue]");
constexpr std::array meal_hours_keys{
    Key{"at", &clock, "when it is on the table", true},
    Key{"weekdays", &clock, "from Monday to Friday"},
    Key{"weekends", &clock, "on Saturday and Sunday"},
    Key{"Mon", &clock, "on Mondays"},
    Key{"Tue", &clock, "on Tuesdays"},
    Key{"Wed", &clock, "on Wednesdays"},
    Key{"Thu", &clock, "on Thursdays"},
    Key{"Fri", &clock, "on Fridays"},
    Key{"Sat", &clock, "on Saturdays"},
    Key{"Sun", &clock, "on Sundays"},
    Key{"packed", &days_list,
        "the days on which it is packed: made the evening before, kept and eaten cold"},
};
constexpr Value who = list_of(name, "a list of people", "[Ada]");
constexpr std::array cooks_keys{
    Key{"who", &who, "who cooks", true},
    Key{"days", &days_list, "the days on which they do (default: every day)"},
    Key{"meals", &meals, "the meals that they cook (default: all)"},
    Key{"from", &clock, "the time from which they can cook; a note says what has to start earlier"},
    Key{"until", &later, "the time until which they can cook"},
};
constexpr Value litres = word("a volume", "250 l");
constexpr std::array storage_keys{
    Key{"fridge", &litres, "room in the fridge (default: no limit)"},
    Key{"freezer", &litres, "room in the freezer (default: no limit)"},
    Key{"pantry", &litres, "room in the pantry (default: no limit)"},
};
constexpr std::array buying_keys{
    Key{"only at", &shop_names, "bought nowhere else"},
    Key{"never at", &shop_names, "not bought there"},
    Key{"prefer", &shop_names, "bought there unless it is much cheaper elsewhere"},
};

constexpr std::array appliance_keys{
    Key{"count", &count, "how many things it takes at once (default: 1)"},
    Key{"heats", &yes_no,
        "whether what comes from it is hot (default: as its name says; no for a mixer, yes for an "
        "appliance of an unknown name)"},
};

} // namespace

constexpr Keys meal_hours{"a meal of the household", meal_hours_keys};
constexpr Keys person{"a person", person_keys};
constexpr Keys appliance{"an appliance", appliance_keys};
constexpr Keys storage{"'storage'", storage_keys};
constexpr Keys buying{"a buying rule", buying_keys};
constexpr Keys cooks{"who cooks", cooks_keys};

namespace {

constexpr Value person_value = mapping(person, "{name: Ada}");
constexpr Value people = list_of(person_value, "a list of people", "[{name: Ada}]");
constexpr Value hours = word_or_mapping(meal_hours, "a time of day, or times by day", "\"18:30\"");
constexpr Value slots = by_name(
    "a meal", hours, "a mapping from meals to when they are on the table", "{dinner: \"18:30\"}");
constexpr Value storage_value = mapping(storage, "{fridge: 250 l}");
constexpr Value cooks_value = word_or_mapping(cooks, "a name, or who cooks when", "Ada");
constexpr Value cooks_list = list_of(cooks_value, "who cooks, or a list of who cooks when",
                                     "[{who: [Ada], days: weekdays, meals: [dinner]}]");
constexpr Value appliance_value =
    word_or_mapping(appliance, "how many things it takes at once, or more about it", "2");
constexpr Value appliances = by_name(
    "an appliance", appliance_value,
    "a mapping from appliances to how many things they take at once", "{burner: 4, oven: 2}");
constexpr Value vessels =
    by_name("a pot or an appliance", litres, "a mapping from pots and appliances to what they hold",
            "{pot: 8 l}");
constexpr Value rule = mapping(buying, "{prefer: corner}");
constexpr Value rules =
    by_name("a food", rule, "a mapping from foods to rules", "{onion: {prefer: corner}}");
constexpr Value sign = word("a currency", "EUR");
constexpr Value zone = word("a time zone", "Europe/Berlin");
constexpr Value our_word = word("a measure, a piece or a pack", "tbsp");
constexpr Value own_words = by_name("a word", our_word, "a mapping from your words to ours",
                                    "{EL: tbsp, Bund: bunch, Dosen: can}");
constexpr Value group = by_name("a food", number, "foods that may replace each other",
                                "{canned black beans: 1, canned pinto beans: 1}");
constexpr Value groups = list_of(group, "a list of foods that may replace each other",
                                 "[{canned black beans: 1, canned pinto beans: 1}]");

constexpr Value swaps = word("usual or none", "usual");
constexpr Value optional = word("buy or leave", "buy");

constexpr Value diet_part = word("a class of foods, an allergen, a diet or a food", "pork");
constexpr Value diet_parts = list_of(diet_part, "a list of what the diet excludes", "[meat, egg]");
constexpr Value own_diets =
    by_name("a diet", diet_parts, "a mapping from diets to what they exclude",
            "{lent: [meat, poultry, egg, milk]}");

constexpr std::array household_keys{
    Key{"people", &people, "who eats (default: as many as a recipe serves)"},
    Key{"diets", &own_diets, "diets of your own, and what each one excludes"},
    Key{"meals", &slots, "the meals of a day (default: breakfast, lunch, dinner, ...)"},
    Key{"cooks", &cooks_list,
        "who cooks on which days; named on the sheets, and counted as hands (default: one cook, "
        "without a name)"},
    Key{"measures", &measures, "which system's cups and pints are meant (default: us)"},
    Key{"storage", &storage_value, "how much room there is"},
    Key{"appliances", &appliances,
        "what there is to cook with, and how many things each takes at once; an oven with two "
        "shelves counts as 2 but has one temperature; list pots, pans and trays if you have only a "
        "few (default: four burners, an oven with two shelves, a sink)"},
    Key{"holds", &vessels,
        "what a pot, a pan, a slow cooker, a mixer, a food processor, a blender or another vessel "
        "holds; larger amounts are done in several, or one after the other (default: a pot 8 qt, a "
        "slow cooker 6 qt, a mixer 5 qt, a food processor 11 cups, a blender 6 cups; no limit for "
        "others)"},
    Key{"a stop costs", &money,
        "what saving a stop is worth (default: a quarter of what an hour costs)"},
    Key{"an hour costs", &money,
        "what an hour of shopping, bagging, labelling and thawing is worth (default: 6.00)"},
    Key{"budget", &money, "for a plan; going over it is a warning"},
    Key{"throwing away costs", &share,
        "the share of its usual price that counts for food thrown away, on top of what was paid "
        "(default: 25 %)"},
    Key{"give", &share, "how much less than their share is enough for the eaters (default: 10 %)"},
    Key{"leftovers are worth", &share,
        "the share of its usual price that counts for food that keeps beyond the plan (default: 50 "
        "%)"},
    Key{"currency", &sign,
        "the code of the currency (ISO 4217), written as it usually is, or a sign to put before "
        "amounts (default: $)"},
    Key{"week starts", &weekday, "the day on which a week begins (default: Monday)"},
    Key{"time zone", &zone,
        "where the kitchen is, for the calendar: a name of the tz database (default: the zone of "
        "the calendar that reads it)"},
    Key{"words", &own_words, "your own words for measures, pieces and packs"},
    Key{"member of", &shop_names, "the shops where you pay the member price"},
    Key{"buying", &rules, "where a food is bought"},
    Key{"any of these", &groups,
        "foods that may replace each other, with the amount of each that does the same"},
    Key{"optional", &optional, "whether optional ingredients are on the list (default: leave)"},
    Key{"swaps", &swaps,
        "whether to use the usual substitutes, such as one frying oil for another (default: none)"},
};

// What is on hand.
constexpr Value lot = with_metric(word("a line", "2 lb onions, pantry"), "1 kg onions, pantry");
constexpr Value lots = with_metric(
    list_of(lot, "a list of what is in the house", "[\"2 lb onions, pantry, use by 2027-03-02\"]"),
    "[\"1 kg onions, pantry, use by 2027-03-02\"]");
constexpr Value amount_gone =
    with_metric(word("an amount of a food", "2 lb onions"), "1 kg onions");
constexpr Value amounts_gone =
    with_metric(list_of(amount_gone, "an amount of a food, or a list of them", "[2 lb onions]"),
                "[1 kg onions]");
constexpr std::array on_hand_keys{
    Key{"date", &date, "when it was counted, in the morning (default: before the first shopping)"},
    Key{"on hand", &lots, "an amount, where it is, and how long it is good"},
    Key{"eaten", &amounts_gone,
        "what was eaten since the previous count, besides what the plan says"},
    Key{"thrown away", &amounts_gone, "what was thrown away since the previous count"},
};

// Receipts.
constexpr Value bought_words = with_metric(
    word("what was bought, and what it cost", "\"2 lb onions, 1.58\""), "\"1 kg onions, 1.58\"");
constexpr Value amount_frozen = with_metric(word("an amount, all or none", "1 lb"), "500 g");
constexpr std::array bought_keys{
    Key{"bought", &bought_words, "an amount of a food, perhaps with the words of a line", true},
    Key{"paid", &money, "what it cost in all, before tax"},
    Key{"freeze", &amount_frozen,
        "how much of it was frozen (default: what would otherwise be eaten too late)"},
    Key{"until", &date, "the last day on which it is good"},
    Key{"sale", &yes_no, "whether this was a sale, not its usual price (default: no)"},
    Key{"instead of", &name, "what the list said"},
};

} // namespace

constexpr Keys bought{"a line of a receipt", bought_keys};

namespace {

constexpr Value bought_value = with_metric(
    word_or_mapping(bought, "what was bought", "\"2 lb onions, 1.58\""), "\"1 kg onions, 1.58\"");
constexpr Value bought_list = with_metric(
    list_of(bought_value, "a list of what was bought", "[\"2 lb onions, 1.58, freeze none\"]"),
    "[\"1 kg onions, 1.58, freeze none\"]");
constexpr Value missing_list = list_of(name, "a list of foods", "[onion]");
constexpr std::array receipt_keys{
    Key{"shop", &shop_name, "where", true},
    Key{"date", &date, "when (default: the date in the name of its file)"},
    Key{"lines", &bought_list,
        "what was bought, and after commas what it cost in all, 'freeze 1 lb', 'until 9 Apr', "
        "'sale', 'instead of ...'"},
    Key{"missing", &missing_list, "what was on the list but not in the shop"},
    Key{"tax", &money, "the tax"},
    Key{"off", &money, "what the shop took off the sum"},
    Key{"credit", &money, "store credit that paid a part of it"},
    Key{"total", &money, "what was paid, with tax"},
};

// Shops.
constexpr std::array sale_keys{
    Key{"price", &money, "the price while it lasts", true},
    Key{"from", &date, "its first day"},
    Key{"until", &date, "its last day"},
};
constexpr std::array reduction_keys{
    Key{"over", &money, "what has to be spent at one stop, tax included", true},
    Key{"off", &money, "what is taken off then", true},
};

} // namespace

constexpr Keys sale{"a sale", sale_keys};
constexpr Keys reduction{"a reduction", reduction_keys};

namespace {

constexpr Value offer_words = with_metric(word("an offer", "3 lb bag 2.99"), "1 kg bag 2.99");
constexpr Value sale_value = mapping(sale, "{price: 1.99, from: 2027-03-02, until: 2027-03-02}");
constexpr Value deal = word("a deal", "2 for 5.00");
constexpr Value offer_allergens{"what is in it, and what to check on its label",
                                "{contains: [milk]}", false, &foods::keys::allergens};
constexpr std::array offer_keys{
    Key{"offer", &offer_words, "the pack and its price, or the price by weight or piece", true},
    Key{"from", &date, "the first day on which it is sold"},
    Key{"until", &date, "the last day on which it is sold"},
    Key{"sale", &sale_value, "a different price for some days"},
    Key{"deal", &deal, "a price for several"},
    Key{"member price", &money, "the price for members"},
    Key{"limit", &count, "how many at one stop (default: no limit)"},
    Key{"allergens", &offer_allergens,
        "what is in this one, by its label or its maker (default: what is known of the food)"},
};

} // namespace

constexpr Keys offer{"an offer", offer_keys};

namespace {

constexpr Value offer_value =
    with_metric(word_or_mapping(offer, "an offer", "3 lb bag 2.99"), "1 kg bag 2.99");
constexpr Value offers = with_metric(
    list_of(offer_value, "an offer or a list of offers", "3 lb bag 2.99"), "1 kg bag 2.99");
constexpr Value prices = with_metric(by_name("a food", offers, "a mapping from foods to offers",
                                             "{onion: [1.99/lb, 3 lb bag 2.99]}"),
                                     "{onion: [1.99/kg, 1 kg bag 2.99]}");
constexpr Value department = word("a department", "produce");
constexpr Value departments = list_of(department, "a list of departments", "[produce, meat]");
constexpr Value taxes =
    by_name("a department", share, "a mapping from departments to shares", "{household: 8.25 %}");
constexpr Value reduction_value = mapping(reduction, "{over: 100.00, off: 5.00}");

constexpr Value opening = word("a day of the week, perhaps with hours", "Sat 07:00-13:00");
constexpr Value openings =
    list_of(opening, "a list of days", "[Thu, \"Sat 07:00-13:00\", Mon-Wed]");

constexpr std::array shop_keys{
    Key{"shop", &name, "what it is called (default: the name of its file)"},
    Key{"walk", &departments, "its departments, in the order in which you walk through them"},
    Key{"open", &openings, "the days on which it is open, with hours (default: every day)"},
    Key{"a stop costs", &money, "what saving this stop is worth (default: the household's)"},
    Key{"membership", &money,
        "what membership costs a year; it does not change the list, but 'review' sets it against "
        "what the shop saves"},
    Key{"tax", &taxes, "sales tax, by department"},
    Key{"cash back", &share, "the share of what is spent that comes back later"},
    Key{"store credit", &money, "to spend here, once in a plan"},
    Key{"reduction", &reduction_value, "less to pay if you spend enough"},
    Key{"prices", &prices, "what is sold, as far as it is known"},
};

// Plans.
constexpr Value dish_words = word("a recipe, leftovers or an amount of a food", "stew for 4");
constexpr Value swap = word("'... instead of ...' or 'without ...'", "tofu instead of onions");
constexpr Value swap_list =
    list_of(swap, "a replacement or a list of replacements", "tofu instead of onions");
constexpr Value variants = by_name("a person", swap_list, "a mapping from people to replacements",
                                   "{Ada: tofu instead of onions}");
constexpr Value portions_of =
    by_name("a person", number, "a mapping from people to numbers", "{Ada: 1/2}");
constexpr std::array dish_keys{
    Key{"dish", &dish_words, "what is eaten", true},
    Key{"servings", &number, "how much of it (default: enough for those who eat)"},
    Key{"eaten by", &who, "who eats it (default: everybody there)"},
    Key{"for", &variants,
        "what somebody has instead of something in it, or goes without; theirs is cooked "
        "separately and bought for"},
    Key{"portions", &portions_of, "how much of an adult's serving of it somebody eats"},
};
constexpr std::array absence_keys{
    Key{"who", &name, "a person of the household", true},
    Key{"from", &date, "the first day", true},
    Key{"until", &date, "the last day (default: the first)"},
    Key{"meals", &meals, "the meals that they miss (default: all)"},
};
constexpr std::array guest_keys{
    Key{"who", &name, "what they are called", true},
    Key{"count", &count, "how many they are (default: 1)"},
    Key{"portion", &number,
        "how much of an adult's serving each one eats (default: 1; for a child, by age)"},
    Key{"avoids", &avoids, "what they must not have"},
    Key{"diet", &diet_names, diet_doc},
    Key{"age", &age, age_doc},
    Key{"sex", &sex, sex_doc},
    Key{"pregnant", &yes_no, stage_doc},
    Key{"nursing", &yes_no, stage_doc},
    Key{"appetite", &appetites, appetite_doc},
    Key{"from", &date, "the first day", true},
    Key{"until", &date, "the last day (default: the first)"},
    Key{"meals", &meals, "the meals at which they are there (default: all)"},
};
constexpr Value extra_words = word("an amount of something", "1 box freezer bags");
constexpr std::array extra_keys{
    Key{"buy", &extra_words, "what to buy", true},
    Key{"by", &date, "when it is needed (default: on any trip)"},
    Key{"for", &words, "why"},
};
constexpr std::array stop_keys{
    Key{"shop", &shop_name, "the shop", true},
    Key{"always", &yes_no, "made whether it pays or not (default: no)"},
};

} // namespace

constexpr Keys dish{"a dish", dish_keys};
constexpr Keys absence{"an absence", absence_keys};
constexpr Keys guest{"a guest", guest_keys};
constexpr Keys extra{"something to buy", extra_keys};
constexpr Keys stop{"a stop", stop_keys};

namespace {

constexpr Value stop_value = word_or_mapping(stop, "a stop", "corner");
constexpr Value stops = list_of(stop_value, "a list of stops", "[corner]");
constexpr std::array trip_keys{
    Key{"date", &date, "the day"},
    Key{"every", &weekday,
        "instead of a date: every such day of the plan, and the last one before it"},
    Key{"stops", &stops, "shops that you may stop at, in the order of the day (default: all)"},
    Key{"home by", &clock, "when what is bought can be used (default: 12:00)"},
    Key{"budget", &money, "for this trip; going over it is a warning"},
};
constexpr Value cook = word("a number or a name", "Ada");
constexpr Value session_cooks = list_of(cook, "how many, or a list of names", "[Ada, Ben]");
constexpr std::array session_keys{
    Key{"date", &date, "the day"},
    Key{"every", &weekday, "instead of a date: every such day of the plan"},
    Key{"from", &clock, "when it begins", true},
    Key{"until", &later, "when it has to be over", true},
    Key{"cooks", &session_cooks, "how many cook, or who (default: 1)"},
};
constexpr std::array cooks_of_plan_keys{
    Key{"date", &date, "the day"},
    Key{"every", &weekday, "instead of a date: every such day of the plan"},
    Key{"who", &who, "who cooks then, instead of those named in the household", true},
    Key{"meals", &meals, "the meals that they cook (default: all)"},
    Key{"from", &clock, "the time from which they can cook; a note says what has to start earlier"},
    Key{"until", &later, "the time until which they can cook"},
};

} // namespace

constexpr Keys trip{"a trip", trip_keys};
constexpr Keys session{"a prep session", session_keys};
constexpr Keys cooks_of_plan{"who cooks", cooks_of_plan_keys};

namespace {

constexpr Value dish_value = word_or_mapping(dish, "a dish", "stew for 4");
constexpr Value dishes = list_of(dish_value, "a dish or a list of dishes", "[stew for 4, 6 eggs]");
constexpr Value day = by_name("a meal", dishes, "a mapping from meals to dishes", "{dinner: stew}");
constexpr Value days_of_meals =
    by_name("a day: a date, 'every Friday', 'every weekday' or 'every day'", day,
            "a mapping from days to meals", "{2027-03-02: {dinner: stew}}");
constexpr Value absence_value = mapping(absence, "{who: Ada, from: 2027-03-02}");
constexpr Value absences =
    list_of(absence_value, "a list of absences", "[{who: Ada, from: 2027-03-02}]");
constexpr Value guest_value = mapping(guest, "{who: Cy, from: 2027-03-02}");
constexpr Value guests = list_of(guest_value, "a list of guests", "[{who: Cy, from: 2027-03-02}]");
constexpr Value staple = word("an amount and how fast it is used", "12 eggs per week");
constexpr Value staples = list_of(staple, "a list of staples", "[12 eggs per week, keep 6 eggs]");
constexpr Value extra_value = word_or_mapping(extra, "something to buy", "1 box freezer bags");
constexpr Value extras = with_metric(
    list_of(extra_value, "a list of what else to buy", "[1 lb onions]"), "[500 g onions]");
constexpr Value trip_value = mapping(trip, "{date: 2027-03-02, stops: [corner]}");
constexpr Value trips =
    list_of(trip_value, "a list of trips", "[{date: 2027-03-02, stops: [corner]}]");
constexpr Value session_value =
    mapping(session, "{date: 2027-03-02, from: \"14:00\", until: \"17:00\"}");
constexpr Value sessions = list_of(session_value, "a list of prep sessions",
                                   "[{date: 2027-03-02, from: \"14:00\", until: \"17:00\"}]");

constexpr Value cooks_day = mapping(cooks_of_plan, "{date: 2027-03-02, who: [Ada]}");
constexpr Value cooks_days =
    list_of(cooks_day, "a list of who cooks when", "[{date: 2027-03-02, who: [Ada]}]");

constexpr Value aim = word("an aim", "at least 30 g a dinner");
constexpr Value aims = by_name("a nutrient, a class of foods, a food or 'cost'", aim,
                               "a mapping from what is counted to aims",
                               "{protein: at least 30 g a dinner, fish: twice a week}");

constexpr Value changed_day =
    by_name("a meal, 'eaten' or 'thrown away'", dishes,
            "a mapping from meals, 'eaten' and 'thrown away' to what it was", "{dinner: out}");
constexpr Value changes =
    by_name("a day", changed_day, "a mapping from days to what went differently",
            "{2027-03-02: {dinner: out, thrown away: 2 onions}}");

constexpr std::array plan_keys{
    Key{"plan", &name, "what it is called (default: the name of its file)"},
    Key{"from", &date, "its first day (default: the first day with meals)"},
    Key{"until", &date, "its last day, at most 120 days later (default: the last day with meals)"},
    Key{"as of", &date,
        "the day to plan from, if no receipt or count is later; everything before it is done"},
    Key{"meals", &days_of_meals, "what is eaten when"},
    Key{"changes", &changes, "other meals than planned, and what else was eaten or thrown away"},
    Key{"away", &absences, "who is not there"},
    Key{"guests", &guests, "who else is there"},
    Key{"staples", &staples, "what is used at a rate or kept at a level, without a recipe"},
    Key{"extra", &extras, "what else to buy"},
    Key{"trips", &trips, "when and where to shop (default: the day before and every week)"},
    Key{"prep", &sessions, "when to prepare"},
    Key{"cooks", &cooks_days, "who cooks on a day, instead of those named in the household"},
    Key{"budget", &money, "for this plan; going over it is a warning"},
    Key{"aims", &aims,
        "what you would like to eat more or less of; a note says when one is missed"},
};

} // namespace

constexpr Keys recipe{"a recipe", recipe_keys};
constexpr Keys household{"a household", household_keys};
constexpr Keys on_hand{"a list of what is on hand", on_hand_keys};
constexpr Keys receipt{"a receipt", receipt_keys};
constexpr Keys shop{"a price list", shop_keys};
constexpr Keys plan{"a plan", plan_keys};

namespace {

constexpr Value recipe_file = mapping(recipe, "");
constexpr Value household_file = mapping(household, "");
constexpr Value on_hand_file = mapping(on_hand, "");
constexpr Value receipt_file = mapping(receipt, "");
constexpr Value shop_file = mapping(shop, "");
constexpr Value plan_file = mapping(plan, "");
constexpr std::array all{
    Kind{"recipe", "recipes/NAME.yaml", &recipe_file},
    Kind{"foods", "recipes/foods.yaml", &foods::keys::file},
    Kind{"household", "plans/household.yaml", &household_file},
    Kind{"on-hand", "plans/on-hand.yaml, plans/on-hand/DATE.yaml", &on_hand_file},
    Kind{"receipt", "plans/receipts/NAME.yaml", &receipt_file},
    Kind{"shop", "plans/stores/NAME.yaml", &shop_file},
    Kind{"plan", "plans/NAME.yaml", &plan_file},
};

} // namespace

constexpr std::span<const Kind> kinds{all};

} // namespace manciple::kitchen::keys
