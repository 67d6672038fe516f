#include "application/client_papers.h"

#include "application/client_screening.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

/// Names in place of sign-in names.
records::DecisionNotes withNames(records::DecisionNotes notes, const std::vector<records::Clinician>& clinicians) {
  const auto name = [&](std::string& handle) {
    for (const records::Clinician& one : clinicians)
      if (one.handle == handle && !one.name.empty()) {
        handle = one.name + (one.profession.empty() ? "" : ", " + one.profession);
        return;
      }
  };
  for (auto& note : notes.overrides) name(note.by), name(note.secondBy);
  for (auto& note : notes.signOffs) name(note.by);
  for (auto& note : notes.amendments) name(note.by);
  return notes;
}

}  // namespace

base::Result<std::string> writeClientPapers(Clinic& clinic, const std::string& id, const screening::Content& content,
                                            const std::string& contentFolder, PaperOptions options, base::Issues& issues) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const RecordWork& work = opened.value();
  const records::Entry* last = nullptr;
  for (const auto& entry : work.entries())
    if (entry.kind == "screening") last = &entry;
  if (last == nullptr) return Failure{FailureKind::Refused, "this client has not been screened yet; no paper was written"};
  const records::Body body(last->body);
  const auto date = body.date("date");
  if (!date) return Failure{FailureKind::Refused, "the last screening cannot be read; no paper was written"};
  if (body.text("content") != content.version)
    return Failure{FailureKind::Refused, "the last screening was made with the content " + body.text("content") + ", and this is " + content.version +
                                             "; screen again, so that papers and decision agree"};
  const std::vector<Input> inputs = inputsOf(last->body);
  base::Issues askedBack;
  const auto screening = screenClient(content, inputs, *date, askedBack);
  if (!screening) return screening.failure();
  const records::Client client = work.folded().client;
  options.client = {client.fullName(), client.born ? client.born->toLongText() : "", client.record};
  if (options.physician.empty() && !client.physician.name.empty())
    options.physician = client.physician.name + (client.physician.place.empty() ? "" : ", " + client.physician.place);
  options.notes = withNames(records::decisionNotesOf(work.entries(), last->id), clinic.file().clinicians());
  options.screenAgain = [&inputs, &date](const screening::Content& other) {
    base::Issues again;
    return screenClient(other, inputs, *date, again);
  };
  return writePapers(screening.value(), content, askedBack, contentFolder, options, issues);
}

}  // namespace stile::application
