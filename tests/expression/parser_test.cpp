#include <catch2/catch.hpp>

#include "expression/syntax.h"

using namespace stile;
using namespace stile::expression;

namespace {

std::unique_ptr<Syntax> parsed(const std::string& text, base::Issues& issues) {
  return parse(text, TextOrigin("f.json", text), "r", issues);
}

/// The tree as operators before operands in brackets.
std::string shape(const Syntax* syntax) {
  if (!syntax) return "_";
  std::string own = syntax->text;
  switch (syntax->kind) {
    case SyntaxKind::Null:
      return "{}";
    case SyntaxKind::String:
      return "'" + syntax->text + "'";
    case SyntaxKind::Date:
      return "date:" + syntax->text;
    case SyntaxKind::DateTime:
      return "datetime:" + syntax->text;
    case SyntaxKind::Time:
      return "time:" + syntax->text;
    case SyntaxKind::Quantity:
      return syntax->text + "[" + syntax->unit + "]";
    case SyntaxKind::Variable:
      return "%" + syntax->text;
    case SyntaxKind::Boolean:
    case SyntaxKind::Number:
      return own;
    case SyntaxKind::This:
      own = "$this";
      break;
    case SyntaxKind::Index:
      own = "$index";
      break;
    case SyntaxKind::Total:
      own = "$total";
      break;
    case SyntaxKind::Indexer:
      own = "at";
      break;
    case SyntaxKind::TypeOperator:
      own += ":" + syntax->unit;
      break;
    case SyntaxKind::Function:
      own += "()";
      break;
    default:
      break;
  }
  const bool isPlain = syntax->children.size() == 1 && !syntax->children[0];
  if (isPlain) return own;
  std::string result = "(" + own;
  for (const auto& child : syntax->children) result += " " + shape(child.get());
  return result + ")";
}

std::string shape(const std::string& text) {
  base::Issues issues;
  const auto tree = parsed(text, issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  INFO(text);
  REQUIRE(tree);
  CHECK(issues.empty());
  return shape(tree.get());
}

std::string refused(const std::string& text) {
  base::Issues issues;
  INFO(text);
  CHECK_FALSE(parsed(text, issues));
  REQUIRE(issues.all().size() == 1);
  return base::toText(issues.all()[0]);
}

}  // namespace

// FHIRPath 2.0.0, section "Operator Precedence" and the order of alternatives of `expression` in
// the grammar (https://hl7.org/fhirpath/N1/grammar.html).
TEST_CASE("operators bind in the order of the FHIRPath grammar") {
  CHECK(shape("-a.b") == "(- (b a))");
  CHECK(shape("-a[0]") == "(- (at a 0))");
  CHECK(shape("-a * b") == "(* (- a) b)");
  CHECK(shape("a * -b") == "(* a (- b))");
  CHECK(shape("a + b * c - d") == "(- (+ a (* b c)) d)");
  CHECK(shape("a div b mod c / d") == "(/ (mod (div a b) c) d)");
  CHECK(shape("a & b + c") == "(+ (& a b) c)");
  CHECK(shape("a + b is Integer") == "(is:Integer (+ a b))");
  CHECK(shape("a | b is Integer") == "(| a (is:Integer b))");
  CHECK(shape("a < b | c") == "(< a (| b c))");
  CHECK(shape("a = b < c") == "(= a (< b c))");
  CHECK(shape("a in b = c") == "(in a (= b c))");
  CHECK(shape("a and b contains c") == "(and a (contains b c))");
  CHECK(shape("a or b and c") == "(or a (and b c))");
  CHECK(shape("a xor b or c") == "(or (xor a b) c)");
  CHECK(shape("a implies b or c") == "(implies a (or b c))");
  CHECK(shape("a or b implies c xor d") == "(implies (or a b) (xor c d))");
}

TEST_CASE("operators of one level are read from the left") {
  CHECK(shape("a implies b implies c") == "(implies (implies a b) c)");
  CHECK(shape("a - b - c") == "(- (- a b) c)");
  CHECK(shape("a = b != c ~ d !~ e") == "(!~ (~ (!= (= a b) c) d) e)");
  CHECK(shape("a < b <= c > d >= e") == "(>= (> (<= (< a b) c) d) e)");
  CHECK(shape("a is B as C") == "(as:C (is:B a))");
  CHECK(shape("(a or b) and c") == "(and (or a b) c)");
}

TEST_CASE("paths, functions and special names are read") {
  CHECK(shape("Patient.name.given") == "(given (name Patient))");
  CHECK(shape("a.where($this > 1).first()") == "(first() (where() a (> $this 1)))");
  CHECK(shape("iif(a, 'b', {})") == "(iif() _ a 'b' {})");
  CHECK(shape("a.aggregate($total + $index, 0)") == "(aggregate() a (+ $total $index) 0)");
  CHECK(shape("now()") == "now()");
  CHECK(shape("a.$this") == "($this a)");
  CHECK(shape("a[b[1]].c") == "(c (at a (at b 1)))");
  CHECK(shape("x is System.Integer") == "(is:System.Integer x)");
  CHECK(shape("x.is(FHIR.`Patient`)") == "(is() x (Patient FHIR))");
  CHECK(shape("1.toString()") == "(toString() 1)");
  CHECK(shape("-1.abs()") == "(- (abs() 1))");
}

TEST_CASE("operator words are names where a name must stand") {
  CHECK(shape("contains") == "contains");
  CHECK(shape("a.repeat(contains)") == "(repeat() a contains)");
  CHECK(shape("a.as(B).is(C)") == "(is() (as() a B) C)");
  CHECK(shape("in in is is as") == "(in in (is:as is))");
  CHECK(shape("a.`and`") == "(and a)");
  CHECK(shape("`true`") == "true");
  CHECK(shape("a.`day`") == "(day a)");
}

TEST_CASE("literals of every kind are read") {
  CHECK(shape("true") == "true");
  CHECK(shape("{ }") == "{}");
  CHECK(shape("007.50") == "007.50");
  CHECK(shape("180 'mm[Hg]'") == "180[mm[Hg]]");
  CHECK(shape("2 weeks") == "2[weeks]");
  CHECK(shape("4 days.toString()") == "(toString() 4[days])");
  CHECK(shape("@2026") == "date:2026");
  CHECK(shape("@2026-01") == "date:2026-01");
  CHECK(shape("@2024-02-29") == "date:2024-02-29");
  CHECK(shape("@2026T") == "datetime:2026T");
  CHECK(shape("@2026-01T") == "datetime:2026-01T");
  CHECK(shape("@2026-01-05T14") == "datetime:2026-01-05T14");
  CHECK(shape("@2026-01-05T14:30:00.125+10:00") == "datetime:2026-01-05T14:30:00.125+10:00");
  CHECK(shape("@2026-01-05T14:30Z.is(DateTime)") == "(is() datetime:2026-01-05T14:30Z DateTime)");
  CHECK(shape("@T14:30:15.5") == "time:14:30:15.5");
  CHECK(shape("@2026-01-05 - 1 day") == "(- date:2026-01-05 1[day])");
}

TEST_CASE("names with a percent sign are read in all four ways") {
  CHECK(shape("%angina") == "%angina");
  CHECK(shape("% angina") == "%angina");
  CHECK(shape("%`vs-name`") == "%vs-name");
  CHECK(shape("%'us-zip'") == "%us-zip");
}

TEST_CASE("escapes in texts and names are resolved") {
  CHECK(shape(R"('a\'b\"c\`d\\e\/f')") == R"('a'b"c`d\e/f')");
  CHECK(shape(R"('\r\n\t\f')") == "'\r\n\t\f'");
  CHECK(shape(R"('P\u0065ter \u00e9 \u20ac \uD83D\uDE00')") == "'Peter é € \U0001F600'");
  CHECK(shape(R"('\p\3\u005')") == "'p3u005'");
  CHECK(shape(R"(`a\`b`)") == "a`b");
  CHECK(shape("'Grüße\nzwei'") == "'Grüße\nzwei'");
}

TEST_CASE("comments and white space are passed over") {
  CHECK(shape("2 // two\n + /* three * / */ 3") == "(+ 2 3)");
  CHECK(shape("/**/1//") == "1");
  CHECK(shape(" \t\r\n1 ") == "1");
}

TEST_CASE("a node knows where it stands in the text") {
  base::Issues issues;
  const auto tree = parsed("  %a and (%b  > 3 'kg')", issues);
  REQUIRE(tree);
  CHECK(tree->offset == 2);
  CHECK(tree->length == 21);
  const Syntax& comparison = *tree->children[1];
  CHECK(comparison.offset == 10);
  CHECK(comparison.length == 12);
  CHECK(comparison.children[1]->offset == 16);
  CHECK(comparison.children[1]->length == 6);
  CHECK(tree->height == 3);
}

TEST_CASE("what is not FHIRPath is refused with its place and what was probably meant") {
  CHECK(refused("%a and") == "f.json:1:7: r: the expression ends too early\n%a and\n      ^");
  CHECK(refused("") == "f.json:1:1: r: an expression is missing");
  CHECK(refused("%a =\n  = 3") == "f.json:2:3: r: = is not expected here; write a single =\n  = 3\n  ^");
  CHECK(refused("'é' = \"x\"") ==
        "f.json:1:7: r: texts do not stand in double quotes; write 'single quotes'\n'é' = \"x\"\n      ^");
  CHECK(refused("not %a") ==
        "f.json:1:5: r: % is not expected here; write (…).not() after the condition\nnot %a\n    ^");
  CHECK(refused("%a && %b") == "f.json:1:5: r: & is not expected here; write and\n%a && %b\n    ^");
  CHECK(refused("%a || %b") == "f.json:1:5: r: | is not expected here; write or\n%a || %b\n    ^");
  CHECK(refused("%a <> 3") == "f.json:1:5: r: > is not expected here; write !=\n%a <> 3\n    ^");
  CHECK(refused("!%a") == "f.json:1:1: r: ! alone means nothing here; write (…).not() or !=\n!%a\n^");
  CHECK(refused("%a AND %b") ==
        "f.json:1:4: r: AND is not expected here; operators are written in small letters\n%a AND %b\n   ^");
  CHECK(refused("x.day") ==
        "f.json:1:3: r: day is not expected here; put backticks around it if it is a name\nx.day\n  ^");
  CHECK(refused("x.true") ==
        "f.json:1:3: r: true is not expected here; put backticks around it if it is a name\nx.true\n  ^");
  CHECK(refused("(1 + 2") == "f.json:1:7: r: the expression ends too early\n(1 + 2\n      ^");
  CHECK(refused("1 2") == "f.json:1:3: r: a number is not expected here\n1 2\n  ^");
  CHECK(refused("a.'b'") == "f.json:1:3: r: a text is not expected here\na.'b'\n  ^");
  CHECK(refused("$that") ==
        "f.json:1:1: r: $that is not known; FHIRPath has $this, $index and $total\n$that\n^");
}

TEST_CASE("texts, names and comments without an end are refused") {
  CHECK(refused("%a = 'hip") ==
        "f.json:1:6: r: this text has no end; close it with a single quote\n%a = 'hip\n     ^");
  CHECK(refused("`a") == "f.json:1:1: r: this name has no end; close it with a backtick\n`a\n^");
  CHECK(refused("1 /* x") == "f.json:1:3: r: this comment has no end; close it with */\n1 /* x\n  ^");
  CHECK(refused("'a\\") == "f.json:1:1: r: this text has no end; close it with a single quote\n'a\\\n^");
  CHECK(refused("'\\ud83d x'") == "f.json:1:2: r: this escape stands for no character\n'\\ud83d x'\n ^");
}

TEST_CASE("dates and times that do not exist are refused") {
  for (const char* text : {"@2026-13", "@2026-02-30", "@2025-02-29", "@0000", "@26", "@", "@2026-1",
                           "@2026-01-5", "@2026-01-05T24", "@2026-01-05T10:60", "@T25:00", "@T", "@T9:00",
                           "@2026-01-05T10:00+15:00", "@20260105"}) {
    CAPTURE(text);
    CHECK(refused(text).starts_with("f.json:1:1: r: "));
  }
}

TEST_CASE("nesting and length have limits") {
  const auto nested = [](std::size_t count) {
    return std::string(count, '(') + "1" + std::string(count, ')');
  };
  CHECK(shape(nested(kMaxDepth)) == "1");
  CHECK(refused(nested(kMaxDepth + 1)).find("nested too deeply") != std::string::npos);
  CHECK(refused(std::string(kMaxDepth + 1, '-') + "1").find("nested too deeply") != std::string::npos);

  std::string chain = "%a";
  for (int i = 1; i < kMaxHeight; ++i) chain += " or %a";
  CHECK(shape(chain).starts_with("(or (or"));
  CHECK(refused(chain + " or %a").find("too long a chain") != std::string::npos);
  CHECK(refused("1" + std::string(kMaxLength, ' ')).find("longer than 20000 bytes") != std::string::npos);
}

TEST_CASE("text that is not UTF-8 is refused") {
  CHECK(refused("'a\xFF'").find("f.json:1:3: r: the expression is not UTF-8 here") == 0);
  CHECK(refused("%a \xE2\x89\xA5 3").find("the character ≥ is not part of an expression") !=
        std::string::npos);
}
