#include "base/issue.h"

#include <catch2/catch.hpp>

using namespace stile::base;

namespace {

Issue at(std::string_view text, std::size_t offset) {
  return {Severity::Error, placeAt("rules.json", text, offset), "resting-bp", "the unit is missing",
          "write 'mm[Hg]'"};
}

std::string caretLine(const std::string& text) {
  return text.substr(text.rfind('\n') + 1);
}

}  // namespace

TEST_CASE("an issue names its place, subject, trouble and remedy, and points at it") {
  CHECK(toText(at("one\ntwo three\nfour", 8)) ==
        "rules.json:2:5: resting-bp: the unit is missing; write 'mm[Hg]'\n"
        "two three\n"
        "    ^");
}

TEST_CASE("an issue without a place is one line") {
  CHECK(toText({Severity::Note, {}, "", "nothing was asked", ""}) == "nothing was asked");
  CHECK(toText({Severity::Error, {"a.json", 0, 0, ""}, "", "cannot be used", "replace it"}) ==
        "a.json: cannot be used; replace it");
  CHECK(toText({Severity::Error, {"a.csv", 7, 0, ""}, "age", "is empty", ""}) == "a.csv:7: age: is empty");
  CHECK(toText({Severity::Error, {"", 7, 2, ""}, "age", "is empty", ""}) == "line 7:2: age: is empty");
}

TEST_CASE("columns count code points and tabs are kept under the caret") {
  const std::string line = "\té° x";
  const Issue issue = at(line, 6);
  CHECK(issue.place.column == 5);
  CHECK(toText(issue).ends_with("\n\té° x\n\t   ^"));
}

TEST_CASE("an offset inside a code point means the code point") {
  CHECK(placeAt("f", "aé", 2).column == 2);
  CHECK(placeAt("f", "aé", 1).column == 2);
  CHECK(placeAt("f", "aé", 3).column == 3);
}

TEST_CASE("places are right at line ends and beyond the text") {
  const std::string_view text = "ab\r\ncd\n";
  CHECK(placeAt("f", text, 0).line == 1);
  CHECK(placeAt("f", text, 0).sourceLine == "ab");
  CHECK(placeAt("f", text, 3).line == 1);
  CHECK(placeAt("f", text, 4).line == 2);
  CHECK(placeAt("f", text, 4).column == 1);
  CHECK(placeAt("f", text, 6).sourceLine == "cd");
  CHECK(placeAt("f", text, 7).line == 3);
  CHECK(placeAt("f", text, 999).line == 3);
  CHECK(placeAt("f", "", 5).line == 1);
  CHECK(placeAt("f", "\n\nx", 2).line == 3);
}

TEST_CASE("a long source line is cut to a window round the column") {
  const std::string line = std::string(300, 'a') + "X" + std::string(300, 'b');
  for (const std::size_t offset :
       {std::size_t{0}, std::size_t{79}, std::size_t{300}, line.size() - 1, line.size()}) {
    const std::string text = toText(at(line, offset));
    const std::string caret = caretLine(text);
    const std::size_t shownAt = text.find('\n') + 1;
    const std::string shown = text.substr(shownAt, text.rfind('\n') - shownAt);
    const bool isCutLeft = shown.starts_with("…");
    CHECK(shown.size() <= 160 + 2 * std::string("…").size());
    // The caret stands under the same letter; the cut mark is three bytes in one column.
    const std::size_t byte = caret.size() - 1 + (isCutLeft ? 2 : 0);
    CHECK((offset == line.size() ? byte == shown.size() : shown.at(byte) == line.at(offset)));
  }
  CHECK(toText(at(std::string(160, 'a'), 0)).find("…") == std::string::npos);
}

TEST_CASE("an enormous source line is not copied into the issue") {
  const Place place = placeAt("f", std::string(1 << 20, 'a'), 1000);
  CHECK(place.sourceLine.empty());
  CHECK(place.column == 1001);
}

TEST_CASE("control bytes and broken UTF-8 do not reach the terminal") {
  const std::string text = toText(at("a\x1b[31m\xff z", 8));
  CHECK(text.ends_with("\na?[31m? z\n        ^"));
}

TEST_CASE("issues are collected and only errors refuse") {
  Issues issues;
  CHECK(issues.empty());
  issues.add({Severity::AskBack, {}, "", "implausible", ""});
  issues.add({Severity::Note, {}, "", "by the way", ""});
  CHECK_FALSE(issues.hasErrors());
  Issues more;
  more.error({}, "", "wrong");
  issues.append(more);
  CHECK(issues.hasErrors());
  CHECK(issues.all().size() == 3);
  issues.append(issues);
  CHECK(issues.all().size() == 6);
  CHECK(issues.all()[5].message == "wrong");
}
