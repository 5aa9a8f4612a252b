#include "kitchen/library_names.hpp"

#include "foods/keys.hpp"
#include "measure/scan.hpp"
#include "text/fields.hpp"
#include "text/words.hpp"

#include <algorithm>

namespace manciple::kitchen {

std::optional<Target> RecipeNames::as_written(std::string_view name, measure::Dimension dimension,
                                              std::string_view word, const foods::Food* like) {
  return book().as_written(name, dimension, word, like, is_given(name));
}

bool RecipeNames::is_given(std::string_view name) {
  if (!given_) {
    given_ = read_given_();
  }
  return given_->contains(foods::normal_name(name));
}

std::optional<Target> RecipeNames::find_title(std::string_view name) {
  if (!titles_) {
    titles_ = read_titles_();
  }
  const auto found = titles_->find(text::slug(name));
  return found == titles_->end() ? std::nullopt : std::optional<Target>(need(found->second));
}

std::optional<Target> RecipeNames::find(std::string_view name) {
  const std::string slug = text::slug(name);
  for (const std::string& form : {slug, text::slug(text::singular(text::lower(name)))}) {
    // A recipe that is called as its main food is (gnocchi of gnocchi) speaks of the food.
    const bool itself = form == reading && FoodNames::find(name);
    if (!itself && std::binary_search(slugs_.begin(), slugs_.end(), form)) {
      return need(form);
    }
  }
  return FoodNames::find(name);
}

std::vector<std::string_view> RecipeNames::all() const {
  std::vector<std::string_view> out = FoodNames::all();
  out.insert(out.end(), slugs_.begin(), slugs_.end());
  return out;
}

RecipeId RecipeNames::need(const std::string& slug) {
  const auto [place, fresh] =
      ids_.emplace(slug, RecipeId{static_cast<std::uint32_t>(wanted.size())});
  if (fresh) {
    wanted.push_back(slug);
  }
  return place->second;
}

std::string title_in(std::string_view file) {
  for (const std::string_view line : text::split(file, '\n')) {
    if (!line.starts_with("name:")) {
      continue;
    }
    std::string_view name = text::trim(line.substr(std::string_view("name:").size()));
    if (name.size() >= 2 && (name.front() == '"' || name.front() == '\'') &&
        name.back() == name.front()) {
      name = name.substr(1, name.size() - 2);
    }
    return std::string(name);
  }
  return {};
}

void add_given(const text::Node& file, const measure::Customs& customs, RecipeNames::Given& out) {
  for (const text::Entry& entry : file.entries) {
    if (entry.key.scalar != "gives") {
      continue;
    }
    for (const text::Node* one : text::items_of(entry.value)) {
      std::string_view said = one->scalar;
      for (const text::Entry& inside : one->entries) {
        said = inside.key.scalar == "what" ? std::string_view(inside.value.scalar) : said;
      }
      const std::string words =
          text::lower(said.substr(0, std::min(text::find_comma(said), said.size())));
      measure::Cursor cursor{words};
      (void)measure::scan_number(cursor);
      (void)measure::scan_unit(cursor, customs);
      std::string_view name = text::trim(cursor.rest());
      constexpr std::string_view of = "of ";
      name.remove_prefix(name.starts_with(of) ? of.size() : 0);
      out.insert(foods::normal_name(name));
    }
  }
}

} // namespace manciple::kitchen
