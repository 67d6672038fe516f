#include "expression/lexer.h"

#include <array>
#include <utility>

#include "base/date.h"
#include "base/utf8.h"
#include "expression/escape.h"

namespace stile::expression {
namespace {

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}
bool isWordStart(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_';
}

// Two characters first, so that `<=` is not read as `<`.
constexpr std::array<std::string_view, 23> kSymbols{"<=", ">=", "!=", "!~", "+", "-", "*", "/",
                                                    "&",  "|",  "<",  ">",  "=", "~", "(", ")",
                                                    "[",  "]",  "{",  "}",  ".", ",", "%"};

class Lexer {
 public:
  Lexer(std::string_view text, const Origin& origin, const std::string& subject, base::Issues& issues)
      : text_(text), origin_(origin), subject_(subject), issues_(issues) {}

  std::vector<Token> run() {
    while (skipBlank() && at_ < text_.size()) {
      start_ = at_;
      if (!token()) break;
    }
    if (hasFailed_) return {};
    start_ = at_;
    add(TokenKind::End, {});
    return std::move(tokens_);
  }

 private:
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }

  void add(TokenKind kind, std::string text) {
    tokens_.push_back({kind, std::move(text), start_, at_ - start_});
  }

  bool fail(std::size_t offset, std::string message, std::string remedy = {}) {
    issues_.error(origin_.placeOf(offset), subject_, std::move(message), std::move(remedy));
    hasFailed_ = true;
    return false;
  }

