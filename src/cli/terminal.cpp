#include "cli/terminal.h"

#include <poll.h>
#include <termios.h>
#include <unistd.h>

#include <cctype>
#include <iostream>

namespace stile::cli {
namespace {

constexpr std::size_t kColumns = 78;

/// Bytes of a text that begin a letter.
std::size_t widthOf(const std::string& text) {
  std::size_t width = 0;
  for (const char c : text)
    if ((static_cast<unsigned char>(c) & 0xC0u) != 0x80u) ++width;
  return width;
}

/// Takes keys as they are pressed for as long as it lives.
class KeyMode {
 public:
  KeyMode() {
    isOn_ = ::tcgetattr(STDIN_FILENO, &before_) == 0;
    if (!isOn_) return;
    termios keys = before_;
    keys.c_lflag &= ~static_cast<tcflag_t>(ICANON | ECHO);
    // Ctrl+C comes as a key: ended by a signal, the terminal would stay without an echo.
    keys.c_cc[VINTR] = _POSIX_VDISABLE;
    ::tcsetattr(STDIN_FILENO, TCSANOW, &keys);
  }
  ~KeyMode() {
    if (isOn_) ::tcsetattr(STDIN_FILENO, TCSANOW, &before_);
  }
  KeyMode(const KeyMode&) = delete;
  KeyMode& operator=(const KeyMode&) = delete;

 private:
  termios before_{};
  bool isOn_ = false;
};

constexpr char kCtrlC = 3, kCtrlD = 4, kBackspace = 8, kEscape = 27, kErase = 127;

std::optional<char> byteFromKeyboard() {
  char byte = 0;
  return ::read(STDIN_FILENO, &byte, 1) == 1 ? std::optional(byte) : std::nullopt;
}

/// Whether more bytes of the same key press are there.
bool hasMore() {
  pollfd input{STDIN_FILENO, POLLIN, 0};
  constexpr int kMilliseconds = 20;  // of one key press the bytes come together
  return ::poll(&input, 1, kMilliseconds) == 1;
}

/// A printable key, Enter or Backspace; nullopt at the end (Ctrl+C, Ctrl+D). Arrows and other keys that
/// send several bytes are passed over whole, or their digits would pass for answers.
std::optional<char> nextKey() {
  while (true) {
    const auto key = byteFromKeyboard();
    if (!key || *key == kCtrlC || *key == kCtrlD) return std::nullopt;
    const auto code = static_cast<unsigned char>(*key);
    if (*key == kEscape) {
      while (hasMore()) {
        const auto part = byteFromKeyboard();
        if (!part || (std::isalpha(static_cast<unsigned char>(*part)) != 0 && *part != 'O') || *part == '~')
          break;
      }
      continue;
    }
    const bool isEditing = *key == '\n' || *key == '\r' || *key == kBackspace || *key == kErase;
    if (isEditing || (code >= ' ' && code < kErase)) return *key;
  }
}

}  // namespace

Terminal::Terminal(bool isLineInput)
    : isKeyed_(!isLineInput && ::isatty(STDIN_FILENO) == 1 && ::isatty(STDOUT_FILENO) == 1) {}

void Terminal::say(const std::string& text, std::size_t hang) {
  std::string line, word;
  const auto flush = [&] {
    if (!line.empty() && widthOf(line) + 1 + widthOf(word) > kColumns &&
        line.find_first_not_of(' ') != std::string::npos) {
      std::cout << line << '\n';
      line = std::string(hang, ' ') + word;
    } else {
      const bool isIndent = line.find_first_not_of(' ') == std::string::npos;
      line += (line.empty() || isIndent ? "" : " ") + word;
    }
    word.clear();
  };
  const std::size_t indent = text.find_first_not_of(' ');
  line = std::string(indent == std::string::npos ? 0 : indent, ' ');
  for (std::size_t i = line.size(); i < text.size(); ++i) {
    if (text[i] != ' ')
      word += text[i];
    else if (!word.empty())
      flush();
  }
  if (!word.empty()) flush();
  std::cout << line << '\n' << std::flush;
}

void Terminal::ask(const std::string& text) {
  // Before the question is shown, not before its answer is read: an answer typed at once must count.
  if (isKeyed_) ::tcflush(STDIN_FILENO, TCIFLUSH);
  std::cout << text << std::flush;
}

std::optional<std::string> Terminal::readLine() {
  std::string line;
  if (!std::getline(std::cin, line)) return std::nullopt;
  if (!line.empty() && line.back() == '\r') line.pop_back();
  return line;
}

std::optional<std::string> Terminal::readKey(bool isDigitWhole) {
  if (!isKeyed_) return readLine();
  const KeyMode mode;
  return readKeys(isDigitWhole);
}

/// A letter or sign by itself, or a line that begins with a digit and can be corrected.
std::optional<std::string> Terminal::readKeys(bool isDigitWhole) {
  std::string line;
  while (true) {
    const auto key = nextKey();
    if (!key) return std::nullopt;
    if (*key == kErase || *key == kBackspace) {
      if (line.empty()) continue;
      line.pop_back();
      std::cout << "\b \b" << std::flush;
      continue;
    }
    const bool isEnter = *key == '\n' || *key == '\r';
    if (!isEnter) {
      line += *key;
      std::cout << *key << std::flush;
    }
    const bool isLine =
        std::isdigit(static_cast<unsigned char>(line.empty() ? '\n' : line.front())) != 0 && !isDigitWhole;
    if (isLine && !isEnter) continue;
    std::cout << '\n' << std::flush;
    return line;
  }
}

}  // namespace stile::cli
