#include "plan/picture_shelf.h"

#include <catch2/catch.hpp>

using namespace stile;
using namespace stile::plan;

TEST_CASE(
    "A picture is drawn once for a library, form, build and side, and the shelf does not grow without end") {
  PictureShelf shelf;
  auto library = std::make_shared<const int>(1);
  int drawn = 0;
  const auto number = [&](const std::shared_ptr<const int>& owner, const std::string& exercise,
                          std::size_t form, const movement::PictureOptions& options) {
    return shelf
        .get(owner, exercise, form, options,
             [&] {
               drawing::Drawing drawing;
               drawing.width = ++drawn;
               return drawing;
             })
        .width;
  };
  CHECK(number(library, "bridge", 0, {}) == 1);
  CHECK(number(library, "bridge", 0, {}) == 1);
  CHECK(number(library, "bridge", 1, {}) == 2);
  CHECK(number(library, "bridge", 0, {.isMirrored = true}) == 3);
  CHECK(number(library, "bridge", 0, {.build = movement::Build::Slight}) == 4);
  CHECK(number(library, "bridge", 0, {}) == 1);
  for (int i = 0; i < 500; ++i) number(library, "other " + std::to_string(i), 0, {});
  CHECK(number(library, "bridge", 0, {}) == 505);
  // Another library draws its own, even where the first one stood in memory.
  library = std::make_shared<const int>(2);
  CHECK(number(library, "bridge", 0, {}) == 506);
  CHECK(number(nullptr, "bridge", 0, {}) == 507);
  CHECK(number(nullptr, "bridge", 0, {}) == 508);
}
