#include "store/journal.h"

#include <algorithm>

#include "store/trouble.h"

namespace stile::store {
namespace {

std::string headBinding(const Keyring& keys, long long revision, int generation) {
  return ByteWriter().text("head").text(keys.clinicId()).number(unsign(revision)).number(unsign(generation)).bytes();
}

std::string entryBinding(const Keyring& keys, long long number, int generation) {
  return ByteWriter().text("journal").text(keys.clinicId()).number(unsign(number)).number(unsign(generation)).bytes();
}

std::string entryHash(const Keyring& keys, long long number, int generation, const std::string& sealed) {
  return hashOf(ByteWriter().text(entryBinding(keys, number, generation)).text(sealed).bytes());
}

}  // namespace

std::string clinicIdOf(Database& database) {
  Query query(database, "SELECT clinic FROM head");
  if (!query.next()) failDamaged(database.path() + ": the head of the journal is gone");
  return query.textAt(0);
}

Head newHead() {
  Head head;
  head.lastHash = std::string(kHashBytes, '\0');
  head.records = std::string(kHashBytes, '\0');
  return head;
}

Head readHead(Database& database, const Keyring& keys) {
  Query query(database, "SELECT revision, generation, sealed FROM head");
  if (!query.next()) failDamaged(database.path() + ": the head of the journal is gone");
  Head head;
  head.revision = query.numberAt(0);
  const auto generation = static_cast<int>(query.numberAt(1));
  const Key& key = keys.of(generation);
  if (generation != keys.newest()) failDamaged(database.path() + ": the head of the journal is older than the keys");
  const auto plain = unseal(key, headBinding(keys, head.revision, generation), query.textAt(2));
  if (!plain) failDamaged(database.path() + ": the head of the journal does not fit its seal");
  ByteReader reader(*plain);
  head.entries = static_cast<long long>(reader.number());
  head.lastHash = reader.text();
  head.records = reader.text();
  head.roster = reader.text();
  head.lastMs = static_cast<long long>(reader.number());
  if (!reader.isComplete() || head.records.size() != kHashBytes) failDamaged(database.path() + ": the head of the journal cannot be read");
  return head;
}

void writeHead(Database& database, const Keyring& keys, Head& head) {
  ++head.revision;
  const std::string plain =
      ByteWriter().number(unsign(head.entries)).text(head.lastHash).text(head.records).text(head.roster).number(unsign(head.lastMs)).bytes();
  const int generation = keys.newest();
  Query(database, "INSERT INTO head VALUES(1,?,?,?,?) ON CONFLICT(one) DO UPDATE SET revision=excluded.revision, "
                  "generation=excluded.generation, sealed=excluded.sealed")
      .text(keys.clinicId())
      .number(head.revision)
      .number(generation)
      .blob(seal(keys.of(generation), headBinding(keys, head.revision, generation), plain))
      .run();
}

void toggle(std::string& setHash, const std::string& member) {
  for (std::size_t i = 0; i < setHash.size() && i < member.size(); ++i) setHash[i] = static_cast<char>(setHash[i] ^ member[i]);
}

std::string signedPart(const JournalEntry& entry, const std::string& clinicId) {
  return ByteWriter()
      .text("stile journal").text(clinicId).number(unsign(entry.timeMs)).text(entry.who).text(entry.what)
      .text(entry.record).text(entry.detail).text(entry.previous).bytes();
}

void append(Database& database, const Keyring& keys, Head& head, JournalEntry entry, const Key* seed) {
  entry.number = head.entries + 1;
  entry.previous = head.lastHash;
  entry.signature = seed == nullptr ? "" : sign(*seed, signedPart(entry, keys.clinicId()));
  const std::string plain = ByteWriter()
      .number(unsign(entry.timeMs)).text(entry.who).text(entry.what).text(entry.record).text(entry.detail)
      .text(entry.previous).text(entry.signature).bytes();
  const int generation = keys.newest();
  const std::string sealed = seal(keys.of(generation), entryBinding(keys, entry.number, generation), plain);
  Query(database, "INSERT INTO journal VALUES(?,?,?)").number(entry.number).number(generation).blob(sealed).run();
  head.entries = entry.number;
  head.lastHash = entryHash(keys, entry.number, generation, sealed);
  head.lastMs = entry.what == kClockBackwards ? entry.timeMs : std::max(head.lastMs, entry.timeMs);
}

std::optional<ReadEntry> openEntry(const Keyring& keys, long long number, int generation, const std::string& sealed) {
  const auto key = keys.all().find(generation);
  if (key == keys.all().end()) return std::nullopt;
  const auto plain = unseal(key->second, entryBinding(keys, number, generation), sealed);
  if (!plain) return std::nullopt;
  ByteReader reader(*plain);
  ReadEntry read;
  read.entry.number = number;
  read.entry.timeMs = static_cast<long long>(reader.number());
  read.entry.who = reader.text();
  read.entry.what = reader.text();
  read.entry.record = reader.text();
  read.entry.detail = reader.text();
  read.entry.previous = reader.text();
  read.entry.signature = reader.text();
  if (!reader.isComplete()) return std::nullopt;
  read.hash = entryHash(keys, number, generation, sealed);
  return read;
}

std::pair<long long, std::string> lastInTable(Database& database, const Keyring& keys) {
  Query query(database, "SELECT number, generation, sealed FROM journal ORDER BY number DESC LIMIT 1");
  if (!query.next()) return {0, std::string(kHashBytes, '\0')};
  const long long number = query.numberAt(0);
  return {number, entryHash(keys, number, static_cast<int>(query.numberAt(1)), query.textAt(2))};
}

}  // namespace stile::store
