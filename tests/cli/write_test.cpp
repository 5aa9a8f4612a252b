// The output folder is replaced as a whole, whatever happens in between.
#include "cli/write.hpp"

#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <random>
#include <set>
#include <sstream>
#include <sys/resource.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace manciple::cli {
namespace {

namespace fs = std::filesystem;

// A folder of a test's own, with the output folder `out/p` in it.
class Write : public ::testing::Test {
protected:
  Write() : root_(fs::temp_directory_path() / ("manciple-write-" + std::to_string(::getpid()))) {
    fs::remove_all(root_);
    fs::create_directories(root_);
  }
  ~Write() override { fs::remove_all(root_); }
  Write(const Write&) = delete;
  Write& operator=(const Write&) = delete;

  // Outputs that all say `version`, big enough that writing them takes a while.
  static std::vector<emit::Output> outputs(const std::string& version) {
    std::vector<emit::Output> out;
    for (const char* name : {"list.txt", "list.md", "menu.md", "month.html", "result.json"}) {
      out.push_back({name, version + " " + std::string(20000, '.') + " " + version + "\n"});
    }
    return out;
  }
  [[nodiscard]] std::string write(const std::string& version) const {
    return write_all(folder().string(), outputs(version));
  }
  [[nodiscard]] fs::path folder() const { return root_ / "out/p"; }
  [[nodiscard]] const fs::path& root() const { return root_; }

