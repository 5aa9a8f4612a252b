#include "text/nearest.hpp"

#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cstdint>
#include <tuple>

namespace manciple::text {

std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t most) {
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> above(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) {
    above[j] = j;
  }
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    std::size_t least = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
      least = std::min(least, row[j]);
    }
    // A later row goes on from this one or, by a swap, from the one above, which was as far.
    if (least > most + 1) {
      return most + 1;
    }
    std::swap(before, above);
    std::swap(above, row);
  }
  return above[b.size()];
}

namespace {

// The letters of a name, whatever their order. One step of the edit distance takes one away and
// adds one at most.
std::uint64_t letters_of(std::string_view name) {
  std::uint64_t letters = 0;
  for (const char c : name) {
    letters |= std::uint64_t{1} << (static_cast<unsigned char>(c) % 64U);
  }
  return letters;
}

} // namespace

bool takes_away(std::string_view name) {
  return !taken_away(name).empty();
}

std::string_view taken_away(std::string_view name) {
  for (const std::string_view word : {"free", "without", "no", "vegan"}) {
    for (std::size_t at = name.find(word); at != std::string_view::npos;
         at = name.find(word, at + 1)) {
      const std::size_t end = at + word.size();
      const bool whole =
          (at == 0 || !is_letter(name[at - 1])) && (end == name.size() || !is_letter(name[end]));
      if (!whole) {
        continue;
      }
      if (word == "free") { // with the word before it
        std::size_t from = at == 0 ? 0 : at - 1;
        while (from > 0 && is_letter(name[from - 1])) {
          --from;
        }
        return name.substr(from, end - from);
      }
      return word == "vegan" ? word : name.substr(at);
    }
  }
  return {};
}

std::vector<std::string> nearest(std::string_view word, const std::vector<std::string_view>& names,
                                 std::size_t most) {
  std::vector<std::tuple<std::size_t, std::string_view>> found;
  const std::size_t far = std::max<std::size_t>(1, word.size() / 3);
  const std::uint64_t letters = letters_of(word);
  const std::string_view away = taken_away(word);
  for (const std::string_view name : names) {
    // A name that holds the word whole ("bean" in "black bean") is a good guess at any length.
    const bool holds = word.size() >= 3 && name.find(word) != std::string_view::npos;
    const std::size_t gap =
        name.size() > word.size() ? name.size() - word.size() : word.size() - name.size();
    if (name.find(away) == std::string_view::npos) {
      continue;
    }
    if (!holds && (gap > far ||
                   static_cast<std::size_t>(std::popcount(letters ^ letters_of(name))) > 2 * far)) {
      continue;
    }
    const std::size_t distance =
        holds ? std::min<std::size_t>(gap, far) : edit_distance(word, name, far);
    if (distance <= far) {
      found.emplace_back(distance, name);
    }
  }
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  std::vector<std::string> out;
  for (std::size_t i = 0; i < found.size() && i < most; ++i) {
    out.emplace_back(std::get<1>(found[i]));
  }
  return out;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string_view>& names) {
  const std::vector<std::string> near = nearest(word, names);
  std::string list;
  for (std::size_t i = 0; i < near.size(); ++i) {
    if (i > 0) {
      list += i + 1 == near.size() ? " or " : ", ";
    }
    list += near[i];
  }
  return list.empty() ? std::string() : fmt::format("did you mean {}?", list);
}

namespace {

// So many letters may be off.
std::size_t letters_off(std::string_view word) {
  constexpr std::size_t long_word = 8;
  return word.size() >= long_word ? 2 : 1;
}

// Word by word, where there are as many: "chicken taco" is no slip of "chicken back".
bool each_word_is_near(std::string_view phrase, std::string_view name) {
  const std::vector<std::string_view> said = split(phrase, ' ');
  const std::vector<std::string_view> meant = split(name, ' ');
  return said.size() != meant.size() ||
         std::equal(said.begin(), said.end(), meant.begin(), [](auto one, auto other) {
           return edit_distance(one, other, letters_off(one)) <= letters_off(one);
         });
}

} // namespace

std::optional<std::string_view> slip_of(std::string_view word,
                                        const std::vector<std::string_view>& names) {
  constexpr std::size_t short_word = 3;
  const std::size_t most = letters_off(word);
  std::optional<std::string_view> best;
  std::size_t nearest_so_far = most + 1;
  for (const std::string_view name : names) {
    const std::size_t gap =
        name.size() > word.size() ? name.size() - word.size() : word.size() - name.size();
    const bool same_letters =
        gap == 0 && std::is_permutation(word.begin(), word.end(), name.begin());
    if (gap > most || word.size() < short_word || (word.size() == short_word && !same_letters)) {
      continue;
    }
    const std::size_t distance = edit_distance(word, name, most);
    if (distance > 0 && distance < nearest_so_far && each_word_is_near(word, name)) {
      nearest_so_far = distance;
      best = name;
    }
  }
  return best;
}

} // namespace manciple::text
