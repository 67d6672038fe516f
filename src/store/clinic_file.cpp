#include "store/clinic_file.h"

#include <sys/resource.h>

#include <algorithm>
#include <ctime>
#include <filesystem>

#include "store/backup.h"
#include "store/clinic_file_inside.h"
#include "store/trouble.h"

namespace stile::store {
namespace {

namespace fs = std::filesystem;
using base::FailureKind;

/// A crashed program leaves no image of its memory on the disk.
void refuseCoreFiles() {
  const rlimit none{0, 0};
  ::setrlimit(RLIMIT_CORE, &none);
}

std::string keyDetail(const RosterRow& row) { return row.handle + " " + hexOf(row.publicKey); }

}  // namespace

std::string stampOf(long long timeMs) {
  const std::time_t seconds = timeMs / 1000;
  std::tm utc{};
  gmtime_r(&seconds, &utc);
  char text[40];
  std::snprintf(text, sizeof text, "%04d%02d%02d-%02d%02d%02d%03d", utc.tm_year + 1900, utc.tm_mon + 1, utc.tm_mday, utc.tm_hour,
                utc.tm_min, utc.tm_sec, static_cast<int>(timeMs % 1000));
  return text;
}

void ClinicFile::Inside::load(const std::string& passphrase) {
  Transaction snapshot(*database, Access::Read);
  const auto rows = readRoster(*database);
  unlocked.emplace(store::unlock(rows, clinicIdOf(*database), handle, passphrase));
  try {
    const Keyring& held = unlocked->keys;
    head = readHead(*database, held);
    if (rosterHash(rows) != head.roster) failDamaged(path + ": the list of clinicians is not the one that was last written");
    const auto [entries, hash] = lastInTable(*database, held);
    if (entries != head.entries) failDamaged(path + ": the journal ends at entry " + std::to_string(entries) + ", and its head says " + std::to_string(head.entries));
    if (hash != head.lastHash) failDamaged(path + ": the last journal entry is not the one that the head speaks of");
    for (const RosterRow& row : rows)
      if (row.handle == handle) who = clinicianOf(row, held);
    std::string set(kHashBytes, '\0');
    Query query(*database, "SELECT id, revision, generation, sealed FROM record");
    while (query.next()) {
      const Header header = openHeader(held, {query.textAt(0), query.numberAt(1), static_cast<int>(query.numberAt(2)), query.textAt(3)});
      toggle(set, header.member);
      putCard(header.id, header.kind, header.card);
    }
    if (set != head.records) failDamaged(path + ": a record is gone or was put back to an older state");
  } catch (...) {
    unlocked.reset();
    cards.clear();
    byId.clear();
    throw;
  }
  lastUseMs = environment.nowMs();
}

const Keyring& ClinicFile::Inside::keys(Access needed) {
  if (!unlocked) fail(FailureKind::Secret, path + ": locked; give the passphrase of " + handle + " to go on");
  if (needed == Access::Write && access != Access::Write)
    fail(FailureKind::Secret, path + ": this session only reads beside another; a client's record opens once the other session has ended");
  now();
  return unlocked->keys;
}

void ClinicFile::Inside::changedUnderUs() const {
  failDamaged(path + ": the file was changed by something that does not hold the write lock");
}

void ClinicFile::Inside::tellClock(Head& next) {
  if (environment.nowMs() + kClockToleranceMs < next.lastMs) note(next, kClockBackwards, "", std::to_string(next.lastMs), false);
}

void ClinicFile::Inside::note(Head& next, const std::string& what, const std::string& record, const std::string& detail, bool isSigned) {
  JournalEntry entry;
  entry.timeMs = environment.nowMs();
  entry.who = handle;
  entry.what = what;
  entry.record = record;
  entry.detail = detail;
  append(*database, unlocked->keys, next, entry, isSigned ? signingSeed() : nullptr);
}

void ClinicFile::Inside::putCard(const std::string& id, const std::string& kind, const std::string& card) {
  const auto [at, isNew] = byId.emplace(id, cards.size());
  if (isNew)
    cards.push_back({id, kind, card});
  else
    cards[at->second] = {id, kind, card};
}

void ClinicFile::Inside::dropCard(const std::string& id) {
  const auto at = byId.find(id);
  if (at == byId.end()) return;
  const std::size_t index = at->second;
  byId.erase(at);
  if (index + 1 != cards.size()) {
    cards[index] = std::move(cards.back());
    byId[cards[index].id] = index;
  }
  cards.pop_back();
}

ClinicFile::ClinicFile(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
ClinicFile::~ClinicFile() = default;

base::Result<std::string> ClinicFile::create(const std::string& path, const records::Clinician& first, const std::string& passphrase,
                                             const Environment& environment) {
  return guarded(path, [&]() -> std::string {
    for (const std::string& trouble : {records::troubleWithHandle(first.handle), records::troubleWithPassphrase(passphrase)})
      if (!trouble.empty()) fail(FailureKind::Usage, trouble);
    if (!first.maySign()) fail(FailureKind::Usage, "the first clinician of a clinic file must be one who may sign");
    std::error_code ignored;
    if (fs::exists(path, ignored)) fail(FailureKind::File, path + ": there is a file of this name already; nothing was changed");
    refuseNetworkFileSystem(path);
    refuseCoreFiles();
    const std::string part = path + ".part";
    for (const char* tail : {"", "-wal", "-shm", "-journal"}) fs::remove(part + tail, ignored);
    std::string phrase = newRecoveryPhrase();
    try {
      Database database(part, Access::Write, true);
      createSchema(database);
      Keyring keys(hexOf(randomBytes(16)), {{1, Key::random()}});
      Key seed, recoverySeed;
      const RosterRow row = newRow(first, passphrase, environment.cost, keys, seed);
      records::Clinician recovery;
      recovery.handle = kRecoveryHandle;
      recovery.isRecovery = true;
      const RosterRow recoveryRow = newRow(recovery, phrase, environment.cost, keys, recoverySeed);
      Transaction transaction(database);
      writeRow(database, row);
      writeRow(database, recoveryRow);
      Head head = newHead();
      head.roster = rosterHash({row, recoveryRow});
      const long long now = environment.nowMs();
      append(database, keys, head, {0, now, first.handle, "clinicCreated", "", keyDetail(row), {}, {}}, &seed);
      append(database, keys, head, {0, now, first.handle, "clinicianAdded", "", keyDetail(recoveryRow), {}, {}}, &seed);
      writeHead(database, keys, head);
      for (const Migration& migration : *environment.migrations) migration.step(database);
      database.run("PRAGMA user_version=" + std::to_string(versionAfter(*environment.migrations)));
      transaction.commit();
      database.checkpoint();
    } catch (...) {
      for (const char* tail : {"", "-wal", "-shm"}) fs::remove(part + tail, ignored);
      throw;
    }
    fs::rename(part, path);
    return phrase;
  });
}

base::Result<std::unique_ptr<ClinicFile>> ClinicFile::open(const std::string& path, Access access, const SignIn& signIn,
                                                           const Environment& environment) {
  return guarded(path, [&]() -> std::unique_ptr<ClinicFile> {
    refuseCoreFiles();
    std::error_code ignored;
    if (!fs::exists(path, ignored)) fail(FailureKind::File, path + ": there is no such file, or its folder may not be looked into; check the name");
    refuseNetworkFileSystem(path);
    auto inside = std::make_unique<Inside>();
    inside->path = path;
    inside->access = access;
    inside->environment = environment;
    inside->handle = signIn.handle;
    const int newest = versionAfter(*environment.migrations);
    if (access == Access::Write) inside->lock = std::make_unique<WriteLock>(path, signIn.handle, stampOf(environment.nowMs()));
    {
      // The version first, with a connection that can change nothing.
      Database look(path, Access::Read);
      const int version = versionOf(look, newest);
      if (access == Access::Read && version < newest)
        fail(FailureKind::Refused, path + ": the file has an older format; open it once for writing, which upgrades it");
    }
    inside->database = std::make_unique<Database>(path, access);
    if (access == Access::Write) {
      const std::string copy = migrate(*inside->database, *environment.migrations);
      if (!copy.empty()) inside->notices.push_back("the file was brought to a newer format; as it was before it stands in " + copy);
    }
    inside->load(signIn.passphrase);
    if (environment.nowMs() + kClockToleranceMs < inside->head.lastMs)
      inside->notices.push_back("the clock of this machine stands before the last entry of the journal (" + stampOf(inside->head.lastMs) + " UTC); put the clock right, due dates depend on it");
    if (access == Access::Write) inside->write([&](Head& next) { inside->note(next, "opened", "", "", false); });
    return std::unique_ptr<ClinicFile>(new ClinicFile(std::move(inside)));
  });
}

const std::string& ClinicFile::path() const { return inside_->path; }
const records::Clinician& ClinicFile::who() const { return inside_->who; }
const std::vector<std::string>& ClinicFile::notices() const { return inside_->notices; }
std::string ClinicFile::mark() const { return markOf(inside_->head.entries, inside_->head.lastHash); }
const std::vector<RecordCard>& ClinicFile::cards() const { return inside_->cards; }

const RecordCard* ClinicFile::card(const std::string& record) const {
  const auto at = inside_->byId.find(record);
  return at == inside_->byId.end() ? nullptr : &inside_->cards[at->second];
}

void ClinicFile::lock() {
  inside_->unlocked.reset();
  inside_->cards.clear();
  inside_->byId.clear();
}

bool ClinicFile::isLocked() const { return !inside_->unlocked; }

base::Result<bool> ClinicFile::unlock(const std::string& passphrase) {
  return guarded(inside_->path, [&] {
    lock();
    inside_->load(passphrase);
    return true;
  });
}

bool ClinicFile::lockIfIdle(long long milliseconds) {
  if (isLocked() || inside_->environment.nowMs() - inside_->lastUseMs < milliseconds) return false;
  lock();
  return true;
}

}  // namespace stile::store
