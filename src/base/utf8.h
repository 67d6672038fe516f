// UTF-8 as bytes: where it breaks, and how many code points stand before an offset.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stile::base {

/// Offset of the first byte that is not well-formed UTF-8 (overlong forms and surrogates are
/// not), or npos.
std::size_t invalidUtf8At(std::string_view text);

/// The text in pieces of one code point each; a byte that is not well-formed is a piece of its own.
std::vector<std::string_view> codePoints(std::string_view text);

/// How many pieces codePoints() would give.
std::size_t countCodePoints(std::string_view text);

/// The text with every byte that is not well-formed replaced by U+FFFD.
std::string wellFormedUtf8(std::string_view text);

}  // namespace stile::base
