// What is set, in the order of reading, and how it falls onto pages.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "documents/pdf_canvas.h"

namespace stile::documents {

/// The smallest thing that is never broken. `paint` is given the top of the slice.
struct Slice {
  double before = 0;       ///< space above; dropped at the top of a page
  double height = 0;
  bool keepsNext = false;  ///< stands on the same page as what follows
  bool startsPage = false;
  std::string bookmark;    ///< title of a bookmark to this place
  /// Head of the table that the slice is a row of: painted once more above it, for the eye only, where
  /// the table goes on on a new page.
  std::shared_ptr<const Slice> head = nullptr;
  /// Starts a page only where more than this share of the page at hand is used.
  double sharedUpTo = 0;
  std::function<void(PdfCanvas&, double)> paint;
  /// Of a slice half as wide as the page, which stands in one of two columns: paints it in the right one.
  std::function<void(PdfCanvas&, double)> paintRight;
};

/// A slice, or the beginning or end of a tag around slices; a tag may reach over pages.
struct Step {
  enum class Kind { Slice, Open, Close } kind = Kind::Slice;
  Slice slice;
  std::string tag;
};

using Flow = std::vector<Step>;

/// Points per unit of a drawing, 1/96 inch, on paper.
inline constexpr double kPointsPerUnit = 0.75;

void add(Flow& flow, Slice slice);

void openTag(Flow& flow, std::string tag);
void closeTag(Flow& flow);
void append(Flow& flow, Flow more);

/// Height of the whole flow without breaks; the first space above is left out. What stands in two columns
/// counts half.
double heightOf(const Flow& flow);
/// The flow painted in one go from `y` on.
void paintAll(const Flow& flow, PdfCanvas& canvas, double y);
/// The flow as one slice that is never broken.
Slice together(Flow flow, double before);

/// Where a slice stands.
struct Placed {
  int page = 0;  ///< from 0
  double y = 0;
  bool hasHead = false;  ///< the head of its table stands above it once more
  bool isRight = false;  ///< in the right of two columns
};

/// One place for each step (tags take the place of the slice beside them).
/// `top` and `bottom` bound every page. Chains of slices that keep their next stay together while
/// they fit on one page. Slices for two columns that follow each other fill the left column of a page, then
/// its right one; on their last page the two are about as tall as each other.
std::vector<Placed> placed(const Flow& flow, double top, double bottom);

}  // namespace stile::documents
