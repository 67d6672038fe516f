// The operators and words of the FHIRPath 2.0.0 grammar. For src/expression only.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace stile::expression {

struct OperatorLevel {
  std::string_view text;
  int level;  ///< higher binds tighter
};

constexpr int kTypeLevel = 8;

// The order of the alternatives of `expression` in the grammar, from the last to the first.
constexpr std::array<OperatorLevel, 24> kOperators{
    {{"implies", 1},     {"or", 2},          {"xor", 2}, {"and", 3}, {"in", 4},   {"contains", 4},
     {"=", 5},           {"~", 5},           {"!=", 5},  {"!~", 5},  {"<", 6},    {">", 6},
     {"<=", 6},          {">=", 6},          {"|", 7},   {"+", 9},   {"-", 9},    {"&", 9},
     {"is", kTypeLevel}, {"as", kTypeLevel}, {"*", 10},  {"/", 10},  {"div", 10}, {"mod", 10}}};

constexpr std::array<std::string_view, 16> kCalendarWords{
    "year",  "month",  "week",  "day",  "hour",  "minute",  "second",  "millisecond",
    "years", "months", "weeks", "days", "hours", "minutes", "seconds", "milliseconds"};

constexpr std::array<std::string_view, 8> kReservedWords{"and", "or",  "xor",  "implies",
                                                         "div", "mod", "true", "false"};

template <std::size_t N>
bool contains(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace stile::expression
