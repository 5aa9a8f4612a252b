#pragma once

/// How hot and how cold food is kept, and how fast it is cooled: FDA Food Code 2022, 3-501.14
/// (cooling) and 3-501.16 (hot and cold holding).
namespace manciple::kitchen {

/// A temperature on both scales, as the Food Code rounds it.
struct Degrees {
  int fahrenheit = 0;
  int celsius = 0;
};

/// What is kept warm is at least so hot.
inline constexpr Degrees hot_enough{135, 57};
/// What was hot is at most so warm after the first stage of cooling, ...
inline constexpr Degrees cooled_first{70, 21};
/// ... and so cold after the second.
inline constexpr Degrees cold_enough{41, 5};

/// Minutes that the stages take at most.
inline constexpr int first_stage = 120;
inline constexpr int second_stage = 240;

} // namespace manciple::kitchen
