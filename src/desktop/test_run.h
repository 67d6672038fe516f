// A test as it is carried out: clock and counter. No window in it, and no clock of its own.
#pragma once

#include <optional>
#include <string>

#include "base/rational.h"
#include "rules/measuring.h"

namespace stile::desktop {

class TestRun {
 public:
  enum class State { Ready, Running, Done };

  explicit TestRun(const rules::Measuring& how);

  /// The one key: starts; while it runs, counts one or stops the clock; when it is done, nothing.
  void press(long long nowMs);
  /// Ends what ends by itself. True when that happened just now.
  bool tick(long long nowMs);
  /// Back to the beginning.
  void reset();

  State state() const { return state_; }
  bool isCounting() const;
  /// What is left of a countdown, or what has passed: "0:23", "9.8".
  std::string clock(long long nowMs) const;
  int counted() const { return counted_; }
  /// What the key does now: "Start", "Count one", "Stop"; "" when it is done.
  std::string keyWords() const;

  /// The value as somebody would type it: "14", "9.84 s". `metres`: length of the course or of a lap;
  /// `rest`: metres of the last lap. nullopt until it is done, for a wait, and without a length that is needed.
  std::optional<std::string> result(const std::optional<base::Rational>& metres, const std::optional<base::Rational>& rest) const;

 private:
  bool isCountdown() const;
  long long passed(long long nowMs) const;

  rules::Measuring how_;
  State state_ = State::Ready;
  long long begunMs_ = 0, tookMs_ = 0;
  int counted_ = 0;
};

}  // namespace stile::desktop
