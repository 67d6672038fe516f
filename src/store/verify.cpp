#include "store/verify.h"

#include <map>
#include <set>
#include <sstream>

#include "store/record_rows.h"
#include "store/roster.h"
#include "store/trouble.h"

namespace stile::store {
namespace {

using PublicKeys = std::map<std::string, std::string>;

/// Walks the journal from its first entry, and keeps what it says of clinicians and records.
class JournalWalk {
 public:
  JournalWalk(Database& database, const Keyring& keys, const std::string& mark) : database_(database), keys_(keys), mark_(mark) {}

  void walk(const Head& head, Verification& result) {
    std::string previous(kHashBytes, '\0');
    long long expected = 1;
    Query query(database_, "SELECT number, generation, sealed FROM journal ORDER BY number");
    while (query.next()) {
      const long long number = query.numberAt(0);
      const std::string name = "journal entry " + std::to_string(expected);
      if (number != expected) failDamaged(name + " is missing");
      const auto read = openEntry(keys_, number, static_cast<int>(query.numberAt(1)), query.textAt(2));
      if (!read) failDamaged(name + " does not fit its seal");
      if (read->entry.previous != previous) failDamaged(name + " does not follow the entry before it");
      check(*read, name, result);
      previous = read->hash;
      ++expected;
    }
    result.journalEntries = expected - 1;
    if (result.journalEntries != head.entries)
      failDamaged("the journal ends at entry " + std::to_string(result.journalEntries) + ", and its head says " + std::to_string(head.entries));
    if (previous != head.lastHash) failDamaged("the last journal entry is not the one that the head speaks of");
    if (!mark_.empty() && !isMarkSeen_) failDamaged("the journal does not hold the mark " + mark_ + ": the whole file was put back to an older state, or the mark is of another file");
    result.mark = markOf(head.entries, head.lastHash);
  }

  const PublicKeys& publicKeys() const { return publicKeys_; }
  const std::map<std::string, std::set<std::string>>& entries() const { return entries_; }

 private:
  void check(const ReadEntry& read, const std::string& name, Verification& result) {
    const JournalEntry& entry = read.entry;
    if (entry.what == "clinicCreated" || entry.what == "clinicianAdded") {
      std::istringstream words(entry.detail);
      std::string handle, key;
      words >> handle >> key;
      if (!publicKeys_.emplace(handle, key).second) failDamaged(name + " sets up " + handle + " a second time");
    }
    if (entry.what == kClockBackwards)
      lastMs_ = entry.timeMs;
    else if (entry.timeMs + kClockToleranceMs < lastMs_)
      failDamaged(name + " is dated before the entry before it, and the journal tells of no clock set back");
    lastMs_ = std::max(lastMs_, entry.timeMs);
    if (!entry.signature.empty()) {
      const auto key = publicKeys_.find(entry.who);
      if (key == publicKeys_.end() || !isSignedHex(entry, key->second)) failDamaged(name + " (" + entry.what + ") is not signed by " + entry.who + ", who is named in it");
      ++result.signatures;
    }
    follow(entry);
    isMarkSeen_ = isMarkSeen_ || markOf(entry.number, read.hash) == mark_;
  }

  bool isSignedHex(const JournalEntry& entry, const std::string& hexKey) const {
    std::string key;
    for (std::size_t i = 0; i + 1 < hexKey.size(); i += 2) key += static_cast<char>(std::stoi(hexKey.substr(i, 2), nullptr, 16));
    return isSignedBy(key, signedPart(entry, keys_.clinicId()), entry.signature);
  }

  void follow(const JournalEntry& entry) {
    if (entry.record.empty()) return;
    if (entry.what == "erased")
      entries_.erase(entry.record);
    else if (entry.what == "created")
      entries_[entry.record];
    else if (entry.what.rfind("added ", 0) == 0)
      entries_[entry.record].insert(entry.detail);
  }

