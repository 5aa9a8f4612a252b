#pragma once

#include "foods/food.hpp"
#include "text/diagnostics.hpp"
#include "text/yaml.hpp"

#include <deque>
#include <map>
#include <optional>
#include <string>
#include <string_view>
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

  /// By name or alias, singular or plural, any case.
  std::optional<FoodId> find(std::string_view name);
  [[nodiscard]] const Food& get(FoodId id) const { return foods_[static_cast<std::size_t>(id)]; }

  /// Every name and alias in normal form, for "did you mean".
  [[nodiscard]] std::vector<std::string_view> names() const;
  /// The names of all foods, sorted, household and reference.
  [[nodiscard]] std::vector<std::string> food_names();

private:
  FoodId keep(Food food);

  std::deque<Food> foods_;
  std::map<std::string, FoodId, std::less<>> own_;           // names the household gave
  std::unordered_map<std::uint16_t, FoodId> from_reference_; // records read so far
};

} // namespace manciple::foods
