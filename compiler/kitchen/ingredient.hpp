#pragma once

#include "foods/book.hpp"
#include "foods/convert.hpp"
#include "measure/scan.hpp"
#include "text/yaml.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace manciple::kitchen {

using measure::Rational;

/// Names one recipe of a Kitchen.
enum class RecipeId : std::uint32_t {};

/// What a line asks for, or a name that nothing answers to.
using Target = std::variant<foods::FoodId, RecipeId>;

/// One thing that a recipe (or a plan, or the list of what is on hand) asks for.
struct Ingredient {
  std::string text; ///< the line as it was written
  text::Span at;
  Target target;
  /// How much; the upper end of a range. Absent where the line gives no amount ("to taste").
  std::optional<foods::Amount> amount;
  std::optional<Rational> low; ///< the lower end, where the line gives a range
  bool fresh = false;          ///< not from the freezer
  bool optional = false;
  std::string note; ///< words after the comma that change no measure
  /// "2 cans", "2 (15 oz) cans": how many packs it is, whatever is in each.
  std::optional<Rational> containers = {};
  /// No size is said, so that any usual one will do.
  bool any_size = false;
  /// Bought as a whole can, of which the liquid is poured away.
  bool drained_can = false;

  [[nodiscard]] const foods::FoodId* food() const { return std::get_if<foods::FoodId>(&target); }
  [[nodiscard]] const RecipeId* recipe() const { return std::get_if<RecipeId>(&target); }
};

/// What names mean to a line.
class Names {
public:
  virtual ~Names() = default;
  virtual std::optional<Target> find(std::string_view name) = 0;
  /// A recipe by the name that it gives itself, where its file is called otherwise.
  virtual std::optional<Target> find_title(std::string_view /*name*/) { return std::nullopt; }
  /// A food that is carried as it is written; see foods::Book. Nothing where that is not wanted.
  virtual std::optional<Target> as_written(std::string_view /*name*/,
                                           measure::Dimension /*dimension*/,
                                           std::string_view /*word*/, const foods::Food* /*like*/) {
    return std::nullopt;
  }
  /// Whether some recipe of the library leaves such a thing over.
  virtual bool is_given(std::string_view /*name*/) { return false; }
  /// Null unless `target` is a food.
  [[nodiscard]] virtual const foods::Food* food(const Target& target) const = 0;
  [[nodiscard]] virtual std::vector<std::string_view> all() const = 0;
};

/// Reads a line as cooks write it: an amount, a measure, a food, and after the comma what is done
/// to it. "2 (15 oz) cans black beans, drained", "juice of 2 lemons", "1 lb 4 oz beef, cubed",
/// "salt and pepper, to taste". The words after the comma are the cut or state. One line can ask
/// for several things; none, with errors, when it cannot be read. A food that nobody knows, or that
/// is not known in such a measure, is carried as it is written, with a warning; of a line of free
/// text nobody expects a known food. What is nearly the name of a known food is an error.
std::vector<Ingredient> read_line(const text::Node& line, std::string_view words,
                                  std::size_t offset, const measure::Customs& customs, Names& names,
                                  text::Diagnostics& diagnostics, bool free_text = false);

} // namespace manciple::kitchen
