#pragma once

/// A day at home, in minutes from midnight. Common practice, no source.
namespace manciple::kitchen {

/// Nobody begins anything earlier that is eaten the same day.
inline constexpr int getting_up = 7 * 60;
/// By then is done or begun what a day needs on the evening before: what is packed, and what stands
/// overnight.
inline constexpr int evening = 20 * 60;

} // namespace manciple::kitchen
