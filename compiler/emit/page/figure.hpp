#pragma once

#include "emit/compiled.hpp"

#include <string>
#include <string_view>

/// What drawings of the page have in common.
namespace manciple::emit::page {

/// How many days the plan has.
std::size_t days_of(const Compiled& compiled);
/// A figure under its title, with a table of its figures to be unfolded.
std::string figure(std::string_view title, std::string_view content, std::string_view table);
/// To a tenth; a whole number stays whole.
std::string tenth(double value, char point = '.');
/// A drawing over the days of the plan: what `inside` draws stretches to the width, the labels do
/// not. `top` is the height of what is drawn, in its own unit.
std::string over_days(const Compiled& compiled, std::string_view label, double top,
                      std::string_view top_label, std::string_view inside);

} // namespace manciple::emit::page
