#pragma once

#include "kitchen/ingredient.hpp"

#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// Foods by name.
class FoodNames : public Names {
public:
  explicit FoodNames(foods::Book& book) : book_(book) {}

  std::optional<Target> find(std::string_view name) override {
    const auto id = book_.find(name);
    return id ? std::optional<Target>(*id) : std::nullopt;
  }
  std::optional<Target> as_written(std::string_view name, measure::Dimension dimension,
                                   std::string_view word, const foods::Food* like) override {
    return book_.as_written(name, dimension, word, like);
  }
  [[nodiscard]] const foods::Food* food(const Target& target) const override {
    const auto* id = std::get_if<foods::FoodId>(&target);
    return id != nullptr ? &book_.get(*id) : nullptr;
  }
  [[nodiscard]] std::vector<std::string_view> all() const override { return book_.names(); }

protected:
  foods::Book& book() { return book_; }

private:
  foods::Book& book_;
};

/// Recipes of the library by name, then foods. A recipe that is named gets an id and is read later.
class RecipeNames : public FoodNames {
public:
  /// By slug of what recipes call themselves: the names of their files.
  using Titles = std::map<std::string, std::string, std::less<>>;

  /// What recipes give besides their dishes, by name.
  using Given = std::set<std::string, std::less<>>;

  /// `titles` and `given` open every recipe; each is asked once, and only for a name that nothing
  /// else answers.
  RecipeNames(foods::Book& book, std::vector<std::string> slugs, std::function<Titles()> titles,
              std::function<Given()> given)
      : FoodNames(book),
        slugs_(std::move(slugs)),
        read_titles_(std::move(titles)),
        read_given_(std::move(given)) {}

  std::optional<Target> as_written(std::string_view name, measure::Dimension dimension,
                                   std::string_view word, const foods::Food* like) override;
  bool is_given(std::string_view name) override;
  std::optional<Target> find_title(std::string_view name) override;
  std::optional<Target> find(std::string_view name) override;
  [[nodiscard]] std::vector<std::string_view> all() const override;

  /// The recipe's id, which it gets when it is first asked for.
  RecipeId need(const std::string& slug);

  [[nodiscard]] const std::vector<std::string>& slugs() const { return slugs_; }

  std::vector<std::string> wanted; ///< slugs in the order of their ids
  std::string reading;             ///< the slug of the recipe that is being read

private:
  std::vector<std::string> slugs_;
  std::function<Titles()> read_titles_;
  std::optional<Titles> titles_;
  std::function<Given()> read_given_;
  std::optional<Given> given_;
  std::map<std::string, RecipeId, std::less<>> ids_;
};

/// What a recipe calls itself, from the line of its file that says so; empty where there is none.
std::string title_in(std::string_view file);

/// Adds the names of what a recipe gives besides its dish, as its file writes them: without the
/// amount and without what stands after a comma.
void add_given(const text::Node& file, const measure::Customs& customs, RecipeNames::Given& out);

} // namespace manciple::kitchen
