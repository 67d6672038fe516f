// Sealing, hashing and signing: the only place that sees the cryptographic library.
//
// XChaCha20-Poly1305 seals, BLAKE2b hashes, Argon2id stretches passphrases, Ed25519 signs, X25519
// hands a data key to a clinician who is not there. No construction here is our own.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace stile::store {

inline constexpr std::size_t kHashBytes = 32;

/// A secret of 32 bytes. Wiped when it goes away.
class Key {
 public:
  Key() = default;
  ~Key();
  Key(const Key&) = default;
  Key& operator=(const Key&) = default;
  static Key random();
  static std::optional<Key> from(std::string_view bytes);  ///< nullopt unless 32 bytes
  std::string_view bytes() const { return {reinterpret_cast<const char*>(bytes_.data()), bytes_.size()}; }
  const unsigned char* data() const { return bytes_.data(); }
  unsigned char* data() { return bytes_.data(); }

 private:
  std::array<unsigned char, 32> bytes_{};
};

/// What stretching a passphrase costs; kept beside the salt, so it can grow.
struct PassphraseCost {
  unsigned long long operations = 3;
  std::size_t memoryBytes = std::size_t{64} << 20;
};

/// Nonce and sealed text. `associated` is not in the result, and must be the same when opening.
std::string seal(const Key& key, std::string_view associated, std::string_view plain);
/// nullopt when key, associated data or a single bit differ.
std::optional<std::string> unseal(const Key& key, std::string_view associated, std::string_view sealed);

std::string hashOf(std::string_view bytes);
std::string keyedHash(const Key& key, std::string_view bytes);
/// A key for one purpose; knowing it does not give the key it came from.
Key derive(const Key& key, std::string_view purpose);
/// nullopt when the cost is outside what this program accepts or memory is short.
std::optional<Key> stretch(std::string_view passphrase, std::string_view salt, const PassphraseCost& cost);
std::string randomBytes(std::size_t count);
std::string randomSalt();  ///< as long as stretch() wants it

/// `seed` is the secret half of an Ed25519 pair.
std::string publicKeyOf(const Key& seed);
std::string sign(const Key& seed, std::string_view message);
bool isSignedBy(std::string_view publicKey, std::string_view message, std::string_view signature);
/// Seals so that only the holder of the seed can open. Says nothing about who sealed it.
std::string sealFor(std::string_view publicKey, std::string_view plain);
std::optional<std::string> unsealWith(const Key& seed, std::string_view sealed);

std::string hexOf(std::string_view bytes);
/// A new phrase of 24 signs in groups of four (118 bits), without signs that look alike.
std::string newRecoveryPhrase();
/// The phrase as typed (spaces, hyphens, small letters) in the one form that is stretched.
std::string plainRecoveryPhrase(std::string_view typed);
/// Overwrites the text before it is let go.
void wipe(std::string& text);

}  // namespace stile::store
