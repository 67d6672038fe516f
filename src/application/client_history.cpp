// A client's record for reading: what stands today.
#include "application/client_events.h"
#include "application/client_papers.h"
#include "application/client_screening.h"
#include "application/client_signing.h"
#include "application/clinic_document.h"
#include "records/entry_kinds.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

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
    text += "  " + paper.date.toText() + "  " + paper.name + "." + paper.format +
            (paper.language.empty() ? "" : " (" + paper.language + ")") +
            (paper.build.empty() ? "" : ", " + paper.build + " figures") + ", by " + paper.by + "  (" +
            paper.entry + ")\n";
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
  if (client.drawnBuild)
    text += std::string("Drawings show the ") + movement::idOf(*client.drawnBuild) +
            " figure, as the client chose\n";
  if (!record.mergedInto.empty()) text += "Merged into record " + record.mergedInto + "\n";
  for (const std::string& other : record.mergedFrom) text += "Holds record " + other + ", the same person\n";
  if (const std::string waits = records::planWaitsBecause(record, today); !waits.empty()) text += "The plan waits because " + waits + ".\n";
  text += planStandInWords(record, clinic.policy(), today);
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

}  // namespace stile::application
