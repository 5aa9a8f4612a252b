#pragma once

#include "foods/food.hpp"
#include "text/diagnostics.hpp"
#include "text/yaml.hpp"

#include <deque>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <vector>

namespace manciple::foods {

/// Names one food of a Book.
enum class FoodId : std::uint32_t {};

/// All foods that a run can speak of: the household's own and, behind them, the reference. A
/// reference food is read when it is first asked for.
class Book {
public:
  /// Adds or changes foods as a household's foods.yaml says.
  void add_household(const text::Node& file, text::Diagnostics& diagnostics);

  /// Whose words names are: what Britons call tomato puree is tomato paste, and their lists say
  /// "aubergine". US before this is said; foods that were found before keep their names.
  void speak(measure::System system) { system_ = system; }

  /// By name or alias, singular or plural, any case.
  std::optional<FoodId> find(std::string_view name);
  [[nodiscard]] const Food& get(FoodId id) const { return foods_[static_cast<std::size_t>(id)]; }

  /// A food that is carried as it is written: of that name, in amounts of that dimension, and
  /// where they are counted by a word ("bunch", "can"), by that word. What is known of `like`, a
  /// food that the name speaks of or that cannot be measured so, holds as far as it is safe:
  /// allergens that it contains are taken to be there, others are not known.
  /// `given`: some recipe leaves it over.
  FoodId as_written(std::string_view name, measure::Dimension dimension, std::string_view word,
                    const Food* like, bool given = false);

  /// Every name and alias in normal form, for "did you mean".
  [[nodiscard]] std::vector<std::string_view> names() const;
  /// The names of all foods, sorted, household and reference.
  [[nodiscard]] std::vector<std::string> food_names();

private:
  FoodId keep(Food food);

  measure::System system_ = measure::System::us;
  std::deque<Food> foods_;
  // By name, dimension and word.
  std::map<std::tuple<std::string, measure::Dimension, std::string>, FoodId> as_written_;
  std::map<std::string, FoodId, std::less<>> own_;           // names the household gave
  std::unordered_map<std::uint16_t, FoodId> from_reference_; // records read so far
};

} // namespace manciple::foods
