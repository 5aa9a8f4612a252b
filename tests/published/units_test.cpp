// Unit factors against figures printed by others.
#include "foods/book.hpp"
#include "measure/units.hpp"
#include "published/compared.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <memory>

namespace manciple::measure {
namespace {

// NIST Handbook 44 (2023), Appendix C, "General Tables of Units of Measurement", and NIST Special
// Publication 811 (2008), Appendix B.9; figures from memory, to the digits printed there. Volumes
// in millilitres, masses in grams.
struct Printed {
  Unit unit;
  double value;
  double half_digit; // half of the last printed digit
};

constexpr std::array<Printed, 17> printed{{
    {Unit::us_gallon, 3785.411784, 5e-7},
    {Unit::us_quart, 946.352946, 5e-7},
    {Unit::us_pint, 473.176473, 5e-7},
    {Unit::us_cup, 236.588237, 5e-7},
    {Unit::us_fluid_ounce, 29.57353, 5e-6},
    {Unit::us_tablespoon, 14.78676, 5e-6},
    {Unit::us_teaspoon, 4.928922, 5e-7},
    {Unit::imperial_gallon, 4546.09, 5e-3},
    {Unit::imperial_fluid_ounce, 28.41306, 5e-6},
    {Unit::imperial_pint, 568.26125, 5e-6},
    {Unit::pound, 453.59237, 5e-6},
    {Unit::ounce, 28.349523125, 5e-10},
    {Unit::kilogram, 1000, 1e-12},
    {Unit::liter, 1000, 1e-12},
    {Unit::us_legal_cup, 240, 1e-12},
    {Unit::metric_cup, 250, 1e-12},
    {Unit::australian_tablespoon, 20, 1e-12},
}};

TEST(PublishedUnits, AgreeWithNist) {
  published::Compared compared("NIST Handbook 44 and SP 811");
  for (const Printed& p : printed) {
    compared.near(std::string(facts(p.unit).name), to_double(facts(p.unit).factor), p.value,
                  p.half_digit);
  }
}

// What the units program says of `from` in `to`; 0 without it.
double ask(const std::string& from, const std::string& to) {
  const std::string command = "units -t -o %.12g '" + from + "' '" + to + "' 2>/dev/null";
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  std::array<char, 64> line{};
  if (!pipe || fgets(line.data(), line.size(), pipe.get()) == nullptr) {
    return 0.0;
  }
  return std::atof(line.data());
}

// GNU units, which has its own table (its `brcup` and `austbsp` are not asked: they are other
// cups).
TEST(PublishedUnits, AgreeWithTheUnitsProgram) {
  published::Compared compared("GNU units");
  if (ask("1 kg", "g") != 1000) {
    GTEST_SKIP() << "the units program is not installed";
  }
  const std::array<std::pair<Unit, const char*>, 18> names{{
      {Unit::gram, "gram"},
      {Unit::kilogram, "kg"},
      {Unit::milligram, "mg"},
      {Unit::ounce, "oz"},
      {Unit::pound, "lb"},
      {Unit::milliliter, "ml"},
      {Unit::centiliter, "cl"},
      {Unit::deciliter, "dl"},
      {Unit::liter, "liter"},
      {Unit::us_teaspoon, "ustsp"},
      {Unit::us_tablespoon, "ustbsp"},
      {Unit::us_fluid_ounce, "usfloz"},
      {Unit::us_cup, "uscup"},
      {Unit::us_pint, "uspint"},
      {Unit::us_quart, "usquart"},
      {Unit::us_gallon, "usgallon"},
      {Unit::imperial_pint, "brpint"},
      {Unit::imperial_gallon, "brgallon"},
  }};
  for (const auto& [unit, name] : names) {
    const char* base = facts(unit).dimension == Dimension::mass ? "g" : "ml";
    const double theirs = ask(std::string("1 ") + name, base);
    compared.near(name, to_double(facts(unit).factor), theirs, theirs * 1e-9);
  }
}

// The weights of a cup in the table of cooking ingredients of GNU units, by how it was measured.
// They were weighed in another kitchen than ours (USDA's): two kitchens agree within 8 % on how
// much flour a cup scoops up, not better.
TEST(PublishedUnits, CupsWeighWhatTheUnitsProgramSays) {
  if (ask("1 kg", "g") != 1000) {
    GTEST_SKIP() << "the units program is not installed";
  }
  struct Cup {
    const char* food;
    foods::Form form;
    const char* theirs;
  };
  using foods::Form;
  const std::array<Cup, 15> cups{{
      {"all-purpose flour", Form::sifted, "flour_sifted"},
      {"all-purpose flour", Form::spooned, "flour_spooned"},
      {"all-purpose flour", Form::scooped, "flour_scooped"},
      {"cake flour", Form::sifted, "cakeflour_sifted"},
      {"bread flour", Form::plain, "breadflour_spooned"},
      {"cocoa powder", Form::plain, "cocoa_spooned"},
      {"granulated sugar", Form::plain, "sugar"},
      {"brown sugar", Form::packed, "brownsugar_light"},
      {"powdered sugar", Form::plain, "powdered_sugar"},
      {"butter", Form::plain, "butter"},
      {"honey", Form::plain, "honey"},
      {"molasses", Form::plain, "molasses"},
      {"cornstarch", Form::plain, "cornstarch"},
      {"whole milk", Form::plain, "milk"},
      {"sour cream", Form::plain, "sourcream"},
  }};
  published::Compared compared("GNU units, weight of a cup");
  foods::Book book;
  for (const Cup& cup : cups) {
    const auto id = book.find(cup.food);
    ASSERT_TRUE(id) << cup.food;
    const foods::VolumeWeight* weight = book.get(*id).volume(cup.form);
    ASSERT_NE(weight, nullptr) << cup.food;
    const double ours = to_double(weight->grams) * to_double(facts(Unit::us_cup).factor) /
                        to_double(facts(weight->unit).factor);
    const double theirs = ask(std::string("1 uscup ") + cup.theirs, "g");
    compared.near(std::string(cup.food) + ", " + cup.theirs, ours, theirs, 0.08 * theirs);
  }
}

} // namespace
} // namespace manciple::measure
