#include "application/client_screening.h"

#include <algorithm>

#include "application/clearance_request.h"
#include "application/show_screening.h"
#include "application/stored_inputs.h"
#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

constexpr base::Period kReplyValidity{12, base::CalendarUnit::Month};  // design 4: a reply without an end

const records::Entry* lastOf(const RecordWork& work, std::string_view kind) {
  const records::Entry* last = nullptr;
  for (const auto& entry : work.entries())
    if (entry.kind == kind) last = &entry;
  return last;
}

std::string screeningBody(const screening::Screening& screening, const screening::Content& content, const std::vector<Input>& inputs,
                          const Shapes& asked, const base::Issues& askedBack) {
  base::Issues ignored;
  const std::string result = screeningAsJson(screening, content, askedBack);
  const auto document = json::Document::parse(result, "screening", ignored);
  json::Writer writer(0);
  writer.beginObject().member("date", screening.date.toText()).member("content", content.version);
  writer.key("rules").beginArray();
  for (const auto& finding : screening.findings)
    if (finding.standing == rules::Standing::Certain) writer.string(finding.rule->id);
  writer.endArray();
  StoredInputs::write(writer, inputs, asked);
  writer.key("result").copy(document->root()).endObject();
  return writer.text();
}

std::string actionBody(const std::string& screening, limits::Action action, base::Date today) {
  json::Writer writer(0);
  writer.beginObject().member("date", today.toText()).member("screening", screening).member("action", limits::idOf(action)).endObject();
  return writer.text();
}

/// Whether an action record of today stands open for this action.
bool isActedOn(const records::ClientRecord& record, const std::string& action, base::Date today) {
  return std::any_of(record.actions.begin(), record.actions.end(),
                     [&](const records::ActionRecord& one) { return one.action == action && one.opened == today && !one.isComplete; });
}

/// `more` laid over `old`, both objects of plain facts.
std::string merged(json::Node old, json::Node more) {
  json::Writer writer;
  writer.beginObject();
  for (std::size_t i = 0; i < old.size(); ++i)
    if (!more.find(old.keyAt(i))) writer.key(old.keyAt(i)).copy(old.at(i));
  for (std::size_t i = 0; i < more.size(); ++i) writer.key(more.keyAt(i)).copy(more.at(i));
  writer.endObject();
  return writer.text();
}

/// "May we write to your doctor?" in the interview: a yes is a consent, while the record knows of none, nor of one that
/// was withdrawn elsewhere. A no ends what the interview had given, and every consent from before that answer.
void addConsent(RecordWork& work, const screening::Screening& screening, base::Date today) {
  constexpr const char *kAsked = "consentToLetter", *kPhysician = "physician", *kHow = "said in the interview";
  const auto* asked = screening.facts.dictionary().find(kAsked);
  if (asked == nullptr) return;
  const facts::Fact& fact = screening.facts.at(asked->slot);
  const auto add = [&](const std::string& to, bool isGiven) {
    json::Writer writer(0);
    writer.beginObject().member("date", today.toText()).member("what", kPhysician).member("given", isGiven).member("how", kHow);
    if (!to.empty()) writer.member("to", to);
    work.add("consent", writer.endObject().text());
  };
  std::vector<records::ConsentLine> known;
  for (const auto& line : work.folded().consents)
    if (line.what == kPhysician) known.push_back(line);
  if (fact.value.truth == expression::Truth::True) {
    if (std::all_of(known.begin(), known.end(), [](const auto& line) { return !line.isGiven && line.how == kHow; })) add("", true);
  } else if (fact.value.truth == expression::Truth::False) {
    const base::Date answered = fact.date ? fact.date->last() : today;
    for (const auto& line : known)
      if (line.isGiven && (line.how == kHow || line.date < answered)) add(line.to, false);
  }
}

}  // namespace

base::Result<bool> saveDraft(Clinic& clinic, const std::string& id, const Input& input, base::Date today, base::Issues& issues) {
  if (json::Document::parse(input.text, input.name, issues) == nullptr) return Failure{FailureKind::Refused, input.name + ": the draft was not saved"};
  auto work = RecordWork::open(clinic, id);
  if (!work) return work.failure();
  work.value().saveDraft(StoredInputs::draft(today, {input}));
  return work.value().commit();
}

base::Result<AnswerSession> AnswerSession::open(Clinic& clinic, const std::string& id, const screening::Content& content, base::Date today) {
  auto work = RecordWork::open(clinic, id);
  if (!work) return work.failure();
  return AnswerSession(std::move(work).value(), content, today);
}

base::Result<bool> AnswerSession::save(const std::string& answers, base::Issues& issues) {
  const auto more = json::Document::parse(answers, "answers", issues);
  if (!more || !more->root().isObject()) return Failure{FailureKind::Refused, "answers: give one object of facts a line; nothing of this line was saved"};
  facts::factsFromPlain(content_->dictionary, content_->forms, more->root(), today_, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "answers: nothing of this line was saved"};
  std::vector<Input> inputs;
  base::Date day = today_;
  if (const auto* draft = lastOf(work_, records::kDraftKind)) {
    const StoredInputs stored(draft->body);
    inputs = stored.inputs();
    day = stored.day().value_or(today_);
  }
  const auto at = std::find_if(inputs.begin(), inputs.end(), [](const Input& input) { return input.name == "answers"; });
  if (at == inputs.end() && !inputs.empty())
    return Failure{FailureKind::Refused, "the draft of this client is a form's response; save the whole response instead"};
  base::Issues ignored;
  const auto old = json::Document::parse(at == inputs.end() ? "{}" : at->text, "draft", ignored);
  work_.saveDraft(StoredInputs::draft(day, {{"answers", merged(old->root(), more->root())}}));
  return work_.commit();
}

