// Colours, type and measures of the desk: one table of each, made from the colour tokens that the
// papers use too. What the toolkit draws itself gets them through a style sheet.
#pragma once

#include <wx/colour.h>
#include <wx/font.h>

#include <string>

#include "desktop/look.h"
#include "drawing/colour.h"

namespace stile::desktop {

/// Sizes of type, in pixels of the size before the reader's factor.
enum class Step { Numeral, Title, Question, Heading, Strong, Body, Reading, Small, Client };

class Theme {
 public:
  /// `factor` is 1 to 1.5: the text size the user chose.
  Theme(Look look, double factor) : look_(look), factor_(factor) {}

  Look look() const { return look_; }
  double factor() const { return factor_; }
  wxColour colour(drawing::Colour colour) const;
  wxFont font(Step step) const;
  /// Of any size in pixels, the factor not yet applied.
  wxFont font(double pixels, bool isBold) const;
  /// The style sheet for the controls that the toolkit draws.
  std::string styleSheet() const;
  /// Puts the style sheet in the place of the one before, for the whole program.
  void apply() const;

 private:
  Look look_;
  double factor_;
};

}  // namespace stile::desktop
