#include "base/issue.h"

#include <algorithm>

#include "base/utf8.h"

namespace stile::base {
namespace {

constexpr std::size_t kShownCodePoints = 160;
// A file on a single line of megabytes would otherwise be copied into every issue.
constexpr std::size_t kLongestKeptLine = std::size_t{16} * 1024;

/// Control bytes and broken UTF-8 must not reach a terminal.
std::string printable(std::string_view piece) {
  const auto first = static_cast<unsigned char>(piece[0]);
  if (piece == "\t") return "\t";
  if (first < 0x20 || first == 0x7F || (piece.size() == 1 && first >= 0x80)) return "?";
  return std::string(piece);
}

std::string sourceAndCaret(const Place& place) {
  const std::vector<std::string_view> pieces = codePoints(place.sourceLine);
  const auto column = static_cast<std::size_t>(place.column);
  std::size_t first = 0;
  std::size_t end = pieces.size();
  if (pieces.size() > kShownCodePoints) {
    const std::size_t half = kShownCodePoints / 2;
    first = std::min(column > half ? column - half : 0, pieces.size() - kShownCodePoints);
    end = first + kShownCodePoints;
  }
  std::string line;
  std::string caret;
  if (first > 0) {
    line = "…";
    caret = " ";
  }
  for (std::size_t i = first; i < end; ++i) {
    line += printable(pieces[i]);
    if (i + 1 < column) caret += pieces[i] == "\t" ? '\t' : ' ';
  }
  if (end < pieces.size()) line += "…";
  if (column == 0) return "\n" + line;
  return "\n" + line + "\n" + caret + "^";
}

}  // namespace

bool Issues::hasErrors() const {
  return std::any_of(list_.begin(), list_.end(),
                     [](const Issue& issue) { return issue.severity == Severity::Error; });
}

void Issues::append(const Issues& other) {
  // By index and count: `other` may be this very collection.
  const std::size_t count = other.list_.size();
  list_.reserve(list_.size() + count);
  for (std::size_t i = 0; i < count; ++i) list_.push_back(other.list_[i]);
}

std::string toText(const Issue& issue) {
  const Place& place = issue.place;
  std::string text = place.file;
  if (place.line > 0) {
    text += (text.empty() ? "line " : ":") + std::to_string(place.line);
    if (place.column > 0) text += ":" + std::to_string(place.column);
  }
  if (!text.empty()) text += ": ";
  if (!issue.subject.empty()) text += issue.subject + ": ";
  text += issue.message;
  if (!issue.remedy.empty()) text += "; " + issue.remedy;
  if (!place.sourceLine.empty()) text += sourceAndCaret(place);
  return text;
}

Place placeAt(std::string_view file, std::string_view text, std::size_t offset) {
  offset = std::min(offset, text.size());
  const auto isContinuation = [&](std::size_t i) {
    return i < text.size() && (static_cast<unsigned char>(text[i]) & 0xC0u) == 0x80u;
  };
  std::size_t start = 0;
  if (offset > 0) {
    const std::size_t before = text.rfind('\n', offset - 1);
    if (before != std::string_view::npos) start = before + 1;
  }
  // An offset in the middle of a code point means the code point.
  while (offset > start && isContinuation(offset)) --offset;

  Place place;
  place.file = std::string(file);
  const auto head = text.substr(0, start);
  place.line = 1 + static_cast<int>(std::count(head.begin(), head.end(), '\n'));
  place.column = 1 + static_cast<int>(countCodePoints(text.substr(start, offset - start)));
  std::string_view line = text.substr(start, text.find('\n', start) - start);
  if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
  if (line.size() <= kLongestKeptLine) place.sourceLine = std::string(line);
  return place;
}

}  // namespace stile::base
