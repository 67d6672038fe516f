// Clinicians, verification and backups of an open clinic file.
#include <algorithm>
#include <filesystem>

#include "store/backup.h"
#include "store/clinic_file_inside.h"
#include "store/trouble.h"

namespace stile::store {
namespace {

namespace fs = std::filesystem;
using base::FailureKind;

RosterRow& rowOf(std::vector<RosterRow>& rows, const std::string& handle) {
  for (RosterRow& row : rows)
    if (row.handle == handle) return row;
  fail(FailureKind::Usage, "there is no clinician with the sign-in name " + handle + " in this clinic file");
}

void mayManage(const records::Clinician& who) {
  if (who.role == records::Role::Assistant && !who.isRecovery)
    fail(FailureKind::Refused, who.handle + " may enter, and not change who may sign in; a clinician does that");
}

}  // namespace

std::vector<records::Clinician> ClinicFile::clinicians() const {
  std::vector<records::Clinician> all;
  if (isLocked()) return all;
  const auto read = guarded(inside_->path, [&] {
    for (const RosterRow& row : readRoster(*inside_->database)) all.push_back(clinicianOf(row, inside_->unlocked->keys));
    return true;
  });
  return read ? all : std::vector<records::Clinician>{};
}

base::Result<bool> ClinicFile::addClinician(const records::Clinician& clinician, const std::string& passphrase) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    for (const std::string& trouble : {records::troubleWithHandle(clinician.handle), records::troubleWithPassphrase(passphrase)})
      if (!trouble.empty()) fail(FailureKind::Usage, trouble);
    const Keyring& keys = inside.keys(Access::Write);
    mayManage(inside.who);
    auto rows = readRoster(*inside.database);
    for (const RosterRow& row : rows)
      if (row.handle == clinician.handle) fail(FailureKind::Usage, "the sign-in name " + clinician.handle + " was given before; a name is never used again, choose another");
    Key seed;
    const RosterRow row = newRow(clinician, passphrase, inside.environment.cost, keys, seed);
    rows.push_back(row);
    inside.write([&](Head& next) {
      writeRow(*inside.database, row);
      next.roster = rosterHash(rows);
      inside.note(next, "clinicianAdded", "", row.handle + " " + hexOf(row.publicKey), true);
    });
    return true;
  });
}

base::Result<bool> ClinicFile::changePassphrase(const std::string& newPassphrase) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    const Keyring& keys = inside.keys(Access::Write);
    if (inside.who.isRecovery) fail(FailureKind::Refused, "the recovery phrase is made with the file and is not changed; it sets up a new clinician");
    const std::string trouble = records::troubleWithPassphrase(newPassphrase);
    if (!trouble.empty()) fail(FailureKind::Usage, trouble);
    auto rows = readRoster(*inside.database);
    RosterRow& row = rowOf(rows, inside.handle);
    setPassphrase(row, inside.unlocked->seed, newPassphrase, inside.environment.cost, keys);
    bind(row, inside.who, keys);
    inside.write([&](Head& next) {
      writeRow(*inside.database, row);
      next.roster = rosterHash(rows);
      inside.note(next, "passphraseChanged", "", inside.handle, true);
    });
    inside.database->checkpoint();
    return true;
  });
}

base::Result<bool> ClinicFile::revoke(const std::string& handle) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    const Keyring& keys = inside.keys(Access::Write);
    mayManage(inside.who);
    if (handle == inside.handle) fail(FailureKind::Usage, "nobody ends their own rights; another clinician does");
    if (handle == kRecoveryHandle) fail(FailureKind::Usage, "the recovery phrase stays; keep it where only the clinic's lead finds it");
    auto rows = readRoster(*inside.database);
    RosterRow& gone = rowOf(rows, handle);
    if (gone.state == "revoked") fail(FailureKind::Usage, "the rights of " + handle + " have ended already");
    const Key fresh = Key::random();
    const int generation = keys.newest() + 1;
    for (RosterRow& row : rows) {
      records::Clinician clinician = clinicianOf(row, keys);
      if (row.handle == handle) {
        row.state = "revoked";
        row.vault.clear();
        row.wraps.clear();
      } else if (row.state != "revoked") {
        row.wraps[generation] = sealFor(row.publicKey, fresh.bytes());
      }
      bind(row, clinician, keys);
    }
    try {
      inside.write([&](Head& next) {
        inside.unlocked->keys.add(generation, fresh);  // from here on everything is sealed with it
        for (const RosterRow& row : rows) writeRow(*inside.database, row);
        next.roster = rosterHash(rows);
        inside.note(next, "clinicianRevoked", "", handle + " " + hexOf(commitmentOf(fresh)), true);
      });
    } catch (...) {
      inside.unlocked->keys.remove(generation);
      throw;
    }
    inside.database->checkpoint();
    return true;
  });
}

Verification ClinicFile::verify(const std::string& mark) {
  Verification failed;
  const auto done = guarded(inside_->path, [&] { return verifyWith(*inside_->database, inside_->keys(Access::Read), mark); });
  if (done) return done.value();
  failed.trouble = done.failure().message;
  return failed;
}

base::Result<std::string> ClinicFile::backup(const std::string& folder, std::size_t keep) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    const Keyring& keys = inside.keys(Access::Read);
    fs::create_directories(folder);
    const std::string stem = fs::path(inside.path).stem().string();
    const std::string target = (fs::path(folder) / (stem + "-" + stampOf(inside.environment.nowMs()) + ".stile")).string();
    std::error_code ignored;
    if (fs::exists(target, ignored)) fail(FailureKind::File, target + ": there is a backup of this very moment already");
    const std::string part = target + ".unverified";
    copyDatabase(*inside.database, part);
    {
      Database copy(part, Access::Read);
      const Verification checked = verifyWith(copy, keys, "");
      if (!checked.isClean()) {
        fs::remove(part, ignored);
        fail(FailureKind::File, target + ": the backup does not verify and was not kept: " + checked.trouble);
      }
    }
    fs::rename(part, target);
    rotate(folder, stem, keep);
    if (inside.access == Access::Write) inside.write([&](Head& next) { inside.note(next, "backedUp", "", "", false); });
    return target;
  });
}

}  // namespace stile::store
