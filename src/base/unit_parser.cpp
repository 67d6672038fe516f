// The grammar of UCUM units (UCUM 2.1, section 2), read from left to right.
#include "base/unit.h"
#include "base/unit_atom.h"

namespace stile::base {
namespace {

constexpr std::size_t kMaxUnitBytes = 120;
constexpr int kMaxParentheses = 8;
constexpr int kMaxExponent = 30;

class UnitParser {
 public:
  explicit UnitParser(std::string_view text) : text_(text) {}

  std::optional<Unit> parse() {
    auto unit = term(0);
    if (!unit || at_ != text_.size()) return std::nullopt;
    unit->text = std::string(text_);
    return unit;
  }

 private:
  bool isAt(char c) const { return at_ < text_.size() && text_[at_] == c; }
  bool isAtDigit() const { return at_ < text_.size() && text_[at_] >= '0' && text_[at_] <= '9'; }

  std::optional<Unit> term(int depth) {
    std::optional<Unit> result = isAt('/') ? Unit{"1"} : component(depth);
    while (result && (isAt('.') || isAt('/'))) {
      const bool isQuotient = text_[at_++] == '/';
      const auto next = component(depth);
      if (!next) return std::nullopt;
      result = isQuotient ? divide(*result, *next) : multiply(*result, *next);
    }
    return result;
  }

  std::optional<Unit> component(int depth) {
    if (isAt('(')) {
      if (depth >= kMaxParentheses) return std::nullopt;
      ++at_;
      auto inner = term(depth + 1);
      if (!inner || !isAt(')')) return std::nullopt;
      ++at_;
      return inner;
    }
    if (isAt('{')) {
      if (!annotation()) return std::nullopt;
      return Unit{"1"};
    }
    auto unit = simpleUnit();
    if (unit && isAt('{') && !annotation()) return std::nullopt;
    return unit;
  }

  /// An atom with its exponent, or a whole number.
  std::optional<Unit> simpleUnit() {
    const std::string_view rest = text_.substr(at_);
    std::optional<Unit> unit;
    if (rest.starts_with("10*") || rest.starts_with("10^")) {
      unit = unitAtom(rest.substr(0, 3));
      at_ += 3;
    } else if (isAtDigit()) {
      return wholeNumber();
    } else {
      unit = unitAtom(symbol());
    }
    if (!unit) return std::nullopt;
    const bool hasSign = isAt('+') || isAt('-');
    if (!hasSign && !isAtDigit()) return unit;
    const bool isMinus = isAt('-');
    if (hasSign) ++at_;
    const auto digits = exponentDigits();
    if (!digits) return std::nullopt;
    return power(*unit, isMinus ? -*digits : *digits);
  }

  std::optional<Unit> wholeNumber() {
    const std::size_t start = at_;
    while (isAtDigit()) ++at_;
    const auto number = Rational::parse(text_.substr(start, at_ - start));
    if (!number || *number == Rational()) return std::nullopt;
    // A text of its own, or combine() would take `1` for nothing at all.
    return Unit{std::string(text_.substr(start, at_ - start)), *number};
  }

  std::optional<int> exponentDigits() {
    if (!isAtDigit()) return std::nullopt;
    int value = 0;
    for (; isAtDigit(); ++at_) {
      value = value * 10 + (text_[at_] - '0');
      if (value > kMaxExponent) return std::nullopt;
    }
    return value;
  }

  /// Letters, `%` and bracketed parts, which may hold digits: `m[H2O]`.
  std::string_view symbol() {
    const std::size_t start = at_;
    bool isInBrackets = false;
    for (; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      const bool isLetter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
      if (c == '[') isInBrackets = true;
      if (!isInBrackets && !isLetter && c != '%') break;
      if (c == ']') isInBrackets = false;
    }
    return text_.substr(start, at_ - start);
  }

  bool annotation() {
    for (++at_; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      if (c == '}') {
        ++at_;
        return true;
      }
      if (c < '!' || c > '~' || c == '{') return false;
    }
    return false;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

}  // namespace

std::optional<Unit> parseUnit(std::string_view text) {
  if (text.empty() || text.size() > kMaxUnitBytes) return std::nullopt;
  const std::string_view code = unitCodeForCalendarWord(text);
  auto unit = UnitParser(code).parse();
  if (unit) unit->text = std::string(text);
  return unit;
}

}  // namespace stile::base
