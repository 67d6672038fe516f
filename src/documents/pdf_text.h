// Words set in lines by Pango, in the program's typeface, for the PDF writer.
#pragma once

#include <pango/pangocairo.h>

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "base/result.h"
#include "documents/document.h"
#include "drawing/colour.h"

namespace stile::documents {

/// Size and line pitch in points.
struct TextStyle {
  double size = 10.5, line = 14;
  bool isBold = false;
  drawing::Colour colour = drawing::Colour::Ink;
};

enum class TextAlign { Start, Middle, End };

/// A paragraph broken into lines of one pitch.
class SetText {
 public:
  int lineCount() const { return lines_; }
  double height() const { return lines_ * style_.line; }
  double width() const { return width_; }  ///< of the widest line
  const TextStyle& style() const { return style_; }
  /// Paints lines `from` up to, not including, `to`; `y` is the top of line `from`.
  void paint(cairo_t* cairo, double x, double y, int from, int to) const;
  void paint(cairo_t* cairo, double x, double y) const { paint(cairo, x, y, 0, lines_); }
  /// Paints the first line so that it stands on `y`.
  void paintOnBaseLine(cairo_t* cairo, double x, double y) const;

 private:
  friend class Typesetter;
  std::shared_ptr<PangoLayout> layout_;
  TextStyle style_;
  double room_ = 0, width_ = 0, ascent_ = 0, natural_ = 0;
  TextAlign align_ = TextAlign::Start;
  int lines_ = 0;
};

/// Sets text; owns what Pango needs for it. One for each document.
class Typesetter {
 public:
  static constexpr const char* kFamily = "Clear Sans";
  static constexpr const char* kPackage = "fonts-clear-sans";

  Typesetter();
  /// A failure that names the package when the typeface is not installed.
  base::Result<bool> checkFont() const;
  /// `boldBytes`: so many bytes at the beginning are bold. Direction follows the words, the margin
  /// does not: papers are read from the left, names may run from the right. `room` <= 0: one line.
  SetText set(std::string_view text, const TextStyle& style, double room, std::size_t boldBytes = 0,
              TextAlign align = TextAlign::Start) const;
  double widthOf(std::string_view text, const TextStyle& style) const;

 private:
  /// In points: from the top of a natural line to its base line, and its height.
  struct Ascent {
    double ascent = 0, natural = 0;
  };
  const Ascent& ascentOf(const TextStyle& style, const PangoFontDescription* font) const;
  std::shared_ptr<PangoLayout> layoutOf(std::string_view text, const TextStyle& style, const PangoFontDescription* font,
                                        double room, std::size_t boldBytes) const;

  std::shared_ptr<PangoContext> context_;
  mutable std::map<std::pair<double, bool>, Ascent> ascents_;  ///< by size and weight
  /// By words, size, weight, room and bold bytes: a paper is set more than once, line pitch aside.
  mutable std::map<std::tuple<std::string, double, bool, double, std::size_t>, std::shared_ptr<PangoLayout>> layouts_;
};

/// The sizes of one kind of paper.
struct Measures {
  TextStyle body, small, title, heading, boxTitle, statement, dose, number, foot;
  double gap = 6;             ///< between blocks
  double headingGap = 12;     ///< before a heading
  double tick = 28.35;        ///< edge of a box to tick in a grid: 10 mm
  double choice = 12;         ///< edge of a box to tick beside words
  double termShare = 0.2, noteShare = 0.3;
  static Measures of(const Document& document);
  /// The same sizes with less white: gaps and line pitch. 0 leaves all as it is, kTightest is the end.
  Measures tightened(int level) const;
  static constexpr int kTightest = 3;
};

}  // namespace stile::documents
