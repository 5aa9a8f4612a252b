#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <string>

/// What the words of a method's steps tell about the work.
namespace manciple::prep {

using measure::Rational;

/// Minutes of work that are worth a line of their own. Our own choice.
constexpr int worth_writing = 2;

/// Whether a step does nothing but prepare ingredients: wash, peel, cut. "Scrub and cut the
/// vegetables" does, "Dice the vegetables, sweat them in the oil" does not.
bool only_prepares(const kitchen::Recipe& recipe, const kitchen::MethodStep& step);
/// Whether some of it is cutting.
bool cuts(const kitchen::MethodStep& step);
/// Its words without what only prepares ingredients: "Sweat them in the oil".
std::string without_cutting(const kitchen::Recipe& recipe, const kitchen::MethodStep& step);

/// Whether the words of a line say that it is cut, peeled or trimmed.
bool is_prepared(const kitchen::Ingredient& line);

/// Whether a step cools what was hot, or bags and boxes it.
bool cools(const kitchen::MethodStep& step);
bool stores(const kitchen::MethodStep& step);

/// Hands-on minutes of a step when the recipe is made `times` times. Setting out and clearing away
/// stay, the rest grows: four fifths of what is done piece by piece (rolling, cutting, filling), a
/// quarter of what is done to all of it at once (shaking a jar, draining a pot). Common practice,
/// no source.
int hands_on(const kitchen::MethodStep& step, const Rational& times);

/// Unattended minutes of a step when the recipe is made `times` times. A roast in the oven takes as
/// many minutes a pound as the recipe gives it, and at 325 F at least those of USDA FSIS (cooking
/// times of the FoodKeeper data); everything else takes as long as it is written.
int alone(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
          const kitchen::MethodStep& step, const Rational& times);

/// How many minutes may pass at most between the end of a step and the start of the next one. What
/// the recipe does not say: half an hour for what rises and for what was on the heat, two hours
/// for the rest (USDA FSIS: perishable food is not left out for more than two hours); nothing for
/// what chills.
std::optional<int> longest_wait(const kitchen::MethodStep& step);

/// The first steps of a recipe that are done before it marinates, soaks or chills: those before the
/// heat, all of them where there is none. Their number.
std::size_t steps_before_the_wait(const kitchen::Recipe& recipe);

/// Whether raw meat, fish or poultry is handled in the step with that number: none is once it has
/// been on the heat.
bool handles_raw(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe, std::size_t step);

} // namespace manciple::prep
