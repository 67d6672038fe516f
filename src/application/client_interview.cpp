#include "application/client_interview.h"

#include <algorithm>

#include "answers/response_writer.h"
#include "application/carried_response.h"
#include "application/stored_inputs.h"
#include "facts/enablement_closure.h"
#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;
using interview::QuestionRef;

/// Facts that the client's record knows itself; they are not asked.
constexpr const char* kBirthDate = "birthDate";
constexpr const char* kFromRecord = "record";

const records::Entry* draftOf(const RecordWork& work) {
  for (const auto& entry : work.entries())
    if (entry.kind == records::kDraftKind) return &entry;
  return nullptr;
}

/// What was said, without the answers to questions that do not apply any longer: those stay in the
/// draft and are in no fact.
answers::Response countingOnly(interview::Session& session) {
  answers::Response response = session.response();
  const auto& ground = session.ground();
  const auto& dictionary = ground.dictionary();
  std::erase_if(response.answered, [&](const answers::Answered& answered) {
    const auto* fact = dictionary.find(answered.linkId);
    const int place = fact == nullptr ? -1 : ground.questions().placeOf(fact->slot);
    return place >= 0 && !session.position().isEnabled({place, answered.repetition});
  });
  std::erase_if(response.repetitions, [&](const auto& group) {
    const int index = dictionary.groupIndex(group.first);
    const int entry = index < 0 ? -1 : ground.dependents().entryOfGroup(index);
    if (entry < 0) return false;
    const auto& condition = ground.dependents().plan().entries()[static_cast<std::size_t>(entry)];
    return facts::enablementOf(session.position().facts(), condition, -1) != expression::Truth::True;
  });
  return response;
}

/// The date of birth out of the record, unless it was answered.
void addFromRecord(answers::Response& response, const records::Client& client) {
  const auto isBirthDate = [](const answers::Answered& answered) { return answered.linkId == kBirthDate; };
  if (!client.born || response.form->find(kBirthDate) == nullptr || std::any_of(response.answered.begin(), response.answered.end(), isBirthDate)) return;
  answers::Answered known;
  known.linkId = kBirthDate;
  known.givenBy = kFromRecord;
  known.answers.emplace_back();
  known.answers.back().date = base::PartialDate(*client.born);
  response.answered.push_back(std::move(known));
}

}  // namespace

LastTime::LastTime(const std::vector<records::Entry>& entries, const screening::Content& content) {
  for (auto entry = entries.rbegin(); entry != entries.rend() && responses_.empty(); ++entry) {
    if (entry->kind != "screening") continue;
    const StoredInputs stored(entry->body);
    for (const Input& input : stored.inputs()) {
      base::Issues ignored;
      const auto document = json::Document::parse(input.text, input.name, ignored);
      if (!document || !document->root().isObject()) continue;
      const auto* form = formOf(document->root(), content);
      if (form == nullptr || input.name.starts_with(kReplyInput)) continue;
      if (auto response = carriedInto(*form, document->root(), stored.asked(), content)) responses_.push_back(std::move(*response));
    }
    if (!responses_.empty()) day_ = records::Body(entry->body).date("date");
  }
}

const answers::Answered* LastTime::of(const std::string& linkId, int repetition) const {
  for (const auto& response : responses_)
    for (const auto& answered : response.answered)
      if (answered.linkId == linkId && answered.repetition == repetition && !answered.answers.empty()) return &answered;
  return nullptr;
}

int LastTime::repetitions(const std::string& group) const {
  int most = 0;
  for (const auto& response : responses_)
    if (const auto at = response.repetitions.find(group); at != response.repetitions.end()) most = std::max(most, at->second);
  return most;
}

ClientInterview::ClientInterview(Clinic& clinic, RecordWork work, const screening::Content& content, base::Date today)
    : clinic_(clinic), work_(std::move(work)), content_(content), today_(today), lastTime_(work_.entries(), content) {}

