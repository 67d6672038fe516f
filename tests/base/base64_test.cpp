// The published vectors, every length, and what is refused.
#include "base/base64.h"

#include <catch2/catch.hpp>

using namespace stile;

TEST_CASE("Base64: the vectors of RFC 4648, section 10") {
  const std::pair<const char*, const char*> vectors[] = {{"", ""}, {"f", "Zg=="}, {"fo", "Zm8="}, {"foo", "Zm9v"}, {"foob", "Zm9vYg=="}, {"fooba", "Zm9vYmE="}, {"foobar", "Zm9vYmFy"}};
  for (const auto& [plain, text] : vectors) {
    CHECK(base::toBase64(plain) == text);
    CHECK(base::fromBase64(text) == plain);
  }
}

TEST_CASE("Base64: every byte at every place comes back") {
  std::string bytes;
  for (int i = 0; i < 256; ++i) {
    bytes += static_cast<char>(i * 37);
    CHECK(base::fromBase64(base::toBase64(bytes)) == bytes);
  }
}

TEST_CASE("Base64: anything else is refused") {
  for (const char* text : {"Zg", "Zg=", "Z===", "====", "Zh==", "Zm9=", "Z=9v", "Zm9v=", "Zm 9v", "Zm9v\n", "Zg==Zg=="}) CHECK_FALSE(base::fromBase64(text));
}
