#include "drawing/svg.h"

#include <catch2/catch.hpp>

using namespace stile::drawing;

namespace {

Drawing sample() {
  Drawing drawing{100, 50.126, "Name & title", "What it shows", {}};
  drawing.shapes.push_back({Rectangle{1.0 / 3, -0.001, 10.5, 20, {.fill = Colour::Open}}});
  drawing.shapes.push_back(
      {Line{{0, 0}, {5, 5}, {.stroke = Colour::Hatch, .strokeWidth = 1.5, .isDashed = true}}});
  drawing.shapes.push_back(
      {Group{"inner", {{TextRun{{50, 20}, "5 < 6", 14, true, Align::Middle, Colour::Ink}}}}});
  return drawing;
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

}  // namespace

TEST_CASE("an SVG is one named and described image") {
  const std::string svg = toSvg(sample(), {Theme::Paper, "one"});
  CHECK(svg.rfind("<svg ", 0) == 0);
  CHECK(svg.find("role=\"img\"") != std::string::npos);
  CHECK(svg.find("aria-labelledby=\"one-title\"") != std::string::npos);
  CHECK(svg.find("<title id=\"one-title\">Name &amp; title</title>") != std::string::npos);
  CHECK(svg.find("<desc id=\"one-description\">What it shows</desc>") != std::string::npos);
  CHECK(svg.find("5 &lt; 6") != std::string::npos);
}

TEST_CASE("numbers in an SVG have at most two decimals and no negative zero") {
  const std::string svg = toSvg(sample());
  CHECK(svg.find("x=\"0.33\" y=\"0\" width=\"10.5\"") != std::string::npos);
  CHECK(svg.find("height=\"50.13\"") != std::string::npos);
}

TEST_CASE("paths are written from point to point, and in whole tenths when compact") {
  Drawing drawing{100, 50, "", "", {}};
  drawing.shapes.push_back({Polygon{{{1, 2}, {3.04, 2}, {2.5, .96}}, {.fill = Colour::Ink}}});
  CHECK(toSvg(drawing).find("d=\"m1 2 2 0-.5-1z\"") != std::string::npos);
  const std::string compact = toSvg(drawing, {Theme::Paper, "x", true});
  CHECK(compact.find("d=\"m10 20 20 0-5-10z\"") != std::string::npos);
  CHECK(compact.find("width=\"100\" height=\"50\" viewBox=\"0 0 1000 500\"") != std::string::npos);
}

TEST_CASE("rounding does not add up along a path") {
  Path path;
  path.paint = {.stroke = Colour::Ink};
  for (int i = 0; i <= 100; ++i)
    path.steps.push_back({i == 0 ? PathStep::Kind::Move : PathStep::Kind::Line, {i * .04, 0}, {}, {}});
  Drawing drawing{10, 10, "", "", {{path}}};
  const std::string svg = toSvg(drawing, {Theme::Paper, "x", true});
  const auto start = svg.find("d=\"m") + 4, end = svg.find('"', start);
  std::string data = svg.substr(start, end - start);
  int x = 0, count = 0, value = 0;
  for (std::size_t i = 0; i < data.size(); ++count) {
    value = std::stoi(data.substr(i));
    if (count % 2 == 0) x += value;
    i = data.find_first_of(" -", i + 1);
    if (i == std::string::npos) break;
  }
  CHECK(x == 40);
}

TEST_CASE("the same drawing gives the same bytes") {
  CHECK(toSvg(sample()) == toSvg(sample()));
}

TEST_CASE("the hatching is defined once, and only where something is hatched") {
  Drawing drawing = sample();
  CHECK(count(toSvg(drawing), "<pattern") == 0);
  for (int i = 0; i < 2; ++i) drawing.shapes.push_back({Rectangle{0, 0, 9, 9, {.isHatched = true}}});
  CHECK(count(toSvg(drawing), "<pattern") == 1);
  CHECK(count(toSvg(drawing, {Theme::Dark, "x"}), "url(#x-hatch)") == 2);
}

TEST_CASE("themes take their colours from the one table") {
  CHECK(toSvg(sample(), {Theme::Light, "a"}).find("#0F4C78") != std::string::npos);
  CHECK(toSvg(sample(), {Theme::Dark, "a"}).find("#86C5EE") != std::string::npos);
  CHECK(valueOf(Colour::Sheet, Theme::Paper) == "#FFFFFF");
  CHECK(valueOf(Colour::Sheet, Theme::Light) == "#FAFBF7");
}

TEST_CASE("control characters and broken bytes never reach the file") {
  CHECK(escaped("a\x01"
                "b") ==
        "a\xEF\xBF\xBD"
        "b");
  CHECK(escaped("\xFF") == "\xEF\xBF\xBD");
  CHECK(escaped("\"<&>\"") == "&quot;&lt;&amp;&gt;&quot;");
}

TEST_CASE("text runs and groups are found inside groups") {
  const Drawing drawing = sample();
  REQUIRE(textRunsOf(drawing).size() == 1);
  CHECK(textRunsOf(drawing).front().text == "5 < 6");
  CHECK(findGroup(drawing, "inner") != nullptr);
  CHECK(findGroup(drawing, "outer") == nullptr);
}
