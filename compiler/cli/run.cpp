#include "cli/run.hpp"

#include <sys/wait.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <memory>
#include <poll.h>
#include <unistd.h>

namespace manciple::cli {
namespace {

constexpr int not_found = 127;

class Descriptor {
public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() { close(); }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  void close() {
    if (number_ >= 0) {
      ::close(number_);
      number_ = -1;
    }
  }
  [[nodiscard]] int number() const { return number_; }

private:
  int number_;
};

struct Pipe {
  Pipe() : Pipe(made()) {}
  Descriptor read;
  Descriptor write;

private:
  static std::array<int, 2> made() {
    std::array<int, 2> ends{-1, -1};
    return ::pipe2(ends.data(), O_CLOEXEC) == 0 ? ends : std::array<int, 2>{-1, -1};
  }
  explicit Pipe(const std::array<int, 2>& ends) : read(ends[0]), write(ends[1]) {}
};

// A file without a name, so that a program that first reads all and one that answers at once are
// served alike.
std::unique_ptr<std::FILE, int (*)(std::FILE*)> file_of(const std::string& input) {
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::tmpfile(), &std::fclose);
  if (file && (std::fwrite(input.data(), 1, input.size(), file.get()) != input.size() ||
               std::fflush(file.get()) != 0 || std::fseek(file.get(), 0, SEEK_SET) != 0)) {
    file.reset();
  }
  return file;
}

// Never returns.
[[noreturn]] void become(const std::vector<char*>& words, int in, int out, int err) {
  // What a hook of git is told of its repository is not where the house is.
  for (const char* name : {"GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX"}) {
    ::unsetenv(name);
  }
  ::setenv("LC_ALL", "C", 1);
  (void)std::signal(SIGPIPE, SIG_DFL);
  if (::dup2(in, STDIN_FILENO) >= 0 && ::dup2(out, STDOUT_FILENO) >= 0 &&
      ::dup2(err, STDERR_FILENO) >= 0) {
    ::execvp(words.front(), words.data());
  }
  ::_exit(not_found);
}

// Reads both until both have ended.
void read_both(Descriptor& out, Descriptor& err, Ran& ran) {
  std::array<char, std::size_t{1} << 15U> piece{};
  while (out.number() >= 0 || err.number() >= 0) {
    std::array<pollfd, 2> waiting{pollfd{out.number(), POLLIN, 0}, pollfd{err.number(), POLLIN, 0}};
    if (::poll(waiting.data(), waiting.size(), -1) < 0 && errno != EINTR) {
      return;
    }
    const auto take = [&](const pollfd& ready, Descriptor& from, std::string& into) {
      if (ready.revents == 0) {
        return;
      }
      const ssize_t size = ::read(from.number(), piece.data(), piece.size());
      if (size > 0) {
        into.append(piece.data(), static_cast<std::size_t>(size));
      } else if (size == 0 || errno != EINTR) {
        from.close();
      }
    };
    take(waiting[0], out, ran.out);
    take(waiting[1], err, ran.err);
  }
}

} // namespace

Ran run_program(const std::vector<std::string>& words, const std::string& input) {
  Ran ran;
  Pipe out;
  Pipe err;
  const auto in = file_of(input);
  std::vector<std::string> own = words;
  std::vector<char*> arguments;
  for (std::string& word : own) {
    arguments.push_back(word.data());
  }
  arguments.push_back(nullptr);
  const pid_t child = in && out.read.number() >= 0 && err.read.number() >= 0 ? ::fork() : -1;
  if (child == 0) {
    become(arguments, ::fileno(in.get()), out.write.number(), err.write.number());
  }
  if (child < 0) {
    ran.code = not_found;
    ran.err = std::strerror(errno);
    return ran;
  }
  out.write.close();
  err.write.close();
  read_both(out.read, err.read, ran);
  int status = 0;
  while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return ran;
}

} // namespace manciple::cli
