// Expressions that would hang or exhaust the process end with an error that names the limit.
#include <catch2/catch.hpp>
#include <chrono>

#include "expression/evaluator.h"

using namespace stile;
using namespace stile::expression;

namespace {

/// The error an expression ends in; empty when it ends well.
std::string errorOf(const std::string& text, const Environment& environment = {},
                    const Collection& focus = {}) {
  base::Issues issues;
  const auto parsed = Expression::parse(text, "test", issues);
  if (parsed && parsed->evaluate(focus, environment, issues)) return {};
  REQUIRE_FALSE(issues.empty());
  return issues.all().front().message;
}

std::string repeated(const std::string& text, std::size_t count) {
  std::string result;
  for (std::size_t i = 0; i < count; ++i) result += text;
  return result;
}

const std::string kSteps = "the expression needs more than 2000000 steps";
const std::string kItems = "the expression needs more than 100000 items in one collection";
const std::string kText = "the expression needs more than 1048576 bytes in one text";

/// So many characters: ten doubled again and again.
std::string longText(int doublings) {
  std::string text = "'abcdefghij'";
  for (int i = 0; i < doublings; ++i) text += ".select($this + $this)";
  return text;
}

}  // namespace

TEST_CASE("Deep nesting and long chains are refused before anything is evaluated") {
  CHECK(errorOf(repeated("(", 65) + "1" + repeated(")", 65)) == "the expression is nested too deeply");
  CHECK(errorOf(repeated("iif(true,", 65) + "1" + repeated(")", 65)) ==
        "the expression is nested too deeply");
  CHECK(errorOf(repeated("-", 65) + "1") == "the expression is nested too deeply");
  CHECK(errorOf("1" + repeated(" + 1", 500)) == "the expression is too long a chain");
  CHECK(errorOf("1" + repeated(".first()", 500)) == "the expression is too long a chain");
  CHECK(errorOf("'" + repeated("x", kMaxLength) + "'") == "the expression is longer than 20000 bytes");
  CHECK(errorOf("1" + repeated(" + 1", 499)) == "");
  CHECK(errorOf("1" + repeated(".select($this)", 499)) == "");
  CHECK(errorOf(repeated("iif(true,", 63) + "1" + repeated(")", 63)) == "");
}

TEST_CASE("A repeat that never ends and one that grows end with a limit") {
  CHECK(errorOf("1.repeat($this + 1)") == kSteps);
  CHECK(errorOf("1.repeatAll($this)") == kItems);
  CHECK(errorOf("1.repeat($this)") == "");
  CHECK(errorOf("'ab'.repeatAll($this.toChars() | ($this & 'a'))") != "");
  CHECK(errorOf("(1|2).repeatAll($this.combine($this))") == kItems);
}

TEST_CASE("Collections that multiply end with a limit") {
  const std::string doubled = "(1|2|3|4)" + repeated(".combine($this)", 1);
  CHECK(errorOf("1" + repeated(".select($this.combine($this))", 20)) == kItems);
  CHECK(errorOf(doubled) == "");
  // Nested passes over one collection: the product of their lengths counts.
  const std::string hundred = "(" + longText(4) + ".toChars())";
  CHECK(errorOf("(" + longText(4) + ".toChars()).all(" + hundred + ".all(" + hundred + ".all(true)))") ==
        kSteps);
}

TEST_CASE("Distinct on many items is counted") {
  // Every pair of 80,000 different items would have to be compared.
  CHECK(errorOf(longText(14) + ".toChars().select($index).distinct()") == kItems);
  CHECK(errorOf(longText(12) + ".toChars().select($index).isDistinct()") == kSteps);
  CHECK(errorOf(longText(7) + ".toChars().select($index).isDistinct()") == "");
}

TEST_CASE("Long texts end with a limit, and searching them is linear") {
  CHECK(errorOf(longText(17)) == kText);
  CHECK(errorOf(longText(16)) == "");
  CHECK(errorOf(longText(16) + ".replace('', 'xyz')") == kText);
  CHECK(errorOf(longText(16) + ".replaceMatches('.', 'xyz')") == kText);
  CHECK(errorOf(longText(15) + ".encode('hex').encode('hex').encode('hex')") == kText);
  CHECK(errorOf(longText(16) + ".toChars()") == kItems);
  CHECK(errorOf(longText(16) + ".split('a').count()") == "");
  CHECK(errorOf(longText(16) + ".split('').count()") == kItems);
  const auto start = std::chrono::steady_clock::now();
  // 'a' many times over, and half of that with a 'b' behind it: quadratic when done carelessly.
  std::string same = "'aaaaaaaaaa'";
  for (int i = 0; i < 15; ++i) same += ".select($this + $this)";
  CHECK(errorOf(same + ".select((" + same + " + $this).contains($this + 'b'))") == "");
  CHECK(errorOf(same + ".indexOf(" + same + ".substring(100000) + 'b')") == "");
  const auto took = std::chrono::steady_clock::now() - start;
  CHECK(took < std::chrono::seconds(30));
}