base::Result<std::unique_ptr<ClientInterview>> ClientInterview::open(Clinic& clinic, const std::string& id, const screening::Content& content,
                                                                     const std::string& form, base::Date today) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  std::unique_ptr<ClientInterview> made(new ClientInterview(clinic, std::move(opened).value(), content, today));
  const auto record = made->work_.folded();
  if (!record.mergedInto.empty()) return Failure{FailureKind::Refused, "this record rests, merged into " + record.mergedInto + "; interview the client there"};
  const std::string wanted = form.empty() ? "clinic" : form;
  const questionnaire::Form* asked = content.forms.byName(wanted);
  if (asked == nullptr) return Failure{FailureKind::Usage, wanted + ": there is no such form; use clinic or telephone"};
  answers::Response response;
  if (const auto* draft = draftOf(made->work_)) {
    const StoredInputs stored(draft->body);
    base::Issues ignored;
    const auto document = stored.interview().empty() ? nullptr : json::Document::parse(stored.interview(), "draft", ignored);
    if (!document) return Failure{FailureKind::Refused, "the draft of this client is no interview; screen it first, or save an interview's response over it"};
    const auto* begun = formOf(document->root(), content);
    if (begun == nullptr) return Failure{FailureKind::Refused, "the draft of this client answers a form that this content does not have"};
    if (!form.empty() && begun != asked) return Failure{FailureKind::Usage, "the draft of this client answers the form " + begun->name() + "; go on with that one"};
    auto carried = carriedInto(*begun, document->root(), stored.asked(), content);
    if (!carried) return Failure{FailureKind::Refused, "the draft of this client cannot be read with the present form " + begun->name() + "; nothing was changed"};
    if (!stored.edits().empty()) made->edits_ = readEdits(stored.edits(), "draft", ignored);
    response = goneOnWith(std::move(*carried), content, today);
    asked = begun;
  }
  response.form = asked;
  response.formVersion = asked->version();
  response.authored = today;
  addFromRecord(response, record.client);
  const auto replies = repliesIn(content, repliesOnRecord(made->work_));
  made->session_ = std::make_unique<interview::Session>(content, *asked, today, std::vector<answers::Response>{}, replies, &response);
  return made;
}

std::string ClientInterview::draftBody() {
  const std::string whole = answers::writeResponse(session_->response(), answers::Status::InProgress);
  const std::string counting = answers::writeResponse(countingOnly(*session_), answers::Status::InProgress);
  return StoredInputs::interviewDraft(today_, content_.version, counting, counting == whole ? "" : whole, shapesOf(session_->response()),
                                      edits_.list.empty() ? "" : editsAsJson(edits_));
}

base::Result<bool> ClientInterview::save() {
  isSaved_ = false;
  work_.saveDraft(draftBody());
  // The card says that there is a draft, and since when; it does not change with every answer.
  auto done = isListed_ ? work_.commitWithoutCard() : work_.commit();
  isSaved_ = done.ok();
  isListed_ = isListed_ || isSaved_;
  return done;
}

base::Result<bool> ClientInterview::stepTaken() {
  if (saving_ == Saving::ByStep) return save();
  isSaved_ = false;
  return true;
}

base::Result<bool> ClientInterview::answer(const QuestionRef& question, std::vector<answers::Answer> answers, base::Issues& issues, bool isConfirmed) {
  if (!session_->answer(question, std::move(answers), issues, isConfirmed)) return false;
  return stepTaken();
}

base::Result<bool> ClientInterview::answerList(const std::set<QuestionRef>& yes, const std::set<QuestionRef>& notSure) {
  session_->answerList(yes, notSure);
  return stepTaken();
}

base::Result<bool> ClientInterview::another(bool isThere) {
  session_->another(isThere);
  return stepTaken();
}

base::Result<bool> ClientInterview::skip(answers::Absence why) {
  session_->skip(why);
  return stepTaken();
}

base::Result<bool> ClientInterview::confirm(const QuestionRef& question, base::Issues& issues) {
  const auto* before = lastTime_.of(session_->question(question).item->linkId, question.repetition);
  if (before == nullptr) return false;
  return answer(question, before->answers, issues);
}

base::Result<bool> ClientInterview::back() {
  if (!session_->back()) return false;
  return stepTaken();
}

bool ClientInterview::isUrgent() const {
  const auto action = session_->stakes().totals().reach.action;
  return action >= limits::Action::SameDay && action > filedFor_;
}

base::Result<Filed> ClientInterview::fileUrgent(base::Issues& issues) {
  if (const auto saved = save(); !saved) return saved.failure();
  auto filed = screenAndFile(clinic_, work_.id(), content_, {}, today_, issues, DraftAfter::Kept);
  if (filed) filedFor_ = session_->stakes().totals().reach.action;
  return filed;
}

base::Result<bool> ClientInterview::keepEdits(plan::Edits edits) {
  edits_ = std::move(edits);
  return save();
}

base::Result<Filed> ClientInterview::complete(base::Issues& issues) {
  if (const auto saved = save(); !saved) return saved.failure();
  return screenAndFile(clinic_, work_.id(), content_, {}, today_, issues, DraftAfter::Removed, edits_);
}

}  // namespace stile::application
