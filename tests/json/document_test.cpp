#include "json/document.h"

#include <catch2/catch.hpp>

using namespace stile;
using json::Document;

namespace {

std::shared_ptr<const Document> parsed(const std::string& text) {
  base::Issues issues;
  auto document = Document::parse(text, "t.json", issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE(document);
  REQUIRE(issues.empty());
  return document;
}

/// The issues of a text that must be refused, one text for each.
std::vector<std::string> refused(const std::string& text) {
  CAPTURE(text);
  base::Issues issues;
  CHECK_FALSE(Document::parse(text, "t.json", issues));
  CHECK(issues.hasErrors());
  std::vector<std::string> result;
  for (const auto& issue : issues.all()) result.push_back(base::toText(issue));
  return result;
}

std::string firstLine(const std::string& text) {
  const auto found = refused(text);
  return found.empty() ? "" : found.front().substr(0, found.front().find('\n'));
}

std::string where(const base::Place& place) {
  return std::to_string(place.line) + ":" + std::to_string(place.column);
}

std::string nested(std::size_t depth) {
  return std::string(depth, '[') + std::string(depth, ']');
}

}  // namespace

TEST_CASE("every kind of value is read with its place") {
  const auto document = parsed("{\n  \"a\": [1, -2.50, true, false, null],\n  \"é\": \"x\", \"o\": {}\n}\n");
  const auto root = document->root();
  REQUIRE(root.isObject());
  CHECK(root.size() == 3);
  CHECK(root.keyAt(1) == "é");
  CHECK(where(root.keyPlaceAt(0)) == "2:3");
  CHECK(where(root.keyPlaceAt(2)) == "3:13");
  const auto array = root.at(0);
  CHECK(array.isArray());
  CHECK(array.size() == 5);
  CHECK(array.at(0).integer() == 1);
  CHECK(array.at(1).numberText() == "-2.50");
  CHECK(array.at(1).number() == base::Rational::parse("-2.5"));
  CHECK_FALSE(array.at(1).integer());
  CHECK(array.at(2).boolean());
  CHECK_FALSE(array.at(3).boolean());
  CHECK(array.at(4).isNull());
  CHECK(where(array.at(4).place()) == "2:32");
  CHECK(array.at(4).place().sourceLine == "  \"a\": [1, -2.50, true, false, null],");
  CHECK(array.at(4).place().file == "t.json");
  CHECK(root.find("é")->string() == "x");
  CHECK(where(root.find("é")->place()) == "3:8");
  CHECK(root.find("o")->size() == 0);
  CHECK_FALSE(root.find("missing"));
  CHECK_FALSE(array.find("a"));
  CHECK(document->text().substr(array.offset(), array.endOffset() - array.offset()) ==
        "[1, -2.50, true, false, null]");
}

TEST_CASE("a scalar is a document too") {
  CHECK(parsed("12")->root().integer() == 12);
  CHECK(parsed(" \"a\"\n")->root().string() == "a");
  CHECK(parsed("null")->root().isNull());
  CHECK(parsed("-0")->root().number() == base::Rational());
}

TEST_CASE("strings are decoded") {
  CHECK(parsed(R"("a\"\\\/\b\f\n\r\té\u00e9\uD83D\ude00")")->root().string() ==
        "a\"\\/\b\f\n\r\té\u00e9\U0001F600");
  CHECK(parsed(R"("\u0000")")->root().string() == std::string(1, '\0'));
  CHECK(parsed(R"({"a b": 1})")->root().find("a b"));
  CHECK(parsed(R"({"\u0061": 1})")->root().find("a"));
}

TEST_CASE("members keep their order and are found among many") {
  std::string text = "{";
  for (int i = 0; i < 500; ++i) {
    text += (i ? "," : "") + std::string("\"k") + std::to_string((i * 37) % 500) + "\":" + std::to_string(i);
  }
  const auto document = parsed(text + "}");
  CHECK(document->root().keyAt(1) == "k37");
  for (int i = 0; i < 500; ++i) {
    REQUIRE(document->root().find("k" + std::to_string((i * 37) % 500))->integer() == i);
  }
}

TEST_CASE("the place inside a string follows its escapes") {
  const auto document = parsed("[\n  \"ab\\n\\u00e9\\ud83d\\ude00z é!\"\n]");
  const auto node = document->root().at(0);
  CHECK(where(node.placeInString(0)) == "2:4");
  CHECK(where(node.placeInString(1)) == "2:5");
  CHECK(where(node.placeInString(2)) == "2:6");  // the escape of the line break
  CHECK(where(node.placeInString(3)) == "2:8");  // é, two bytes
  CHECK(where(node.placeInString(4)) == "2:8");
  CHECK(where(node.placeInString(5)) == "2:14");  // the surrogate pair, four bytes
  CHECK(where(node.placeInString(9)) == "2:26");
  CHECK(where(node.placeInString(13)) == "2:29");
  CHECK(where(node.placeInString(999)) == "2:30");
}

TEST_CASE("whole numbers that fit are integers") {
  CHECK(parsed("9223372036854775807")->root().integer() == 9223372036854775807LL);
  CHECK(parsed("-9223372036854775808")->root().integer() == -9223372036854775807LL - 1);
  CHECK_FALSE(parsed("9223372036854775808")->root().integer());
  CHECK(parsed("3.0")->root().integer() == 3);
  CHECK(parsed("1e2")->root().integer() == 100);
}

TEST_CASE("what is no JSON is refused in plain words at its place") {
  CHECK(firstLine("") == "t.json:1:1: the file is empty; write a JSON value into it");
  CHECK(firstLine(" \n ") == "t.json:1:1: the file is empty; write a JSON value into it");
  CHECK(firstLine("\xEF\xBB\xBF{}") ==
        "t.json:1:1: the file begins with a byte-order mark; save it as UTF-8 without a byte-order mark");
  CHECK(firstLine(std::string("\xFF\xFE{\0}\0", 6)).find("UTF-16") != std::string::npos);
  CHECK(firstLine("{\"a\": \"\xff\"}") == "t.json:1:8: the text is not UTF-8 here; save the file as UTF-8");
  CHECK(firstLine("{\n  \"a\": 1,\n}") ==
        "t.json:2:9: there is a comma after the last item; remove the comma");
  CHECK(firstLine("[1, ]") == "t.json:1:3: there is a comma after the last item; remove the comma");
  CHECK(firstLine("{\"a\": 1\n \"b\": 2}") ==
        "t.json:2:2: something is missing between two values; put a comma, or a colon after a key, between "
        "them");
  CHECK(firstLine("[1 2]").starts_with("t.json:1:4: something is missing"));
  CHECK(firstLine("{\"a\" 1}").starts_with("t.json:1:6: something is missing"));
  CHECK(firstLine("// note\n{}") == "t.json:1:1: JSON has no comments; remove the comment");
  CHECK(firstLine("[1, # note\n2]").starts_with("t.json:1:5: JSON has no comments"));
  CHECK(firstLine("{'a': 1}") == "t.json:1:2: a string begins with a single quote; use double quotes");
  CHECK(firstLine("[True]").starts_with("t.json:1:2: \"True\" is not a JSON value"));
  CHECK(firstLine("[tru]").starts_with("t.json:1:2: \"tru\" is not a JSON value"));
  CHECK(firstLine("[NaN]").starts_with("t.json:1:2: \"NaN\" is not a JSON value"));
  CHECK(firstLine("[nul, 1]").starts_with("t.json:1:2: \"nul\" is not a JSON value"));
  CHECK(firstLine("{id: 1}") == "t.json:1:2: a key must stand here; put the key between double quotes");
  CHECK(firstLine("{\"a\": 1, 2: 3}").starts_with("t.json:1:10: a key must stand here"));
  CHECK(firstLine("[01]") == "t.json:1:2: JSON has no number 01; write it like 0.5, -12 or 1e3");
  for (const char* number : {".5", "5.", "+1", "-", "1e", "1e+", "--1", "1.2.3", "00"}) {
    CHECK(firstLine(std::string("[7, ") + number + "]") ==
          "t.json:1:5: JSON has no number " + std::string(number) + "; write it like 0.5, -12 or 1e3");
  }
  CHECK(firstLine("[1}") == "t.json:1:3: } stands where ] should close; check the brackets");
  CHECK(firstLine("{\"a\": 1]") == "t.json:1:8: ] stands where } should close; check the brackets");
  CHECK(firstLine("]") == "t.json:1:1: ] stands where nothing should close; check the brackets");
  CHECK(firstLine("[\"a\": 1]") ==
        "t.json:1:5: a colon stands outside an object; put keys with their values between { and }");
  CHECK(firstLine("{\"a\": }") == "t.json:1:7: a value is missing after the colon; write the value, or null");
  CHECK(firstLine("{} {}").starts_with("t.json:1:4: there is more text after the end"));
  CHECK(firstLine("{}\n\n1").starts_with("t.json:3:1: there is more text after the end"));
  CHECK(firstLine("[\"a\nb\"]").starts_with("t.json:1:4: a string does not end on its line"));
  CHECK(firstLine("[\"a\tb\"]").starts_with("t.json:1:4: a string holds a control character"));
  CHECK(firstLine(R"(["\x"])").find("escape that JSON does not know") != std::string::npos);
  CHECK(firstLine(R"(["\u12g4"])").find("four hexadecimal digits") != std::string::npos);
  for (const char* text : {R"(["\ud800"])", R"(["\udc00"])", R"(["\ud800\n"])", R"(["\ud800z"])"}) {
    CHECK(firstLine(text).starts_with("t.json:1:3: a \\u escape is half of a pair"));
  }
  CHECK(firstLine(R"(["\ud800\u0041"])").find("half of a pair") != std::string::npos);
  CHECK(firstLine("[\n1") ==
        "t.json:2:2: the text ends too early; the file may have been cut off; a ] is missing");
  CHECK(firstLine("{\"a\": [1]\n\n\n").starts_with("t.json:1:10: the text ends too early"));
  CHECK(firstLine("{\"a").find("a string is still open") != std::string::npos);
  for (const char* text : {"[01]", "[.5]", "[5.]", "[+1]", "[-]", "[1e]", "]", "{,}", "[,1]", "{\"a\":1,,}",
                           "[1}", "{1: 2}", "\\", "[\"a\": 1]", "nul", "[0x10]", "\"a", "[Infinity]"}) {
    CHECK(refused(text).size() == 1);
  }
  CHECK(refused(std::string("[1,\0 2]", 7)).size() == 1);
}

TEST_CASE("a syntax error shows its source line with a caret") {
  CHECK(refused("{\n\t\"a\" 1\n}").front().ends_with("\n\t\"a\" 1\n\t    ^"));
}

TEST_CASE("a key that stands twice is refused with both places") {
  const auto found = refused("{\"rules\": [{\"id\": 1,\n  \"b\": 2,\n  \"id\": 3}]}");
  REQUIRE(found.size() == 1);
  CHECK(found[0] ==
        "t.json:3:3: /rules/0/id: the key \"id\" stands twice in one object; "
        "keep one of the two; the first is on line 1\n  \"id\": 3}]}\n  ^");
  CHECK(refused(R"({"a": 1, "\u0061": 2})").size() == 1);
  CHECK(refused(R"({"a": 1, "a": 2, "a": 3})").size() == 2);
  CHECK(refused(R"({"a/b~": 1, "a/b~": 2})")[0].find(": /a~1b~0: ") != std::string::npos);
  parsed(R"([{"a": 1}, {"a": 2}])");
}

TEST_CASE("a number that does not fit is refused with its path") {
  CHECK(firstLine("{\"a\": [1, 1e400]}") ==
        "t.json:1:11: /a/1: the number 1e400 does not fit; "
        "write it with at most 34 digits and an exponent within 30, or as a string");
  CHECK(refused("[1e400, 2, 12345678901234567890123456789012345]").size() == 2);
  CHECK(refused("[1e99999999999999999999999]").size() == 1);
  CHECK(refused("[" + std::string(5000, '9') + "]").front().size() < 6000);
  CHECK(parsed("[1e30, 1234567890123456789012345678901234]")->root().size() == 2);
}

TEST_CASE("all issues of content are collected, up to a hundred") {
  CHECK(refused("{\"a\": 1e400, \"a\": 1e500}").size() == 3);
  std::string text = "[1e99";
  for (int i = 0; i < 5000; ++i) text += ",1e99";
  const auto found = refused(text + "]");
  CHECK(found.size() == 100);
  CHECK(found.back().find("more troubles") != std::string::npos);
}

TEST_CASE("nesting is limited") {
  parsed(nested(json::kMaxDepth));
  CHECK(firstLine(nested(json::kMaxDepth + 1)).find("nested deeper than 64 levels") != std::string::npos);
  CHECK(refused(nested(1000000)).size() == 1);
}

TEST_CASE("a text over the limit is refused without being read") {
  CHECK(firstLine(std::string(json::kMaxBytes + 1, ' ')).find("larger than 64 MiB") != std::string::npos);
}

TEST_CASE("any prefix of a document is refused or read, with a place inside the text") {
  const std::string text = "{\"a\": [1, -2.5e3, \"x\\u00e9\\n\", true, null], \"b\": {\"c\": \"d\"}}";
  for (std::size_t length = 0; length < text.size(); ++length) {
    base::Issues issues;
    CHECK_FALSE(Document::parse(text.substr(0, length), "t.json", issues));
    REQUIRE(issues.all().size() == 1);
    CHECK(issues.all()[0].place.column <= static_cast<int>(length) + 1);
  }
}

TEST_CASE("any single byte changed gives a document or one place, never a crash") {
  const std::string text = "{\"a\": [1, -2.5e3, \"x\\u00e9\\n\", true, null], \"b\": {\"c\": \"d\"}}";
  for (std::size_t at = 0; at < text.size(); ++at) {
    for (int byte = 0; byte < 256; ++byte) {
      std::string changed = text;
      changed[at] = static_cast<char>(byte);
      base::Issues issues;
      const auto document = Document::parse(changed, "t.json", issues);
      REQUIRE((document != nullptr) == issues.empty());
      for (const auto& issue : issues.all()) REQUIRE_FALSE(base::toText(issue).empty());
    }
  }
}
