// Where a line of a paper is not broken: a number and its unit, a telephone number, a date.
#pragma once

#include <string_view>
#include <utility>
#include <vector>

namespace stile::documents {

/// Byte ranges [from, to) of the text that stay on one line: "5.0 mmol/L", "01632 960 417", "25 November
/// 2026", "2026.11-3382cf34", a word with the separator behind it. None is longer than a short line.
std::vector<std::pair<std::size_t, std::size_t>> unbrokenRanges(std::string_view text);

}  // namespace stile::documents
