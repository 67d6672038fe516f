// The style sheet is made from the colour tokens.
#include "desktop/theme.h"

#include <catch2/catch.hpp>

using stile::desktop::Look;
using stile::desktop::Theme;

TEST_CASE("every slot of the style sheet is filled in, in every look") {
  for (const Look look : {Look::Light, Look::Dark, Look::HighContrast}) {
    const std::string sheet = Theme(look, 1).styleSheet();
    CHECK(sheet.find("{ink}") == std::string::npos);
    CHECK(sheet.find("{px") == std::string::npos);
    CHECK(sheet.find("color: ;") == std::string::npos);
    CHECK(sheet.find("background: ;") == std::string::npos);
  }
  CHECK(Theme(Look::Light, 1).styleSheet().find("#17212A") != std::string::npos);
  CHECK(Theme(Look::Dark, 1).styleSheet().find("#EEF2EC") != std::string::npos);
}

TEST_CASE("the text size of the user is in the style sheet") {
  CHECK(Theme(Look::Light, 1).styleSheet().find("font-size: 16px") != std::string::npos);
  CHECK(Theme(Look::Light, 1.5).styleSheet().find("font-size: 24px") != std::string::npos);
}
