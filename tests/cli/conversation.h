// Talks to the real program through pipes or at a terminal: reads until it asks, answers, and can kill it.
#pragma once

#include <csignal>
#include <poll.h>
#include <pty.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <stdexcept>
#include <string>
#include <vector>

namespace stile::test {

class Conversation {
 public:
  enum class Through { Pipes, Terminal };

  explicit Conversation(std::vector<std::string> arguments, Through through = Through::Pipes) : through_(through) {
    ::signal(SIGPIPE, SIG_IGN);
    if (through == Through::Terminal) {
      process_ = ::forkpty(&from_, nullptr, nullptr, nullptr);
      if (process_ < 0) throw std::runtime_error("no terminal");
      if (process_ == 0) become(arguments);
      to_ = from_;
      return;
    }
    int in[2], out[2];
    if (::pipe(in) != 0 || ::pipe(out) != 0) throw std::runtime_error("no pipe");
    process_ = ::fork();
    if (process_ == 0) {
      ::dup2(in[0], STDIN_FILENO);
      ::dup2(out[1], STDOUT_FILENO);
      ::dup2(out[1], STDERR_FILENO);
      for (const int end : {in[0], in[1], out[0], out[1]}) ::close(end);
      become(arguments);
    }
    ::close(in[0]);
    ::close(out[1]);
    to_ = in[1];
    from_ = out[0];
  }
  ~Conversation() {
    if (process_ > 0) kill();
    ::close(from_);
  }
  Conversation(const Conversation&) = delete;
  Conversation& operator=(const Conversation&) = delete;

  /// What is said until something is asked for, or until the end.
  std::string listen() {
    std::string said;
    while (said.size() < 2 || said.substr(said.size() - 2) != ": ") {
      pollfd output{from_, POLLIN, 0};
      if (::poll(&output, 1, kPatience) == 0) throw std::runtime_error("neither a question nor an end:\n" + said);
      char part[4096];
      const ssize_t count = ::read(from_, part, sizeof part);
      if (count <= 0) {
        isOver_ = true;
        break;
      }
      said.append(part, static_cast<std::size_t>(count));
    }
    return said;
  }
  void answer(const std::string& line) { press(line + "\n"); }
  /// Keys without Enter.
  void press(const std::string& text) {
    if (::write(to_, text.data(), text.size()) < 0) isOver_ = true;
  }
  bool isOver() const { return isOver_; }

  /// From now on it can write to no file, as on a full disk. The one who starts it ignores SIGXFSZ.
  void fillDisk() {
    const rlimit none{0, 0};
    if (::prlimit(process_, RLIMIT_FSIZE, &none, nullptr) != 0) throw std::runtime_error("no limit");
  }

  /// As a power cut would end it.
  void kill() {
    ::kill(process_, SIGKILL);
    finish();
  }
  /// Ends the input and waits; the exit code, or -1.
  int finish() {
    if (process_ <= 0) return -1;
    if (through_ == Through::Pipes) ::close(to_);
    int status = 0;
    ::waitpid(process_, &status, 0);
    process_ = -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }

 private:
  static constexpr int kPatience = 240'000;  ///< milliseconds; nothing takes so long, however busy the machine

  [[noreturn]] static void become(std::vector<std::string>& arguments) {
    std::vector<char*> list;
    for (std::string& argument : arguments) list.push_back(argument.data());
    list.push_back(nullptr);
    ::execv(list[0], list.data());
    ::_exit(127);
  }

  Through through_;
  pid_t process_ = -1;
  int to_ = -1, from_ = -1;
  bool isOver_ = false;
};

}  // namespace stile::test
