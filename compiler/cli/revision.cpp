#include "cli/revision.hpp"

#include "cli/run.hpp"
#include "kitchen/paths.hpp"
#include "text/printable.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <filesystem>

namespace manciple::cli {
namespace {

namespace fs = std::filesystem;
using Refusal = tl::unexpected<std::string>;

// The first line of what a program says is wrong, without the word before it.
std::string complaint(const Ran& ran) {
  if (ran.code == 127) {
    return "git cannot be run; is it installed?";
  }
  std::string_view line = std::string_view(ran.err).substr(0, ran.err.find('\n'));
  constexpr std::string_view fatal = "fatal: ";
  line.remove_prefix(line.starts_with(fatal) ? fatal.size() : 0);
  return fmt::format("git says: {}", line.empty() ? "nothing" : line);
}

bool is_hash(std::string_view text) {
  return text.size() >= 40 && std::all_of(text.begin(), text.end(), [](char c) {
           return text::is_digit(c) || (c >= 'a' && c <= 'f');
         });
}

// The commit that a revision names. It may be any text: it is never taken for an option.
tl::expected<std::string, std::string> commit_of(const std::string& revision,
                                                 const std::string& root) {
  const Ran here = run_program({"git", "-C", root, "rev-parse", "--git-dir"});
  if (here.code != 0) {
    return Refusal(complaint(here));
  }
  const Ran ran = run_program({"git", "-C", root, "rev-parse", "--verify", "--quiet",
                               "--end-of-options", revision + "^{commit}"});
  const std::string hash(text::trim(ran.out));
  if (ran.code != 0 || !is_hash(hash)) {
    return Refusal(fmt::format("git knows no revision '{}'", text::printable(revision)));
  }
  return hash;
}

struct Entry {
  std::string hash;
  std::string path; // below the root
};

// The files of a commit below the root that are of a house: "100644 blob HASH\tPATH", each ended by
// a zero byte. Links are none.
std::vector<Entry> entries_of(std::string_view listed, const std::string& folder) {
  std::vector<Entry> out;
  while (!listed.empty()) {
    const std::size_t end = std::min(listed.find('\0'), listed.size());
    const std::string_view entry = listed.substr(0, end);
    listed.remove_prefix(std::min(end + 1, listed.size()));
    const std::size_t tab = entry.find('\t');
    const auto words = text::split(entry.substr(0, tab), ' ');
    if (tab == std::string_view::npos || words.size() != 3 || !words[0].starts_with("100") ||
        !is_hash(words[2])) {
      continue;
    }
    const std::string path(entry.substr(tab + 1));
    const std::string top = path.substr(0, path.find('/'));
    if (top == "recipes" || top == "plans" || top == folder) {
      out.push_back({std::string(words[2]), path});
    }
  }
  return out;
}

// Takes "HASH blob SIZE\n", as many bytes and a line end off what `git cat-file --batch` says.
std::optional<std::string> take_blob(std::string_view& said) {
  const std::size_t line = said.find('\n');
  const auto words = text::split(said.substr(0, line), ' ');
  std::size_t size = 0;
  if (line == std::string_view::npos || words.size() != 3 ||
      std::from_chars(words[2].data(), words[2].data() + words[2].size(), size).ec != std::errc() ||
      size >= said.size() - line - 1) {
    return std::nullopt;
  }
  std::string blob(said.substr(line + 1, size));
  said.remove_prefix(line + 1 + size + 1);
  return blob;
}

} // namespace

bool is_in_git(const std::string& plan) {
  std::error_code none;
  for (fs::path at = fs::absolute(kitchen::root_of(plan), none).lexically_normal();;
       at = at.parent_path()) {
    if (fs::exists(at / ".git", none)) {
      return true;
    }
    if (at == at.parent_path()) {
      return false;
    }
  }
}

tl::expected<text::FilesInMemory, std::string> files_at(const std::string& revision,
                                                        const std::string& plan) {
  std::error_code none;
  const std::string root = kitchen::root_of(plan);
  const std::string below = fs::absolute(plan, none)
                                .lexically_normal()
                                .lexically_relative(fs::absolute(root, none).lexically_normal())
                                .string();
  const auto commit = commit_of(revision, root.empty() ? "." : root);
  if (!commit) {
    return Refusal(commit.error());
  }
  const std::string at = root.empty() ? "." : root;
  const Ran listed = run_program({"git", "-C", at, "ls-tree", "-r", "-z", *commit});
  if (listed.code != 0) {
    return Refusal(complaint(listed));
  }
  const auto entries = entries_of(listed.out, below.substr(0, below.find('/')));
  std::string hashes;
  for (const Entry& entry : entries) {
    hashes += entry.hash + "\n";
  }
  const Ran read = run_program({"git", "-C", at, "cat-file", "--batch"}, hashes);
  text::FilesInMemory out;
  std::string_view said = read.out;
  for (const Entry& entry : entries) {
    auto blob = take_blob(said);
    if (read.code != 0 || !blob) {
      return Refusal(complaint(read));
    }
    if (entry.path == below) {
      out.texts[plan] = *blob;
    }
    out.texts[kitchen::in_root(root, entry.path)] = std::move(*blob);
  }
  if (!out.exists(plan)) {
    return Refusal(fmt::format("there is no {} in revision '{}'", plan, revision));
  }
  return out;
}

} // namespace manciple::cli
