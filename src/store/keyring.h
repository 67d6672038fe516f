// The keys of one unlocked clinic file.
#pragma once

#include <map>
#include <string>

#include "store/bytes.h"
#include "store/sealing.h"

namespace stile::store {

/// Always true: generation 1 is there. A new generation begins when a clinician is revoked; what
/// was written before stays under its own generation.
class Keyring {
 public:
  Keyring(std::string clinicId, std::map<int, Key> keys);

  const std::string& clinicId() const { return clinicId_; }
  int newest() const { return keys_.rbegin()->first; }
  /// Throws Trouble when this clinician does not hold that generation.
  const Key& of(int generation) const;
  void add(int generation, const Key& key) { keys_[generation] = key; }
  void remove(int generation) { keys_.erase(generation); }
  const std::map<int, Key>& all() const { return keys_; }
  /// For the rows of clinicians, and for the set of all records: the same for every generation.
  const Key& rosterKey() const { return rosterKey_; }
  const Key& setKey() const { return setKey_; }

 private:
  std::string clinicId_;
  std::map<int, Key> keys_;
  Key rosterKey_, setKey_;
};

/// Tells which key is meant without giving it away.
std::string commitmentOf(const Key& key);

}  // namespace stile::store
