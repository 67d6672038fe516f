// The contrast that the looks promise, measured on the table (WCAG 2 ratio).
#include "drawing/colour.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

using namespace stile::drawing;

namespace {

double channel(std::string_view value, std::size_t at) {
  const double c = std::stoi(std::string(value.substr(at, 2)), nullptr, 16) / 255.0;
  return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour colour, Theme theme) {
  const std::string_view value = valueOf(colour, theme);
  return 0.2126 * channel(value, 1) + 0.7152 * channel(value, 3) + 0.0722 * channel(value, 5);
}

double contrast(Colour a, Colour b, Theme theme) {
  const double x = luminance(a, theme), y = luminance(b, theme);
  return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

struct Need {
  Colour mark, on;
  double ratio;
};

}  // namespace

TEST_CASE("every text and every mark that carries meaning stands out from its ground") {
  using C = Colour;
  const Need needs[] = {{C::Ink, C::Sheet, 7},         {C::Ink, C::Ground, 7},     {C::Ink2, C::Sheet, 7},
                        {C::Ink2, C::Ground, 7},       {C::OnOpen, C::Open, 7},    {C::Shut, C::ShutTint, 7},
                        {C::Ink, C::ShutTint, 7},      {C::Ink, C::OpenTint, 7},   {C::OnSlab, C::Slab, 7},
                        {C::Ink, C::Fresh, 7},         {C::Open, C::Sheet, 4.5},   {C::Edge, C::Sheet, 3},
                        {C::Hatch, C::HatchGround, 3}, {C::Post, C::Sheet, 3},     {C::Focus, C::Sheet, 3},
                        {C::Ink2, C::HatchGround, 7},  {C::Ink, C::HatchGround, 7}};
  for (const Theme theme : {Theme::Light, Theme::Dark, Theme::Paper})
    for (const Need& need : needs) {
      INFO(valueOf(need.mark, theme) << " on " << valueOf(need.on, theme));
      CHECK(contrast(need.mark, need.on, theme) >= need.ratio);
    }
}

TEST_CASE("cloths, skin and marks of a figure differ in lightness, so that black and white will do") {
  using C = Colour;
  for (const Theme theme : {Theme::Light, Theme::Dark, Theme::Paper}) {
    INFO((theme == Theme::Dark ? "dark" : "light"));
    for (const C cloth : {C::FigureSkin, C::FigureShirt, C::FigureTrousers}) {
      CHECK(contrast(C::FigureInk, cloth, theme) >= 3);
      CHECK(contrast(C::FigureMark, cloth, theme) >= 1.7);
      CHECK(contrast(C::FigureShoe, cloth, theme) >= 1.3);
    }
    CHECK(contrast(C::FigureShirt, C::FigureTrousers, theme) >= 1.6);
    CHECK(contrast(C::FigureHair, C::FigureSkin, theme) >= 3);
  }
}

TEST_CASE("every colour has a name and two values") {
  for (const Token& token : kTokens) {
    CHECK_FALSE(token.name.empty());
    CHECK(token.light.size() == 7);
    CHECK(token.dark.size() == 7);
  }
  CHECK(valueOf(Colour::None, Theme::Light) == "none");
}
