// A client's record for reading: what stands today, what changed since the last screening, and the
// draft that asks it all again.
#include <map>

#include "application/client_papers.h"
#include "application/client_screening.h"
#include "application/client_signing.h"
#include "application/clinic_document.h"
#include "json/document.h"
#include "records/body.h"
#include "records/entry_kinds.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

/// Fact id -> its value in words, out of a filed screening.
std::map<std::string, std::string> factsOf(const records::Entry& screening) {
  std::map<std::string, std::string> facts;
  const records::Body body(screening.body);
  const auto result = body.root() ? body.root()->find("result") : std::nullopt;
  const auto list = result ? result->find("facts") : std::nullopt;
  for (std::size_t i = 0; list && i < list->size(); ++i) {
    const auto id = list->at(i).find("fact"), words = list->at(i).find("words"), repetition = list->at(i).find("repetition");
    if (!id || !words) continue;
    std::string key = id->string();
    if (repetition) key += " " + std::to_string(repetition->integer().value_or(0) + 1);
    facts[key] = words->string();
  }
  return facts;
}

void addNotes(const records::DecisionNotes& notes, std::string& text) {
  for (const auto& note : notes.overrides) {
    text += "    " + note.rule + " overridden on " + note.date.toText() + " by " + note.by + ": " + note.instead + "\n      reason: " + note.reason + "\n";
    if (!note.secondBy.empty())
      text += "      second signature: " + note.secondBy + "\n";
    else if (note.needsSecond)
      text += "      waits for a second signature and does not hold yet\n";
  }
  for (const auto& note : notes.signOffs) text += "    signed off on " + note.date.toText() + " by " + note.by + "\n";
  for (const auto& note : notes.amendments) text += "    added on " + note.date.toText() + " by " + note.by + ": " + note.text + "\n";
}

void addScreenings(const Clinic& clinic, const RecordWork& work, const records::ClientRecord& record, std::string& text) {
  const std::string adopted = clinicDocument(clinic).adoptedContent;
  text += "Screenings\n";
  for (const auto& line : record.screenings) {
    text += "  " + line.date.toText() + "  " + line.id + "  content " + line.content;
    if (line.content != adopted) text += ", which the clinic's lead has not approved";
    text += line.isSignedOff ? "\n" : ", not signed off\n";
    addNotes(decisionNotes(clinic, work.entries(), line.id), text);
  }
}

void addPapers(const RecordWork& work, std::string& text) {
  const auto papers = issuedPapers(work.entries());
  if (!papers.empty()) text += "Papers issued\n";
  for (const auto& paper : papers)
    text += "  " + paper.date.toText() + "  " + paper.name + "." + paper.format + (paper.language.empty() ? "" : " (" + paper.language + ")") + ", by " + paper.by + "  (" + paper.entry + ")\n";
}

void addClearances(const records::ClientRecord& record, base::Date today, std::string& text) {
  if (record.clearances.empty()) return;
  text += "Physician asked\n";
  for (const auto& one : record.clearances) {
    text += "  " + one.requested.toText() + "  " + one.to + ": " + records::idOf(one.stateOn(today));
    if (one.until) text += " until " + one.until->toText();
    text += "  (" + one.id + ")\n";
  }
}

}  // namespace

