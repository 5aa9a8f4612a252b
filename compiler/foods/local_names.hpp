#pragma once

#include <array>
#include <string_view>

namespace manciple::foods {

/// A word that means one food to cooks with US measures and another to the others.
struct LocalName {
  std::string_view name; ///< in its normal form
  std::string_view elsewhere;
};

/// What US cooks mean by them is in the reference. Common practice, no source.
constexpr std::array local_names{
    LocalName{"biscuit", "sweet biscuit"},    LocalName{"chicken leg", "chicken leg quarter"},
    LocalName{"chip", "frozen french fry"},   LocalName{"cider", "hard cider"},
    LocalName{"coriander", "cilantro"},       LocalName{"jelly", "flavored gelatin mix"},
    LocalName{"lemonade", "lemon-lime soda"}, LocalName{"mozzarella", "fresh mozzarella"},
    LocalName{"pork sausage", "sausage"},     LocalName{"tomato puree", "tomato paste"}};

/// A food of the reference, which is American, and what it is called on the lists of others.
struct NameElsewhere {
  std::string_view food;
  std::string_view called; ///< one of its aliases
};

/// Sorted by food. Common practice, no source.
constexpr std::array names_elsewhere{
    NameElsewhere{"2% milk", "semi-skimmed milk"},
    NameElsewhere{"adhesive bandage", "plaster"},
    NameElsewhere{"all-purpose flour", "plain flour"},
    NameElsewhere{"almond flour", "ground almond"},
    NameElsewhere{"aluminum foil", "foil"},
    NameElsewhere{"arugula", "rocket"},
    NameElsewhere{"baking soda", "bicarbonate of soda"},
    NameElsewhere{"beef broth", "beef stock"},
    NameElsewhere{"beef stew meat", "stewing steak"},
    NameElsewhere{"beet", "beetroot"},
    NameElsewhere{"blood sausage", "black pudding"},
    NameElsewhere{"bok choy", "pak choi"},
    NameElsewhere{"canned beet", "tinned beetroot"},
    NameElsewhere{"canned corn", "sweetcorn"},
    NameElsewhere{"canned diced tomato", "tinned tomato"},
    NameElsewhere{"canned lima bean", "butter bean"},
    NameElsewhere{"canned navy bean", "haricot bean"},
    NameElsewhere{"canned white bean", "cannellini bean"},
    NameElsewhere{"canola oil", "rapeseed oil"},
    NameElsewhere{"celery root", "celeriac"},
    NameElsewhere{"chicken broth", "chicken stock"},
    NameElsewhere{"chili powder", "chilli powder"},
    NameElsewhere{"cilantro", "fresh coriander"},
    NameElsewhere{"cooked shrimp", "cooked prawn"},
    NameElsewhere{"cornstarch", "cornflour"},
    NameElsewhere{"cremini mushroom", "chestnut mushroom"},
    NameElsewhere{"diaper", "nappy"},
    NameElsewhere{"dish soap", "washing-up liquid"},
    NameElsewhere{"dishwasher detergent", "dishwasher tablet"},
    NameElsewhere{"eggplant", "aubergine"},
    NameElsewhere{"elbow macaroni", "macaroni"},
    NameElsewhere{"facial tissue", "tissue"},
    NameElsewhere{"fettuccine", "tagliatelle"},
    NameElsewhere{"fish stick", "fish finger"},
    NameElsewhere{"flaxseed", "linseed"},
    NameElsewhere{"frozen corn", "frozen sweetcorn"},
    NameElsewhere{"frozen french fry", "oven chip"},
    NameElsewhere{"ginger root", "ginger"},
    NameElsewhere{"golden raisin", "sultana"},
    NameElsewhere{"granulated sugar", "sugar"},
    NameElsewhere{"green bell pepper", "green pepper"},
    NameElsewhere{"green onion", "spring onion"},
    NameElsewhere{"ground beef", "beef mince"},
    NameElsewhere{"ground chicken", "chicken mince"},
    NameElsewhere{"ground lamb", "lamb mince"},
    NameElsewhere{"ground pork", "pork mince"},
    NameElsewhere{"ground turkey", "turkey mince"},
    NameElsewhere{"half and half", "single cream"},
    NameElsewhere{"hamburger bun", "burger bun"},
    NameElsewhere{"heavy cream", "double cream"},
    NameElsewhere{"hot dog bun", "hot dog roll"},
    NameElsewhere{"imitation crab", "crab stick"},
    NameElsewhere{"ladyfinger", "sponge finger"},
    NameElsewhere{"lasagna noodle", "lasagne sheet"},
    NameElsewhere{"laundry detergent", "washing powder"},
    NameElsewhere{"leaf gelatin", "leaf gelatine"},
    NameElsewhere{"lean ground beef", "lean beef mince"},
    NameElsewhere{"molasses", "treacle"},
    NameElsewhere{"napa cabbage", "chinese cabbage"},
    NameElsewhere{"paper towel", "kitchen roll"},
    NameElsewhere{"parchment paper", "baking paper"},
    NameElsewhere{"phyllo dough", "filo pastry"},
    NameElsewhere{"pita bread", "pitta bread"},
    NameElsewhere{"plain yogurt", "natural yoghurt"},
    NameElsewhere{"plastic wrap", "cling film"},
    NameElsewhere{"potato chip", "crisp"},
    NameElsewhere{"powdered sugar", "icing sugar"},
    NameElsewhere{"red bell pepper", "red pepper"},
    NameElsewhere{"red pepper flake", "chilli flake"},
    NameElsewhere{"rolled oat", "porridge oat"},
    NameElsewhere{"rotini", "fusilli"},
    NameElsewhere{"rutabaga", "swede"},
    NameElsewhere{"self-rising flour", "self-raising flour"},
    NameElsewhere{"shell-on shrimp", "unpeeled prawn"},
    NameElsewhere{"shrimp", "prawn"},
    NameElsewhere{"skim milk", "skimmed milk"},
    NameElsewhere{"sliced almond", "flaked almond"},
    NameElsewhere{"snow pea", "mangetout"},
    NameElsewhere{"sour cream", "soured cream"},
    NameElsewhere{"sunscreen", "sun cream"},
    NameElsewhere{"swiss chard", "chard"},
    NameElsewhere{"toilet paper", "toilet roll"},
    NameElsewhere{"tomato paste", "concentrated tomato puree"},
    NameElsewhere{"trash bag", "bin bag"},
    NameElsewhere{"unflavored gelatin", "gelatine"},
    NameElsewhere{"unsweetened shredded coconut", "desiccated coconut"},
    NameElsewhere{"vanilla bean", "vanilla pod"},
    NameElsewhere{"vegetable broth", "vegetable stock"},
    NameElsewhere{"whole wheat bread", "wholemeal bread"},
    NameElsewhere{"whole wheat flour", "wholemeal flour"},
    NameElsewhere{"yellow bell pepper", "yellow pepper"},
    NameElsewhere{"zucchini", "courgette"},
};

} // namespace manciple::foods
