#include "json/reader.h"

#include <catch2/catch.hpp>

using namespace stile;
using json::Document;
using json::ObjectReader;

namespace {

struct Reading {
  explicit Reading(const std::string& text) {
    document = Document::parse(text, "t.json", issues);
    REQUIRE(document);
  }
  ObjectReader reader() { return ObjectReader(document->root(), "rule-a", issues); }
  /// The issues, each cut to its first line.
  std::vector<std::string> lines() const {
    std::vector<std::string> result;
    for (const auto& issue : issues.all()) {
      const std::string text = base::toText(issue);
      result.push_back(text.substr(0, text.find('\n')));
    }
    return result;
  }
  base::Issues issues;
  std::shared_ptr<const Document> document;
};

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("members of the right kind are read") {
  Reading reading(R"({"s": "x", "b": true, "i": 3, "n": 2.5, "l": ["a", "b"], "o": {}})");
  auto reader = reading.reader();
  CHECK(reader.isObject());
  CHECK(reader.requireString("s") == "x");
  CHECK(reader.string("s", "y") == "x");
  CHECK(reader.boolean("b") == true);
  CHECK(reader.integer("i") == 3);
  CHECK(reader.number("n") == base::Rational::parse("2.5"));
  CHECK(reader.strings("l") == Lines{"a", "b"});
  CHECK(reader.array("l").size() == 2);
  CHECK(reader.require("o")->isObject());
  reader.finish();
  CHECK(reading.issues.empty());
}

TEST_CASE("absent members that may be absent are no issue") {
  Reading reading("{}");
  auto reader = reading.reader();
  CHECK_FALSE(reader.find("a"));
  CHECK(reader.string("a", "otherwise") == "otherwise");
  CHECK_FALSE(reader.boolean("a"));
  CHECK_FALSE(reader.integer("a"));
  CHECK_FALSE(reader.number("a"));
  CHECK(reader.strings("a").empty());
  CHECK(reader.array("a").empty());
  reader.finish();
  CHECK(reading.issues.empty());
}

TEST_CASE("a required member that is absent is an issue at the object") {
  Reading reading("\n {}");
  auto reader = reading.reader();
  CHECK_FALSE(reader.require("id"));
  CHECK(reader.requireString("title").empty());
  CHECK(reading.lines() == Lines{"t.json:2:2: rule-a: the member \"id\" is missing; add it",
                                 "t.json:2:2: rule-a: the member \"title\" is missing; add it"});
}

TEST_CASE("a member of the wrong kind is an issue at its value") {
  Reading reading(R"({"s": 1, "b": "x", "i": 2.5, "j": "2", "n": null, "l": {}, "m": ["a", 1]})");
  auto reader = reading.reader();
  CHECK(reader.requireString("s").empty());
  CHECK_FALSE(reader.boolean("b"));
  CHECK_FALSE(reader.integer("i"));
  CHECK_FALSE(reader.integer("j"));
  CHECK_FALSE(reader.number("n"));
  CHECK(reader.array("l").empty());
  CHECK(reader.strings("m") == Lines{"a"});
  reader.finish();
  CHECK(
      reading.lines() ==
      Lines{"t.json:1:7: rule-a: \"s\" must be a string, not a number; put it between double quotes",
            "t.json:1:15: rule-a: \"b\" must be true or false, not a string; write true or false without "
            "quotes",
            "t.json:1:25: rule-a: \"i\" must be a whole number; remove the decimals or shorten it",
            "t.json:1:35: rule-a: \"j\" must be a whole number, not a string; write it as digits without "
            "quotes",
            "t.json:1:45: rule-a: \"n\" must be a number, not null; write it as digits without quotes",
            "t.json:1:56: rule-a: \"l\" must be an array, not an object; write it between [ and ]",
            "t.json:1:71: rule-a: \"m\" must hold strings only, not a number; put it between double quotes"});
}

TEST_CASE("a member nobody asked for is an issue at its key, with the likely name") {
  Reading reading(R"({"id": "a", "sevrity": "x", "zzzzzzzz": 1})");
  auto reader = reading.reader();
  reader.find("id");
  reader.find("severity");
  reader.finish();
  CHECK(reading.lines() ==
        Lines{"t.json:1:13: rule-a: the member \"sevrity\" is not known here; did you mean \"severity\"?",
              "t.json:1:29: rule-a: the member \"zzzzzzzz\" is not known here; "
              "remove it; the members known here are id, severity"});
}

TEST_CASE("what is no object gives one issue and nothing else") {
  Reading reading("[1]");
  auto reader = reading.reader();
  CHECK_FALSE(reader.isObject());
  CHECK_FALSE(reader.require("id"));
  CHECK(reader.requireString("id").empty());
  reader.finish();
  CHECK(reading.lines() ==
        Lines{"t.json:1:1: rule-a: this must be an object, not an array; write it between { and }"});
}

TEST_CASE("the subject can be set once the id is known") {
  Reading reading(R"({"id": "b"})");
  auto reader = reading.reader();
  reader.setSubject(reader.requireString("id"));
  CHECK(reader.subject() == "b");
  reader.issue(reader.node(), "this is wrong", "mend it");
  CHECK(reading.lines() == Lines{"t.json:1:1: b: this is wrong; mend it"});
}
