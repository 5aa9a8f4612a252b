#pragma once

#include "foods/book.hpp"

#include <string>
#include <vector>

namespace manciple::foods {

/// Every food of the reference, by name.
inline std::vector<Food> all_foods() {
  Book book;
  std::vector<Food> out;
  for (const std::string& name : book.food_names()) {
    out.push_back(book.get(*book.find(name)));
  }
  return out;
}

} // namespace manciple::foods
