#include "base/utf8.h"

#include <catch2/catch.hpp>

using namespace stile::base;

TEST_CASE("well-formed UTF-8 is accepted up to the last code point") {
  for (const char* text : {"", "a", "é", "€", "😀", "\xF4\x8F\xBF\xBF", "\xED\x9F\xBF", "\xEE\x80\x80"}) {
    CHECK(invalidUtf8At(text) == std::string_view::npos);
  }
}

TEST_CASE("the first byte that breaks UTF-8 is named") {
  CHECK(invalidUtf8At("ab\xff") == 2);
  CHECK(invalidUtf8At("\x80") == 0);              // a continuation byte alone
  CHECK(invalidUtf8At("a\xC0\xAF") == 1);         // overlong
  CHECK(invalidUtf8At("\xE0\x80\xAF") == 0);      // overlong
  CHECK(invalidUtf8At("\xF0\x80\x80\xAF") == 0);  // overlong
  CHECK(invalidUtf8At("\xED\xA0\x80") == 0);      // surrogate
  CHECK(invalidUtf8At("\xF4\x90\x80\x80") == 0);  // above U+10FFFF
  CHECK(invalidUtf8At("\xF5\x80\x80\x80") == 0);
  CHECK(invalidUtf8At("a\xE2\x82") == 1);  // cut off
  CHECK(invalidUtf8At("\xE2\x82"
                      "a") == 0);
}

TEST_CASE("a text falls into code points, a broken byte into one of its own") {
  const auto pieces = codePoints("aé\xff€");
  REQUIRE(pieces.size() == 4);
  CHECK(countCodePoints("aé\xff€") == 4);
  CHECK(pieces[1] == "é");
  CHECK(pieces[2] == "\xff");
  CHECK(pieces[3] == "€");
}

TEST_CASE("broken bytes are replaced") {
  CHECK(wellFormedUtf8("aé") == "aé");
  CHECK(wellFormedUtf8("a\xff\xffz") == "a\uFFFD\uFFFDz");
  CHECK(wellFormedUtf8("") == "");
}
