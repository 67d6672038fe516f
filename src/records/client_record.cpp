#include "records/client_record.h"

#include <algorithm>
#include <functional>
#include <map>

#include "records/body.h"

namespace stile::records {
namespace {

class Fold {
 public:
  Fold(ClientRecord& record, int painFrom) : record_(record), painFrom_(painFrom) {}

  void add(const Entry& entry) {
    entry_ = &entry;
    const Body body(entry.body);
    body_ = &body;
    if (entry.kind == kDraftKind) return addDraft();
    const auto date = body.date("date");
    if (!date && entry.kind != "client") return;
    date_ = date;
    static const std::map<std::string, void (Fold::*)()> kHandlers{
        {"client", &Fold::addClient},           {"screening", &Fold::addScreening},   {"signOff", &Fold::addSignOff},
        {"override", &Fold::addOverride},       {"secondSignature", &Fold::addSecond}, {"consent", &Fold::addConsent},
        {"referralIn", &Fold::addReferral},     {"referralOutcome", &Fold::endReferral}, {"referralReconciled", &Fold::reconcile},
        {"eventLetter", &Fold::addLetter},      {"eventLetterSettled", &Fold::settleLetter}, {"clearanceRequest", &Fold::addRequest},
        {"clearanceSent", &Fold::addSent},      {"clearanceChase", &Fold::addChase},  {"clearanceReply", &Fold::addReply},
        {"clearanceClosed", &Fold::closeCase},  {"actionRecord", &Fold::addAction},   {"actionStep", &Fold::addStep},
        {"started", &Fold::addStart},           {"checkIn", &Fold::addCheckIn},       {"contact", &Fold::addContact},
        {"event", &Fold::addEvent},             {"state", &Fold::addState},           {"merged", &Fold::addMerge},
        {"unmerged", &Fold::undoMerge}};
    const auto handler = kHandlers.find(entry.kind);
    if (handler != kHandlers.end()) (this->*handler->second)();
  }

 private:
  template <class Line>
  static Line* withId(std::vector<Line>& lines, const std::string& id) {
    for (Line& line : lines)
      if (line.id == id) return &line;
    return nullptr;
  }
  ClearanceCase* requestOf() { return withId(record_.clearances, body_->text("request")); }

  void addDraft() {
    record_.draftId = entry_->id;
    // An older draft does not say its day; UTC then, which decides nothing.
    record_.draft = body_->date("date");
    if (!record_.draft) record_.draft = base::Date::fromDayNumber(static_cast<int>(entry_->writtenMs / 86'400'000));
  }

  void addClient() {
    base::Issues ignored;
    record_.client = loadClient(entry_->body, "client", ignored);
  }

  void addScreening() {
    ScreeningLine line{entry_->id, *date_, body_->text("content"), body_->texts("rules"), false, {}, {}};
    if (const auto result = body_->root()->find("result")) line.plan = PlanOutline::of(*result);
    record_.screenings.push_back(std::move(line));
  }

  void addSignOff() {
    if (ScreeningLine* line = withId(record_.screenings, body_->text("screening"))) {
      line->isSignedOff = true;
      line->signers.push_back(entry_->signer);
    }
  }

  void addOverride() {
    record_.overrides.push_back({entry_->id, body_->text("screening"), body_->text("rule"), entry_->signer, *date_, body_->flag("needsSecond"), {}});
  }

  void addSecond() {
    OverrideLine* line = withId(record_.overrides, body_->text("override"));
    // Nobody is their own second.
    if (line != nullptr && entry_->signer != line->signer) line->secondSigner = entry_->signer;
  }

  void addConsent() {
    const ConsentLine line{*date_, body_->text("what"), body_->text("to"), body_->text("how"), body_->flag("given")};
    for (ConsentLine& old : record_.consents)
      if (old.what == line.what && old.to == line.to) {
        old = line;
        return;
      }
    record_.consents.push_back(line);
  }

  void addReferral() { record_.referrals.push_back({entry_->id, body_->text("from"), *date_, body_->texts("medicines"), {}, false}); }
  void endReferral() {
    if (ReferralLine* one = withId(record_.referrals, body_->text("referral"))) one->outcome = body_->text("outcome");
  }
  void reconcile() {
    if (ReferralLine* one = withId(record_.referrals, body_->text("referral"))) one->isReconciled = true;
  }