TEST_CASE("The texts of one evaluation together are limited") {
  Environment environment;
  environment.limits.textBytes = 20000;
  CHECK(errorOf(longText(7) + ".select($this & 'x').select($this & 'y').select($this & 'z')", environment) ==
        "");
  CHECK(errorOf(longText(10), environment) == "the expression needs more than 20000 bytes of text");
}

TEST_CASE("Catastrophic patterns match in linear time, and patterns are limited") {
  const auto start = std::chrono::steady_clock::now();
  std::string same = "'aaaaaaaaaa'";
  for (int i = 0; i < 13; ++i) same += ".select($this + $this)";
  for (const char* pattern :
       {"(a+)+$", "(a|aa)+$", "(a|a?)+$", "(.*a){12}$", "^(([a-z])+.)+[A-Z]([a-z])+$"}) {
    INFO(pattern);
    CHECK(errorOf("(" + same + " & '!').matches('" + pattern + "')") == "");
    CHECK(errorOf("(" + same + " & '!').replaceMatches('" + pattern + "', 'x')") == "");
  }
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(60));
  CHECK(errorOf("'a'.matches('((a{1,1000}){1,1000}){1,1000}')") != "");
  CHECK(errorOf("'a'.matches('" + repeated("a", 5000) + "')") == "the pattern is longer than 4096 bytes");
  CHECK(errorOf("'a'.matches('(?=a)')") != "");
  CHECK(errorOf("'a'.matches('(')") != "");
}

TEST_CASE("A deep and a wide resource end with a limit, not with the stack") {
  std::string deep = R"({"resourceType": "QuestionnaireResponse", "item": [)";
  const int levels = 20;
  for (int i = 0; i < levels; ++i) deep += R"({"linkId": "a", "item": [)";
  deep += R"({"linkId": "b"})";
  for (int i = 0; i < levels; ++i) deep += "]}";
  deep += "]}";
  base::Issues issues;
  const auto document = json::Document::parse(deep, "deep.json", issues);
  REQUIRE(document);
  const Collection focus = itemsOf(document->root(), r4Model());
  CHECK(errorOf("repeat(item).count() = 21", {}, focus) == "");
  CHECK(errorOf("descendants().select(descendants()).select(descendants()).count()", {}, focus) == "");
  std::string wide = R"({"resourceType": "QuestionnaireResponse", "item": [)";
  for (int i = 0; i < 30000; ++i)
    wide += std::string(i ? "," : "") + R"({"linkId": ")" + std::to_string(i) +
            R"(", "text": "x", "definition": "y"})";
  wide += "]}";
  const auto wideDocument = json::Document::parse(wide, "wide.json", issues);
  REQUIRE(wideDocument);
  const Collection many = itemsOf(wideDocument->root(), r4Model());
  CHECK(errorOf("item.linkId.count()", {}, many) == "");
  CHECK(errorOf("descendants().count()", {}, many) == kItems);
  CHECK(errorOf("item.linkId.distinct()", {}, many) == kSteps);
  CHECK(errorOf("item.where(%context.item.where(linkId = 'x').exists())", {}, many) == kSteps);
}

TEST_CASE("Numbers that leave every range end in empty, not in a crash") {
  for (const char* text :
       {"2147483647 + 1", "-2147483647 - 2", "46341 * 46341", "1 / 0", "1 div 0", "1 mod 0", "1.5 mod 0.0",
         "10.power(400)", "0.ln()", "(-1).ln()", "10.log(1)", "1000.exp()",
        "(-2147483648).abs()", "@9999-12-31 + 1 day", "@0001-01-01 - 1 day", "@2020-01-01 + 2000000000 years",
        "@T10:00 + 99999999999999.0 hours"}) {
    base::Issues issues;
    const auto parsed = Expression::parse(text, "test", issues);
    INFO(text);
    REQUIRE(parsed);
    const auto result = parsed->evaluate({}, {}, issues);
    CHECK((!result || result->empty()));
  }
}
