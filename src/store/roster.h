// The clinicians of a clinic file: whose passphrase opens it, and with which keys.
//
// A clinician's vault holds the seed of their signing pair, sealed under the stretched passphrase.
// Each data key is sealed to that pair, so a new key reaches clinicians who are not there. Every
// row is bound under a key of the file, and the sealed head holds the hash of all rows.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "records/clinician.h"
#include "store/database.h"
#include "store/keyring.h"

namespace stile::store {

inline constexpr const char* kRecoveryHandle = "recovery";

struct RosterRow {
  std::string handle;
  long long revision = 0;
  std::string state;  ///< active, revoked, recovery
  std::string publicKey, salt, vault, sealed;
  PassphraseCost cost;
  std::map<int, std::string> wraps;  ///< generation -> data key sealed to this clinician
};

std::vector<RosterRow> readRoster(Database& database);
std::string rosterHash(const std::vector<RosterRow>& rows);

/// Throws Trouble when the row does not fit its seal.
records::Clinician clinicianOf(const RosterRow& row, const Keyring& keys);

/// A new row with keys of its own; `seed` is set to the new signing seed.
RosterRow newRow(const records::Clinician& clinician, const std::string& passphrase, const PassphraseCost& cost,
                 const Keyring& keys, Key& seed);
/// The vault anew under another passphrase.
void setPassphrase(RosterRow& row, const Key& seed, const std::string& passphrase, const PassphraseCost& cost, const Keyring& keys);
/// Binds the row again after any change; the revision grows.
void bind(RosterRow& row, const records::Clinician& clinician, const Keyring& keys);
/// Inserts or replaces the row and its wrapped keys.
void writeRow(Database& database, const RosterRow& row);

struct Unlocked {
  Keyring keys;
  Key seed;
};
/// Throws Trouble (kind Secret): no such clinician, revoked, or the passphrase does not fit.
Unlocked unlock(const std::vector<RosterRow>& rows, const std::string& clinicId, const std::string& handle, const std::string& passphrase);

}  // namespace stile::store
