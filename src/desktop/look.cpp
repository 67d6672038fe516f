#include "desktop/look.h"

namespace stile::desktop {
namespace {

using drawing::Colour;

/// What differs from the light column when contrast comes before everything else; "" = nothing.
std::string_view inHighContrast(Colour colour) {
  switch (colour) {
    case Colour::Ground:
    case Colour::Sheet:
    case Colour::Well:
    case Colour::OpenTint:
    case Colour::ShutTint:
    case Colour::HatchGround:
      return "#FFFFFF";
    case Colour::Ink:
    case Colour::Ink2:
    case Colour::Hair:
    case Colour::Edge:
    case Colour::Post:
    case Colour::Hatch:
    case Colour::Slab:
    case Colour::PropInk:
      return "#000000";
    case Colour::Open:
      return "#00274D";
    case Colour::Shut:
      return "#5A1F00";
    case Colour::Focus:
      return "#5B00A0";
    default:
      return "";
  }
}

}  // namespace

std::string_view valueIn(Look look, Colour colour) {
  if (look == Look::HighContrast && !inHighContrast(colour).empty()) return inHighContrast(colour);
  return drawing::valueOf(colour, look == Look::Dark ? drawing::Theme::Dark : drawing::Theme::Light);
}

}  // namespace stile::desktop
