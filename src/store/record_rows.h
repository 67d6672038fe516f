// Records and their entries as rows: a sealed header that lists every entry with its hash, and the
// sealed entries. A row that was swapped, replayed or taken away no longer fits its header, and a
// header that was replayed or taken away no longer fits the set hash in the head.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/entry.h"
#include "store/journal.h"

namespace stile::store {

/// What a header says of one entry.
struct HeaderLine {
  std::string id;
  long long revision = 0;
  std::string kind;
  long long writtenMs = 0;
  std::string hash;
};

struct Header {
  std::string id;
  long long revision = 0;
  int generation = 0;
  std::string kind;  ///< of the record: client, clinic
  std::string card;  ///< what is kept in memory for search and the worklist
  std::vector<HeaderLine> lines;  ///< in the order written
  std::string member;  ///< of the set hash
};

struct SealedHeader {
  std::string id;
  long long revision = 0;
  int generation = 0;
  std::string sealed;
};

/// Throws Trouble when it does not fit its seal.
Header openHeader(const Keyring& keys, const SealedHeader& row);
/// Throws Trouble when there is no such record.
Header readHeader(Database& database, const Keyring& keys, const std::string& id);
/// Seals under the newest key, writes, and moves the head's set hash on.
void writeHeader(Database& database, const Keyring& keys, Header& header, Head& head);
/// Removes the record with all its entries.
void eraseRecord(Database& database, const Header& header, Head& head);

/// Seals and writes one entry; `line` gets its revision and hash. Signed when `seed` is given.
void writeEntry(Database& database, const Keyring& keys, const std::string& record, const records::Entry& entry, HeaderLine& line, const Key* seed);
void removeEntry(Database& database, const std::string& record, const std::string& id);

/// An entry with the signature it carries.
struct SignedEntry {
  records::Entry entry;
  std::string signature;
};
/// Reads the entry a header's line speaks of. Throws Trouble when it is gone, older, swapped or changed.
SignedEntry readEntry(Database& database, const Keyring& keys, const std::string& record, const HeaderLine& line);
/// Whether the signature was made by the holder of `publicKey`.
bool isSignatureOf(const SignedEntry& entry, const std::string& clinicId, const std::string& record, const std::string& publicKey);
/// How many entries the table holds for a record.
long long entriesInTable(Database& database, const std::string& record);

}  // namespace stile::store
