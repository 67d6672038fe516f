#include "json/syntax_check.h"

#include <algorithm>
#include <boost/json/stream_parser.hpp>
#include <optional>
#include <string>

#include "base/utf8.h"
#include "json/document.h"

namespace stile::json {
namespace {

constexpr std::string_view kSpace = " \t\r\n";

struct Trouble {
  std::size_t offset = 0;
  std::string message;
  std::string remedy;
};

char characterAt(std::string_view text, std::size_t offset) {
  return offset < text.size() ? text[offset] : '\0';
}

bool isLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool endsValue(char c) {
  return c == '"' || c == ']' || c == '}' || isLetter(c) || (c >= '0' && c <= '9');
}

bool startsValue(char c) {
  return c == '"' || c == '[' || c == '{' || c == '-' || isLetter(c) || (c >= '0' && c <= '9');
}

bool isNumberPart(char c) {
  return (c >= '0' && c <= '9') || c == '+' || c == '-' || c == '.' || c == 'e' || c == 'E';
}

/// What is still open at `offset` of a text that is well-formed up to there.
struct Open {
  std::string brackets;
  bool isInString = false;
};

Open openAt(std::string_view text, std::size_t offset) {
  Open open;
  for (std::size_t i = 0; i < offset; ++i) {
    const char c = text[i];
    if (open.isInString && c == '\\') {
      ++i;
    } else if (c == '"') {
      open.isInString = !open.isInString;
    } else if (!open.isInString && (c == '{' || c == '[')) {
      open.brackets += c;
    } else if (!open.isInString && (c == '}' || c == ']') && !open.brackets.empty()) {
      open.brackets.pop_back();
    }
  }
  return open;
}

/// The start of an escaped leading surrogate that ends at `end`, if one does.
std::optional<std::size_t> leadingSurrogateBefore(std::string_view text, std::size_t end) {
  if (end < 6 || text.substr(end - 6, 2) != "\\u") return std::nullopt;
  const bool isLeading = std::string_view("dD").find(text[end - 4]) != std::string_view::npos &&
                         std::string_view("89abAB").find(text[end - 3]) != std::string_view::npos;
  return isLeading ? std::optional(end - 6) : std::nullopt;
}

Trouble halfPairTrouble(std::size_t start) {
  return {start, "a \\u escape is half of a pair", "write the character itself, or both halves"};
}

Trouble troubleInString(std::string_view text, std::size_t offset) {
  const char c = characterAt(text, offset);
  if (c == '\n' || c == '\r') {
    return {offset, "a string does not end on its line", "close it with \" or write the line break as \\n"};
  }
  if (static_cast<unsigned char>(c) < 0x20) {
    return {offset, "a string holds a control character", "write it as an escape, such as \\t for a tab"};
  }
  // Boost tells of a missing second half only at what stands in its place.
  const std::size_t escape = std::min(text.rfind('\\', offset), offset);
  for (const std::size_t end : {offset, escape}) {
    if (const auto start = leadingSurrogateBefore(text, end)) return halfPairTrouble(*start);
  }
  return {offset, "a string holds an escape that JSON does not know",
          "use \\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u with four hexadecimal digits"};
}

/// A word or a number round `offset` that JSON does not have.
std::optional<Trouble> tokenTrouble(std::string_view text, std::size_t offset) {
  const auto around = [&](auto isPart) {
    std::size_t start = offset;
    while (start > 0 && isPart(text[start - 1])) --start;
    std::size_t end = offset;
    while (isPart(characterAt(text, end))) ++end;
    return Trouble{start, std::string(text.substr(start, std::min<std::size_t>(end - start, 40))), {}};
  };
  Trouble number = around(isNumberPart);
  const std::string& digits = number.message;
  if (!digits.empty() && !isLetter(digits[0])) {
    const bool hasLeadingZero = digits.size() > 1 && digits[0] == '0' && digits[1] >= '0' && digits[1] <= '9';
    if (hasLeadingZero || !base::Rational::parse(digits)) {
      return Trouble{number.offset, "JSON has no number " + digits, "write it like 0.5, -12 or 1e3"};
    }
  }
  Trouble word = around(isLetter);
  const std::string& letters = word.message;
  if (!letters.empty() && letters != "true" && letters != "false" && letters != "null") {
    return Trouble{word.offset, "\"" + letters + "\" is not a JSON value",
                   "use true, false or null, or put the text between double quotes"};
  }
  return std::nullopt;
}

/// Boost says "syntax error"; this says which.
Trouble syntaxTrouble(std::string_view text, std::size_t offset) {
  const Open open = openAt(text, offset);
  if (open.isInString) return troubleInString(text, offset);
  const char c = characterAt(text, offset);
  const std::size_t last = offset == 0 ? std::string_view::npos : text.find_last_not_of(kSpace, offset - 1);
  const char before = last == std::string_view::npos ? '\0' : text[last];
  const bool isInObject = !open.brackets.empty() && open.brackets.back() == '{';
  if (before == ',' && (c == ']' || c == '}')) {
    return {last, "there is a comma after the last item", "remove the comma"};
  }
  if (c == '/' || c == '#') return {offset, "JSON has no comments", "remove the comment"};
  if (c == '\'') return {offset, "a string begins with a single quote", "use double quotes"};
  if (before == ':' && (c == ',' || c == '}')) {
    return {offset, "a value is missing after the colon", "write the value, or null"};
  }
  if (isInObject && (before == '{' || before == ',')) {
    return {offset, "a key must stand here", "put the key between double quotes"};
  }
  if (const auto trouble = tokenTrouble(text, offset)) return *trouble;
  if (endsValue(before) && startsValue(c)) {
    return {offset, "something is missing between two values",
            "put a comma, or a colon after a key, between them"};
  }
  if ((c == '}' && !isInObject) || (c == ']' && (isInObject || open.brackets.empty()))) {
    const std::string closing = open.brackets.empty() ? "nothing" : isInObject ? "}" : "]";
    return {offset, std::string(1, c) + " stands where " + closing + " should close", "check the brackets"};
  }
  if (c == ':' && !isInObject) {
    return {offset, "a colon stands outside an object", "put keys with their values between { and }"};
  }
  return {offset, "this is not JSON", "check the commas, brackets and quotes just before it"};
}

Trouble incompleteTrouble(std::string_view text) {
  std::size_t end = text.find_last_not_of(kSpace);
  end = end == std::string_view::npos ? 0 : end + 1;
  const Open open = openAt(text, end);
  std::string remedy = "the file may have been cut off";
  if (open.isInString) {
    remedy += "; a string is still open";
  } else if (!open.brackets.empty()) {
    remedy += std::string("; a ") + (open.brackets.back() == '{' ? "}" : "]") + " is missing";
  }
  return {end, "the text ends too early", remedy};
}

Trouble troubleOf(boost::json::error code, std::string_view text, std::size_t offset) {
  using boost::json::error;
  switch (code) {
    case error::incomplete:
      return incompleteTrouble(text);
    case error::extra_data:
      return {offset, "there is more text after the end of the value",
              "a file holds one value; remove the rest"};
    case error::too_deep:
      return {offset, "objects and arrays are nested deeper than " + std::to_string(kMaxDepth) + " levels",
              "nest them less deeply"};
    case error::exponent_overflow:
      return {offset, "a number has an exponent that does not fit", "keep the exponent within 30"};
    case error::illegal_leading_surrogate:
    case error::illegal_trailing_surrogate:
    case error::expected_utf16_escape:
      return halfPairTrouble(std::min(text.rfind("\\u", offset), offset));
    case error::expected_hex_digit:
      return {offset, "a \\u escape needs four hexadecimal digits", "write for example \\u00e9"};
    default:
      return syntaxTrouble(text, offset);
  }
}

/// What can be told before the library looks at the text.
bool checkBytes(std::string_view text, Trouble& trouble) {
  if (text.size() > kMaxBytes) {
    trouble = {0, "the file is larger than " + std::to_string(kMaxBytes >> 20) + " MiB", "split it"};
  } else if (text.starts_with("\xEF\xBB\xBF")) {
    trouble = {0, "the file begins with a byte-order mark", "save it as UTF-8 without a byte-order mark"};
  } else if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    trouble = {0, "the file is written in UTF-16", "save it as UTF-8 without a byte-order mark"};
  } else if (text.find_first_not_of(kSpace) == std::string_view::npos) {
    trouble = {0, "the file is empty", "write a JSON value into it"};
  } else if (const std::size_t bad = base::invalidUtf8At(text); bad != std::string_view::npos) {
    trouble = {bad, "the text is not UTF-8 here", "save the file as UTF-8"};
  } else {
    return true;
  }
  return false;
}

bool checkGrammar(std::string_view text, Trouble& trouble) {
  boost::json::parse_options options;
  options.max_depth = kMaxDepth;
  boost::json::stream_parser parser(boost::json::storage_ptr{}, options);
  boost::json::error_code code;
  std::size_t consumed = parser.write_some(text.data(), text.size(), code);
  if (!code && consumed < text.size()) {
    code = boost::json::error::extra_data;
    consumed = std::min(text.find_first_not_of(kSpace, consumed), text.size());
  }
  if (!code) parser.finish(code);
  if (!code) return true;
  trouble = troubleOf(static_cast<boost::json::error>(code.value()), text, std::min(consumed, text.size()));
  return false;
}

}  // namespace

bool checkSyntax(std::string_view text, std::string_view file, base::Issues& issues) {
  Trouble trouble;
  if (checkBytes(text, trouble) && checkGrammar(text, trouble)) return true;
  issues.error(base::placeAt(file, text, trouble.offset), {}, trouble.message, trouble.remedy);
  return false;
}

}  // namespace stile::json
