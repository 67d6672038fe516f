#include "drawing/text_width.h"

#include <algorithm>
#include <array>

#include "base/utf8.h"

namespace stile::drawing {
namespace {

// Advance widths of Clear Sans 1.00 in thousandths of the size, from space to tilde.
using Widths = std::array<int, 95>;
constexpr Widths kRegular{
    270, 271, 451, 706, 617, 1020, 696, 272, 389, 389, 463, 697, 271, 404, 271, 484, 617, 617, 580,
    580, 617, 580, 580, 617, 580,  580, 271, 271, 697, 697, 697, 512, 945, 629, 621, 645, 631, 563,
    541, 679, 666, 376, 432, 617,  507, 778, 677, 666, 577, 666, 604, 599, 578, 686, 598, 858, 590,
    560, 568, 393, 484, 393, 607,  500, 530, 537, 573, 503, 573, 528, 309, 573, 568, 250, 262, 512,
    258, 836, 568, 565, 573, 573,  396, 484, 356, 568, 492, 720, 494, 508, 456, 477, 416, 477, 697,
};
constexpr Widths kBold{
    240, 285, 477, 686, 625, 1056, 692, 268, 418, 418, 445, 697, 285, 384, 285, 506, 625, 625, 588,
    588, 625, 588, 588, 625, 588,  588, 285, 285, 697, 697, 697, 523, 952, 653, 634, 651, 641, 561,
    539, 691, 688, 426, 451, 625,  507, 814, 689, 666, 605, 666, 627, 600, 588, 702, 607, 895, 628,
    580, 560, 373, 506, 373, 635,  500, 510, 556, 594, 517, 594, 558, 322, 594, 594, 268, 275, 537,
    268, 874, 594, 581, 594, 594,  410, 501, 361, 594, 508, 764, 527, 530, 454, 447, 391, 447, 677,
};
constexpr int kOther = 620;  // accented letters and signs: as wide as a wide letter

}  // namespace

double textWidth(std::string_view text, double size, bool isBold) {
  const Widths& widths = isBold ? kBold : kRegular;
  int sum = 0;
  for (const std::string_view piece : base::codePoints(text)) {
    const auto byte = static_cast<unsigned char>(piece.front());
    const bool isKnown = piece.size() == 1 && byte >= 32 && byte < 127;
    sum += isKnown ? widths[static_cast<std::size_t>(byte - 32)] : kOther;
  }
  return sum * size / 1000;
}

std::vector<std::string> wrapped(std::string_view text, double width, double size, bool isBold) {
  std::vector<std::string> lines;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t start = text.find_first_not_of(' ', at);
    if (start == std::string_view::npos) break;
    const std::size_t end = std::min(text.find(' ', start), text.size());
    const std::string word(text.substr(start, end - start));
    if (!lines.empty() && textWidth(lines.back() + " " + word, size, isBold) <= width) {
      lines.back() += " " + word;
    } else {
      lines.push_back(word);
    }
    at = end;
  }
  return lines;
}

}  // namespace stile::drawing
