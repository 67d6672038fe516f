// Canonical urls with an optional |version, and which of two versions is newer.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace stile::questionnaire {

struct Canonical {
  std::string url, version;  ///< version "" when none is named
};

/// A fragment (#…) is no part of either.
Canonical splitCanonical(std::string_view canonical);

/// Compares versions of numbers with dots (2026.11 before 2026.12, 1.9 before 1.10): below 0, 0 or
/// above 0. nullopt when they differ and one of them is of another kind.
std::optional<int> compareVersions(std::string_view a, std::string_view b);

}  // namespace stile::questionnaire