base::Result<Filed> screenAndFile(Clinic& clinic, const std::string& id, const screening::Content& content, const std::vector<Input>& inputs,
                                  base::Date today, base::Issues& issues, DraftAfter after, const plan::Edits& edits) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  std::vector<Input> all = inputs;
  Shapes asked;
  if (const auto* draft = lastOf(work, records::kDraftKind); draft != nullptr && all.empty()) {
    const StoredInputs stored(draft->body);
    all = stored.inputsOn(today);
    asked = stored.asked();
  }
  if (all.empty()) return Failure{FailureKind::Usage, "there are no answers yet: save a draft, or name files"};
  for (Input& reply : repliesOnRecord(work)) all.push_back(std::move(reply));
  auto screened = screenClient(content, all, today, issues);
  if (!screened) return screened.failure();
  if (!edits.list.empty())
    if (const auto edited = editPlan(content, screened.value(), edits, issues); !edited) return edited.failure();
  Filed filed{{}, {}, std::move(screened).value(), {}};
  addConsent(work, filed.screening, today);
  filed.entry = work.add("screening", screeningBody(filed.screening, content, all, asked, issues));
  const auto action = filed.screening.reach.limits.action;  // calls take effect from what is certain
  if (action >= limits::Action::SameDay && !isActedOn(work.folded(), limits::idOf(action), today)) filed.actionRecord = work.add("actionRecord", actionBody(filed.entry, action, today));
  if (inputs.empty() && after == DraftAfter::Removed) work.removeDraft();
  const std::string waits = records::planWaitsBecause(work.folded(), today);
  const auto done = work.commit();
  if (!done) return done.failure();
  filed.text = screeningAsText(filed.screening, content, issues);
  if (!waits.empty()) filed.text += "\nThe plan waits because " + waits + ".\n";
  return filed;
}

base::Result<Asked> askPhysician(Clinic& clinic, const std::string& id, const screening::Content& content, const std::string& to, base::Date today) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  if (!work.folded().hasConsent("physician"))
    return Failure{FailureKind::Refused, "the client has not agreed to share with the physician, so no letter goes out; file the consent first"};
  const auto* last = lastOf(work, "screening");
  if (last == nullptr) return Failure{FailureKind::Usage, "there is no screening yet to ask about"};
  const records::Body body(last->body);
  base::Issues issues;
  // Made anew from what went in, on its own day: the same answers give the same findings.
  auto screened = screenClient(content, StoredInputs(last->body).inputs(), body.date("date").value_or(today), issues);
  if (!screened) return Failure{FailureKind::Refused, "the last screening cannot be read with the present content (" + screened.failure().message + "); screen again first"};
  const auto findings = findingsToClear(screened.value());
  if (findings.empty()) return Failure{FailureKind::Usage, "nothing in the last screening waits for a physician"};
  json::Writer writer(0);
  writer.beginObject().member("date", today.toText()).member("screening", last->id).key("rules").beginArray();
  for (const std::size_t index : findings) writer.string(screened.value().findings[index].rule->id);
  writer.endArray().member("to", to).endObject();
  Asked asked{work.add("clearanceRequest", writer.text()), blankReply(screened.value(), content)};
  const auto done = work.commit();
  if (!done) return done.failure();
  return asked;
}

base::Result<std::string> fileReply(Clinic& clinic, const std::string& id, const std::string& request, const screening::Content& content,
                                    const Input& reply, base::Date today, base::Issues& issues) {
  const auto document = json::Document::parse(reply.text, reply.name, issues);
  if (!document) return Failure{FailureKind::Refused, reply.name + ": the reply was not filed"};
  const auto response = answers::loadResponse(document->root(), content.forms, issues);
  const auto replies = response ? screening::repliesIn(*response, issues) : std::vector<screening::ClearanceReply>{};
  if (issues.hasErrors() || replies.empty()) return Failure{FailureKind::Refused, reply.name + ": this is no complete response to the form clearance-reply; the reply was not filed"};
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  const auto folded = work.folded();
  if (std::none_of(folded.clearances.begin(), folded.clearances.end(), [&request](const auto& one) { return one.id == request && !one.isClosed; }))
    return Failure{FailureKind::Usage, request + ": this client has no open request of that id"};
  std::optional<base::Date> until;  // the first that ends: from then on the whole is looked at again
  for (const auto& one : replies) {
    const base::Date end = one.until.value_or(base::plus(*one.from, kReplyValidity));
    if (!until || end < *until) until = end;
  }
  json::Writer writer(0);
  writer.beginObject().member("date", today.toText()).member("request", request).member("until", until->toText()).key("response").copy(document->root()).endObject();
  const std::string entry = work.add("clearanceReply", writer.text());
  const auto done = work.commit();
  if (!done) return done.failure();
  return entry;
}

}  // namespace stile::application
