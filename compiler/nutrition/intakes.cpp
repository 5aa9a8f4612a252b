#include "nutrition/intakes.hpp"

#include <algorithm>
#include <array>

namespace manciple::nutrition {
namespace {

using foods::Nutrient;
using kitchen::Sex;
using kitchen::Stage;

// By age: 1 to 3, 4 to 8, 9 to 13, 14 to 18, 19 to 30, 31 to 50, 51 to 70 years, and older.
constexpr std::array<int, 8> begins{1, 4, 9, 14, 19, 31, 51, 71};

struct Row {
  Nutrient nutrient;
  Sex sex;
  bool adequate;
  std::array<double, 8> per_day;
  std::array<double, 8> upper; // under 0: none
};

constexpr std::array<Row, 28> table{{
    {Nutrient::protein,
     Sex::female,
     false,
     {13, 19, 34, 46, 46, 46, 46, 46},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::protein,
     Sex::male,
     false,
     {13, 19, 34, 52, 56, 56, 56, 56},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::carbohydrate,
     Sex::female,
     false,
     {130, 130, 130, 130, 130, 130, 130, 130},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::carbohydrate,
     Sex::male,
     false,
     {130, 130, 130, 130, 130, 130, 130, 130},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::fiber,
     Sex::female,
     true,
     {19, 25, 26, 26, 25, 25, 21, 21},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::fiber,
     Sex::male,
     true,
     {19, 25, 31, 38, 38, 38, 30, 30},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::calcium,
     Sex::female,
     false,
     {700, 1000, 1300, 1300, 1000, 1000, 1200, 1200},
     {2500, 2500, 3000, 3000, 2500, 2500, 2000, 2000}},
    {Nutrient::calcium,
     Sex::male,
     false,
     {700, 1000, 1300, 1300, 1000, 1000, 1000, 1200},
     {2500, 2500, 3000, 3000, 2500, 2500, 2000, 2000}},
    {Nutrient::iron,
     Sex::female,
     false,
     {7, 10, 8, 15, 18, 18, 8, 8},
     {40, 40, 40, 45, 45, 45, 45, 45}},
    {Nutrient::iron,
     Sex::male,
     false,
     {7, 10, 8, 11, 8, 8, 8, 8},
     {40, 40, 40, 45, 45, 45, 45, 45}},
    {Nutrient::magnesium,
     Sex::female,
     false,
     {80, 130, 240, 360, 310, 320, 320, 320},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::magnesium,
     Sex::male,
     false,
     {80, 130, 240, 410, 400, 420, 420, 420},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::zinc, Sex::female, false, {3, 5, 8, 9, 8, 8, 8, 8}, {7, 12, 23, 34, 40, 40, 40, 40}},
    {Nutrient::zinc,
     Sex::male,
     false,
     {3, 5, 8, 11, 11, 11, 11, 11},
     {7, 12, 23, 34, 40, 40, 40, 40}},
    {Nutrient::vitamin_c,
     Sex::female,
     false,
     {15, 25, 45, 65, 75, 75, 75, 75},
     {400, 650, 1200, 1800, 2000, 2000, 2000, 2000}},
    {Nutrient::vitamin_c,
     Sex::male,
     false,
     {15, 25, 45, 75, 90, 90, 90, 90},
     {400, 650, 1200, 1800, 2000, 2000, 2000, 2000}},
    {Nutrient::vitamin_a,
     Sex::female,
     false,
     {300, 400, 600, 700, 700, 700, 700, 700},
     {600, 900, 1700, 2800, 3000, 3000, 3000, 3000}},
    {Nutrient::vitamin_a,
     Sex::male,
     false,
     {300, 400, 600, 900, 900, 900, 900, 900},
     {600, 900, 1700, 2800, 3000, 3000, 3000, 3000}},
    {Nutrient::vitamin_d,
     Sex::female,
     false,
     {15, 15, 15, 15, 15, 15, 15, 20},
     {63, 75, 100, 100, 100, 100, 100, 100}},
    {Nutrient::vitamin_d,
     Sex::male,
     false,
     {15, 15, 15, 15, 15, 15, 15, 20},
     {63, 75, 100, 100, 100, 100, 100, 100}},
    {Nutrient::folate,
     Sex::female,
     false,
     {150, 200, 300, 400, 400, 400, 400, 400},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::folate,
     Sex::male,
     false,
     {150, 200, 300, 400, 400, 400, 400, 400},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::vitamin_b12,
     Sex::female,
     false,
     {0.9, 1.2, 1.8, 2.4, 2.4, 2.4, 2.4, 2.4},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::vitamin_b12,
     Sex::male,
     false,
     {0.9, 1.2, 1.8, 2.4, 2.4, 2.4, 2.4, 2.4},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::sodium,
     Sex::female,
     true,
     {800, 1000, 1200, 1500, 1500, 1500, 1500, 1500},
     {1200, 1500, 1800, 2300, 2300, 2300, 2300, 2300}},
    {Nutrient::sodium,
     Sex::male,
     true,
     {800, 1000, 1200, 1500, 1500, 1500, 1500, 1500},
     {1200, 1500, 1800, 2300, 2300, 2300, 2300, 2300}},
    {Nutrient::potassium,
     Sex::female,
     true,
     {2000, 2300, 2300, 2300, 2600, 2600, 2600, 2600},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
    {Nutrient::potassium,
     Sex::male,
     true,
     {2000, 2300, 2500, 3000, 3400, 3400, 3400, 3400},
     {-1, -1, -1, -1, -1, -1, -1, -1}},
}};

// From 14 to 18, 19 to 30 and 31 to 50 years.
struct StageRow {
  Nutrient nutrient;
  Stage stage;
  bool adequate;
  std::array<double, 3> per_day;
  std::array<double, 3> upper; // under 0: none
};

constexpr std::array<StageRow, 28> stages{{
    {Nutrient::protein, Stage::pregnant, false, {71, 71, 71}, {-1, -1, -1}},
    {Nutrient::carbohydrate, Stage::pregnant, false, {175, 175, 175}, {-1, -1, -1}},
    {Nutrient::fiber, Stage::pregnant, true, {28, 28, 28}, {-1, -1, -1}},
    {Nutrient::calcium, Stage::pregnant, false, {1300, 1000, 1000}, {3000, 2500, 2500}},
    {Nutrient::iron, Stage::pregnant, false, {27, 27, 27}, {45, 45, 45}},
    {Nutrient::magnesium, Stage::pregnant, false, {400, 350, 360}, {-1, -1, -1}},
    {Nutrient::zinc, Stage::pregnant, false, {12, 11, 11}, {34, 40, 40}},
    {Nutrient::vitamin_c, Stage::pregnant, false, {80, 85, 85}, {1800, 2000, 2000}},
    {Nutrient::vitamin_a, Stage::pregnant, false, {750, 770, 770}, {2800, 3000, 3000}},
    {Nutrient::vitamin_d, Stage::pregnant, false, {15, 15, 15}, {100, 100, 100}},
    {Nutrient::folate, Stage::pregnant, false, {600, 600, 600}, {-1, -1, -1}},
    {Nutrient::vitamin_b12, Stage::pregnant, false, {2.6, 2.6, 2.6}, {-1, -1, -1}},
    {Nutrient::sodium, Stage::pregnant, true, {1500, 1500, 1500}, {2300, 2300, 2300}},
    {Nutrient::potassium, Stage::pregnant, true, {2600, 2900, 2900}, {-1, -1, -1}},
    {Nutrient::protein, Stage::nursing, false, {71, 71, 71}, {-1, -1, -1}},
    {Nutrient::carbohydrate, Stage::nursing, false, {210, 210, 210}, {-1, -1, -1}},
    {Nutrient::fiber, Stage::nursing, true, {29, 29, 29}, {-1, -1, -1}},
    {Nutrient::calcium, Stage::nursing, false, {1300, 1000, 1000}, {3000, 2500, 2500}},
    {Nutrient::iron, Stage::nursing, false, {10, 9, 9}, {45, 45, 45}},
    {Nutrient::magnesium, Stage::nursing, false, {360, 310, 320}, {-1, -1, -1}},
    {Nutrient::zinc, Stage::nursing, false, {13, 12, 12}, {34, 40, 40}},
    {Nutrient::vitamin_c, Stage::nursing, false, {115, 120, 120}, {1800, 2000, 2000}},
    {Nutrient::vitamin_a, Stage::nursing, false, {1200, 1300, 1300}, {2800, 3000, 3000}},
    {Nutrient::vitamin_d, Stage::nursing, false, {15, 15, 15}, {100, 100, 100}},
    {Nutrient::folate, Stage::nursing, false, {500, 500, 500}, {-1, -1, -1}},
    {Nutrient::vitamin_b12, Stage::nursing, false, {2.8, 2.8, 2.8}, {-1, -1, -1}},
    {Nutrient::sodium, Stage::nursing, true, {1500, 1500, 1500}, {2300, 2300, 2300}},
    {Nutrient::potassium, Stage::nursing, true, {2500, 2800, 2800}, {-1, -1, -1}},
}};

std::optional<std::size_t> bracket(int months) {
  constexpr int a_year = 12;
  std::optional<std::size_t> out;
  for (std::size_t i = 0; i < begins.size(); ++i) {
    if (months >= begins.at(i) * a_year) {
      out = i;
    }
  }
  return out;
}

std::optional<Intake> intake_of(Nutrient nutrient, std::size_t age, Stage stage) {
  constexpr std::size_t youngest = 3; // of the brackets: 14 to 18 years
  const auto row = std::find_if(stages.begin(), stages.end(), [&](const StageRow& one) {
    return one.nutrient == nutrient && one.stage == stage;
  });
  if (row == stages.end() || age < youngest || age - youngest >= row->per_day.size()) {
    return std::nullopt;
  }
  const double value = row->per_day.at(age - youngest);
  const double upper = row->upper.at(age - youngest);
  return Intake{value, value, row->adequate, upper < 0 ? std::nullopt : std::optional(upper)};
}

} // namespace

std::optional<Intake> intake(Nutrient nutrient, int months, std::optional<Sex> sex,
                             std::optional<Stage> stage) {
  const auto age = bracket(months);
  if (stage) {
    return age ? intake_of(nutrient, *age, *stage) : std::nullopt;
  }
  std::optional<Intake> out;
  for (const Row& row : table) {
    if (!age || row.nutrient != nutrient || (sex && row.sex != *sex)) {
      continue;
    }
    const double value = row.per_day.at(*age);
    const double upper = row.upper.at(*age);
    if (!out) {
      out = Intake{value, value, row.adequate, upper < 0 ? std::nullopt : std::optional(upper)};
    }
    out->least = std::min(out->least, value);
    out->most = std::max(out->most, value);
    if (out->upper) {
      out->upper = std::min(*out->upper, upper);
    }
  }
  return out;
}

std::optional<EnergyShares> energy_shares(int months) {
  const auto age = bracket(months);
  if (!age) {
    return std::nullopt;
  }
  const int years = begins.at(*age);
  if (years < 4) {
    return EnergyShares{30, 40, 45, 65, 5, 20};
  }
  return years < 19 ? EnergyShares{25, 35, 45, 65, 10, 30} : EnergyShares{20, 35, 45, 65, 10, 35};
}

} // namespace manciple::nutrition
