// What a household writes, in the words of either side of the Atlantic, and the food that it is.
// Common practice, no source.
#include "foods/book.hpp"
#include "foods/local_names.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>

namespace manciple::foods {
namespace {

struct Everyday {
  const char* name;
  const char* food;
};

constexpr Everyday everyday[] = {
    {"all-purpose flour", "all-purpose flour"},
    {"apple cider", "apple cider"},
    {"arborio rice", "arborio rice"},
    {"aubergine", "eggplant"},
    {"baby potatoes", "baby potato"},
    {"back bacon", "back bacon"},
    {"bagels", "bagel"},
    {"baguette", "french bread"},
    {"baked beans", "baked bean"},
    {"baking parchment", "parchment paper"},
    {"balsamic vinegar", "balsamic vinegar"},
    {"basmati rice", "basmati rice"},
    {"bay leaves", "bay leaf"},
    {"beef mince", "ground beef"},
    {"beetroot", "beet"},
    {"bicarbonate of soda", "baking soda"},
    {"bin bags", "trash bag"},
    {"black beans", "canned black bean"},
    {"black pudding", "blood sausage"},
    {"braising steak", "beef stew meat"},
    {"brioche buns", "brioche bun"},
    {"buckwheat", "buckwheat groat"},
    {"bulgur wheat", "bulgur"},
    {"butter beans", "canned lima bean"},
    {"butternut squash", "butternut squash"},
    {"camembert", "camembert cheese"},
    {"cashew nuts", "cashew"},
    {"caster sugar", "granulated sugar"},
    {"cat food", "cat food"},
    {"cat litter", "cat litter"},
    {"cavolo nero", "cavolo nero"},
    {"celeriac", "celery root"},
    {"cheddar", "cheddar cheese"},
    {"cherry tomatoes", "cherry tomato"},
    {"chestnut mushrooms", "cremini mushroom"},
    {"chicken breasts", "boneless chicken breast"},
    {"chicken tenders", "chicken tenderloin"},
    {"chicken thighs", "chicken thigh"},
    {"chickpeas", "canned chickpea"},
    {"chilli", "red chilli"},
    {"chipolatas", "chipolata"},
    {"chocolate", "dark chocolate"},
    {"chorizo", "spanish chorizo"},
    {"chuck roast", "beef chuck roast"},
    {"ciabatta", "ciabatta"},
    {"cilantro", "cilantro"},
    {"cling film", "plastic wrap"},
    {"clotted cream", "clotted cream"},
    {"coconut milk", "coconut milk"},
    {"corn flakes", "corn flake"},
    {"cornflour", "cornstarch"},
    {"cornstarch", "cornstarch"},
    {"cottage cheese", "cottage cheese"},
    {"courgettes", "zucchini"},
    {"creme fraiche", "cr\u00E8me fra\u00EEche"},
    {"crisps", "potato chip"},
    {"crumpets", "crumpet"},
    {"cr\u00E8me fra\u00EEche", "cr\u00E8me fra\u00EEche"},
    {"custard powder", "custard powder"},
    {"dark chocolate", "dark chocolate"},
    {"decaf coffee", "decaf coffee"},
    {"desiccated coconut", "unsweetened shredded coconut"},
    {"diapers", "diaper"},
    {"digestive biscuits", "digestive biscuit"},
    {"dishwasher tablets", "dishwasher detergent"},
    {"dog food", "dog food"},
    {"double cream", "heavy cream"},
    {"duck breasts", "duck breast"},
    {"eggplant", "eggplant"},
    {"elderflower cordial", "cordial"},
    {"enchilada sauce", "enchilada sauce"},
    {"filo pastry", "phyllo dough"},
    {"fish fingers", "fish stick"},
    {"five spice", "five spice"},
    {"flaked almonds", "sliced almond"},
    {"flank steak", "flank steak"},
    {"focaccia", "focaccia"},
    {"foil", "aluminum foil"},
    {"formula", "infant formula"},
    {"free-range eggs", "egg"},
    {"fresh yeast", "fresh yeast"},
    {"frozen peas", "frozen pea"},
    {"fusilli", "rotini"},
    {"gammon", "gammon joint"},
    {"gelatine leaves", "leaf gelatin"},
    {"ginger", "ginger root"},
    {"gnocchi", "gnocchi"},
    {"gochujang", "gochujang"},
    {"golden syrup", "golden syrup"},
    {"green lentils", "brown lentil"},
    {"ground almonds", "almond flour"},
    {"ground beef", "ground beef"},
    {"ground coriander", "ground coriander"},
    {"gruy\u00E8re", "gruyere cheese"},
    {"half & half", "half and half"},
    {"half-and-half", "half and half"},
    {"halloumi", "halloumi"},
    {"ham hock", "ham hock"},
    {"harissa", "harissa"},
    {"heavy cream", "heavy cream"},
    {"hot cross buns", "hot cross bun"},
    {"hot dog buns", "hot dog bun"},
    {"ice cream", "vanilla ice cream"},
    {"icing sugar", "powdered sugar"},
    {"jackfruit", "jackfruit"},
    {"jalape\u00F1os", "jalapeno pepper"},
    {"jam", "jam"},
    {"kefir", "kefir"},
    {"kidney beans", "canned kidney bean"},
    {"king prawns", "shrimp"},
    {"kippers", "kipper"},
    {"kitchen roll", "paper towel"},
    {"kosher salt", "kosher salt"},
    {"lamb chops", "lamb chop"},
    {"lamb mince", "ground lamb"},
    {"lardons", "bacon lardon"},
    {"lasagne sheets", "lasagna noodle"},
    {"leg of lamb", "leg of lamb"},
    {"lemon curd", "lemon curd"},
    {"little gem", "little gem lettuce"},
    {"long-grain rice", "white rice"},
    {"mackerel", "mackerel fillet"},
    {"malt vinegar", "malt vinegar"},
    {"mangetout", "snow pea"},
    {"mango chutney", "mango chutney"},
    {"maris piper potatoes", "russet potato"},
    {"marmalade", "orange marmalade"},
    {"marzipan", "marzipan"},
    {"mascarpone", "mascarpone"},
    {"melon", "melon"},
    {"mince", "ground beef"},
    {"mince pies", "mince pie"},
    {"mirin", "mirin"},
    {"mixed herbs", "italian seasoning"},
    {"mixed leaves", "salad mix"},
    {"mixed peel", "candied peel"},
    {"monterey jack", "monterey jack cheese"},
    {"muesli", "muesli"},
    {"naan", "naan"},
    {"nappies", "diaper"},
    {"natural yoghurt", "plain yogurt"},
    {"nori", "nori"},
    {"nutritional yeast", "nutritional yeast"},
    {"oat drink", "oat milk"},
    {"oatcakes", "oatcake"},
    {"oven chips", "frozen french fry"},
    {"oxtail", "oxtail"},
    {"pak choi", "bok choy"},
    {"pancetta", "pancetta"},
    {"paneer", "paneer"},
    {"paracetamol", "paracetamol"},
    {"parma ham", "prosciutto"},
    {"parmesan", "parmesan cheese"},
    {"passata", "passata"},
    {"pecorino", "pecorino"},
    {"pepper jack", "pepper jack cheese"},
    {"peppermint tea", "peppermint tea bag"},
    {"pesto", "pesto"},
    {"pitta bread", "pita bread"},
    {"plain flour", "all-purpose flour"},
    {"poblano peppers", "poblano pepper"},
    {"pomegranate molasses", "pomegranate molasses"},
    {"pork belly", "pork belly"},
    {"pork tenderloin", "pork tenderloin"},
    {"porridge oats", "rolled oat"},
    {"powdered sugar", "powdered sugar"},
    {"prosecco", "sparkling wine"},
    {"pumpernickel", "pumpernickel"},
    {"puy lentils", "puy lentil"},
    {"quark", "quark"},
    {"rapeseed oil", "canola oil"},
    {"ras el hanout", "ras el hanout"},
    {"red chillies", "red chilli"},
    {"red lentils", "red lentil"},
    {"red miso", "red miso"},
    {"red peppers", "red bell pepper"},
    {"refried beans", "refried bean"},
    {"rhubarb", "rhubarb"},
    {"rice paper", "rice paper"},
    {"risotto rice", "arborio rice"},
    {"rocket", "arugula"},
    {"romaine", "romaine lettuce"},
    {"romaine hearts", "romaine lettuce"},
    {"sage leaves", "fresh sage"},
    {"saltines", "saltine cracker"},
    {"satsumas", "tangerine"},
    {"sausages", "sausage"},
    {"savoy cabbage", "savoy cabbage"},
    {"scallions", "green onion"},
    {"scones", "scone"},
    {"sea bass", "sea bass fillet"},
    {"sea bream", "sea bream fillet"},
    {"sea salt", "sea salt"},
    {"self-raising flour", "self-rising flour"},
    {"semi-skimmed milk", "2% milk"},
    {"shampoo", "shampoo"},
    {"shortcrust pastry", "shortcrust pastry"},
    {"silken tofu", "soft tofu"},
    {"skyr", "skyr"},
    {"smoked haddock", "smoked haddock"},
    {"smoked paprika", "smoked paprika"},
    {"smoked tofu", "smoked tofu"},
    {"sour cream", "sour cream"},
    {"sourdough", "sourdough bread"},
    {"soured cream", "sour cream"},
    {"spelt", "spelt"},
    {"spring onions", "green onion"},
    {"star anise", "star anise"},
    {"steak", "beef steak"},
    {"stewing steak", "beef stew meat"},
    {"stilton", "stilton cheese"},
    {"stock cubes", "stock cube"},
    {"streaky bacon", "bacon"},
    {"strong white bread flour", "bread flour"},
    {"suet", "suet"},
    {"sugar snap peas", "sugar snap pea"},
    {"sultanas", "golden raisin"},
    {"sumac", "sumac"},
    {"sun cream", "sunscreen"},
    {"swede", "rutabaga"},
    {"sweetcorn", "canned corn"},
    {"tagliatelle", "fettuccine"},
    {"tahini", "tahini"},
    {"tea bags", "tea bag"},
    {"long-stem broccoli", "baby broccoli"},
    {"thai green curry paste", "green curry paste"},
    {"tinned tomatoes", "canned diced tomato"},
    {"toilet roll", "toilet paper"},
    {"tomatillos", "tomatillo"},
    {"tonic water", "tonic water"},
    {"toothpaste", "toothpaste"},
    {"tortilla chips", "tortilla chip"},
    {"tortilla wraps", "flour tortilla"},
    {"treacle", "molasses"},
    {"turkey mince", "ground turkey"},
    {"udon noodles", "udon noodle"},
    {"unsalted butter", "unsalted butter"},
    {"vanilla pod", "vanilla bean"},
    {"venison", "venison"},
    {"washing-up liquid", "dish soap"},
    {"white miso", "white miso"},
    {"whole chicken", "whole chicken"},
    {"wholegrain mustard", "whole grain mustard"},
    {"wholemeal bread", "whole wheat bread"},
    {"wine", "wine"},
    {"wipes", "baby wipe"},
    {"worcestershire sauce", "worcestershire sauce"},
    {"za'atar", "za'atar"},
    {"zucchini", "zucchini"},
};

TEST(Everyday, NamesMeanWhatAHouseholdMeansByThem) {
  Book book;
  for (const auto& [name, food] : everyday) {
    const auto id = book.find(name);
    ASSERT_TRUE(id) << name;
    EXPECT_EQ(book.get(*id).name, food) << name;
  }
  EXPECT_GE(std::size(everyday), 200U);
}

TEST(Everyday, SomeWordsMeanAnotherFoodOutsideTheUnitedStates) {
  Book us;
  Book elsewhere;
  elsewhere.speak(measure::System::metric);
  const auto in = [](Book& book, std::string_view name) {
    const auto id = book.find(name);
    return id ? book.get(*id).name : std::string();
  };
  EXPECT_EQ(in(us, "tomato puree"), "tomato puree");
  EXPECT_EQ(in(elsewhere, "tomato pur\u00E9e"), in(elsewhere, "tomato paste"));
  EXPECT_EQ(in(us, "biscuits"), "biscuit");
  EXPECT_EQ(in(elsewhere, "biscuits"), "sweet biscuit");
  for (const LocalName& local : local_names) {
    EXPECT_TRUE(us.find(local.elsewhere)) << local.elsewhere;
  }
}

TEST(Everyday, ListsOutsideTheUnitedStatesSayWhatIsSaidThere) {
  EXPECT_TRUE(std::is_sorted(
      std::begin(names_elsewhere), std::end(names_elsewhere),
      [](const NameElsewhere& a, const NameElsewhere& b) { return a.food < b.food; }));
  Book us;
  Book elsewhere;
  elsewhere.speak(measure::System::imperial);
  for (const NameElsewhere& name : names_elsewhere) {
    const auto id = us.find(name.food);
    ASSERT_TRUE(id) << name.food;
    EXPECT_EQ(us.get(*id).name, name.food);
    EXPECT_EQ(us.find(name.called), id) << name.called << " is no other name of " << name.food;
    for (const std::string_view said : {name.called, name.food}) {
      const auto same = elsewhere.find(said);
      ASSERT_TRUE(same) << said;
      EXPECT_EQ(elsewhere.get(*same).name, name.called);
    }
  }
}

TEST(Everyday, WhatIsFreeOfSomethingContainsNoneOfIt) {
  Book book;
  const auto contains = [](const Food& food, Allergen allergen) {
    const auto& list = food.allergens->contains;
    return std::find(list.begin(), list.end(), allergen) != list.end();
  };
  int tried = 0;
  for (const std::string_view name : book.names()) {
    const Food& food = book.get(*book.find(name));
    const auto without = [&](std::string_view words, Allergen allergen) {
      if (name.find(words) != std::string_view::npos) {
        EXPECT_FALSE(contains(food, allergen)) << name << " contains " << foods::name(allergen);
        ++tried;
      }
    };
    for (const std::string_view vegan : {"vegan", "plant based"}) {
      for (const Allergen animal : {Allergen::milk, Allergen::egg, Allergen::fish,
                                    Allergen::crustaceans, Allergen::molluscs}) {
        without(vegan, animal);
      }
    }
    without("dairy free", Allergen::milk);
    without("gluten free", Allergen::gluten);
    without("gluten free", Allergen::wheat);
    without("egg free", Allergen::egg);
  }
  EXPECT_GT(tried, 30);
}

} // namespace
} // namespace manciple::foods
