#include "foods/classes.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <string_view>

namespace manciple::foods {
namespace {

using Names = std::initializer_list<std::string_view>;

bool among(const Food& food, Names names) {
  return std::find(names.begin(), names.end(), std::string_view(food.name)) != names.end();
}

bool is_poultry(const Food& food) {
  return among(food, {"bone-in chicken breast",
                      "boneless chicken breast",
                      "boneless chicken thigh",
                      "chicken carcass",
                      "chicken drumstick",
                      "chicken gizzard",
                      "chicken leg quarter",
                      "chicken liver",
                      "chicken sausage",
                      "chicken tenderloin",
                      "chicken thigh",
                      "chicken wing",
                      "cornish hen",
                      "duck",
                      "duck breast",
                      "duck leg",
                      "goose",
                      "ground chicken",
                      "ground turkey",
                      "guinea fowl",
                      "pheasant",
                      "quail",
                      "stir-fry chicken",
                      "turkey breast",
                      "turkey cutlet",
                      "turkey leg",
                      "turkey sausage",
                      "turkey thigh",
                      "whole chicken",
                      "whole turkey"});
}

bool is_minced(const Food& food) {
  return among(food,
               {"andouille sausage", "beef burger patty", "bratwurst",        "breakfast sausage",
                "chicken sausage",   "chipolata",         "cocktail sausage", "ground beef",
                "ground bison",      "ground chicken",    "ground lamb",      "ground pork",
                "ground turkey",     "ground veal",       "ground venison",   "italian sausage",
                "lean ground beef",  "merguez",           "mexican chorizo",  "sausage",
                "turkey sausage"});
}

bool is_ready_meat(const Food& food) {
  return among(food,
               {"black forest ham", "bologna",         "bresaola",        "cabanossi",
                "canadian bacon",   "cooked chicken",  "crab meat",       "deli chicken",
                "deli ham",         "deli roast beef", "deli turkey",     "ham",
                "hot dog",          "iberico ham",     "imitation crab",  "kielbasa",
                "kipper",           "liverwurst",      "mortadella",      "pastrami",
                "pepperoni",        "pork pie",        "prosciutto",      "rotisserie chicken",
                "salami",           "serrano ham",     "smoked mackerel", "smoked salmon",
                "smoked trout",     "spanish chorizo", "speck",           "tuna salad",
                "cooked shrimp"});
}

bool is_shellfish(const Food& food) {
  return among(food, {"clam", "cockle", "crayfish", "langoustine", "lobster tail", "mussel",
                      "octopus", "oyster", "scallop", "seafood mix", "shell-on shrimp", "shrimp",
                      "squid", "whole crab", "whole lobster"});
}

// Tinned, pickled, cured or a dish of its own.
bool is_preserved_fish(const Food& food) {
  return among(food, {"anchovy fillet", "canned clam", "canned herring", "canned mackerel",
                      "canned salmon", "canned tuna", "canned tuna in oil", "caviar", "clam juice",
                      "fish cake", "fish roe", "fish stick", "pickled herring", "salt cod",
                      "sardine", "smoked cod", "smoked haddock"});
}

bool is_cooked_or_dried_meat(const Food& food) {
  return among(food, {"bacon bit", "blood sausage", "gammon joint", "gammon steak", "guanciale",
                      "ham hock", "pancetta", "sausage roll", "scotch egg", "bone-in ham"});
}

bool is_milk(const Food& food) {
  return among(food, {"1% milk",
                      "2% milk",
                      "skim milk",
                      "whole milk",
                      "buttermilk",
                      "goat milk",
                      "half and half",
                      "light cream",
                      "heavy cream",
                      "whipped cream",
                      "clotted cream",
                      "sour cream",
                      "crème fraîche",
                      "half-fat crème fraîche",
                      "plain yogurt",
                      "greek yogurt",
                      "low-fat yogurt",
                      "fruit yogurt",
                      "kefir",
                      "quark",
                      "skyr",
                      "labneh",
                      "cottage cheese",
                      "low-fat cottage cheese",
                      "cream cheese",
                      "light cream cheese",
                      "mascarpone",
                      "ricotta cheese",
                      "part-skim ricotta cheese",
                      "fresh mozzarella",
                      "burrata",
                      "goat cheese",
                      "queso fresco",
                      "fresh custard",
                      "evaporated milk",
                      "coconut milk",
                      "coconut cream",
                      "tofu",
                      "soft tofu"});
}

bool is_starch(const Food& food) {
  constexpr std::string_view dried = "dried ";
  if (food.department != Department::grains) {
    return among(food, {"potato", "red potato", "russet potato", "baby potato", "sweet potato"});
  }
  return !among(food, {"bran flake", "chocolate cereal", "corn flake", "crisp rice cereal",
                       "granola", "instant oatmeal", "muesli", "oat bran", "oat ring cereal",
                       "rice paper", "rolled oat", "shredded wheat", "steel-cut oat",
                       "wheat biscuit cereal", "wheat bran", "wheat germ"}) ||
         food.name.starts_with(dried);
}

bool is_herb(const Food& food) {
  return among(food,
               {"basil",          "chervil",        "chive",          "cilantro",      "curry leaf",
                "dill",           "fresh bay leaf", "fresh marjoram", "fresh oregano", "fresh sage",
                "fresh tarragon", "garlic chive",   "lemon balm",     "lemon thyme",   "lovage",
                "mint",           "parsley",        "rosemary",       "thai basil",    "thyme"});
}

bool is_aromatic(const Food& food) {
  return is_herb(food) ||
         among(food, {"garlic", "jarred garlic", "garlic paste", "wild garlic", "bird's eye chilli",
                      "ginger root", "green chile", "jalapeno pepper", "red chilli",
                      "serrano pepper", "shallot", "habanero pepper"});
}

} // namespace

bool is(const Food& food, Class what) {
  switch (what) {
  case Class::poultry:
    return is_poultry(food);
  case Class::minced:
    return is_minced(food);
  case Class::meat:
    return food.department == Department::meat && !is_ready_meat(food) &&
           !is_cooked_or_dried_meat(food);
  case Class::fish:
    return food.department == Department::fish && !is_ready_meat(food) && !is_shellfish(food) &&
           !is_preserved_fish(food);
  case Class::shellfish:
    return is_shellfish(food);
  case Class::ready_meat:
    return is_ready_meat(food);
  case Class::egg:
    return among(food, {"egg", "duck egg", "quail egg"});
  case Class::milk:
    return is_milk(food);
  case Class::kidney_bean:
    return among(food, {"dried kidney bean", "dried borlotti bean", "dried white bean",
                        "dried flageolet bean", "dried great northern bean", "dried navy bean"});
  case Class::starch:
    return is_starch(food);
  case Class::vegetable:
    return food.department == Department::produce;
  case Class::aromatic:
    return is_aromatic(food);
  case Class::herb:
    return is_herb(food);
  case Class::spice:
    return food.department == Department::spices;
  case Class::oil:
    return food.department == Department::oils && !is(food, Class::acid);
  case Class::acid:
    return (food.department == Department::oils && food.name.ends_with("vinegar")) ||
           among(food, {"lemon", "lime", "bottled lemon juice", "bottled lime juice"});
  case Class::sugar:
    return among(food, {"granulated sugar", "brown sugar", "dark brown sugar", "powdered sugar",
                        "jam sugar", "turbinado sugar", "coconut sugar", "palm sugar", "honey",
                        "maple syrup", "golden syrup", "molasses", "light corn syrup",
                        "dark corn syrup", "agave syrup", "dark chocolate", "milk chocolate chip",
                        "chocolate chip", "white chocolate chip"});
  case Class::flour:
    return food.department == Department::baking &&
           (food.name.ends_with(" flour") || among(food, {"cornmeal", "semolina", "masa harina"}));
  case Class::bread:
    return food.department == Department::bakery;
  case Class::sprout:
    return among(food, {"alfalfa sprout", "bean sprout"});
  case Class::honey:
    return among(food, {"honey", "honey mustard"});
  }
  return false;
}

bool is_raw_animal(const Food& food) {
  return is(food, Class::meat) || is(food, Class::fish) || is(food, Class::shellfish) ||
         is(food, Class::egg);
}

} // namespace manciple::foods
