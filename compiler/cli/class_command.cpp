// Which foods are of a class.
#include "cli/class_command.hpp"
#include "cli/exit.hpp"
#include "cli/house_here.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "foods/book.hpp"
#include "foods/diets.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <algorithm>

namespace manciple::cli {
namespace {

std::string listed(const std::vector<std::string_view>& words) {
  return text::join(std::vector<std::string>(words.begin(), words.end()), ", ");
}

void print_list(std::string_view heading, const std::vector<std::string>& foods) {
  if (!foods.empty()) {
    say("{}\n", heading);
    for (const std::string& food : foods) {
      say("  {}\n", food);
    }
  }
}

} // namespace

int foods_of_class(const std::string& word) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  foods::Book book;
  if (const auto own = file_here("recipes/foods.yaml", sources, diagnostics)) {
    book.add_household(*own, diagnostics);
  }
  complain(std::string_view(text::render(diagnostics, sources)));
  auto classes = foods::classes_called(word);
  if (classes.empty()) {
    classes = foods::diet_called(word);
  }
  if (classes.empty()) {
    std::vector<std::string_view> known = foods::class_words();
    const auto diets = foods::diet_words();
    known.insert(known.end(), diets.begin(), diets.end());
    complain_of_name("no class of foods is called", word,
                     text::did_you_mean(text::lower(word), known));
    complain("classes: {}\ndiets: {}\n", listed(foods::class_words()), listed(foods::diet_words()));
    return bad_input;
  }
  std::vector<std::string> has;
  std::vector<std::string> label;
  std::vector<std::string> unknown;
  for (const std::string& name : book.food_names()) {
    const foods::Food& food = book.get(*book.find(name));
    auto most = foods::Holds::no;
    for (const foods::AnyClass& of : classes) {
      most = std::max(most, foods::holds(food, of));
    }
    if (most == foods::Holds::yes) {
      has.push_back(name);
    } else if (most == foods::Holds::read_the_label) {
      label.push_back(name);
    } else if (most == foods::Holds::not_known) {
      unknown.push_back(name);
    }
  }
  std::vector<std::string_view> names;
  for (const foods::AnyClass& of : classes) {
    names.push_back(foods::name(of));
  }
  say("{}: {}\n", word, listed(names));
  print_list("foods that contain it:", has);
  print_list("differs by maker, so read the label:", label);
  print_list("not known, so read the label:", unknown);
  return good;
}

} // namespace manciple::cli
