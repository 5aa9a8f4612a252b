#include "foods/classes.hpp"

#include <algorithm>
#include <array>

namespace manciple::foods {
namespace {

using Names = std::span<const std::string_view>;

constexpr auto poultry = std::to_array<std::string_view>({"bone-in chicken breast",
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
constexpr auto minced = std::to_array<std::string_view>(
    {"andouille sausage", "beef burger patty", "bratwurst",        "breakfast sausage",
     "chicken sausage",   "chipolata",         "cocktail sausage", "ground beef",
     "ground bison",      "ground chicken",    "ground lamb",      "ground pork",
     "ground turkey",     "ground veal",       "ground venison",   "italian sausage",
     "lean ground beef",  "merguez",           "mexican chorizo",  "sausage",
     "turkey sausage"});
// Cured, smoked or cooked, but to be heated.
constexpr auto prepared_meat = std::to_array<std::string_view>(
    {"bacon bit", "blood sausage", "gammon joint", "gammon steak", "guanciale", "ham hock",
     "pancetta", "sausage roll", "scotch egg", "bone-in ham"});
constexpr auto ready_meat = std::to_array<std::string_view>(
    {"black forest ham", "bologna",         "bresaola",        "cabanossi",
     "canadian bacon",   "cooked chicken",  "crab meat",       "deli chicken",
     "deli ham",         "deli roast beef", "deli turkey",     "ham",
     "hot dog",          "iberico ham",     "imitation crab",  "kielbasa",
     "kipper",           "liverwurst",      "mortadella",      "pastrami",
     "pepperoni",        "pork pie",        "prosciutto",      "rotisserie chicken",
     "salami",           "serrano ham",     "smoked mackerel", "smoked salmon",
     "smoked trout",     "spanish chorizo", "speck",           "tuna salad",
     "cooked shrimp"});
constexpr auto shellfish = std::to_array<std::string_view>(
    {"clam", "cockle", "crayfish", "langoustine", "lobster tail", "mussel", "octopus", "oyster",
     "scallop", "seafood mix", "shell-on shrimp", "shrimp", "squid", "whole crab",
     "whole lobster"});
// Tinned, pickled, cured or a dish of its own.
constexpr auto preserved_fish = std::to_array<std::string_view>(
    {"anchovy fillet", "canned clam", "canned herring", "canned mackerel", "canned salmon",
     "canned tuna", "canned tuna in oil", "caviar", "clam juice", "fish cake", "fish roe",
     "fish stick", "pickled herring", "salt cod", "sardine", "smoked cod", "smoked haddock"});
constexpr auto eggs = std::to_array<std::string_view>({"egg", "duck egg", "quail egg"});
constexpr auto milk = std::to_array<std::string_view>({"1% milk",
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
constexpr auto kidney_beans = std::to_array<std::string_view>(
    {"dried kidney bean", "dried borlotti bean", "dried white bean", "dried flageolet bean",
     "dried great northern bean", "dried navy bean"});
constexpr auto potatoes = std::to_array<std::string_view>(
    {"potato", "red potato", "russet potato", "baby potato", "sweet potato"});
// Grains that are eaten dry.
constexpr auto cereals = std::to_array<std::string_view>(
    {"bran flake", "chocolate cereal", "corn flake", "crisp rice cereal", "granola",
     "instant oatmeal", "muesli", "oat bran", "oat ring cereal", "rice paper", "rolled oat",
     "shredded wheat", "steel-cut oat", "wheat biscuit cereal", "wheat bran", "wheat germ"});
constexpr auto herbs = std::to_array<std::string_view>(
    {"basil",          "chervil",        "chive",          "cilantro",      "curry leaf",
     "dill",           "fresh bay leaf", "fresh marjoram", "fresh oregano", "fresh sage",
     "fresh tarragon", "garlic chive",   "lemon balm",     "lemon thyme",   "lovage",
     "mint",           "parsley",        "rosemary",       "thai basil",    "thyme"});
// What oils are flavoured with besides herbs.
constexpr auto pungent = std::to_array<std::string_view>(
    {"garlic", "jarred garlic", "garlic paste", "wild garlic", "bird's eye chilli", "ginger root",
     "green chile", "jalapeno pepper", "red chilli", "serrano pepper", "shallot",
     "habanero pepper"});
// Juices that make a dish sour.
constexpr auto sour =
    std::to_array<std::string_view>({"lemon", "lime", "bottled lemon juice", "bottled lime juice"});
constexpr auto sugar = std::to_array<std::string_view>(
    {"granulated sugar", "brown sugar", "dark brown sugar", "powdered sugar", "jam sugar",
     "turbinado sugar", "coconut sugar", "palm sugar", "honey", "maple syrup", "golden syrup",
     "molasses", "light corn syrup", "dark corn syrup", "agave syrup", "dark chocolate",
     "milk chocolate chip", "chocolate chip", "white chocolate chip"});
// Flour by another name.
constexpr auto meals = std::to_array<std::string_view>(
    {"cornmeal", "semolina", "masa harina", "biscuit mix", "bread mix", "brownie mix", "cake mix",
     "cornbread mix", "pancake mix"});
constexpr auto sprouts = std::to_array<std::string_view>({"alfalfa sprout", "bean sprout"});
constexpr auto honey = std::to_array<std::string_view>({"honey", "honey mustard"});

const std::array<Names, 18> all_lists{
    poultry, minced, prepared_meat, ready_meat, shellfish, preserved_fish,
    eggs,    milk,   kidney_beans,  potatoes,   cereals,   herbs,
    pungent, sour,   sugar,         meals,      sprouts,   honey};

// By its name, which outside the United States stands among the others.
bool among(const Food& food, Names names) {
  const auto listed = [&](std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  return listed(food.name) || std::any_of(food.aliases.begin(), food.aliases.end(), listed);
}

} // namespace

bool is(const Food& food, Class what) {
  const std::string_view name = food.name;
  switch (what) {
  case Class::poultry:
    return among(food, poultry);
  case Class::minced:
    return among(food, minced);
  case Class::meat:
    return food.department == Department::meat && !among(food, ready_meat) &&
           !among(food, prepared_meat);
  case Class::fish:
    return food.department == Department::fish && !among(food, ready_meat) &&
           !among(food, shellfish) && !among(food, preserved_fish);
  case Class::shellfish:
    return among(food, shellfish);
  case Class::ready_meat:
    return among(food, ready_meat);
  case Class::egg:
    return among(food, eggs);
  case Class::milk:
    return among(food, milk);
  case Class::kidney_bean:
    return among(food, kidney_beans);
  case Class::starch:
    return among(food, potatoes) ||
           (food.department == Department::grains && !among(food, cereals));
  case Class::vegetable:
    return food.department == Department::produce;
  case Class::herb:
    return among(food, herbs);
  case Class::aromatic:
    return among(food, herbs) || among(food, pungent);
  case Class::spice:
    return food.department == Department::spices;
  case Class::oil:
    return food.department == Department::oils && !is(food, Class::acid);
  case Class::acid:
    return among(food, sour) || (food.department == Department::oils && name.ends_with("vinegar"));
  case Class::sugar:
    return among(food, sugar);
  case Class::flour:
    return food.department == Department::baking &&
           (name.ends_with(" flour") || among(food, meals));
  case Class::bread:
    return food.department == Department::bakery;
  case Class::sprout:
    return among(food, sprouts);
  case Class::honey:
    return among(food, honey);
  }
  return false;
}

bool is_raw_animal(const Food& food) {
  return is(food, Class::meat) || is(food, Class::fish) || is(food, Class::shellfish) ||
         is(food, Class::egg);
}

std::vector<std::string_view> names_in_classes() {
  std::vector<std::string_view> out;
  for (const Names names : all_lists) {
    out.insert(out.end(), names.begin(), names.end());
  }
  return out;
}

} // namespace manciple::foods
