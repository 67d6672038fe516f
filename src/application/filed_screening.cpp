#include "application/filed_screening.h"

#include <algorithm>

#include "application/stored_inputs.h"
#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

/// How a clinician changed the plan.
plan::Edits editsOf(const std::string& body, base::Issues& issues) {
  const records::Body screening(body);
  const auto result = screening.root() ? screening.root()->find("result") : std::nullopt;
  for (const char* key : {"plan", "heldPlan"}) {
    const auto plan = result ? result->find(key) : std::nullopt;
    const auto edits = plan && plan->isObject() ? plan->find("edited") : std::nullopt;
    if (!edits) continue;
    json::Writer writer(0);
    writer.copy(*edits);
    return readEdits(writer.text(), "the edits on record", issues);
  }
  return {};
}

}  // namespace

base::Result<FiledScreening> lastFiled(const RecordWork& work, const records::ClientRecord& record, const screening::Content& content) {
  const auto* line = record.lastScreening();
  if (line == nullptr) return Failure{FailureKind::Usage, "there is no screening on record yet"};
  if (line->content != content.version)
    return Failure{FailureKind::Refused, "the last screening was made with content " + line->content + ", and this is " + content.version + "; screen again first"};
  const auto entry = std::find_if(work.entries().begin(), work.entries().end(), [&](const records::Entry& one) { return one.id == line->id; });
  return FiledScreening{line->id, line->date, entry->body, line->isSignedOff};
}

base::Result<screening::Screening> screenedAgain(const screening::Content& content, const FiledScreening& filed, base::Issues& askedBack) {
  auto screened = screenClient(content, StoredInputs(filed.body).inputs(), filed.date, askedBack);
  if (!screened) return screened;
  const plan::Edits edits = editsOf(filed.body, askedBack);
  if (edits.list.empty()) return screened;
  if (const auto edited = editPlan(content, screened.value(), edits, askedBack); !edited) return edited.failure();
  return screened;
}

}  // namespace stile::application
