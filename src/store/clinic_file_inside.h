// The state of an open clinic file. For clinic_file*.cpp only.
#pragma once

#include <optional>
#include <unordered_map>

#include "store/clinic_file.h"
#include "store/record_rows.h"
#include "store/roster.h"
#include "store/write_lock.h"

namespace stile::store {

struct ClinicFile::Inside {
  std::string path;
  Access access = Access::Read;
  Environment environment;
  std::unique_ptr<WriteLock> lock;
  std::unique_ptr<Database> database;
  std::string handle;
  std::optional<Unlocked> unlocked;
  records::Clinician who;
  Head head;
  std::vector<RecordCard> cards;
  std::unordered_map<std::string, std::size_t> byId;
  std::vector<std::string> notices;
  long long lastUseMs = 0;

  /// Reads roster, head and all headers in one snapshot. Throws Trouble.
  void load(const std::string& passphrase);
  /// Throws Trouble unless unlocked (and, with Access::Write, holding the lock).
  const Keyring& keys(Access needed);
  const Key* signingSeed() const { return who.maySign() ? &unlocked->seed : nullptr; }
  long long now() { return lastUseMs = environment.nowMs(); }

  /// Runs `work` on a copy of the head in one transaction and keeps the copy once it is committed.
  template <class Work>
  void write(Work work) {
    const Keyring& held = keys(Access::Write);
    Transaction transaction(*database);
    Head next = readHead(*database, held);
    if (next.revision != head.revision) changedUnderUs();
    tellClock(next);
    work(next);
    writeHead(*database, unlocked->keys, next);
    transaction.commit();
    head = next;
  }
  void note(Head& next, const std::string& what, const std::string& record, const std::string& detail, bool isSigned);
  void putCard(const std::string& id, const std::string& kind, const std::string& card);
  void dropCard(const std::string& id);

 private:
  [[noreturn]] void changedUnderUs() const;
  void tellClock(Head& next);
};

}  // namespace stile::store
