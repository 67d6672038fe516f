// Bytes as text, RFC 4648 with padding: for bytes that stand in JSON.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace stile::base {

std::string toBase64(std::string_view bytes);
/// nullopt when the text is not exactly what toBase64() gives for some bytes.
std::optional<std::string> fromBase64(std::string_view text);

}  // namespace stile::base
