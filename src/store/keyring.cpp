#include "store/keyring.h"

#include "store/trouble.h"

namespace stile::store {

Keyring::Keyring(std::string clinicId, std::map<int, Key> keys)
    : clinicId_(std::move(clinicId)),
      keys_(std::move(keys)),
      rosterKey_(derive(keys_.at(1), "stile roster")),
      setKey_(derive(keys_.at(1), "stile set of records")) {}

const Key& Keyring::of(int generation) const {
  const auto at = keys_.find(generation);
  if (at == keys_.end())
    fail(base::FailureKind::Secret, "a part of the clinic file is sealed with a key that you do not hold: your rights were withdrawn, or the file was changed outside Stile");
  return at->second;
}

std::string commitmentOf(const Key& key) { return keyedHash(key, "stile commitment"); }

}  // namespace stile::store
