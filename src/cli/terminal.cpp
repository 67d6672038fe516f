#include "cli/terminal.h"

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

}  // namespace

Terminal::Terminal(bool isLineInput) : isKeyed_(!isLineInput && ::isatty(STDIN_FILENO) == 1 && ::isatty(STDOUT_FILENO) == 1) {}

void Terminal::say(const std::string& text, std::size_t hang) {
  std::string line, word;
  const auto flush = [&] {
    if (!line.empty() && widthOf(line) + 1 + widthOf(word) > kColumns && line.find_first_not_of(' ') != std::string::npos) {
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

void Terminal::ask(const std::string& text) { std::cout << text << std::flush; }

std::optional<std::string> Terminal::readLine() {
  std::string line;
  if (!std::getline(std::cin, line)) return std::nullopt;
  if (!line.empty() && line.back() == '\r') line.pop_back();
  return line;
}

std::optional<std::string> Terminal::readKey() {
  if (!isKeyed_) return readLine();
  char key = 0;
  {
    const KeyMode mode;
    if (::read(STDIN_FILENO, &key, 1) != 1 || key == 4) return std::nullopt;  // 4: the end of input, as Ctrl+D
  }
  const std::string first(1, key);
  std::cout << first << std::flush;
  if (std::isdigit(static_cast<unsigned char>(key)) != 0) {
    const auto rest = readLine();
    return rest ? std::optional(first + *rest) : std::nullopt;
  }
  std::cout << '\n';
  return first;
}

}  // namespace stile::cli
