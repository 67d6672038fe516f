// What is open at the desk: content, clinic file, client. No window in it, and nothing decided:
// everything is asked of the use cases.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "application/client_interview.h"
#include "application/client_papers.h"
#include "application/clinic.h"
#include "application/demonstration.h"
#include "base/date.h"
#include "base/issue.h"
#include "base/result.h"
#include "desktop/nearest_search.h"
#include "plan/edit.h"
#include "records/clinic_settings.h"
#include "records/decision_notes.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::desktop {

class Desk {
 public:
  /// `day`: the date to work on; none = the civil date of the machine.
  Desk(std::string contentFolder, std::optional<base::Date> day);
  ~Desk();
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  base::Date today() const;
  const std::string& contentFolder() const { return contentFolder_; }

  /// Reads the content in the background; `done` is called there. Nothing is seen of it before
  /// takeContent() was called in the window's own thread.
  void loadContent(std::function<void()> done);
  void takeContent();
  /// nullptr while it is being read, and when it has errors.
  const screening::Content* content() const { return content_.get(); }
  /// The same, for what works on in a thread of its own.
  std::shared_ptr<const screening::Content> sharedContent() const { return content_; }
  bool isContentRead() const { return isContentRead_; }
  const base::Issues& contentIssues() const { return contentIssues_; }

  /// Makes the file, opens it and saves the settings. Gives the recovery phrase, shown this once.
  base::Result<std::string> createClinic(const application::ClinicAccess& access, const records::Clinician& first,
                                         const records::ClinicSettings& settings);
  base::Result<bool> openClinic(const application::ClinicAccess& access);
  /// Makes and opens the demonstration; it is removed when it is closed.
  base::Result<bool> openDemonstration();
  void closeClinic();
  bool isDemonstration() const { return demonstration_.has_value(); }
  /// nullptr until a file is open.
  application::Clinic* clinic() const { return clinic_.get(); }
  const std::string& clinicFile() const { return clinicFile_; }
  const records::ClinicSettings& settings() const { return settings_; }
  /// Other words for these members of the settings (clinic_document.h).
  base::Result<bool> changeSettings(const std::map<std::string, std::string>& members);

  /// The client whose pages are shown.
  void openClient(const std::string& id);
  void closeClient();
  const std::string& clientId() const { return clientId_; }
  /// nullptr when none is open.
  const application::ClientLine* client() const;

  /// Something was filed in the client's record by another use case: what is known of it is read again.
  void recordChanged();

  /// Goes on with the client's draft, or begins one. Needs content and a client.
  base::Result<bool> beginInterview(const std::string& form);
  /// nullptr when none was begun.
  application::ClientInterview* interview() const { return interview_.get(); }
  bool isAsking() const { return interview_ != nullptr; }
  /// An answer was given or taken back: what was screened before no longer holds.
  void answersChanged();
  /// Of the interview as it stands; an interview must have been begun.
  const screening::Screening& interviewScreening();
  /// The same, perhaps still without its plan and its policies: for what follows every answer.
  const screening::Screening& interviewDecision();
  /// The client's screening: of the interview once something was said in it (a draft is gone on with), or
  /// else the one filed last. nullptr when there is neither; whyNoScreening() then says why.
  const screening::Screening* screening();
  const std::string& whyNoScreening() const { return whyNoScreening_; }
  /// Looks for the nearest other decision of the interview; `done` is called in another thread, and never once
  /// answers changed, the interview ended or the search was stopped.
  void searchNearest(std::function<void(NearestWords)> done);
  void stopSearch() { nearest_.reset(); }
  /// Files the screening of the interview, the plan as it was changed; the interview is then over.
  base::Result<bool> completeInterview(base::Issues& issues);
  /// The entry of the screening shown, "" while it is not filed.
  std::string filedEntry() const { return isUnderway_ ? "" : filedEntry_; }
  bool isSignedOff() const { return !isUnderway_ && isSignedOff_; }
  /// Overrides, second signatures and sign-offs of the screening shown; empty while it is not filed.
  const records::DecisionNotes& notes() const;
  /// A clinician decides against a finding. Files the screening first if that is still to be done: what is
  /// signed is about a screening as it was.
  base::Result<bool> overrideFinding(const std::string& rule, const std::string& instead, const std::string& reason);
  /// Agrees to another clinician's override, by the id of its entry.
  base::Result<bool> signSecond(const std::string& override);

