// Run by the build: reads the reference files, checks them as strictly as a user's, and writes them
// as tables of C++ for the program to carry.
#include "foods/errors.hpp"
#include "foods/load.hpp"
#include "foods/record.hpp"
#include "text/diagnostics.hpp"
#include "text/source.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <map>

namespace {

using namespace manciple;

// Bytes as the inside of a C++ string literal; three octal digits never run into what follows.
std::string literal(std::string_view bytes) {
  std::string out;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte < 0x7F && c != '"' && c != '\\' && c != '?') {
      out += c;
    } else {
      out += fmt::format("\\{:03o}", byte);
    }
  }
  return out;
}

// The figures of the nutrient table by number: after the header, a number, a description that may
// hold commas in quotes, and a column each; empty where nothing was measured.
std::map<int, foods::Nutrients> nutrients_in(const std::string& path) {
  std::map<int, foods::Nutrients> out;
  std::ifstream in(path);
  std::vector<std::string> header;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line.front() == '#') {
      continue;
    }
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (const char c : line) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.emplace_back();
      } else {
        cells.back() += c;
      }
    }
    if (header.empty()) {
      header = cells;
      continue;
    }
    foods::Nutrients& row = out[std::stoi(cells.front())];
    for (const foods::Nutrient nutrient : foods::all_nutrients()) {
      const auto column =
          std::find(header.begin(), header.end(), foods::facts(nutrient).column) - header.begin();
      const std::string& cell = cells.at(static_cast<std::size_t>(column));
      row[nutrient] = cell.empty() ? std::nullopt : std::optional(std::stod(cell));
    }
  }
  return out;
}

} // namespace

int main(int argc, char** argv) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::vector<foods::Defined> all;
  const std::map<int, foods::Nutrients> measured =
      argc > 2 ? nutrients_in(argv[2]) : std::map<int, foods::Nutrients>();
  const auto of_number = [&](int number) {
    const auto found = measured.find(number);
    return found == measured.end() ? std::nullopt : std::optional(found->second);
  };
  for (int i = 3; i < argc; ++i) {
    if (const auto file = text::load(argv[i], text::disk(), sources, diagnostics)) {
      if (const auto node = text::parse_yaml(*file, sources, diagnostics)) {
        auto read = foods::read_foods(
            *node, [](std::string_view) { return static_cast<const foods::Food*>(nullptr); },
            diagnostics);
        std::move(read.begin(), read.end(), std::back_inserter(all));
      }
    }
  }
  std::sort(all.begin(), all.end(),
            [](const auto& a, const auto& b) { return a.food.name < b.food.name; });

  for (const foods::Defined& defined : all) {
    if (foods::is_assumed(defined.food)) {
      diagnostics.error(
          foods::errors::incomplete, defined.at,
          fmt::format(
              "'{}' needs 'safety': in the reference, neither a department nor a name decides",
              defined.food.name),
          "for example 'safety: {classes: [raw meat], source: common practice no source}'");
    }
  }

  std::map<std::string, std::size_t> names;
  for (std::size_t i = 0; i < all.size(); ++i) {
    std::vector<std::string> claimed{all[i].food.name};
    claimed.insert(claimed.end(), all[i].food.aliases.begin(), all[i].food.aliases.end());
    for (const std::string& name : claimed) {
      const auto [first, fresh] = names.emplace(foods::normal_name(name), i);
      if (!fresh && first->second != i) {
        diagnostics
            .error(foods::errors::twice, all[i].at, fmt::format("'{}' names two foods", name))
            .note(all[first->second].at, "the other one");
      }
    }
  }
  for (foods::Defined& defined : all) {
    if (defined.food.usda) {
      defined.food.nutrients = of_number(*defined.food.usda);
    }
    if (defined.food.usda_cooked) {
      defined.food.cooked = of_number(*defined.food.usda_cooked);
    }
    for (foods::UsdaForm& form : defined.food.usda_forms) {
      form.nutrients = of_number(form.number);
    }
  }
  if (argc < 3 || diagnostics.errors() > 0) {
    fmt::print(stderr, "{}", text::render(diagnostics, sources));
    return 1;
  }

  std::string out = "#include \"foods/reference.hpp\"\n\nnamespace manciple::foods {\nnamespace {\n"
                    "using namespace std::string_view_literals;\n"
                    "constexpr std::string_view records[] = {\n";
  for (const foods::Defined& defined : all) {
    out += fmt::format("\"{}\"sv,\n", literal(foods::to_bytes(defined.food)));
  }
  out += "};\nconstexpr ReferenceName names[] = {\n";
  for (const auto& [name, record] : names) {
    out += fmt::format("{{\"{}\"sv, {}}},\n", literal(name), record);
  }
  out += "};\n} // namespace\nconst std::span<const ReferenceName> reference_names = names;\n"
         "const std::span<const std::string_view> reference_records = records;\n"
         "} // namespace manciple::foods\n";
  std::ofstream file(argv[1], std::ios::binary);
  file << out;
  file.close();
  return file ? 0 : 1;
}
