// What stands at the top of the first page: mark or logo, title, clinic, and whose paper it is.
#pragma once

#include "documents/document.h"
#include "documents/page_flow.h"
#include "documents/pdf_text.h"

namespace stile::documents {

class PdfCanvas;

class PageHead {
 public:
  /// `left`: the left margin, in points. Document and type must live as long as what is made here.
  PageHead(const Document& document, const Typesetter& type, const Measures& measures, double left)
      : document_(document), type_(type), m_(measures), left_(left) {}

  /// As wide as `width` points: title left, client right, or below each other where one is too long.
  Slice slice(double width) const;

 private:
  /// Title, clinic and client below each other: for large letters and long names.
  Slice stacked(double width, double edge, double markWidth, double gap) const;
  /// The mark: two slant-cut uprights; from below a whole rung, a broken rung, an empty wire.
  void mark(PdfCanvas& canvas, double x, double y, double edge) const;

  const Document& document_;
  const Typesetter& type_;
  Measures m_;
  double left_;
};

}  // namespace stile::documents
