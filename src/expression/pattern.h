// Regular expressions that cannot hang: matching takes a time linear in the text (RE2), and their
// size is limited. Used by matches() and by the regex of a questionnaire item.
//
// RE2 knows no look-ahead, look-behind and back references; a pattern with one is refused.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace stile::expression {

inline constexpr std::size_t kMaxPatternBytes = 4096;       ///< of the written pattern
inline constexpr std::size_t kMaxPatternMemory = 8u << 20;  ///< of the compiled pattern and its states

class Pattern {
 public:
  /// `.` matches line ends too (FHIRPath 2.0.0, 5.6 "matches"). On failure nullptr, and `reason`
  /// says why in words.
  static std::shared_ptr<const Pattern> compile(std::string_view text, std::string& reason,
                                                bool ignoresCase = false, bool isMultiline = false);
  ~Pattern();

  /// True when some part of the text matches.
  bool isFoundIn(std::string_view text) const;
  /// True when the whole text matches.
  bool matches(std::string_view text) const;
  /// Every match replaced by `substitution`, in which `$1` and `${name}` stand for groups and `$0`
  /// for the match. nullopt when the result would be longer than `longest` bytes.
  std::optional<std::string> replaceAll(std::string_view text, std::string_view substitution,
                                        std::size_t longest) const;

 private:
  Pattern();
  struct Compiled;
  std::unique_ptr<Compiled> compiled_;
};

}  // namespace stile::expression