  /// White space and comments. False when a comment has no end.
  bool skipBlank() {
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (c == ' ' || c == '\t' || c == '\r' || c == '\n') {
        ++at_;
      } else if (c == '/' && peek(1) == '/') {
        while (at_ < text_.size() && text_[at_] != '\n' && text_[at_] != '\r') ++at_;
      } else if (c == '/' && peek(1) == '*') {
        const std::size_t end = text_.find("*/", at_ + 2);
        if (end == std::string_view::npos) return fail(at_, "this comment has no end", "close it with */");
        at_ = end + 2;
      } else {
        break;
      }
    }
    return true;
  }

  bool token() {
    const char c = text_[at_];
    if (isDigit(c)) return number();
    if (isWordStart(c)) return word(TokenKind::Identifier);
    if (c == '\'' || c == '`') return delimited();
    if (c == '@') return peek(1) == 'T' ? time() : date();
    if (c == '$') return dollar();
    for (const std::string_view symbol : kSymbols) {
      if (!text_.substr(at_).starts_with(symbol)) continue;
      at_ += symbol.size();
      add(TokenKind::Symbol, std::string(symbol));
      return true;
    }
    return strange();
  }

  bool strange() {
    if (text_[at_] == '"') return fail(at_, "texts do not stand in double quotes", "write 'single quotes'");
    if (text_[at_] == '!') return fail(at_, "! alone means nothing here", "write (…).not() or !=");
    const std::string piece(base::codePoints(text_.substr(at_, 4)).front());
    const auto byte = static_cast<unsigned char>(piece[0]);
    if (byte < 0x20 || byte == 0x7F) return fail(at_, "a control character is not part of an expression");
    return fail(at_, "the character " + piece + " is not part of an expression",
                byte >= 0x80 ? "outside quotes only plain ASCII is allowed" : "");
  }

  bool number() {
    while (isDigit(peek())) ++at_;
    // `1.toString()` is a number and a function, so the point needs a digit behind it.
    if (peek() == '.' && isDigit(peek(1))) {
      ++at_;
      while (isDigit(peek())) ++at_;
    }
    add(TokenKind::Number, std::string(text_.substr(start_, at_ - start_)));
    return true;
  }

  bool word(TokenKind kind) {
    const std::size_t from = at_;
    while (isWordStart(peek()) || isDigit(peek())) ++at_;
    add(kind, std::string(text_.substr(from, at_ - from)));
    return true;
  }

  bool dollar() {
    ++at_;
    word(TokenKind::Dollar);
    const std::string& name = tokens_.back().text;
    if (name == "this" || name == "index" || name == "total") return true;
    return fail(start_, "$" + name + " is not known", "FHIRPath has $this, $index and $total");
  }

  bool delimited() {
    const bool isString = text_[at_] == '\'';
    Delimited read = readDelimited(text_, at_);
    if (read.hasBadEscape) return fail(read.end, "this escape stands for no character");
    if (!read.isClosed) {
      return fail(at_, isString ? "this text has no end" : "this name has no end",
                  isString ? "close it with a single quote" : "close it with a backtick");
    }
    at_ = read.end;
    add(isString ? TokenKind::String : TokenKind::DelimitedIdentifier, std::move(read.text));
    return true;
  }

  /// Moves past `count` digits if they are there.
  bool digits(std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
      if (!isDigit(peek(i))) return false;
    }
    at_ += count;
    return true;
  }

  /// A separator and two digits, both or neither; the value must be at most `largest`.
  bool part(char separator, int largest) {
    if (peek() != separator || !isDigit(peek(1)) || !isDigit(peek(2))) return false;
    const int value = (peek(1) - '0') * 10 + (peek(2) - '0');
    if (value > largest) isInRange_ = false;
    at_ += 3;
    return true;
  }

  /// Hours with optional minutes, seconds and fraction. False when there are no hours.
  bool timeOfDay() {
    if (!isDigit(peek()) || !isDigit(peek(1))) return false;
    if ((peek() - '0') * 10 + (peek(1) - '0') > 23) isInRange_ = false;
    at_ += 2;
    if (part(':', 59) && part(':', 59) && peek() == '.' && isDigit(peek(1))) {
      ++at_;
      while (isDigit(peek())) ++at_;
    }
    return true;
  }

  /// `Z` or an offset such as `+10:00`. FHIRPath's largest offset is 14 hours.
  bool timeZone() {
    if (peek() == 'Z') {
      ++at_;
      return true;
    }
    const bool hasSign = peek() == '+' || peek() == '-';
    if (!hasSign || !isDigit(peek(1)) || !isDigit(peek(2)) || peek(3) != ':') return false;
    part(peek(), 14);
    if (!part(':', 59)) isInRange_ = false;
    return true;
  }

  bool time() {
    at_ += 2;
    isInRange_ = true;
    if (!timeOfDay() || !isInRange_) {
      return fail(start_, "this is not a time of day", "write @T14:30 or @T14:30:15");
    }
    return endOfTemporal(TokenKind::Time, 2);
  }

  bool date() {
    ++at_;
    isInRange_ = true;
    if (!digits(4)) return fail(start_, "this is not a date", "write @2026, @2026-01 or @2026-01-05");
    const bool hasMonth = part('-', 12);
    const bool hasDay = hasMonth && part('-', 31);
    if (!base::PartialDate::parse(text_.substr(start_ + 1, at_ - start_ - 1))) {
      return fail(start_, "there is no such date", "write @2026, @2026-01 or @2026-01-05");
    }
    const bool hasT = peek() == 'T';
    if (hasT) {
      ++at_;
      if (hasDay) timeOfDay();
    }
    const bool hasZone = timeZone();
    if (!isInRange_) return fail(start_, "there is no such time of day", "write @2026-01-05T14:30");
    return endOfTemporal(hasT || hasZone ? TokenKind::DateTime : TokenKind::Date, 1);
  }

  bool endOfTemporal(TokenKind kind, std::size_t prefix) {
    // `@2026-1` would otherwise silently be the year 2026 minus one.
    const bool hasMoreDigits = isDigit(peek()) || ((peek() == '-' || peek() == ':') && isDigit(peek(1)));
    if (hasMoreDigits) {
      return fail(start_, "this is not a date or a time",
                  "write months, days, hours and minutes with two digits; put spaces around a minus");
    }
    add(kind, std::string(text_.substr(start_ + prefix, at_ - start_ - prefix)));
    return true;
  }

  std::string_view text_;
  const Origin& origin_;
  const std::string& subject_;
  base::Issues& issues_;
  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  std::size_t start_ = 0;
  bool isInRange_ = true;
  bool hasFailed_ = false;
};

}  // namespace

std::vector<Token> tokensOf(std::string_view text, const Origin& origin, const std::string& subject,
                            base::Issues& issues) {
  return Lexer(text, origin, subject, issues).run();
}

}  // namespace stile::expression
