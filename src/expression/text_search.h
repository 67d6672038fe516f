// Finding a text within a text in linear time, whatever the two are. For src/expression only.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace stile::expression {

/// All places where `wanted`, which is not empty, occurs, from the left and not overlapping.
std::vector<std::size_t> occurrences(std::string_view text, std::string_view wanted,
                                     std::size_t most = ~std::size_t{0});

}  // namespace stile::expression
