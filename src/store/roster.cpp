#include "store/roster.h"

#include <algorithm>

#include "store/trouble.h"

namespace stile::store {
namespace {

using base::FailureKind;

std::string vaultBinding(const std::string& clinicId, const RosterRow& row) {
  return ByteWriter().text("vault").text(clinicId).text(row.handle).text(row.publicKey).bytes();
}

std::string rowBinding(const std::string& clinicId, const RosterRow& row) {
  ByteWriter writer;
  writer.text("clinician").text(clinicId).text(row.handle).number(static_cast<std::uint64_t>(row.revision)).text(row.state);
  writer.text(row.publicKey).text(row.salt).number(row.cost.operations).number(row.cost.memoryBytes).text(row.vault);
  for (const auto& [generation, wrap] : row.wraps) writer.number(static_cast<std::uint64_t>(generation)).text(wrap);
  return writer.bytes();
}

std::string normal(const std::string& handle, const std::string& passphrase) {
  return handle == kRecoveryHandle ? plainRecoveryPhrase(passphrase) : passphrase;
}

}  // namespace

std::vector<RosterRow> readRoster(Database& database) {
  std::vector<RosterRow> rows;
  Query query(database, "SELECT handle, revision, state, public_key, salt, operations, memory, vault, sealed FROM clinician ORDER BY handle");
  while (query.next()) {
    RosterRow row;
    row.handle = query.textAt(0);
    row.revision = query.numberAt(1);
    row.state = query.textAt(2);
    row.publicKey = query.textAt(3);
    row.salt = query.textAt(4);
    row.cost = {static_cast<unsigned long long>(query.numberAt(5)), static_cast<std::size_t>(query.numberAt(6))};
    row.vault = query.textAt(7);
    row.sealed = query.textAt(8);
    rows.push_back(std::move(row));
  }
  Query wraps(database, "SELECT handle, generation, wrapped FROM data_key ORDER BY handle, generation");
  while (wraps.next())
    for (RosterRow& row : rows)
      if (row.handle == wraps.textAt(0)) row.wraps[static_cast<int>(wraps.numberAt(1))] = wraps.textAt(2);
  return rows;
}

std::string rosterHash(const std::vector<RosterRow>& rows) {
  std::vector<std::string> lines;
  for (const RosterRow& row : rows) lines.push_back(ByteWriter().text(row.handle).text(row.sealed).bytes());
  std::sort(lines.begin(), lines.end());
  ByteWriter writer;
  for (const std::string& line : lines) writer.text(line);
  return hashOf(writer.bytes());
}

records::Clinician clinicianOf(const RosterRow& row, const Keyring& keys) {
  const auto plain = unseal(keys.rosterKey(), rowBinding(keys.clinicId(), row), row.sealed);
  if (!plain) failDamaged("the entry of clinician " + row.handle + " does not fit its seal");
  ByteReader reader(*plain);
  records::Clinician clinician;
  clinician.handle = row.handle;
  clinician.name = reader.text();
  clinician.profession = reader.text();
  const auto role = records::roleOf(reader.text());
  if (!reader.isComplete() || !role) failDamaged("the entry of clinician " + row.handle + " cannot be read");
  clinician.role = *role;
  clinician.isRevoked = row.state == "revoked";
  clinician.isRecovery = row.state == "recovery";
  clinician.publicKey = row.publicKey;
  return clinician;
}

RosterRow newRow(const records::Clinician& clinician, const std::string& passphrase, const PassphraseCost& cost, const Keyring& keys, Key& seed) {
  seed = Key::random();
  RosterRow row;
  row.handle = clinician.handle;
  row.state = clinician.isRecovery ? "recovery" : "active";
  row.publicKey = publicKeyOf(seed);
  for (const auto& [generation, key] : keys.all()) row.wraps[generation] = sealFor(row.publicKey, key.bytes());
  setPassphrase(row, seed, passphrase, cost, keys);
  bind(row, clinician, keys);
  return row;
}

void setPassphrase(RosterRow& row, const Key& seed, const std::string& passphrase, const PassphraseCost& cost, const Keyring& keys) {
  row.salt = randomSalt();
  row.cost = cost;
  const auto stretched = stretch(normal(row.handle, passphrase), row.salt, cost);
  if (!stretched) fail(FailureKind::File, "the passphrase could not be stretched: memory is short; close other programs and try again");
  std::string plain = ByteWriter().text(seed.bytes()).text(commitmentOf(keys.of(1))).bytes();
  row.vault = seal(*stretched, vaultBinding(keys.clinicId(), row), plain);
  wipe(plain);
}

void bind(RosterRow& row, const records::Clinician& clinician, const Keyring& keys) {
  ++row.revision;
  const std::string plain = ByteWriter().text(clinician.name).text(clinician.profession).text(records::idOf(clinician.role)).bytes();
  row.sealed = seal(keys.rosterKey(), rowBinding(keys.clinicId(), row), plain);
}

void writeRow(Database& database, const RosterRow& row) {
  Query(database, "INSERT INTO clinician VALUES(?,?,?,?,?,?,?,?,?) ON CONFLICT(handle) DO UPDATE SET revision=excluded.revision, "
                  "state=excluded.state, public_key=excluded.public_key, salt=excluded.salt, operations=excluded.operations, "
                  "memory=excluded.memory, vault=excluded.vault, sealed=excluded.sealed")
      .text(row.handle)
      .number(row.revision)
      .text(row.state)
      .blob(row.publicKey)
      .blob(row.salt)
      .number(static_cast<long long>(row.cost.operations))
      .number(static_cast<long long>(row.cost.memoryBytes))
      .blob(row.vault)
      .blob(row.sealed)
      .run();
  Query(database, "DELETE FROM data_key WHERE handle=?").text(row.handle).run();
  for (const auto& [generation, wrap] : row.wraps)
    Query(database, "INSERT INTO data_key VALUES(?,?,?)").number(generation).text(row.handle).blob(wrap).run();
}

Unlocked unlock(const std::vector<RosterRow>& rows, const std::string& clinicId, const std::string& handle, const std::string& passphrase) {
  const auto row = std::find_if(rows.begin(), rows.end(), [&handle](const RosterRow& one) { return one.handle == handle; });
  if (row == rows.end()) fail(FailureKind::Secret, "there is no clinician with the sign-in name " + handle + " in this clinic file");
  if (row->state == "revoked") fail(FailureKind::Secret, "the rights of " + handle + " were withdrawn; another clinician can set up a new sign-in");
  const auto stretched = stretch(normal(handle, passphrase), row->salt, row->cost);
  if (!stretched) failDamaged("the entry of clinician " + handle + " asks for a stretching that is not possible");
  auto plain = unseal(*stretched, vaultBinding(clinicId, *row), row->vault);
  if (!plain)
    fail(FailureKind::Secret, "the passphrase does not fit the sign-in name " + handle + "; nothing was opened. If it was certainly right, the file was changed: verify the last backup");
  ByteReader reader(*plain);
  std::string seedBytes = reader.text();
  const std::string root = reader.text();
  wipe(*plain);
  const auto seed = Key::from(seedBytes);
  wipe(seedBytes);
  if (!reader.isComplete() || !seed || publicKeyOf(*seed) != row->publicKey) failDamaged("the keys of clinician " + handle + " cannot be read");
  std::map<int, Key> keys;
  for (const auto& [generation, wrap] : row->wraps) {
    auto bytes = unsealWith(*seed, wrap);
    const auto key = bytes ? Key::from(*bytes) : std::nullopt;
    if (bytes) wipe(*bytes);
    if (!key) failDamaged("a data key of clinician " + handle + " does not fit its seal");
    keys[generation] = *key;
  }
  // The first key is vouched for by the passphrase itself, and vouches for the rest.
  if (keys.count(1) == 0 || commitmentOf(keys.at(1)) != root) failDamaged("the first data key of clinician " + handle + " is not the one it was");
  Unlocked unlocked{Keyring(clinicId, std::move(keys)), *seed};
  for (const RosterRow& one : rows) clinicianOf(one, unlocked.keys);
  return unlocked;
}

}  // namespace stile::store
