// Plain questions and answers on a terminal or a pipe: lines in their order, no colours, nothing
// that moves the cursor, so that a screen reader can follow.
#pragma once

#include <optional>
#include <string>

namespace stile::cli {

class Terminal {
 public:
  /// One-keystroke answers where somebody sits at a keyboard, unless `isLineInput`.
  explicit Terminal(bool isLineInput);

  /// Prints a paragraph, broken at 78 columns; lines after the first are indented by `hang`.
  void say(const std::string& text, std::size_t hang = 0);
  /// Prints without a line's end: what is asked for. At a keyboard, what was typed before the question
  /// stood there is no answer to it.
  void ask(const std::string& text);
  /// A line without its end; nullopt at the end of the input.
  std::optional<std::string> readLine();
  /// One key where that is possible, else a line. A digit begins a line, unless one digit is all that
  /// can be said.
  std::optional<std::string> readKey(bool isDigitWhole = false);

 private:
  std::optional<std::string> readKeys(bool isDigitWhole);

  bool isKeyed_ = false;
};

}  // namespace stile::cli
