// Sealing, signing, layout and compression by themselves.
#include <catch2/catch.hpp>
#include <set>

#include "store/bytes.h"
#include "store/compression.h"
#include "store/sealing.h"

using namespace stile::store;

TEST_CASE("A seal opens with the same key and the same associated data, and with nothing else") {
  const Key key = Key::random();
  const std::string sealed = seal(key, "row 1", "knee pain since May");
  CHECK(unseal(key, "row 1", sealed) == "knee pain since May");
  CHECK_FALSE(unseal(key, "row 2", sealed));
  CHECK_FALSE(unseal(Key::random(), "row 1", sealed));
  CHECK(sealed.find("knee") == std::string::npos);
  CHECK(seal(key, "row 1", "knee pain since May") != sealed);
  for (std::size_t i = 0; i < sealed.size(); ++i) {
    std::string changed = sealed;
    changed[i] = static_cast<char>(changed[i] ^ 1);
    CHECK_FALSE(unseal(key, "row 1", changed));
    CHECK_FALSE(unseal(key, "row 1", sealed.substr(0, i)));
  }
}

TEST_CASE("A signature is of one message by one key") {
  const Key seed = Key::random();
  const std::string signature = sign(seed, "signed off");
  CHECK(isSignedBy(publicKeyOf(seed), "signed off", signature));
  CHECK_FALSE(isSignedBy(publicKeyOf(seed), "signed of", signature));
  CHECK_FALSE(isSignedBy(publicKeyOf(Key::random()), "signed off", signature));
  CHECK_FALSE(isSignedBy(publicKeyOf(seed), "signed off", ""));
}

TEST_CASE("A key sealed to a clinician opens for that clinician alone") {
  const Key seed = Key::random(), dataKey = Key::random();
  const std::string wrapped = sealFor(publicKeyOf(seed), dataKey.bytes());
  CHECK(unsealWith(seed, wrapped) == std::string(dataKey.bytes()));
  CHECK_FALSE(unsealWith(Key::random(), wrapped));
}

TEST_CASE("Stretching is refused at costs outside what is accepted") {
  const std::string salt = randomSalt();
  const auto one = stretch("a passphrase", salt, {1, 8192});
  const auto two = stretch("a passphrase", salt, {1, 8192});
  REQUIRE(one);
  CHECK(one->bytes() == two->bytes());
  CHECK(one->bytes() != stretch("b passphrase", salt, {1, 8192})->bytes());
  CHECK_FALSE(stretch("a passphrase", salt, {1, std::size_t{1} << 40}));
  CHECK_FALSE(stretch("a passphrase", salt, {0, 8192}));
  CHECK_FALSE(stretch("a passphrase", "short", {1, 8192}));
}

TEST_CASE("Recovery phrases differ, and are read as people type them") {
  std::set<std::string> seen;
  for (int i = 0; i < 200; ++i) seen.insert(newRecoveryPhrase());
  CHECK(seen.size() == 200);
  CHECK(seen.begin()->size() == 29);
  CHECK(plainRecoveryPhrase("abcd-2345 WXYZ") == "ABCD2345WXYZ");
}

TEST_CASE("Fields keep their limits, and damaged lengths read as nothing") {
  CHECK(ByteWriter().text("ab").text("c").bytes() != ByteWriter().text("a").text("bc").bytes());
  const std::string bytes = ByteWriter().number(7).text("abc").bytes();
  ByteReader reader(bytes);
  CHECK(reader.number() == 7);
  CHECK_FALSE(reader.isComplete());
  CHECK(reader.text() == "abc");
  CHECK(reader.isComplete());
  for (std::size_t size = 0; size < bytes.size(); ++size) {
    ByteReader cut(std::string_view(bytes).substr(0, size));
    cut.number();
    cut.text();
    CHECK_FALSE(cut.isComplete());
  }
  ByteReader large(bytes);
  CHECK(large.count(8) == 0);
  CHECK(large.hasFailed());
}

TEST_CASE("Texts come back from compression, and damaged ones do not") {
  for (const std::string& text : {std::string(), std::string("a"), std::string(100000, 'x')}) CHECK(expanded(compressed(text)) == text);
  const std::string packed = compressed(std::string(1000, 'y'));
  CHECK(packed.size() < 200);
  CHECK_FALSE(expanded(packed.substr(1)));
  CHECK_FALSE(expanded(ByteWriter().number(std::uint64_t{1} << 40).text("x").bytes()));
}
