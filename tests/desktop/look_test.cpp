// Colours of the desk: every token has a value in every look, and text stands out from its ground.
#include "desktop/look.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

using stile::desktop::Look;
using stile::desktop::valueIn;
using stile::drawing::Colour;

namespace {

double linear(const std::string& pair) {
  const double value = std::stoi(pair, nullptr, 16) / 255.0;
  return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

/// Relative luminance of WCAG 2.
double luminance(Look look, Colour colour) {
  const std::string value(valueIn(look, colour));
  REQUIRE(value.size() == 7);
  return 0.2126 * linear(value.substr(1, 2)) + 0.7152 * linear(value.substr(3, 2)) + 0.0722 * linear(value.substr(5, 2));
}

double contrast(Look look, Colour a, Colour b) {
  const double one = luminance(look, a), other = luminance(look, b);
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

}  // namespace

TEST_CASE("text, notices and focus stand out in every look") {
  for (const Look look : {Look::Light, Look::Dark, Look::HighContrast}) {
    for (const Colour ground : {Colour::Sheet, Colour::Well, Colour::Ground}) {
      CAPTURE(static_cast<int>(look), static_cast<int>(ground));
      CHECK(contrast(look, Colour::Ink, ground) >= 7);
      CHECK(contrast(look, Colour::Ink2, ground) >= 7);
      CHECK(contrast(look, Colour::Edge, ground) >= 3);
      CHECK(contrast(look, Colour::Focus, ground) >= 3);
    }
    CHECK(contrast(look, Colour::OnSlab, Colour::Slab) >= 7);
    CHECK(contrast(look, Colour::OnOpen, Colour::Open) >= 7);
    CHECK(contrast(look, Colour::Shut, Colour::ShutTint) >= 7);
  }
}

TEST_CASE("high contrast leaves no grey: text is black on white") {
  CHECK(valueIn(Look::HighContrast, Colour::Ink2) == "#000000");
  CHECK(valueIn(Look::HighContrast, Colour::Well) == "#FFFFFF");
}
