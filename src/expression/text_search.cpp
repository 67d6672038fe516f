#include "expression/text_search.h"

namespace stile::expression {

std::vector<std::size_t> occurrences(std::string_view text, std::string_view wanted, std::size_t most) {
  // Knuth, Morris and Pratt: the library's search may take a time that is the product of both sizes.
  std::vector<std::size_t> border(wanted.size(), 0);
  for (std::size_t i = 1, length = 0; i < wanted.size(); ++i) {
    while (length > 0 && wanted[i] != wanted[length]) length = border[length - 1];
    if (wanted[i] == wanted[length]) ++length;
    border[i] = length;
  }
  std::vector<std::size_t> found;
  for (std::size_t i = 0, length = 0; i < text.size() && found.size() < most; ++i) {
    while (length > 0 && text[i] != wanted[length]) length = border[length - 1];
    if (text[i] == wanted[length]) ++length;
    if (length < wanted.size()) continue;
    found.push_back(i + 1 - length);
    length = 0;
  }
  return found;
}

}  // namespace stile::expression
