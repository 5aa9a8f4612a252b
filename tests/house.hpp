#pragma once

#include "cli/compile.hpp"
#include "text/diagnostics.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace manciple {

/// A house of files in a folder of its own, gone when the test is over. It begins with a household
/// of two, one shop, and nothing to cook.
class House {
public:
  House()
      : root_(std::filesystem::temp_directory_path() /
              ("manciple-" + std::to_string(::getpid()) + "-" + std::to_string(next()++))) {
    household("");
    write("plans/stores/corner.yaml", "shop: Corner\nprices: {onion: 1.00/lb, egg: 12 large 3.00, "
                                      "ground beef: 5.00/lb, all-purpose flour: 5 lb bag 3.00}\n");
  }
  ~House() {
    std::error_code ignored;
    std::filesystem::remove_all(root_, ignored);
  }
  House(const House&) = delete;
  House& operator=(const House&) = delete;

  void write(const std::string& path, const std::string& text) const {
    std::filesystem::create_directories((root_ / path).parent_path());
    std::ofstream(root_ / path, std::ios::binary) << text;
  }
  /// The household of two with more to say about it, and what the second person avoids.
  void household(const std::string& further, const std::string& avoids = "[]",
                 const std::string& appliances = "{burner: 4, oven: 1}") const {
    write("plans/household.yaml", "people:\n  - {name: Ada}\n  - {name: Ben, avoids: " + avoids +
                                      "}\nmeals: {breakfast: \"07:30\", dinner: \"18:30\"}\n"
                                      "appliances: " +
                                      appliances + "\n" + further);
  }
  void recipe(const std::string& slug, const std::string& ingredients,
              const std::string& further = {}) const {
    write("recipes/" + slug + ".yaml",
          "name: " + slug + "\nserves: 2\ningredients: [" + ingredients + "]\n" + further);
  }
  /// A plan of March 2027 with a trip on the 1st and each Saturday.
  void plan(const std::string& meals, const std::string& further = {}) const {
    plan_with_trip(meals, "[corner]", further);
  }
  /// The same with other stops.
  void plan_with_trip(const std::string& meals, const std::string& stops,
                      const std::string& further = {}) const {
    write("plans/p.yaml", "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {" + meals +
                              "}\ntrips:\n  - {date: 2027-03-01, stops: " + stops +
                              "}\n  - {every: Saturday, stops: " + stops + "}\n" + further);
  }

  std::optional<emit::Compiled> compile() {
    sources = {};
    diagnostics = {};
    return cli::compile((root_ / "plans/p.yaml").string(), sources, diagnostics);
  }
  /// The same, where errors fail the test.
  emit::Compiled good() {
    auto compiled = compile();
    EXPECT_TRUE(compiled) << said();
    return compiled ? std::move(*compiled) : emit::Compiled{};
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
  /// Whether a diagnostic of that number was given.
  [[nodiscard]] bool said(std::string_view number) const {
    for (const text::Diagnostic& d : diagnostics.all()) {
      if (d.code.number == number) {
        return true;
      }
    }
    return false;
  }
  [[nodiscard]] std::string root() const { return root_.string(); }

  text::Sources sources;
  text::Diagnostics diagnostics;

private:
  static int& next() {
    static int counter = 0;
    return counter;
  }
  std::filesystem::path root_;
};

} // namespace manciple
