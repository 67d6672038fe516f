#include "interview/threshold.h"

#include <cctype>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace stile::interview {
namespace {

/// The words, numbers and signs of a condition. It was compiled before, so it is well formed.
std::vector<std::string> tokensOf(std::string_view text) {
  std::vector<std::string> tokens;
  const auto isWord = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '.'; };
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    std::size_t end = at + 1;
    if (std::isspace(static_cast<unsigned char>(c)) != 0) {
      at = end;
      continue;
    }
    if (c == '\'') {
      while (end < text.size() && text[end] != '\'') end += text[end] == '\\' ? 2u : 1u;
      ++end;
    } else if (isWord(c) || c == '%' || c == '@') {
      while (end < text.size() && isWord(text[end])) ++end;
    } else if ((c == '<' || c == '>' || c == '!') && end < text.size() && text[end] == '=') {
      ++end;
    }
    tokens.emplace_back(text.substr(at, end - at));
    at = end;
  }
  return tokens;
}

bool isComparison(const std::string& token) {
  static const std::set<std::string> kSigns{"<", "<=", ">", ">=", "=", "!="};
  return kSigns.count(token) != 0;
}

bool isArithmetic(const std::string& token) { return token == "+" || token == "-" || token == "*" || token == "/"; }

class ThresholdReader {
 public:
  ThresholdReader(std::string_view text, const facts::Definition& fact, Thresholds& thresholds)
      : tokens_(tokensOf(text)), fact_(fact), thresholds_(thresholds) {}

  void read() {
    const std::string name = "%" + fact_.id;
    for (std::size_t i = 0; i < tokens_.size(); ++i)
      if (tokens_[i] == name) readUse(i);
  }

 private:
  const std::string& token(std::size_t at) const {
    static const std::string kNone;
    return at < tokens_.size() ? tokens_[at] : kNone;
  }

  void readUse(std::size_t at) {
    const std::string& before = at > 0 ? token(at - 1) : token(tokens_.size());
    std::optional<base::Rational> number;
    if (isComparison(token(at + 1)) && !isArithmetic(before)) {
      std::size_t next = at + 2;
      number = literalAt(next);
      if (isArithmetic(token(next))) number.reset();
    } else if (isComparison(before) && !isArithmetic(token(at + 1))) {
      number = literalBefore(at - 1);
    }
    if (number)
      thresholds_.numbers.push_back(*number);
    else
      thresholds_.isComplete = false;
  }

  /// A number with or without a unit; `at` moves past it.
  std::optional<base::Rational> literalAt(std::size_t& at) const {
    const auto number = base::Rational::parse(token(at++));
    if (!number) return std::nullopt;
    return inUnit(*number, token(at).starts_with('\'') ? token(at++) : std::string());
  }

  std::optional<base::Rational> literalBefore(std::size_t comparison) const {
    if (comparison == 0) return std::nullopt;
    std::size_t at = comparison - 1;
    const bool hasUnit = token(at).starts_with('\'');
    if (hasUnit && at == 0) return std::nullopt;
    if (hasUnit) --at;
    if (at > 0 && isArithmetic(token(at - 1))) return std::nullopt;
    return literalAt(at);
  }

  std::optional<base::Rational> inUnit(const base::Rational& number, const std::string& quoted) const {
    if (quoted.empty()) return number;
    const auto unit = base::parseUnit(quoted.substr(1, quoted.size() - 2));
    if (!unit) return std::nullopt;
    return base::convert(number, *unit, fact_.valueType.unit, fact_.valueType.analyte);
  }

  std::vector<std::string> tokens_;
  const facts::Definition& fact_;
  Thresholds& thresholds_;
};

}  // namespace

void addThresholds(const expression::Program& program, const facts::Definition& fact, Thresholds& thresholds) {
  ThresholdReader(program.text(), fact, thresholds).read();
}

}  // namespace stile::interview
