// The same numbers on every machine: std::mt19937 is, the library's distributions are not.
#pragma once

#include <random>
#include <string>
#include <vector>

namespace stile::differential {

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}

  int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }
  int between(int low, int high) { return low + below(high - low + 1); }
  bool oneIn(int count) { return below(count) == 0; }
  std::string oneOf(const std::vector<std::string>& words) {
    return words[static_cast<std::size_t>(below(static_cast<int>(words.size())))];
  }
  /// A number of `digits` digits, padded.
  std::string padded(int low, int high, std::size_t digits) {
    const std::string text = std::to_string(between(low, high));
    return text.size() >= digits ? text : std::string(digits - text.size(), '0') + text;
  }

 private:
  std::mt19937 engine_;
};

}  // namespace stile::differential
