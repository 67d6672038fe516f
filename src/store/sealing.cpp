#include "store/sealing.h"

#include <sodium.h>

#include <algorithm>
#include <cctype>
#include <stdexcept>

namespace stile::store {
namespace {

constexpr std::string_view kPhraseSigns = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";
constexpr unsigned long long kMostOperations = 20;
constexpr std::size_t kMostMemory = std::size_t{256} << 20;

void start() {
  static const bool isReady = sodium_init() >= 0;
  if (!isReady) throw std::runtime_error("the cryptographic library does not start");
}

const unsigned char* raw(std::string_view text) { return reinterpret_cast<const unsigned char*>(text.data()); }
unsigned char* raw(std::string& text) { return reinterpret_cast<unsigned char*>(text.data()); }

/// The X25519 half of an Ed25519 pair.
struct BoxPair {
  unsigned char open[crypto_scalarmult_curve25519_BYTES];
  unsigned char secret[crypto_scalarmult_curve25519_BYTES];
  ~BoxPair() { sodium_memzero(secret, sizeof secret); }
};

}  // namespace

Key::~Key() { sodium_memzero(bytes_.data(), bytes_.size()); }

Key Key::random() {
  start();
  Key key;
  randombytes_buf(key.bytes_.data(), key.bytes_.size());
  return key;
}

std::optional<Key> Key::from(std::string_view bytes) {
  Key key;
  if (bytes.size() != key.bytes_.size()) return std::nullopt;
  std::copy(bytes.begin(), bytes.end(), reinterpret_cast<char*>(key.bytes_.data()));
  return key;
}

std::string seal(const Key& key, std::string_view associated, std::string_view plain) {
  start();
  constexpr std::size_t kNonce = crypto_aead_xchacha20poly1305_ietf_NPUBBYTES;
  std::string sealed(kNonce + plain.size() + crypto_aead_xchacha20poly1305_ietf_ABYTES, '\0');
  randombytes_buf(sealed.data(), kNonce);
  unsigned long long size = 0;
  crypto_aead_xchacha20poly1305_ietf_encrypt(raw(sealed) + kNonce, &size, raw(plain), plain.size(), raw(associated),
                                             associated.size(), nullptr, raw(sealed), key.data());
  return sealed;
}

std::optional<std::string> unseal(const Key& key, std::string_view associated, std::string_view sealed) {
  start();
  constexpr std::size_t kNonce = crypto_aead_xchacha20poly1305_ietf_NPUBBYTES;
  constexpr std::size_t kTag = crypto_aead_xchacha20poly1305_ietf_ABYTES;
  if (sealed.size() < kNonce + kTag) return std::nullopt;
  std::string plain(sealed.size() - kNonce - kTag, '\0');
  unsigned long long size = 0;
  const int bad = crypto_aead_xchacha20poly1305_ietf_decrypt(raw(plain), &size, nullptr, raw(sealed) + kNonce,
                                                             sealed.size() - kNonce, raw(associated), associated.size(),
                                                             raw(sealed), key.data());
  if (bad != 0) return std::nullopt;
  return plain;
}

std::string hashOf(std::string_view bytes) {
  start();
  std::string hash(kHashBytes, '\0');
  crypto_generichash(raw(hash), hash.size(), raw(bytes), bytes.size(), nullptr, 0);
  return hash;
}

std::string keyedHash(const Key& key, std::string_view bytes) {
  start();
  std::string hash(kHashBytes, '\0');
  crypto_generichash(raw(hash), hash.size(), raw(bytes), bytes.size(), key.data(), 32);
  return hash;
}

Key derive(const Key& key, std::string_view purpose) { return *Key::from(keyedHash(key, purpose)); }

std::optional<Key> stretch(std::string_view passphrase, std::string_view salt, const PassphraseCost& cost) {
  start();
  if (salt.size() != crypto_pwhash_SALTBYTES || cost.operations < crypto_pwhash_OPSLIMIT_MIN ||
      cost.operations > kMostOperations || cost.memoryBytes < crypto_pwhash_MEMLIMIT_MIN || cost.memoryBytes > kMostMemory)
    return std::nullopt;
  Key key;
  if (crypto_pwhash(key.data(), 32, passphrase.data(), passphrase.size(), raw(salt), cost.operations, cost.memoryBytes,
                    crypto_pwhash_ALG_ARGON2ID13) != 0)
    return std::nullopt;
  return key;
}

std::string randomBytes(std::size_t count) {
  start();
  std::string bytes(count, '\0');
  randombytes_buf(bytes.data(), bytes.size());
  return bytes;
}

std::string randomSalt() { return randomBytes(crypto_pwhash_SALTBYTES); }

std::string publicKeyOf(const Key& seed) {
  start();
  std::string open(crypto_sign_PUBLICKEYBYTES, '\0');
  unsigned char secret[crypto_sign_SECRETKEYBYTES];
  crypto_sign_seed_keypair(raw(open), secret, seed.data());
  sodium_memzero(secret, sizeof secret);
  return open;
}

std::string sign(const Key& seed, std::string_view message) {
  start();
  unsigned char open[crypto_sign_PUBLICKEYBYTES], secret[crypto_sign_SECRETKEYBYTES];
  crypto_sign_seed_keypair(open, secret, seed.data());
  std::string signature(crypto_sign_BYTES, '\0');
  crypto_sign_detached(raw(signature), nullptr, raw(message), message.size(), secret);
  sodium_memzero(secret, sizeof secret);
  return signature;
}

bool isSignedBy(std::string_view publicKey, std::string_view message, std::string_view signature) {
  start();
  return publicKey.size() == crypto_sign_PUBLICKEYBYTES && signature.size() == crypto_sign_BYTES &&
         crypto_sign_verify_detached(raw(signature), raw(message), message.size(), raw(publicKey)) == 0;
}

std::string sealFor(std::string_view publicKey, std::string_view plain) {
  start();
  unsigned char open[crypto_scalarmult_curve25519_BYTES];
  if (publicKey.size() != crypto_sign_PUBLICKEYBYTES || crypto_sign_ed25519_pk_to_curve25519(open, raw(publicKey)) != 0)
    throw std::runtime_error("a clinician's public key is damaged");
  std::string sealed(plain.size() + crypto_box_SEALBYTES, '\0');
  crypto_box_seal(raw(sealed), raw(plain), plain.size(), open);
  return sealed;
}

std::optional<std::string> unsealWith(const Key& seed, std::string_view sealed) {
  start();
  if (sealed.size() < crypto_box_SEALBYTES) return std::nullopt;
  unsigned char open[crypto_sign_PUBLICKEYBYTES], secret[crypto_sign_SECRETKEYBYTES];
  crypto_sign_seed_keypair(open, secret, seed.data());
  BoxPair box;
  const bool isConverted = crypto_sign_ed25519_pk_to_curve25519(box.open, open) == 0 &&
                           crypto_sign_ed25519_sk_to_curve25519(box.secret, secret) == 0;
  sodium_memzero(secret, sizeof secret);
  if (!isConverted) return std::nullopt;
  std::string plain(sealed.size() - crypto_box_SEALBYTES, '\0');
  if (crypto_box_seal_open(raw(plain), raw(sealed), sealed.size(), box.open, box.secret) != 0) return std::nullopt;
  return plain;
}

std::string hexOf(std::string_view bytes) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string text;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    text += kDigits[byte >> 4];
    text += kDigits[byte & 0xF];
  }
  return text;
}

std::string newRecoveryPhrase() {
  start();
  std::string phrase;
  for (int i = 0; i < 24; ++i) {
    if (i > 0 && i % 4 == 0) phrase += '-';
    phrase += kPhraseSigns[randombytes_uniform(kPhraseSigns.size())];
  }
  return phrase;
}

std::string plainRecoveryPhrase(std::string_view typed) {
  std::string plain;
  for (const char c : typed)
    if (std::isalnum(static_cast<unsigned char>(c)) != 0) plain += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return plain;
}

void wipe(std::string& text) {
  if (!text.empty()) sodium_memzero(text.data(), text.size());
  text.clear();
}

}  // namespace stile::store
