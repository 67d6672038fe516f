// What stands on one page of a PDF as cairo wrote it, and what has to be changed in it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "documents/pdf_notes.h"

namespace stile::documents {

/// Puts drawings where their places are kept and calls ornaments what they are. One for a paper.
class ContentsMender {
 public:
  explicit ContentsMender(const std::vector<PlacedShapes>& shapes)
      : shapes_(shapes), isPlaced_(shapes.size(), false) {}

  /// The operators of a page, mended.
  std::string mended(std::string_view contents);
  /// True when every drawing has found its place.
  bool isAllPlaced() const;

 private:
  /// Where the place of shapes ends, when one begins at `at` with "x y"; 0 when none does.
  std::size_t place(std::string_view contents, std::size_t at, std::string& out);

  const std::vector<PlacedShapes>& shapes_;
  std::vector<bool> isPlaced_;
};

/// The bytes packed as PDF's "FlateDecode" wants them; the same each time.
std::string deflated(const std::string& bytes);

}  // namespace stile::documents
