// A clinic file that was opened with a passphrase: the one door to what is stored.
//
// With Access::Write the session holds the file's one write lock. With Access::Read it stands
// beside another session: it may verify, back up and go through the panel, but opens no client's
// record, because that is journaled.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "records/clinician.h"
#include "records/entry.h"
#include "store/change.h"
#include "store/database.h"
#include "store/schema.h"
#include "store/sealing.h"
#include "store/verify.h"

namespace stile::store {

struct SignIn {
  std::string handle;      ///< "recovery" for the recovery phrase
  std::string passphrase;
};

/// What the faces and the tests put in: the clock, the cost of a passphrase, the steps.
struct Environment {
  std::function<long long()> nowMs;  ///< UTC, milliseconds since 1970
  PassphraseCost cost;
  const std::vector<Migration>* migrations = &releasedMigrations();
};

/// What is kept in memory of a record.
struct RecordCard {
  std::string id;
  std::string kind;
  std::string card;
};

class ClinicFile {
 public:
  /// Makes a new file with its first clinician (a lead or clinician). Gives the recovery phrase,
  /// which is shown once and stands nowhere.
  static base::Result<std::string> create(const std::string& path, const records::Clinician& first, const std::string& passphrase,
                                          const Environment& environment);
  /// Failures: Secret (passphrase, revoked, in use by …), Refused (newer, no clinic file), File.
  static base::Result<std::unique_ptr<ClinicFile>> open(const std::string& path, Access access, const SignIn& signIn,
                                                        const Environment& environment);
  ~ClinicFile();
  ClinicFile(const ClinicFile&) = delete;
  ClinicFile& operator=(const ClinicFile&) = delete;

  const std::string& path() const;
  const records::Clinician& who() const;
  std::vector<records::Clinician> clinicians() const;
  /// Worth telling at once: the clock stands before the last entry; a copy was made before an upgrade.
  const std::vector<std::string>& notices() const;
  /// The journal's end, to print on a backup or paper and to give to verify() later.
  std::string mark() const;

  /// Cards of all records; from memory. Empty while locked.
  const std::vector<RecordCard>& cards() const;
  const RecordCard* card(const std::string& record) const;
  /// Everything in a record, journaled as read. Signatures are checked.
  base::Result<std::vector<records::Entry>> read(const std::string& record);
  /// Bodies of all entries of one kind, without whose they are; for comparing rule sets.
  base::Result<std::vector<std::string>> panel(const std::string& kind);

  /// All of it or none; true is given once it is on the disk.
  base::Result<bool> commit(const Change& change);

  base::Result<bool> addClinician(const records::Clinician& clinician, const std::string& passphrase);
  /// The passphrase of whoever is signed in.
  base::Result<bool> changePassphrase(const std::string& newPassphrase);
  /// Ends the rights of a clinician. What is written from now on is sealed with a new key.
  base::Result<bool> revoke(const std::string& handle);

  Verification verify(const std::string& mark = {});
  /// A verified copy "<name>-<stamp>.stile" in `folder`; older ones beyond `keep` are removed.
  base::Result<std::string> backup(const std::string& folder, std::size_t keep);

  /// Forgets the keys and all cards; the file stays held. Every call then fails until unlock().
  void lock();
  bool isLocked() const;
  base::Result<bool> unlock(const std::string& passphrase);
  /// Locks when nothing was asked of the file for so long; true when it did.
  bool lockIfIdle(long long milliseconds);

 private:
  struct Inside;
  explicit ClinicFile(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

/// "20261125-161200123" for a time: used in names, so without signs that file systems dislike.
std::string stampOf(long long timeMs);

}  // namespace stile::store
