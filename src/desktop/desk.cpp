#include "desktop/desk.h"

#include <algorithm>
#include <chrono>
#include <ctime>

#include "application/client_signing.h"
#include "application/clinic_document.h"
#include "application/filed_screening.h"
#include "application/screen_client.h"
#include "documents/decision_words.h"
#include "json/document.h"
#include "screening/decide_again.h"

namespace stile::desktop {
namespace {

/// What the first run asks for.
std::string toJson(const records::ClinicSettings& settings) {
  json::Writer writer(0);
  writer.beginObject().member("name", settings.name).member("emergencyNumber", settings.emergencyNumber);
  if (!settings.telephone.empty()) writer.member("telephone", settings.telephone);
  writer.member("clinician", settings.clinician).member("paperSize", records::idOf(settings.paperSize)).endObject();
  return writer.text();
}

}  // namespace

Desk::Desk(std::string contentFolder, std::optional<base::Date> day) : contentFolder_(std::move(contentFolder)), day_(day) {}

Desk::~Desk() { closeClinic(); }

base::Date Desk::today() const {
  if (day_) return *day_;
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  return *base::Date::of(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

void Desk::loadContent(std::function<void()> done) {
  loader_ = std::jthread([this, done = std::move(done)] {
    loaded_ = application::loadContent(contentFolder_, loadIssues_);
    done();
  });
}

void Desk::takeContent() {
  if (loader_.joinable()) loader_.join();
  if (isContentRead_ || !loaded_) return;
  isContentRead_ = true;
  contentIssues_ = loadIssues_;
  if (*loaded_)
    content_ = loaded_->value();
  else if (contentIssues_.empty())
    contentIssues_.error({contentFolder_, 0, 0, {}}, "", loaded_->failure().message);
}

base::Result<std::string> Desk::createClinic(const application::ClinicAccess& access, const records::Clinician& first,
                                             const records::ClinicSettings& settings) {
  auto phrase = application::Clinic::create(access, first);
  if (!phrase) return phrase;
  if (auto opened = openClinic(access); !opened) return opened.failure();
  base::Issues issues;
  const auto saved = application::saveClinicSettings(*clinic_, toJson(settings), "the settings", {}, today(), issues);
  if (!saved) return saved.failure();
  settings_ = settings;
  return phrase;
}

base::Result<bool> Desk::openClinic(const application::ClinicAccess& access) {
  base::Issues issues;
  auto opened = application::Clinic::open(access, contentFolder_, issues);
  if (!opened) return opened.failure();
  closeClinic();
  clinic_ = std::move(opened).value();
  clinicFile_ = access.file;
  settings_ = application::clinicDocument(*clinic_).settings;
  return true;
}

base::Result<bool> Desk::changeSettings(const std::map<std::string, std::string>& members) {
  base::Issues issues;
  const auto changed = application::changeClinicSettings(*clinic_, members, today(), issues);
  if (changed) settings_ = application::clinicDocument(*clinic_).settings;
  return changed;
}

void Desk::closeClinic() {
  closeClient();
  clinic_.reset();
  settings_ = {};
  if (demonstration_) application::removeDemonstration(*demonstration_);
  demonstration_.reset();
}

base::Result<bool> Desk::openDemonstration() {
  takeContent();
  if (content_ == nullptr) return base::Failure{base::FailureKind::Refused, "The content has errors, so there is no demo clinic."};
  auto made = application::makeDemonstration(contentFolder_, *content_, today());
  if (!made) return made.failure();
  auto opened = openClinic(made.value().access);
  if (opened)
    demonstration_ = std::move(made).value();
  else
    application::removeDemonstration(made.value());
  return opened;
}

void Desk::openClient(const std::string& id) {
  if (id == clientId_) return;
  closeClient();
  clientId_ = id;
}

void Desk::closeClient() {
  recordChanged();
  wordings_.clear();
  clientId_.clear();
}

void Desk::recordChanged() {
  // What the interview holds of the record is old now; its answers stand in the draft.
  stopSearch();
  if (interview_ != nullptr && !interview_->isSaved()) (void)interview_->save();
  interview_.reset();
  screening_.reset();
  before_.reset();
  edits_ = {};
  droppedEdits_.clear();
  filed_.reset();
  filedEntry_.clear();
  notes_ = {};
  whyNoScreening_.clear();
  isUnderway_ = isSignedOff_ = isLookedUp_ = false;
  chosenBuild_.reset();
}

base::Result<bool> Desk::beginInterview(const std::string& form) {
  if (content_ == nullptr || client() == nullptr) return base::Failure{base::FailureKind::Usage, "An interview needs a client, and rules without errors."};
  // A draft is gone on with, and that is known of the interview from then on.
  if (!isLookedUp_) lookUp();
  if (interview_ != nullptr) return true;
  auto begun = application::ClientInterview::open(*clinic_, clientId_, *content_, form, today());
  if (!begun) return begun.failure();
  interview_ = std::move(begun).value();
  screening_.reset();
  before_.reset();
  isUnderway_ = false;
  return true;
}

void Desk::searchNearest(std::function<void(NearestWords)> done) {
  stopSearch();
  if (interview_ != nullptr && isUnderway_) nearest_ = std::make_unique<NearestSearch>(interview_->session(), std::move(done));
}

void Desk::answersChanged() {
  stopSearch();
  if (screening_ != nullptr) before_ = std::move(screening_);
  isUnderway_ = true;
}

const screening::Screening& Desk::interviewDecision() {
  if (screening_ == nullptr) {
    auto& session = interview_->session();
    const auto& ground = session.ground();
    const auto& facts = session.position().facts();
    screening_ = std::make_unique<screening::Screening>(before_ == nullptr ? screening::decide(*content_, facts, ground.replies(), ground.today())
                                                                           : screening::decideAgain(*content_, ground.findingReads(), std::move(*before_), facts, ground.replies()));
    before_.reset();
    isScreeningWhole_ = false;
  }
  return *screening_;
}

const screening::Screening& Desk::interviewScreening() {
  interviewDecision();
  if (!isScreeningWhole_) {
    screening::complete(*content_, *screening_, interview_->session().ground().replies());
    isScreeningWhole_ = true;
    followEdits();
  }
  return *screening_;
}

void Desk::followEdits() {
  edits_ = interview_->edits();
  droppedEdits_.clear();
  while (!edits_.list.empty()) {
    const auto refused = choosePlan(edits_);
    if (refused.empty()) return;
    const auto& first = refused.front();
    const plan::Edit& edit = edits_.list[first.index];
    const auto* exercise = content_->library.find(edit.with.empty() ? edit.exercise : edit.with);
    droppedEdits_.push_back((exercise == nullptr ? edit.exercise : exercise->title) + ": your change is no longer followed, because " + documents::asSentence(first.because));
    edits_.list.erase(edits_.list.begin() + static_cast<std::ptrdiff_t>(first.index));
  }
}

void Desk::lookUp() {
  isLookedUp_ = true;
  auto work = application::RecordWork::open(*clinic_, clientId_);
  if (!work) {
    whyNoScreening_ = work.failure().message;
    return;
  }
  const auto record = work.value().folded();
  chosenBuild_ = record.client.drawnBuild;
  if (record.draft) {
    const auto begun = beginInterview("");
    if (!begun) whyNoScreening_ = begun.failure().message;
    isUnderway_ = begun.ok();
    return;
  }
  const auto last = application::lastFiled(work.value(), record, *content_);
  if (!last) {
    whyNoScreening_ = last.failure().message;
    return;
  }
  base::Issues askedBack;
  auto again = application::screenedAgain(*content_, last.value(), askedBack);
  if (!again) {
    whyNoScreening_ = again.failure().message;
    return;
  }
  filed_ = std::make_unique<screening::Screening>(std::move(again).value());
  filedEntry_ = last.value().entry;
  isSignedOff_ = last.value().isSignedOff;
  notes_ = application::decisionNotes(*clinic_, work.value().entries(), filedEntry_);
}

void Desk::readNotes() {
  if (const auto work = application::RecordWork::open(*clinic_, clientId_))
    notes_ = application::decisionNotes(*clinic_, work.value().entries(), filedEntry_);
}

const records::DecisionNotes& Desk::notes() const {
  static const records::DecisionNotes kNone;
  return filedEntry().empty() ? kNone : notes_;
}

const screening::Screening* Desk::screening() {
  if (content_ != nullptr && client() != nullptr && interview_ == nullptr && !isLookedUp_) lookUp();
  return interview_ != nullptr && (isUnderway_ || filed_ == nullptr) ? &interviewScreening() : filed_.get();
}

base::Result<bool> Desk::completeInterview(base::Issues& issues) {
  if (interview_ == nullptr) return base::Failure{base::FailureKind::Usage, "No interview was begun."};
  interviewScreening();
  if (edits_.list.size() != interview_->edits().list.size())
    if (const auto kept = interview_->keepEdits(edits_); !kept) return kept;
  auto filed = interview_->complete(issues);
  if (!filed) return filed.failure();
  filedEntry_ = filed.value().entry;
  filed_ = std::make_unique<screening::Screening>(std::move(filed.value().screening));
  stopSearch();
  interview_.reset();
  screening_.reset();
  before_.reset();
  edits_ = {};
  notes_ = {};
  isUnderway_ = isSignedOff_ = false;
  isLookedUp_ = true;
  return true;
}

std::vector<plan::RefusedEdit> Desk::choosePlan(const plan::Edits& edits) {
  auto edited = std::make_unique<screening::Screening>(*screening_);
  auto refused = screening::editPlan(*content_, *edited, edits);
  if (refused.empty()) screening_ = std::move(edited);
  return refused;
}

std::optional<plan::RefusedEdit> Desk::editPlan(plan::Edit edit) {
  if (!canEditPlan()) return plan::RefusedEdit{0, "the plan is filed with its screening; another plan wants another screening", false};
  interviewScreening();
  plan::Edits wanted = edits_;
  wanted.by = clinic_->file().who().name;
  wanted.list.push_back(std::move(edit));
  const auto refused = choosePlan(wanted);
  if (!refused.empty()) return refused.back();
  edits_ = std::move(wanted);
  droppedEdits_.clear();
  static_cast<void>(interview_->keepEdits(edits_));  // isPlanSaved() tells whether it went well
  return std::nullopt;
}

bool Desk::undoEdit() {
  if (!canEditPlan() || edits_.list.empty()) return false;
  edits_.list.pop_back();
  static_cast<void>(interview_->keepEdits(edits_));  // isPlanSaved() tells whether it went well
  screening_.reset();
  return true;
}

const application::ClientLine* Desk::client() const { return clinic_ && !clientId_.empty() ? clinic_->client(clientId_) : nullptr; }

base::Result<std::vector<std::string>> Desk::signOff() {
  auto done = application::signOff(*clinic_, clientId_, filedEntry_, today());
  if (!done) return done.failure();
  isSignedOff_ = true;
  readNotes();
  return done.value().warnings;
}

base::Result<bool> Desk::overrideFinding(const std::string& rule, const std::string& instead, const std::string& reason) {
  base::Issues issues;
  if (filedEntry().empty())
    if (const auto filed = completeInterview(issues); !filed) return filed;
  const auto done = application::overrideRule(*clinic_, clientId_, *content_, {filedEntry_, rule, instead, reason}, today());
  if (!done) return done.failure();
  readNotes();
  return true;
}

base::Result<bool> Desk::signSecond(const std::string& override) {
  const auto done = application::signSecond(*clinic_, clientId_, override, today());
  if (!done) return done.failure();
  readNotes();
  return true;
}

base::Result<bool> Desk::checkPassphrase(const std::string& passphrase) { return clinic_->unlock(passphrase); }

}  // namespace stile::desktop
