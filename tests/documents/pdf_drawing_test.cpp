// Drawings in PDF: what stands where, read back as pixels by somebody else's reader.
#include <array>

#include "documents/pdf_contents.h"
#include "documents/pdf_path.h"
#include "pdf_words.h"

using namespace stile::documents;
using namespace stile::drawing;

namespace {

Document paperWith(Drawing drawing) {
  Document paper;
  paper.title = "Shapes";
  paper.sections.push_back({"", {{Figure{std::move(drawing), {}}}}});
  return paper;
}

/// The first page in grey, a pixel a point.
class Pixels {
 public:
  explicit Pixels(const std::string& pdf) {
    const Folder folder;
    const auto path = folder / "paper.pdf";
    std::ofstream(path, std::ios::binary) << pdf;
    ran("pdftoppm -r 72 -gray -singlefile '" + path.string() + "' '" + (folder / "page").string() + "'");
    std::ifstream in(folder / "page.pgm", std::ios::binary);
    std::string kind;
    int most = 0;
    in >> kind >> width_ >> height_ >> most;
    in.get();
    REQUIRE(kind == "P5");
    grey_.resize(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_));
    in.read(reinterpret_cast<char*>(grey_.data()), static_cast<std::streamsize>(grey_.size()));
  }
  /// The box around everything darker than `least`, below the head of the paper.
  std::array<int, 4> boxBelow(int top, int least = 128) const {
    std::array<int, 4> box{width_, height_, -1, -1};
    for (int y = top; y < height_ - 60; ++y)
      for (int x = 0; x < width_; ++x)
        if (at(x, y) < least)
          box = {std::min(box[0], x), std::min(box[1], y), std::max(box[2], x), std::max(box[3], y)};
    return box;
  }
  int at(int x, int y) const {
    return grey_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
                 static_cast<std::size_t>(x)];
  }

 private:
  int width_ = 0, height_ = 0;
  std::vector<unsigned char> grey_;
};

constexpr int kHead = 84;  // points: the head of the paper ends above

const Paint kInked{.fill = Colour::Ink};

}  // namespace

TEST_CASE("shapes stand where the drawing has them, in its proportions") {
  // Two squares of 96 units, 192 apart: 72 points and 144.
  Drawing drawing{400,
                  120,
                  "Squares",
                  "Two squares",
                  {{Rectangle{0, 10, 96, 96, kInked}}, {Rectangle{192, 10, 96, 96, kInked}}}};
  const Pixels pixels(madeOf(paperWith(drawing)));
  const auto [left, top, right, bottom] = pixels.boxBelow(kHead);
  CHECK(right - left + 1 == Approx(216).margin(1.5));
  CHECK(bottom - top + 1 == Approx(72).margin(1.5));
  CHECK(pixels.at(left + 36, top + 36) < 64);
  CHECK(pixels.at(left + 108, top + 36) > 192);  // between them
  CHECK(pixels.at(left + 180, top + 36) < 64);
}

TEST_CASE("a circle is round, a curve reaches its ends, a hatched field is neither bare nor full") {
  Drawing drawing{400, 220, "Forms", "A circle", {{Circle{{100, 110}, 96, kInked}}}};
  const Pixels round(madeOf(paperWith(drawing)));
  const auto [left, top, right, bottom] = round.boxBelow(kHead);
  CHECK(right - left == Approx(144).margin(1.5));
  CHECK(bottom - top == Approx(144).margin(1.5));
  // A corner of the square around it is free, a place on the arc at 45 degrees is not (1 - 1/sqrt 2 of the
  // radius).
  CHECK(round.at(left + 15, top + 15) > 192);
  CHECK(round.at(left + 26, top + 26) < 64);

  drawing.shapes = {{Rectangle{0, 10, 200, 200, {.isHatched = true}}}};
  const Pixels hatched(madeOf(paperWith(drawing)));
  const auto field = hatched.boxBelow(kHead, 250);
  int dark = 0, count = 0;
  for (int y = field[1] + 2; y < field[3] - 2; ++y)
    for (int x = field[0] + 2; x < field[2] - 2; ++x) ++count, dark += hatched.at(x, y) < 225 ? 1 : 0;
  REQUIRE(count > 10000);
  // Lines 2.4 wide, 9 apart.
  CHECK(static_cast<double>(dark) / count > 0.1);
  CHECK(static_cast<double>(dark) / count < 0.6);
}

TEST_CASE("what is painted later lies over what was painted before, words included") {
  Drawing drawing{400, 120, "Layers", "Words on a board", {}};
  drawing.shapes.push_back({Rectangle{0, 10, 300, 96, kInked}});
  drawing.shapes.push_back({TextRun{{10, 70}, "IIIIIIII", 60, true, Align::Start, Colour::OnSlab}});
  drawing.shapes.push_back({Rectangle{150, 10, 150, 96, kInked}});
  const Pixels pixels(madeOf(paperWith(drawing)));
  const auto [left, top, right, bottom] = pixels.boxBelow(kHead);
  const auto lightIn = [&](int from, int to) {
    int light = 0;
    for (int y = top + 2; y < bottom - 2; ++y)
      for (int x = from; x < to; ++x) light += pixels.at(x, y) > 192 ? 1 : 0;
    return light;
  };
  CHECK(lightIn(left + 2, left + 100) > 50);   // white words over the board
  CHECK(lightIn(left + 118, right - 2) == 0);  // none over the second board
}

TEST_CASE("a drawing that finds no place is a fault, and only its own place is one") {
  const std::vector<PlacedShapes> shapes{{10, 20, 0.5, "0 0 m\n"}, {30, 40, 0.5, "1 1 m\n"}};
  ContentsMender mender(shapes);
  // Broken anywhere between words, as cairo breaks its lines.
  const std::string once = mender.mended("0 g 10 20\n0.125 0.004\nre f Q");
  CHECK(once == "0 g q 0.50000 0 0 0.50000 10.000 20.000 cm\n0 0 m\nQ Q");
  CHECK_FALSE(mender.isAllPlaced());
  CHECK(mender.mended("30 41 0.125 0.008 re f") == "30 41 0.125 0.008 re f");  // elsewhere
  CHECK(mender.mended("30 40 0.125 0.008 re S") == "30 40 0.125 0.008 re S");  // another operator
  CHECK(mender.mended("0.125") == "0.125");
  CHECK_FALSE(mender.isAllPlaced());
  CHECK(mender.mended("/NonStruct << /MCID 3 >> BDC 30 40 0.125 0.008 re f EMC") ==
        "/Artifact BMC q 0.50000 0 0 0.50000 30.000 40.000 cm\n1 1 m\nQ EMC");
  CHECK(mender.isAllPlaced());
  CHECK(mender.mended("30 40 0.125 0.008 re f") == "30 40 0.125 0.008 re f");  // not twice
}

TEST_CASE("numbers in a page are short and keep their sign") {
  PathWriter writer;
  writer.write(Line{{-0.004, 1.5}, {-12.345, 0.05}, {.stroke = Colour::Ink, .strokeWidth = 2}});
  const std::string content = writer.taken();
  CHECK(content.find("0 1.5 m\n-12.35 0.05 l\nS\n") != std::string::npos);
  CHECK(content.find("2 w\n") != std::string::npos);
  CHECK(writer.isEmpty());
}
