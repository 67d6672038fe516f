#include <catch2/catch.hpp>

#include "json/document.h"

using namespace stile;
using json::Document;
using json::Writer;

TEST_CASE("JSON is written indented in the order of the calls") {
  Writer writer;
  writer.beginObject();
  writer.member("id", "a").member("count", 3).member("isOpen", true);
  writer.key("empty").beginArray().endArray();
  writer.key("none").beginObject().endObject();
  writer.key("list").beginArray().number(1).null().string("x").endArray();
  writer.key("half").number(*base::Rational::parse("0.50"));
  writer.key("written").numberText("1.50");
  writer.endObject();
  CHECK(writer.text() ==
        "{\n"
        "  \"id\": \"a\",\n"
        "  \"count\": 3,\n"
        "  \"isOpen\": true,\n"
        "  \"empty\": [],\n"
        "  \"none\": {},\n"
        "  \"list\": [\n"
        "    1,\n"
        "    null,\n"
        "    \"x\"\n"
        "  ],\n"
        "  \"half\": 0.5,\n"
        "  \"written\": 1.50\n"
        "}\n");
}

TEST_CASE("JSON is written on one line when the indent is 0") {
  Writer writer(0);
  writer.beginObject()
      .member("a", 1LL)
      .key("b")
      .beginArray()
      .boolean(false)
      .beginObject()
      .endObject()
      .endArray();
  writer.endObject();
  CHECK(writer.text() == "{\"a\":1,\"b\":[false,{}]}\n");
}

TEST_CASE("a scalar alone is a document") {
  CHECK(Writer().string("a").text() == "\"a\"\n");
  CHECK(Writer().null().text() == "null\n");
}

TEST_CASE("strings are escaped and always UTF-8") {
  CHECK(Writer().string("\"\\/\n\r\t\x01\x1f é😀").text() == "\"\\\"\\\\/\\n\\r\\t\\u0001\\u001f é😀\"\n");
  CHECK(Writer().string("a\xffz").text() == "\"a\uFFFDz\"\n");
  std::string all;
  for (int i = 0; i < 128; ++i) all += static_cast<char>(i);
  base::Issues issues;
  const auto document = Document::parse(Writer().string(all).text(), "t", issues);
  REQUIRE(document);
  CHECK(document->root().string() == all);
}

TEST_CASE("rationals are written exactly where a decimal can") {
  CHECK(Writer().number(*base::Rational::parse("1e-30")).text() == "0." + std::string(29, '0') + "1\n");
  CHECK(Writer().number(*base::Rational::fraction(-1, 8)).text() == "-0.125\n");
  CHECK(Writer().number(*base::Rational::fraction(2, 3)).text() == "0.666666666667\n");
  CHECK(Writer().number(base::Rational(12)).text() == "12\n");
}

TEST_CASE("a copied value keeps its order and its digits") {
  const std::string source = "{\"b\":[1.50,1e3,-0],\"a\":{\"x\":\"\\u00e9\\n\",\"t\":true,\"n\":null}}";
  base::Issues issues;
  const auto document = Document::parse(source, "t", issues);
  REQUIRE(document);
  CHECK(Writer(0).copy(document->root()).text() ==
        "{\"b\":[1.50,1e3,-0],\"a\":{\"x\":\"é\\n\",\"t\":true,\"n\":null}}\n");
  const std::string pretty = Writer().copy(document->root()).text();
  const auto again = Document::parse(pretty, "t", issues);
  REQUIRE(again);
  CHECK(Writer().copy(again->root()).text() == pretty);
}