  void addRequest() {
    record_.clearances.push_back({entry_->id, body_->text("screening"), body_->texts("rules"), body_->text("to"), *date_, {}, {}, {}, {}, false});
  }
  void addSent() {
    if (ClearanceCase* one = requestOf()) one->sent = date_;
  }
  void addChase() {
    if (ClearanceCase* one = requestOf()) one->chases.push_back(*date_);
  }
  void addReply() {
    if (ClearanceCase* one = requestOf()) {
      one->answered = date_;
      one->until = body_->date("until");
    }
  }
  void closeCase() {
    if (ClearanceCase* one = requestOf()) one->isClosed = true;
  }

  void addAction() { record_.actions.push_back({entry_->id, body_->text("action"), *date_, false}); }
  void addStep() {
    if (ActionRecord* one = withId(record_.actions, body_->text("action"))) one->isComplete = body_->flag("complete");
  }

  void addStart() {
    record_.started = date_;
    record_.startedWith = body_->text("screening");
  }
  void addCheckIn() {
    record_.lastCheckIn = date_;
    reached();
    const auto number = [this](const char* key) { return body_->number(key); };
    record_.checkIns.push_back({*date_, number("sessionsDone"), number("effort"), number("painNextMorning"), number("usualPain"), number("weeksMissed"),
                                body_->flag("symptoms"), body_->flag("illness")});
    if (body_->flag("symptoms") || body_->number("painNextMorning").value_or(0) >= painFrom_) record_.lastSymptoms = date_;
  }
  void addContact() {
    if (body_->flag("reached")) return reached();
    record_.failedContacts.push_back(*date_);
  }
  void reached() {
    record_.failedContacts.clear();
    record_.lastContact = date_;
    if (record_.state == "unreached") record_.state = "active";
  }
  void addEvent() {
    record_.lastEvent = date_;
    record_.events.push_back({entry_->id, body_->text("what"), *date_});
  }
  void addLetter() { record_.letters.push_back({entry_->id, body_->text("event"), body_->text("to"), *date_, false}); }
  void settleLetter() {
    if (DraftedLetter* one = withId(record_.letters, body_->text("letter"))) one->isSettled = true;
  }
  void addState() { record_.state = body_->text("state"); }

  void addMerge() {
    if (body_->text("into").empty())
      record_.mergedFrom.push_back(body_->text("other"));
    else
      record_.mergedInto = body_->text("other");
  }
  void undoMerge() {
    const std::string other = body_->text("other");
    std::erase(record_.mergedFrom, other);
    if (record_.mergedInto == other) record_.mergedInto.clear();
  }

  ClientRecord& record_;
  int painFrom_;
  const Entry* entry_ = nullptr;
  const Body* body_ = nullptr;
  std::optional<base::Date> date_;
};

}  // namespace

const char* idOf(ClearanceState state) {
  switch (state) {
    case ClearanceState::Requested: return "requested";
    case ClearanceState::Sent: return "sent";
    case ClearanceState::Answered: return "answered";
    case ClearanceState::Expired: return "expired";
    case ClearanceState::Closed: return "closed";
  }
  return "";
}

ClearanceState ClearanceCase::stateOn(base::Date today) const {
  if (isClosed) return ClearanceState::Closed;
  if (answered) return until && *until < today ? ClearanceState::Expired : ClearanceState::Answered;
  return sent ? ClearanceState::Sent : ClearanceState::Requested;
}

const ScreeningLine* ClientRecord::screening(const std::string& id) const {
  const auto at = std::find_if(screenings.begin(), screenings.end(), [&id](const ScreeningLine& line) { return line.id == id; });
  return at == screenings.end() ? nullptr : &*at;
}

bool ClientRecord::hasConsent(const std::string& what) const {
  return std::any_of(consents.begin(), consents.end(), [&what](const ConsentLine& line) { return line.what == what && line.isGiven; });
}

ClientRecord fold(const std::vector<Entry>& entries, int painFrom) {
  ClientRecord record;
  Fold folding(record, painFrom);
  for (const Entry& entry : entries) folding.add(entry);
  return record;
}

}  // namespace stile::records
