// Blocks of the document model set into slices of a given width, for the PDF writer.
#pragma once

#include <vector>

#include "documents/document.h"
#include "documents/page_flow.h"
#include "documents/pdf_text.h"

namespace stile::documents {

class BlockSetter {
 public:
  /// `x` and `width`: where the blocks stand; `tallest`: the room of a page, above which even a
  /// framed box may be broken.
  BlockSetter(const Typesetter& type, const Document& document, const Measures& measures, double x, double width,
              double tallest)
      : type_(type), document_(document), m_(measures), x_(x), width_(width), tallest_(tallest) {}

  Flow set(const std::vector<Block>& blocks) const;
  /// The same with titles of boxes as headings of the second level: before the first heading of a
  /// section, so that no level is left out.
  BlockSetter withTopBoxes() const {
    BlockSetter setter = *this;
    setter.boxTag_ = "H2";
    return setter;
  }
  /// The same with less room on a page, for what stands below a heading.
  BlockSetter lower(double by) const {
    BlockSetter setter = *this;
    setter.tallest_ -= by;
    return setter;
  }
  /// One paragraph under `tag`; long ones may be broken between pages.
  Flow text(const std::string& words, const TextStyle& style, const std::string& tag, double before,
            std::size_t boldBytes = 0) const;

 private:
  BlockSetter at(double x, double width) const {
    BlockSetter setter = *this;
    setter.x_ = x, setter.width_ = width, setter.isInside_ = true;
    return setter;
  }
  BlockSetter with(const Measures& measures) const {
    BlockSetter setter = *this;
    setter.m_ = measures;
    return setter;
  }

  Flow of(const Paragraph& form) const;
  Flow of(const Rows& form) const;
  Flow of(const Table& form) const;
  Flow of(const List& form) const;
  Flow of(const Figure& form) const;
  Flow of(const Box& form) const;
  Flow of(const Fold& form) const;
  Flow of(const Columns& form) const;
  Flow of(const WriteLine& form) const;
  Flow of(const Choices& form) const;
  Flow of(const CutLine& form) const;

  Flow compactRows(const Rows& form) const;
  Flow compactRow(const Row& row, double before) const;
  Slice row(const Row& row, double term, double note) const;
  Flow columnsList(const List& form) const;
  Slice listItem(const std::string& mark, const std::string& words, double indent, double before) const;
  Flow framed(const Box& form, double padX, double padY) const;
  /// A box around `inside` that goes on over pages, its sides with it.
  Flow brokenBox(Flow inside, double padY, BoxKind kind) const;
  Flow exercise(const Box& form) const;
  /// Paints the picture of an exercise with its number, or the number alone, at a height.
  std::function<void(PdfCanvas&, double)> numberedPicture(const Box& form, double width, double height) const;
  Flow question(const Box& form) const;
  std::string fitted(const std::string& words, const TextStyle& style, double room, bool isRest) const;
  Slice tableRow(const std::vector<Cell>& cells, const std::vector<double>& widths, bool isHead, bool isGrid) const;

  const Typesetter& type_;
  const Document& document_;
  Measures m_;  ///< a copy: setters live on in what they paint
  double x_, width_, tallest_;
  bool isInside_ = false;  ///< a box or a column, which has no columns of its own
  const char* boxTag_ = "H3";
};

}  // namespace stile::documents