  Database& database_;
  const Keyring& keys_;
  const std::string& mark_;
  PublicKeys publicKeys_;
  std::map<std::string, std::set<std::string>> entries_;
  long long lastMs_ = 0;
  bool isMarkSeen_ = false;
};

void checkRoster(Database& database, const Keyring& keys, const Head& head, const PublicKeys& journaled) {
  const auto rows = readRoster(database);
  for (const RosterRow& row : rows) {
    clinicianOf(row, keys);
    const auto at = journaled.find(row.handle);
    if (at == journaled.end() || at->second != hexOf(row.publicKey)) failDamaged("clinician " + row.handle + " is not the one whom the journal set up");
  }
  if (rows.size() != journaled.size()) failDamaged("a clinician whom the journal set up is gone from the file");
  if (rosterHash(rows) != head.roster) failDamaged("the list of clinicians is not the one that the head speaks of");
}

void checkRecord(Database& database, const Keyring& keys, const Header& header, const std::set<std::string>& journaled,
                 const std::map<std::string, std::string>& publicKeys, Verification& result) {
  std::size_t met = 0;
  for (const HeaderLine& line : header.lines) {
    const SignedEntry read = readEntry(database, keys, header.id, line);
    ++result.entries;
    if (line.kind != records::kDraftKind) met += journaled.count(line.id);
    if (read.entry.signer.empty()) continue;
    const auto key = publicKeys.find(read.entry.signer);
    if (key == publicKeys.end() || !isSignatureOf(read, keys.clinicId(), header.id, key->second))
      failDamaged("entry " + line.id + " (" + line.kind + ") of record " + header.id + " is not signed by " + read.entry.signer + ", who is named in it");
    ++result.signatures;
  }
  if (met != journaled.size()) failDamaged("record " + header.id + " no longer holds an entry that the journal tells of");
  if (entriesInTable(database, header.id) != static_cast<long long>(header.lines.size())) failDamaged("record " + header.id + " holds an entry that it does not list");
}

void checkRecords(Database& database, const Keyring& keys, const Head& head, const JournalWalk& journal, Verification& result) {
  std::map<std::string, std::string> publicKeys;
  for (const RosterRow& row : readRoster(database)) publicKeys[row.handle] = row.publicKey;
  std::string set(kHashBytes, '\0');
  auto left = journal.entries();
  Query query(database, "SELECT id, revision, generation, sealed FROM record ORDER BY id");
  while (query.next()) {
    const Header header = openHeader(keys, {query.textAt(0), query.numberAt(1), static_cast<int>(query.numberAt(2)), query.textAt(3)});
    toggle(set, header.member);
    const auto journaled = left.find(header.id);
    if (journaled == left.end()) failDamaged("record " + header.id + " is one of which the journal does not tell");
    checkRecord(database, keys, header, journaled->second, publicKeys, result);
    left.erase(journaled);
    ++result.records;
  }
  if (!left.empty()) failDamaged("record " + left.begin()->first + " is gone from the file");
  if (set != head.records) failDamaged("a record was put back to an older state");
}

}  // namespace

std::string markOf(long long entries, const std::string& hash) { return std::to_string(entries) + "-" + hexOf(hash).substr(0, 16); }

Verification verifyWith(Database& database, const Keyring& keys, const std::string& mark) {
  Verification result;
  try {
    Transaction snapshot(database, Access::Read);
    const std::string trouble = database.integrityTrouble();
    if (!trouble.empty()) failDamaged("the database does not pass its integrity check (" + trouble + ")");
    const Head head = readHead(database, keys);
    JournalWalk journal(database, keys, mark);
    journal.walk(head, result);
    checkRoster(database, keys, head, journal.publicKeys());
    checkRecords(database, keys, head, journal, result);
  } catch (...) {
    result.trouble = failureInFlight(database.path()).message;
  }
  return result;
}

}  // namespace stile::store