  /// Chooses the plan anew round one more change. Gives why it was not followed, and then nothing has
  /// changed; nullopt when it was. A plan that is filed stays as it is.
  std::optional<plan::RefusedEdit> editPlan(plan::Edit edit);
  /// Takes the last change back. False when there is none.
  bool undoEdit();
  /// Changes that other answers closed, and why; a sentence each.
  const std::vector<std::string>& droppedEdits() const { return droppedEdits_; }
  /// Whether the last change of the plan is in the draft on the disk.
  bool isPlanSaved() const { return interview_ == nullptr || interview_->isSaved(); }
  bool canEditPlan() const { return interview_ != nullptr && (isUnderway_ || filed_ == nullptr); }
  /// Which figure the client wants to see in drawings; nothing = the clinic's.
  std::optional<movement::Build> chosenBuild() const { return chosenBuild_; }
  /// The figure that drawings show.
  movement::Build drawnBuild() const { return chosenBuild_.value_or(settings_.drawnBuild); }
  /// Keeps the client's choice in the record.
  base::Result<bool> chooseBuild(std::optional<movement::Build> build);
  /// What the papers of the screening shown are made from, with the words of the record and the letters in
  /// the wording set for them.
  base::Result<application::PaperOrder> orderPapers();
  /// Papers that go out: saved into a folder ("" = printed) and kept in the record. With `only` one of them.
  base::Result<std::vector<std::string>> issue(const application::PaperOrder& order, const application::MadePapers& made, const std::string& folder, const std::string& only);
  /// A letter in other words, until the client is closed.
  void setWording(documents::LetterWording wording);
  /// nullptr: as the program writes it.
  const documents::LetterWording* wordingOf(const std::string& letter) const;
  void dropWording(const std::string& letter);
  bool hasWordings() const { return !wordings_.empty(); }
  void dropWordings() { wordings_.clear(); }
  /// Signs the filed screening. Gives what is left open all the same, a sentence each.
  base::Result<std::vector<std::string>> signOff();
  /// Whether it is the passphrase of whoever is signed in. After a wrong one the file is locked until
  /// the right one was given.
  base::Result<bool> checkPassphrase(const std::string& passphrase);

 private:
  /// Looks into the client's record: goes on with a draft, or makes the last screening again.
  void lookUp();
  void readNotes();
  /// Puts the changes of the draft into the plan; those that cannot be followed any longer fall away.
  void followEdits();
  /// Chooses the plan of the interview's screening anew round these changes.
  std::vector<plan::RefusedEdit> choosePlan(const plan::Edits& edits);

  std::string contentFolder_;
  std::optional<base::Date> day_;
  std::jthread loader_;
  std::optional<base::Result<std::shared_ptr<const screening::Content>>> loaded_;  ///< of the loader
  base::Issues loadIssues_;                                                        ///< of the loader
  std::shared_ptr<const screening::Content> content_;
  base::Issues contentIssues_;
  bool isContentRead_ = false;

  std::unique_ptr<application::Clinic> clinic_;
  std::string clinicFile_;
  std::optional<application::Demonstration> demonstration_;
  records::ClinicSettings settings_;
  std::string clientId_;
  std::unique_ptr<application::ClientInterview> interview_;
  std::unique_ptr<NearestSearch> nearest_;                 ///< ends before the interview
  std::unique_ptr<screening::Screening> screening_;        ///< of the interview
  std::unique_ptr<screening::Screening> before_;           ///< the one before the last answer: most of it still holds
  bool isScreeningWhole_ = false;                          ///< it has its plan and its policies
  bool isUnderway_ = false;                                ///< something was said in the interview
  plan::Edits edits_;                                      ///< of its plan: those that can be followed
  std::vector<std::string> droppedEdits_;
  std::unique_ptr<const screening::Screening> filed_;
  std::string filedEntry_;
  bool isSignedOff_ = false;
  records::DecisionNotes notes_;  ///< of the filed screening
  std::vector<documents::LetterWording> wordings_;
  std::optional<movement::Build> chosenBuild_;
  bool isLookedUp_ = false;  ///< whether there is a draft or a filed screening
  std::string whyNoScreening_;
};

}  // namespace stile::desktop
