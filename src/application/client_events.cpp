#include "application/client_events.h"

#include <algorithm>

#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

/// The policy's letter with its slots filled in; what was not told is said to be so.
std::string letterOf(const records::EventPolicy& policy, const records::Client& client, const records::Body& event) {
  const auto told = [&event](const char* key) { return event.text(key).empty() ? std::string("not told") : event.text(key); };
  const std::pair<const char*, std::string> slots[] = {{"{client}", client.fullName()},
                                                       {"{born}", client.born ? client.born->toLongText() : "not told"},
                                                       {"{date}", event.date("date")->toLongText()},
                                                       {"{doing}", told("doing")},
                                                       {"{done}", told("done")},
                                                       {"{outcome}", told("outcome")}};
  std::string text = policy.letter;
  for (const auto& [slot, value] : slots)
    if (const auto at = text.find(slot); at != std::string::npos) text.replace(at, std::string_view(slot).size(), value);
  return text;
}

}  // namespace

base::Result<FiledEvent> fileEvent(Clinic& clinic, const std::string& id, const std::string& text, const std::string& file, base::Issues& issues) {
  auto entry = fileEntry(clinic, id, "event", text, file, {}, issues);
  if (!entry) return entry.failure();
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  const auto record = work.folded();
  const records::Body event(text);
  FiledEvent filed{std::move(entry).value(), {}, {}, record.hasConsent("physician")};
  filed.letterText = letterOf(clinic.policy().events.at(event.text("what")), record.client, event);
  json::Writer writer(0);
  writer.beginObject().member("date", event.text("date")).member("event", filed.entry);
  writer.member("to", record.client.physician.name.empty() ? "the physician" : record.client.physician.name).member("text", filed.letterText).endObject();
  filed.letter = work.add("eventLetter", writer.text());
  const auto done = work.commit();
  if (!done) return done.failure();
  return filed;
}

bool isEndedByEvent(const records::ClientRecord& record, const records::FollowUpPolicy& policy, const std::string& rule, base::Date given) {
  return std::any_of(record.events.begin(), record.events.end(), [&](const records::EventLine& event) {
    const auto what = policy.events.find(event.what);
    return event.date >= given && what != policy.events.end() && records::matchesAny(rule, what->second.endsClearanceOf);
  });
}

std::string planStandInWords(const records::ClientRecord& record, const records::FollowUpPolicy& policy, base::Date today) {
  const auto stand = records::planStand(record, policy, today);
  if (!stand) return {};
  const auto& weeks = record.lastScreening()->plan.weeks;
  if (!records::planWaitsBecause(record, today).empty()) return "The plan stood in week " + std::to_string(stand->week) + " and waits.\n";
  std::string text = "Plan: week " + std::to_string(stand->week) + " of " + std::to_string(weeks.size()) + ", from " + stand->since.toText() + ". " +
                     weeks[static_cast<std::size_t>(stand->week) - 1].words + "\n";
  if (stand->because != nullptr) text += "  " + stand->because->clinician + "\n";
  return text;
}

}  // namespace stile::application
