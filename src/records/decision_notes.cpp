#include "records/decision_notes.h"

#include <map>

#include "records/body.h"

namespace stile::records {
namespace {

bool isNote(const std::string& kind) {
  return kind == "override" || kind == "secondSignature" || kind == "signOff" || kind == "amendment";
}

}  // namespace

DecisionNotes decisionNotesOf(const std::vector<Entry>& entries, const std::string& screening) {
  DecisionNotes notes;
  std::map<std::string, std::size_t> overrideAt;  // entry id -> index
  for (const Entry& entry : entries) {
    if (!isNote(entry.kind)) continue;  // the others are long to read
    const Body body(entry.body);
    const auto date = body.date("date");
    if (!date) continue;
    if (entry.kind == "secondSignature") {
      const auto at = overrideAt.find(body.text("override"));
      if (at == overrideAt.end()) continue;
      OverrideNote& note = notes.overrides[at->second];
      if (entry.signer != note.by) note.secondBy = entry.signer;
      continue;
    }
    if (body.text("screening") != screening) continue;
    if (entry.kind == "override") {
      overrideAt[entry.id] = notes.overrides.size();
      notes.overrides.push_back({body.text("rule"), body.text("instead"), body.text("reason"), entry.signer, *date, body.flag("needsSecond"), {}, entry.id});
    } else if (entry.kind == "signOff") {
      notes.signOffs.push_back({entry.signer, *date});
    } else if (entry.kind == "amendment") {
      notes.amendments.push_back({body.text("text"), entry.signer, *date});
    }
  }
  return notes;
}

}  // namespace stile::records
