#pragma once

#include <optional>
#include <string>
#include <vector>

/// What the program does for each command. Each gives the exit code: 0 good, 1 the input has
/// errors.
namespace manciple::cli {

/// `seconds` for the search of the cheapest list.
int build(const std::string& plan, std::string out, std::optional<double> seconds);
int check(const std::vector<std::string>& files);
int why(const std::string& food, const std::string& plan);
int food(const std::string& name);
int convert(const std::string& amount, const std::string& to);
int prices(const std::optional<std::string>& food, const std::string& plan);
int day(const std::string& date, const std::string& plan);
int prep(const std::string& plan);

} // namespace manciple::cli
