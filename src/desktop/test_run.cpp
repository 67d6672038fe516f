#include "desktop/test_run.h"

#include <algorithm>

namespace stile::desktop {

using base::Rational;
using rules::Gives;

namespace {

constexpr int kSecondMs = 1000, kMinute = 60, kTenthMs = 100;
/// A thumb on a watch is no finer than hundredths.
constexpr int kHundredthMs = 10;

std::string minutesAndSeconds(long long seconds) {
  const std::string rest = std::to_string(seconds % kMinute);
  return std::to_string(seconds / kMinute) + ":" + (rest.size() < 2 ? "0" : "") + rest;
}

}  // namespace

TestRun::TestRun(const rules::Measuring& how) : how_(how) {}

bool TestRun::isCountdown() const { return how_.seconds > 0; }

bool TestRun::isCounting() const { return how_.gives == Gives::Count || how_.gives == Gives::PerMinute || how_.gives == Gives::Laps; }

long long TestRun::passed(long long nowMs) const {
  return state_ == State::Ready ? 0 : state_ == State::Done ? tookMs_ : std::max(0ll, nowMs - begunMs_);
}

void TestRun::press(long long nowMs) {
  if (state_ == State::Ready) {
    begunMs_ = nowMs;
    state_ = State::Running;
    return;
  }
  // What comes after the end of a countdown no longer counts.
  if (state_ == State::Done || tick(nowMs)) return;
  if (isCounting()) {
    ++counted_;
  } else if (!isCountdown()) {
    tookMs_ = passed(nowMs);
    state_ = State::Done;
  }
}

bool TestRun::tick(long long nowMs) {
  if (state_ != State::Running) return false;
  const int end = isCountdown() ? how_.seconds : how_.upTo.value_or(0);
  if (end == 0 || passed(nowMs) < static_cast<long long>(end) * kSecondMs) return false;
  tookMs_ = static_cast<long long>(end) * kSecondMs;
  state_ = State::Done;
  return true;
}

void TestRun::reset() {
  state_ = State::Ready;
  tookMs_ = 0;
  counted_ = 0;
}

std::string TestRun::clock(long long nowMs) const {
  const long long ms = passed(nowMs);
  if (!isCountdown()) return std::to_string(ms / kSecondMs) + "." + std::to_string(ms % kSecondMs / kTenthMs);
  const long long left = std::max(0ll, static_cast<long long>(how_.seconds) * kSecondMs - ms);
  return minutesAndSeconds((left + kSecondMs - 1) / kSecondMs);
}

std::string TestRun::keyWords() const {
  if (state_ == State::Done) return {};
  if (state_ == State::Ready) return "Start";
  return isCounting() ? "Count one" : isCountdown() ? "Wait" : "Stop";
}

std::optional<std::string> TestRun::result(const std::optional<Rational>& metres, const std::optional<Rational>& rest) const {
  if (state_ != State::Done) return std::nullopt;
  const Rational seconds = *Rational::fraction(tookMs_ / kHundredthMs, kSecondMs / kHundredthMs);
  switch (how_.gives) {
    case Gives::Count: return std::to_string(counted_);
    case Gives::PerMinute: return Rational::fraction(static_cast<long long>(counted_) * kMinute, how_.seconds)->toText(0) + " /min";
    case Gives::Time: return seconds.toText(2) + " s";
    case Gives::Speed: {
      const auto speed = metres && seconds > Rational(0) ? Rational::divide(*metres, seconds) : std::nullopt;
      return speed ? std::optional(speed->toText(2) + " m/s") : std::nullopt;
    }
    case Gives::Laps: {
      const auto whole = metres ? Rational::multiply(*metres, Rational(counted_)) : std::nullopt;
      const auto all = whole ? Rational::add(*whole, rest.value_or(Rational(0))) : std::nullopt;
      return all ? std::optional(all->toText(1) + " m") : std::nullopt;
    }
    case Gives::Entry:
    case Gives::Wait: break;
  }
  return std::nullopt;
}

}  // namespace stile::desktop
