// The named colours of the program, with one value per theme. Screens, drawings and papers all
// read this table, so that they cannot disagree; their contrast is tested.
//
// Three meanings only: open, shut, and hatching for what is not yet known. The gravest thing is ink.
#pragma once

#include <array>
#include <string_view>

namespace stile::drawing {

enum class Colour {
  None,  ///< not painted
  Ground,
  Sheet,
  Well,
  Ink,
  Ink2,
  Hair,
  Edge,
  Post,
  Open,
  OnOpen,
  OpenTint,
  Shut,
  ShutTint,
  Hatch,
  HatchGround,
  Focus,
  Fresh,
  Slab,
  OnSlab,
  // Exercise figures. Skin, shirt, trousers, shoe and hair differ in lightness, so that they can be
  // told apart in black and white; the Far ones are the same on the side turned away.
  FigureInk,
  FigureFarInk,
  FigureSkin,
  FigureShirt,
  FigureTrousers,
  FigureShoe,
  FigureHair,
  FigureFarSkin,
  FigureFarShirt,
  FigureFarTrousers,
  FigureFarShoe,
  FigureMark,
  FigureHalo,
  FigureGround,
  PropInk,
  PropTop,
  PropFace,
  PropDark,
};

/// Paper is the light column on white.
enum class Theme { Light, Dark, Paper };

struct Token {
  Colour colour;
  std::string_view name;
  std::string_view light, dark;  ///< "#RRGGBB"
};

inline constexpr std::array<Token, 37> kTokens{{
    {Colour::Ground, "ground", "#E9ECE6", "#10161B"},
    {Colour::Sheet, "sheet", "#FAFBF7", "#19222A"},
    {Colour::Well, "well", "#F1F3ED", "#141C22"},
    {Colour::Ink, "ink", "#17212A", "#EEF2EC"},
    {Colour::Ink2, "ink2", "#3B4750", "#BFC9CC"},
    {Colour::Hair, "hair", "#C3C9C1", "#36434C"},
    {Colour::Edge, "edge", "#66727A", "#8A98A0"},
    {Colour::Post, "post", "#2A3741", "#C4CED1"},
    {Colour::Open, "open", "#0F4C78", "#86C5EE"},
    {Colour::OnOpen, "onOpen", "#FFFFFF", "#0A1720"},
    {Colour::OpenTint, "openTint", "#D8E6EF", "#17384D"},
    {Colour::Shut, "shut", "#803408", "#F3AE80"},
    {Colour::ShutTint, "shutTint", "#F7E7D8", "#40260F"},
    {Colour::Hatch, "hatch", "#6A7680", "#93A1A9"},
    {Colour::HatchGround, "hatchGround", "#F4F5F0", "#1B252C"},
    {Colour::Focus, "focus", "#7A1FA2", "#DDA9F7"},
    {Colour::Fresh, "fresh", "#DCE48F", "#474D0C"},
    {Colour::Slab, "slab", "#17212A", "#EEF2EC"},
    {Colour::OnSlab, "onSlab", "#FFFFFF", "#10161B"},
    {Colour::FigureInk, "figureInk", "#1F2A33", "#0C1116"},
    {Colour::FigureFarInk, "figureFarInk", "#5C6973", "#2B343B"},
    {Colour::FigureSkin, "figureSkin", "#F5E6D6", "#E9D6C2"},
    {Colour::FigureShirt, "figureShirt", "#D3DEE7", "#C3D2DE"},
    {Colour::FigureTrousers, "figureTrousers", "#98AAB8", "#566B7A"},
    {Colour::FigureShoe, "figureShoe", "#44515C", "#2C3740"},
    {Colour::FigureHair, "figureHair", "#55616B", "#5B6873"},
    {Colour::FigureFarSkin, "figureFarSkin", "#FAF2E9", "#CDBBA8"},
    {Colour::FigureFarShirt, "figureFarShirt", "#E5ECF1", "#A3B1BC"},
    {Colour::FigureFarTrousers, "figureFarTrousers", "#C2CED7", "#485B69"},
    {Colour::FigureFarShoe, "figureFarShoe", "#7E8B95", "#36424B"},
    {Colour::FigureMark, "figureMark", "#C43D05", "#F0793A"},
    {Colour::FigureHalo, "figureHalo", "#FFFFFF", "#19222A"},
    {Colour::FigureGround, "figureGround", "#E6EAED", "#222C34"},
    {Colour::PropInk, "propInk", "#66727A", "#8A98A0"},
    {Colour::PropTop, "propTop", "#FFFFFF", "#34414B"},
    {Colour::PropFace, "propFace", "#EEF1F3", "#28343D"},
    {Colour::PropDark, "propDark", "#A9B5BD", "#56646E"},
}};

/// "#RRGGBB", or "none".
constexpr std::string_view valueOf(Colour colour, Theme theme) {
  if (theme == Theme::Paper && (colour == Colour::Sheet || colour == Colour::Well)) return "#FFFFFF";
  for (const Token& token : kTokens)
    if (token.colour == colour) return theme == Theme::Dark ? token.dark : token.light;
  return "none";
}

}  // namespace stile::drawing
