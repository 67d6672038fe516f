// The lexical rules of FHIRPath 2.0.0: text -> tokens. For src/expression only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "expression/syntax.h"

namespace stile::expression {

enum class TokenKind {
  End,
  Symbol,  ///< an operator or a bracket
  Number,
  String,               ///< text = the string with its escapes resolved
  Identifier,           ///< words such as `and` and `true` too: the parser tells them apart
  DelimitedIdentifier,  ///< `in backticks`, never an operator
  Date,                 ///< text without the @
  DateTime,             ///< text without the @
  Time,                 ///< text without the @T
  Dollar,               ///< text = this, index or total
};

/// One token. `offset` and `length` are bytes in the expression.
struct Token {
  TokenKind kind = TokenKind::End;
  std::string text;
  std::size_t offset = 0;
  std::size_t length = 0;
};

/// The tokens of `text`, an End token last. Empty, and one located issue, when a character, a
/// string, a comment or a date is not well-formed.
std::vector<Token> tokensOf(std::string_view text, const Origin& origin, const std::string& subject,
                            base::Issues& issues);

}  // namespace stile::expression
