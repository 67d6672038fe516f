// What the last touches to a PDF need to know of what was painted.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace stile::documents {

/// Shapes of a drawing, and where they go: a small black rectangle keeps their place among what cairo paints.
struct PlacedShapes {
  double x = 0, y = 0, scale = 1;
  std::string content;  ///< operators of a PDF page, in drawing units
  /// The rectangle's width, and its height, which tells the number of the shapes: cairo counts in 1/256 points.
  static constexpr double kWidth = 0.125;
  static double heightOf(std::size_t number) { return static_cast<double>(number + 1) / 256; }
};

/// What cairo cannot write itself, by the number of the tag in order of opening.
struct TagNotes {
  int count = 0;
  std::map<int, std::string> alternatives;  ///< words for who cannot see it
  std::map<int, std::string> scopes;        ///< of header cells: "Row", "Column"
  std::vector<int> artifacts;               ///< ornaments and running feet: no part of the reading
  std::vector<PlacedShapes> shapes;
};

}  // namespace stile::documents
