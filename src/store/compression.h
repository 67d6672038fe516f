// Texts made smaller before they are sealed. Sealed text itself no longer shrinks.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace stile::store {

/// No text in a clinic file is longer.
inline constexpr std::size_t kMostTextBytes = std::size_t{64} << 20;

std::string compressed(std::string_view text);
/// nullopt when the bytes are not what compressed() gave, or would grow past kMostTextBytes.
std::optional<std::string> expanded(std::string_view bytes);

}  // namespace stile::store
