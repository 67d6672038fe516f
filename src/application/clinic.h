// A clinic file in use: who is signed in, by which policy clients are followed up, who is in it.
//
// The use cases on clients stand in client_records.h and client_screening.h.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "base/result.h"
#include "records/clinician.h"
#include "records/follow_up_policy.h"
#include "records/worklist.h"
#include "store/clinic_file.h"

namespace stile::application {

struct ClinicAccess {
  std::string file;
  std::string handle;
  std::string passphrase;
  bool isBeside = false;  ///< reads beside another session: verify, panel, backup
};

/// A client as lists show one.
struct ClientLine {
  std::string id;
  records::Card card;
  std::string searched;  ///< name and record number, as records::searchable() gives them
};

struct WorklistLine {
  std::string id;
  std::string name;
  records::Task task;
  std::string next;
};

class Clinic {
 public:
  /// Gives the recovery phrase, to be shown once.
  static base::Result<std::string> create(const ClinicAccess& access, const records::Clinician& first);
  static base::Result<std::unique_ptr<Clinic>> open(const ClinicAccess& access, const std::string& contentFolder, base::Issues& issues);

  store::ClinicFile& file() { return *file_; }
  const store::ClinicFile& file() const { return *file_; }
  const records::FollowUpPolicy& policy() const { return policy_; }
  const std::vector<std::string>& notices() const { return file_->notices(); }

  /// Clients of whom part of the name or the record number is `part`, by name; all with "".
  std::vector<const ClientLine*> find(const std::string& part) const;
  const ClientLine* client(const std::string& id) const;
  /// The one client whom `words` name: an id, the beginning of one, or part of a name. None or
  /// several is a failure that says so.
  base::Result<std::string> idOf(const std::string& words) const;
  /// What is due on `today` or before; with `all` also what comes later.
  std::vector<WorklistLine> worklist(base::Date today, bool all) const;

  /// Forgets the keys and everything that was read with them; the file stays held. Whoever shows a
  /// record lets go of it too. Every use case then fails with FailureKind::Secret until unlock().
  void lock();
  bool isLocked() const { return file_->isLocked(); }
  /// The passphrase of whoever is signed in.
  base::Result<bool> unlock(const std::string& passphrase);
  /// Locks when nothing was asked of the file for so long; true when it did.
  bool lockIfIdle(long long milliseconds);

  /// Commits, and keeps the lists in step.
  base::Result<bool> commit(const store::Change& change);

 private:
  Clinic() = default;
  void list(const std::string& id);
  std::unique_ptr<store::ClinicFile> file_;
  records::FollowUpPolicy policy_;
  std::vector<ClientLine> clients_;
  std::unordered_map<std::string, std::size_t> byId_;  ///< index into clients_
};

/// Copies a backup into a folder of its own, opens it with the same sign-in, verifies it, reads
/// every client, and says what was found; the copy is removed. A failure says why it would not do.
base::Result<std::string> restoreDrill(const ClinicAccess& access, const std::string& mark);

/// The follow-up policy of a content folder.
base::Result<records::FollowUpPolicy> loadFollowUp(const std::string& contentFolder, base::Issues& issues);

}  // namespace stile::application
