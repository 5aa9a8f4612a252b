#include "prep/reheat.hpp"

#include "text/phrases.hpp"
#include "text/words.hpp"

namespace manciple::prep {

std::string reheat_words(const kitchen::Recipe& recipe, bool frozen) {
  if (frozen || !text::says(recipe.reheat, {"frozen", "thaw~"})) {
    return recipe.reheat;
  }
  std::string out;
  std::string_view rest = recipe.reheat;
  while (!rest.empty()) {
    const std::size_t end = rest.find_first_of(",;");
    std::string clause(text::trim(rest.substr(0, end)));
    rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
    constexpr std::string_view from_frozen = "from frozen";
    if (text::says(clause, {"thaw~"}) || text::lower(clause) == from_frozen) {
      continue;
    }
    if (const auto at = text::lower(clause).find(from_frozen); at != std::string::npos) {
      clause.erase(at, from_frozen.size());
      clause = std::string(text::trim(clause));
    }
    if (out.empty() && clause.starts_with("then ")) {
      clause.erase(0, 5);
    }
    out += (out.empty() ? "" : ", ") + clause;
  }
  return text::capitalized(std::move(out));
}

bool is_reheated_frozen(const kitchen::Recipe& recipe) {
  return text::says(recipe.reheat, {"from frozen"}) && !text::says(recipe.reheat, {"thaw~"});
}

} // namespace manciple::prep
