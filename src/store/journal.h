// The journal: who did what when, each entry chained to the one before; and the sealed head, which
// is written in the same commit as whatever it speaks of.
//
// No entry holds a client's name or answer: only ids of records, kinds, and sign-in names.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "store/database.h"
#include "store/keyring.h"

namespace stile::store {

/// The word of an entry that tells of a clock set back; later times count from its own.
inline constexpr const char* kClockBackwards = "clockBackwards";
/// Clocks are put right by small steps; only a larger step back is told.
inline constexpr long long kClockToleranceMs = 120'000;

/// What the whole file must agree with. Always true after a commit.
struct Head {
  long long revision = 0;
  long long entries = 0;       ///< of the journal
  std::string lastHash;        ///< of the last journal entry
  std::string records;         ///< set hash of all record headers
  std::string roster;          ///< hash of all clinicians' rows
  long long lastMs = 0;        ///< latest time written since the clock was last set back
};

std::string clinicIdOf(Database& database);
Head newHead();
/// Throws Trouble when it does not fit its seal, or is sealed with a key not held.
Head readHead(Database& database, const Keyring& keys);
void writeHead(Database& database, const Keyring& keys, Head& head);
/// Adds or removes a member: the set hash is the exclusive or of the members' hashes.
void toggle(std::string& setHash, const std::string& member);

struct JournalEntry {
  long long number = 0;
  long long timeMs = 0;
  std::string who;     ///< sign-in name
  std::string what;    ///< a word: opened, read, answered, signedOff, printed …
  std::string record;  ///< id, or ""
  std::string detail;  ///< ids and words only
  std::string previous;   ///< hash of the entry before
  std::string signature;  ///< by `who`, or ""
};

/// Appends and moves the head's chain on. Signed when `seed` is given.
void append(Database& database, const Keyring& keys, Head& head, JournalEntry entry, const Key* seed);

/// What a signature of an entry is made over.
std::string signedPart(const JournalEntry& entry, const std::string& clinicId);

/// One entry with its hash, or nullopt when it does not fit its seal.
struct ReadEntry {
  JournalEntry entry;
  std::string hash;
};
std::optional<ReadEntry> openEntry(const Keyring& keys, long long number, int generation, const std::string& sealed);

/// The last entry's hash and number as they stand in the table.
std::pair<long long, std::string> lastInTable(Database& database, const Keyring& keys);

}  // namespace stile::store
