#include "cli/passphrase.h"

#include <fcntl.h>
#include <termios.h>
#include <unistd.h>

#include <cerrno>

namespace stile::cli {
namespace {

using base::Failure;
using base::FailureKind;

constexpr std::size_t kMostBytes = 1024;

base::Result<std::string> lineFrom(int fd) {
  std::string line;
  char c = 0;
  while (line.size() < kMostBytes) {
    const ssize_t got = ::read(fd, &c, 1);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return Failure{FailureKind::Usage, "--passphrase-fd " + std::to_string(fd) + ": nothing can be read from this descriptor"};
    if (got == 0 || c == '\n') break;
    line += c;
  }
  if (!line.empty() && line.back() == '\r') line.pop_back();
  if (line.empty()) return Failure{FailureKind::Secret, "no passphrase was given"};
  return line;
}

/// The terminal without echo; put back when it goes away.
class QuietTerminal {
 public:
  QuietTerminal() : file_(::open("/dev/tty", O_RDWR | O_CLOEXEC)) {
    if (file_ < 0 || ::tcgetattr(file_, &before_) != 0) return;
    termios quiet = before_;
    quiet.c_lflag &= ~static_cast<tcflag_t>(ECHO);
    isQuiet_ = ::tcsetattr(file_, TCSAFLUSH, &quiet) == 0;
  }
  ~QuietTerminal() {
    if (isQuiet_) ::tcsetattr(file_, TCSAFLUSH, &before_);
    if (file_ >= 0) ::close(file_);
  }
  QuietTerminal(const QuietTerminal&) = delete;
  QuietTerminal& operator=(const QuietTerminal&) = delete;

  base::Result<std::string> ask(const std::string& prompt) {
    if (!isQuiet_) return Failure{FailureKind::Secret, "there is no terminal to ask for the passphrase; give it with --passphrase-fd N"};
    const auto show = [this](const std::string& text) { return ::write(file_, text.data(), text.size()) >= 0; };
    if (!show(prompt + ": ")) return Failure{FailureKind::Secret, "the terminal cannot be written"};
    auto line = lineFrom(file_);
    show("\n");
    return line;
  }

 private:
  int file_;
  bool isQuiet_ = false;
  termios before_{};
};

}  // namespace

base::Result<std::string> readPassphrase(int fd, const std::string& prompt) {
  if (fd >= 0) return lineFrom(fd);
  QuietTerminal terminal;
  return terminal.ask(prompt);
}

base::Result<std::string> readNewPassphrase(int fd, const std::string& prompt) {
  if (fd >= 0) return lineFrom(fd);
  QuietTerminal terminal;
  auto first = terminal.ask(prompt);
  if (!first) return first;
  auto second = terminal.ask(prompt + ", once more");
  if (second && second.value() != first.value()) return Failure{FailureKind::Secret, "the two passphrases differ; nothing was changed"};
  return second;
}

}  // namespace stile::cli