base::Result<std::string> showClient(Clinic& clinic, const std::string& id, base::Date today) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const auto record = opened.value().folded();
  const auto& client = record.client;
  std::string text = client.fullName() + ", born " + (client.born ? client.born->toText() : "?") + (client.record.empty() ? "" : ", record " + client.record) + "\n";
  text += "Record " + id + ", " + record.state + "\n";
  if (!record.mergedInto.empty()) text += "Merged into record " + record.mergedInto + "\n";
  for (const std::string& other : record.mergedFrom) text += "Holds record " + other + ", the same person\n";
  if (const std::string waits = records::planWaitsBecause(record, today); !waits.empty()) text += "The plan waits because " + waits + ".\n";
  if (!record.consents.empty()) text += "Consents\n";
  for (const auto& line : record.consents)
    text += "  " + line.date.toText() + "  " + line.what + (line.to.empty() ? "" : " (" + line.to + ")") + ": " + (line.isGiven ? "given, " : "withdrawn, ") + line.how + "\n";
  if (!record.screenings.empty()) addScreenings(clinic, opened.value(), record, text);
  addPapers(opened.value(), text);
  addClearances(record, today, text);
  const auto tasks = records::tasksOf(record, clinic.policy());
  if (!tasks.empty()) text += "To do\n";
  for (const auto& task : tasks) text += "  due " + task.due.toText() + "  waiting for " + task.waitingFor + " since " + task.since.toText() + ": " + records::nextOf(task, clinic.policy()) + "\n";
  text += "Entries\n";
  for (const auto& entry : opened.value().entries()) {
    const auto* kind = records::entryKind(entry.kind);
    text += "  " + entry.id + "  " + entry.kind + (kind == nullptr ? "" : " (" + kind->title + ")") + ", by " + entry.by + (entry.signer.empty() ? "" : ", signed") + "\n";
  }
  return text;
}

base::Result<std::string> whatChanged(Clinic& clinic, const std::string& id) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const records::Entry *last = nullptr, *before = nullptr;
  for (const auto& entry : opened.value().entries()) {
    if (entry.kind != "screening") continue;
    before = last;
    last = &entry;
  }
  if (before == nullptr) return Failure{FailureKind::Usage, "there are no two screenings to compare"};
  const auto old = factsOf(*before), now = factsOf(*last);
  std::string text = "From " + records::Body(before->body).text("date") + " to " + records::Body(last->body).text("date") + "\n";
  std::map<std::string, std::pair<std::string, std::string>> all;
  for (const auto& [fact, value] : old) all[fact].first = value;
  for (const auto& [fact, value] : now) all[fact].second = value;
  int count = 0;
  for (const auto& [fact, values] : all) {
    if (values.first == values.second) continue;
    ++count;
    text += "  " + fact + ": " + (values.first.empty() ? "-" : values.first) + " -> " + (values.second.empty() ? "-" : values.second) + "\n";
  }
  return text + (count == 0 ? "  Nothing changed.\n" : "");
}

base::Result<bool> prefill(Clinic& clinic, const std::string& id) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const records::Entry* last = nullptr;
  for (const auto& entry : opened.value().entries()) {
    if (entry.kind == records::kDraftKind) return Failure{FailureKind::Refused, "there is a draft already; screen or remove it first"};
    if (entry.kind == "screening") last = &entry;
  }
  if (last == nullptr) return Failure{FailureKind::Usage, "there is no screening yet to start from"};
  const records::Body body(last->body);
  const auto inputs = body.root()->find("inputs");
  for (std::size_t i = 0; inputs && i < inputs->size(); ++i) {
    base::Issues ignored;
    const auto text = inputs->at(i).find("text");
    const auto facts = text ? json::Document::parse(text->string(), "facts", ignored) : nullptr;
    if (!facts || !facts->root().isObject() || facts->root().find("resourceType")) continue;
    json::Writer draft;
    draft.beginObject();
    for (std::size_t j = 0; j < facts->root().size(); ++j) {
      // Lists (groups, several choices) are left out: not asked is as cautious as not confirmed.
      if (facts->root().at(j).isArray()) continue;
      draft.key(facts->root().keyAt(j)).beginObject().member("unknown", "notConfirmed").endObject();
    }
    draft.endObject();
    json::Writer whole(0);
    whole.beginObject().key("inputs").beginArray().beginObject().member("name", "answers").member("text", draft.text()).endObject().endArray().endObject();
    opened.value().saveDraft(whole.text());
    return opened.value().commit();
  }
  return Failure{FailureKind::Usage, "the last screening was made from a form's response; open the form for a new one"};
}

}  // namespace stile::application
