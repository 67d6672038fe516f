#include "store/record_rows.h"

#include <algorithm>

#include "store/compression.h"
#include "store/trouble.h"

namespace stile::store {
namespace {

std::string headerBinding(const Keyring& keys, const SealedHeader& row) {
  return ByteWriter().text("record").text(keys.clinicId()).text(row.id).number(unsign(row.revision)).number(unsign(row.generation)).bytes();
}

std::string entryBinding(const Keyring& keys, const std::string& record, const std::string& id, long long revision, int generation, long long writtenMs) {
  return ByteWriter()
      .text("entry").text(keys.clinicId()).text(record).text(id).number(unsign(revision)).number(unsign(generation)).number(unsign(writtenMs)).bytes();
}

std::string signedPart(const records::Entry& entry, const std::string& clinicId, const std::string& record) {
  return ByteWriter()
      .text("stile entry").text(clinicId).text(record).text(entry.id).text(entry.kind).number(unsign(entry.writtenMs))
      .text(entry.by).text(entry.signer).text(entry.body).bytes();
}

std::string memberOf(const Keyring& keys, const SealedHeader& row) {
  return keyedHash(keys.setKey(), ByteWriter().text(headerBinding(keys, row)).text(row.sealed).bytes());
}

std::string plainOf(const Header& header) {
  ByteWriter writer;
  writer.text(header.kind).text(header.card).number(header.lines.size());
  for (const HeaderLine& line : header.lines)
    writer.text(line.id).number(unsign(line.revision)).text(line.kind).number(unsign(line.writtenMs)).text(line.hash);
  return writer.bytes();
}

}  // namespace

Header openHeader(const Keyring& keys, const SealedHeader& row) {
  const auto plain = unseal(keys.of(row.generation), headerBinding(keys, row), row.sealed);
  if (!plain) failDamaged("the header of record " + row.id + " does not fit its seal");
  ByteReader reader(*plain);
  Header header{row.id, row.revision, row.generation, {}, {}, {}, memberOf(keys, row)};
  header.kind = reader.text();
  header.card = reader.text();
  constexpr std::size_t kLeastLine = 5 * 8;
  header.lines.resize(reader.count(kLeastLine));
  for (HeaderLine& line : header.lines) {
    line.id = reader.text();
    line.revision = static_cast<long long>(reader.number());
    line.kind = reader.text();
    line.writtenMs = static_cast<long long>(reader.number());
    line.hash = reader.text();
  }
  if (!reader.isComplete()) failDamaged("the header of record " + row.id + " cannot be read");
  return header;
}

Header readHeader(Database& database, const Keyring& keys, const std::string& id) {
  Query query(database, "SELECT revision, generation, sealed FROM record WHERE id=?");
  query.text(id);
  if (!query.next()) failDamaged("record " + id + " is gone from the file");
  return openHeader(keys, {id, query.numberAt(0), static_cast<int>(query.numberAt(1)), query.textAt(2)});
}

void writeHeader(Database& database, const Keyring& keys, Header& header, Head& head) {
  if (!header.member.empty()) toggle(head.records, header.member);
  header.generation = keys.newest();
  SealedHeader row{header.id, ++header.revision, header.generation, {}};
  row.sealed = seal(keys.of(row.generation), headerBinding(keys, row), plainOf(header));
  header.member = memberOf(keys, row);
  toggle(head.records, header.member);
  Query(database, "INSERT INTO record VALUES(?,?,?,?) ON CONFLICT(id) DO UPDATE SET revision=excluded.revision, "
                  "generation=excluded.generation, sealed=excluded.sealed")
      .text(row.id)
      .number(row.revision)
      .number(row.generation)
      .blob(row.sealed)
      .run();
}

void eraseRecord(Database& database, const Header& header, Head& head) {
  Query(database, "DELETE FROM entry WHERE record=?").text(header.id).run();
  Query(database, "DELETE FROM record WHERE id=?").text(header.id).run();
  toggle(head.records, header.member);
}

void writeEntry(Database& database, const Keyring& keys, const std::string& record, const records::Entry& entry, HeaderLine& line, const Key* seed) {
  const int generation = keys.newest();
  line.id = entry.id;
  line.kind = entry.kind;
  line.writtenMs = entry.writtenMs;
  ++line.revision;
  const std::string signature = seed == nullptr ? "" : sign(*seed, signedPart(entry, keys.clinicId(), record));
  const std::string plain =
      ByteWriter().text(entry.kind).text(entry.by).text(entry.signer).text(signature).text(compressed(entry.body)).bytes();
  const std::string binding = entryBinding(keys, record, line.id, line.revision, generation, line.writtenMs);
  const std::string sealed = seal(keys.of(generation), binding, plain);
  line.hash = hashOf(ByteWriter().text(binding).text(sealed).bytes());
  Query(database, "INSERT INTO entry VALUES(?,?,?,?,?,?) ON CONFLICT(record, id) DO UPDATE SET revision=excluded.revision, "
                  "generation=excluded.generation, written=excluded.written, sealed=excluded.sealed")
      .text(record)
      .text(line.id)
      .number(line.revision)
      .number(generation)
      .number(line.writtenMs)
      .blob(sealed)
      .run();
}

void removeEntry(Database& database, const std::string& record, const std::string& id) {
  Query(database, "DELETE FROM entry WHERE record=? AND id=?").text(record).text(id).run();
}

SignedEntry readEntry(Database& database, const Keyring& keys, const std::string& record, const HeaderLine& line) {
  const std::string what = "entry " + line.id + " (" + line.kind + ") of record " + record;
  Query query(database, "SELECT revision, generation, written, sealed FROM entry WHERE record=? AND id=?");
  query.text(record).text(line.id);
  if (!query.next()) failDamaged(what + " is gone from the file");
  const long long revision = query.numberAt(0);
  const auto generation = static_cast<int>(query.numberAt(1));
  const std::string sealed = query.textAt(3);
  const std::string binding = entryBinding(keys, record, line.id, revision, generation, query.numberAt(2));
  if (revision != line.revision) failDamaged(what + " is not the version that the record lists");
  if (hashOf(ByteWriter().text(binding).text(sealed).bytes()) != line.hash) failDamaged(what + " is not what the record lists");
  const auto plain = unseal(keys.of(generation), binding, sealed);
  if (!plain) failDamaged(what + " does not fit its seal");
  ByteReader reader(*plain);
  SignedEntry read;
  read.entry.id = line.id;
  read.entry.writtenMs = line.writtenMs;
  read.entry.kind = reader.text();
  read.entry.by = reader.text();
  read.entry.signer = reader.text();
  read.signature = reader.text();
  auto body = expanded(reader.text());
  if (!reader.isComplete() || !body || read.entry.kind != line.kind) failDamaged(what + " cannot be read");
  read.entry.body = std::move(*body);
  return read;
}

bool isSignatureOf(const SignedEntry& entry, const std::string& clinicId, const std::string& record, const std::string& publicKey) {
  return isSignedBy(publicKey, signedPart(entry.entry, clinicId, record), entry.signature);
}

long long entriesInTable(Database& database, const std::string& record) {
  Query query(database, "SELECT count(*) FROM entry WHERE record=?");
  query.text(record);
  return query.next() ? query.numberAt(0) : 0;
}

}  // namespace stile::store
