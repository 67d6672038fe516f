// Counting what an evaluation uses up, and the error that ends it. For src/expression only.
#pragma once

#include <string>

#include "expression/environment.h"
#include "expression/syntax.h"

namespace stile::expression {

/// Thrown within the evaluator and caught by Expression::evaluate(), which makes an issue of it.
struct EvaluationError {
  std::string message;
  std::string remedy;
  const Syntax* at = nullptr;
};

class Budget {
 public:
  explicit Budget(const EvaluationLimits& limits) : limits_(limits) {}

  /// What is being evaluated, for the error's place.
  const Syntax* at = nullptr;

  void step(std::size_t count = 1) {
    steps_ += count;
    if (steps_ > limits_.steps) exceeded("steps", limits_.steps);
  }
  /// Comparing two items or bytes of text: cheap, so many of them make one step.
  void compare(std::size_t bytes = 1) {
    small_ += 1 + bytes / kBytesPerComparison;
    if (small_ < kComparisonsPerStep) return;
    step(small_ / kComparisonsPerStep);
    small_ = 0;
  }
  /// Reading through a text of so many bytes.
  void scan(std::size_t bytes) { step(1 + bytes / kBytesPerStep); }
  void items(std::size_t count) {
    if (count > limits_.items) exceeded("items in one collection", limits_.items);
  }
  /// A text of so many bytes is going to be made.
  void text(std::size_t bytes) {
    if (bytes > limits_.textLength) exceeded("bytes in one text", limits_.textLength);
    text_ += bytes;
    if (text_ > limits_.textBytes) exceeded("bytes of text", limits_.textBytes);
    scan(bytes);
  }
  const EvaluationLimits& limits() const { return limits_; }

 private:
  static constexpr std::size_t kComparisonsPerStep = 16;
  static constexpr std::size_t kBytesPerComparison = 64;
  static constexpr std::size_t kBytesPerStep = 256;

  [[noreturn]] void exceeded(const char* what, std::size_t limit) const {
    throw EvaluationError{"the expression needs more than " + std::to_string(limit) + " " + what,
                          "make it simpler, or ask for a smaller part of the resource", at};
  }

  EvaluationLimits limits_;
  std::size_t steps_ = 0;
  std::size_t small_ = 0;
  std::size_t text_ = 0;
};

}  // namespace stile::expression
