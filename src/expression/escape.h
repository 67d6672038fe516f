// Backslash escapes in FHIRPath strings and delimited identifiers. For src/expression only.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace stile::expression {

/// A delimited text as read.
struct Delimited {
  bool isClosed = false;      ///< the closing delimiter was found
  bool hasBadEscape = false;  ///< half a surrogate pair, or \u0000; `end` is then its offset
  std::size_t end = 0;        ///< one past the closing delimiter
  std::string text;           ///< UTF-8, escapes resolved
};

/// Reads the text whose opening delimiter stands at `start`. A backslash before a character that
/// needs none is ignored (FHIRPath 2.0.0, section 4.1.2).
Delimited readDelimited(std::string_view source, std::size_t start);

}  // namespace stile::expression