  static std::string read(const fs::path& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
  }
  // The version that every output in the folder is of; empty where they are not of one, or not
  // whole.
  [[nodiscard]] std::string version() const {
    std::set<std::string> found;
    for (const emit::Output& output : outputs("")) {
      const std::string text = read(folder() / output.name);
      const std::string word = text.substr(0, text.find(' '));
      found.insert(text == outputs(word).front().content ? word : "");
    }
    return found.size() == 1 ? *found.begin() : "";
  }
  // Everything beside the output folder.
  [[nodiscard]] std::size_t leftovers() const {
    return static_cast<std::size_t>(
               std::distance(fs::directory_iterator(root_ / "out"), fs::directory_iterator())) -
           1;
  }

private:
  fs::path root_;
};

TEST_F(Write, MakesTheFolderAndReplacesItWhole) {
  EXPECT_EQ(write("one"), "");
  EXPECT_EQ(version(), "one");
  EXPECT_EQ(write("two"), "");
  EXPECT_EQ(version(), "two");
  EXPECT_EQ(leftovers(), 0U);
}

TEST_F(Write, LeavesWhatTheUserPutIntoTheFolder) {
  ASSERT_EQ(write("one"), "");
  std::ofstream(folder() / "notes.txt") << "mine";
  fs::create_directories(folder() / "photos/deep");
  std::ofstream(folder() / "photos/deep/a.jpg") << "picture";
  fs::permissions(folder() / "photos", fs::perms::owner_all);
  fs::create_symlink("/nowhere/at/all", folder() / "link");
  fs::create_directory(folder() / "empty");
  for (const char* version_now : {"two", "three"}) {
    ASSERT_EQ(write(version_now), "");
    EXPECT_EQ(version(), version_now);
    EXPECT_EQ(read(folder() / "notes.txt"), "mine");
    EXPECT_EQ(read(folder() / "photos/deep/a.jpg"), "picture");
    EXPECT_EQ(fs::status(folder() / "photos").permissions(), fs::perms::owner_all);
    EXPECT_EQ(fs::read_symlink(folder() / "link"), "/nowhere/at/all");
    EXPECT_TRUE(fs::is_directory(folder() / "empty"));
    EXPECT_EQ(fs::hard_link_count(folder() / "notes.txt"), 1U);
    EXPECT_EQ(leftovers(), 0U);
  }
}

TEST_F(Write, FollowsNoLinkThatSomeonePlanted) {
  std::ofstream(root() / "precious") << "precious";
  fs::create_directories(folder());
  for (const char* name : {"list.txt", ".list.txt.draft", "list.txt.tmp"}) {
    fs::create_symlink(root() / "precious", folder() / name);
  }
  ASSERT_EQ(write("one"), "");
  EXPECT_EQ(version(), "one");
  EXPECT_EQ(read(root() / "precious"), "precious");
  EXPECT_FALSE(fs::is_symlink(folder() / "list.txt"));
}

TEST_F(Write, RefusesAFolderThatIsALinkOrAFile) {
  fs::create_directories(root() / "elsewhere");
  fs::create_directories(root() / "out");
  fs::create_symlink(root() / "elsewhere", folder());
  EXPECT_NE(write("one").find("is a link"), std::string::npos);
  EXPECT_TRUE(fs::is_empty(root() / "elsewhere"));
  fs::remove(folder());
  std::ofstream(folder()) << "a file";
  EXPECT_NE(write("one").find("is not a folder"), std::string::npos);
  EXPECT_EQ(read(folder()), "a file");
  EXPECT_EQ(leftovers(), 0U);
}

TEST_F(Write, RefusesAFolderInThePlaceOfAnOutput) {
  ASSERT_EQ(write("one"), "");
  fs::remove(folder() / "menu.md");
  fs::create_directories(folder() / "menu.md/kept");
  EXPECT_NE(write("two").find("menu.md is a folder"), std::string::npos);
  EXPECT_TRUE(fs::exists(folder() / "menu.md/kept"));
  EXPECT_EQ(leftovers(), 0U);
}

TEST_F(Write, ChangesNothingWhereTheDiskIsFull) {
  ASSERT_EQ(write("one"), "");
  const pid_t child = ::fork();
  if (child == 0) {
    // A limit on the size of files stands for a full disk.
    (void)std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{10000, 10000};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    const bool refused = write("two").find("list.txt cannot be written") != std::string::npos;
    ::_exit(refused ? 0 : 1);
  }
  int status = 1;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_EQ(status, 0);
  EXPECT_EQ(version(), "one");
  EXPECT_EQ(leftovers(), 0U);
}

TEST_F(Write, TakesWholeFoldersOnly) {
  EXPECT_NE(write_all("/", outputs("one")), "");
  EXPECT_NE(write_all("/dev/full", outputs("one")), "");
  EXPECT_NE(write_all((root() / std::string(300, 'x')).string(), outputs("one")), "");
}

// Children that write one version after another are killed at moments of chance.
TEST_F(Write, LeavesNoMixtureWhenItIsKilled) {
  ASSERT_EQ(write("a"), "");
  fs::create_directories(folder() / "photos");
  std::ofstream(folder() / "photos/a.jpg") << "picture";
  std::mt19937 chance(20270301); // NOLINT: the same every time
  const char* rounds_wanted = std::getenv("MANCIPLE_KILLS");
  const int rounds = rounds_wanted != nullptr ? std::atoi(rounds_wanted) : 60;
  int unfinished = 0;
  std::array<int, 2> begun{};
  ASSERT_EQ(::pipe(begun.data()), 0);
  // On a busy machine it takes more of them until one comes in between.
  for (int round = 0; round < rounds || (unfinished == 0 && round < 20 * rounds); ++round) {
    const pid_t child = ::fork();
    if (child == 0) {
      // On a busy machine a child may not run for longer than the moment to wait.
      (void)!::write(begun[1], "!", 1);
      for (;;) {
        (void)write("a");
        (void)write("b");
      }
    }
    char told = 0;
    ASSERT_EQ(::read(begun[0], &told, 1), 1);
    std::this_thread::sleep_for(std::chrono::microseconds(chance() % 20000));
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    ASSERT_EQ(::waitpid(child, nullptr, 0), child);
    unfinished += leftovers() > 0 ? 1 : 0;
    ASSERT_TRUE(version() == "a" || version() == "b") << "round " << round;
    ASSERT_EQ(read(folder() / "photos/a.jpg"), "picture") << "round " << round;
  }
  ::close(begun[0]);
  ::close(begun[1]);
  EXPECT_GT(unfinished, 0) << "no kill came in between";
  ASSERT_EQ(write("c"), "");
  EXPECT_EQ(version(), "c");
  EXPECT_EQ(leftovers(), 0U);
  EXPECT_EQ(fs::hard_link_count(folder() / "photos/a.jpg"), 1U);
}

TEST_F(Write, OfTwoAtOnceLeavesTheWorkOfOne) {
  for (int round = 0; round < 20; ++round) {
    std::vector<pid_t> children;
    for (const char* mine : {"a", "b", "c"}) {
      children.push_back(::fork());
      if (children.back() == 0) {
        const bool good = write(mine).empty() && write(mine).empty();
        ::_exit(good ? 0 : 1);
      }
    }
    for (const pid_t child : children) {
      int status = 1;
      ASSERT_EQ(::waitpid(child, &status, 0), child);
      EXPECT_EQ(status, 0);
    }
    ASSERT_NE(version(), "") << "round " << round;
    EXPECT_EQ(leftovers(), 0U);
  }
}

} // namespace
} // namespace manciple::cli
