#include "application/client_timeline.h"

#include <algorithm>
#include <map>

#include "json/document.h"
#include "records/body.h"
#include "records/entry_kinds.h"
#include "records/entry_words.h"

namespace stile::application {
namespace {

using records::MemberType;
using Detail = std::pair<std::string, std::string>;

std::string joinedTexts(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& one : texts) all += (all.empty() ? "" : "; ") + one;
  return all;
}

std::string valueWords(const records::Body& body, const records::Member& member) {
  switch (member.type) {
    case MemberType::Text: return body.text(member.name);
    case MemberType::Word: return records::choiceWords(body.text(member.name));
    case MemberType::Texts: return joinedTexts(body.texts(member.name));
    case MemberType::Number: {
      const auto number = body.number(member.name);
      return number ? std::to_string(*number) : "";
    }
    case MemberType::Flag: {
      const auto root = body.root();
      return root && root->find(member.name) ? (body.flag(member.name) ? "yes" : "no") : "";
    }
    case MemberType::Date: {
      const auto day = member.name == "date" ? std::nullopt : body.date(member.name);
      return day ? day->toLongText() : "";
    }
    case MemberType::Reference:
    case MemberType::Any: break;
  }
  return {};
}

std::string textAt(json::Node node, const char* key) {
  const auto found = node.find(key);
  return found && found->isString() ? found->string() : "";
}

/// The decision of a filed screening.
std::vector<Detail> screeningDetails(const records::Body& body) {
  std::vector<Detail> details;
  const auto result = body.root() ? body.root()->find("result") : std::nullopt;
  if (!result) return details;
  details.emplace_back("Action", records::choiceWords(textAt(*result, "action")));
  const auto floor = result->find("floor");
  if (const auto usable = floor ? floor->find("usable") : std::nullopt)
    for (const char* bay : {"aerobic", "strength"}) details.emplace_back(bay == std::string("aerobic") ? "Aerobic" : "Strength", textAt(*usable, bay) == "none" ? "rest" : textAt(*usable, bay));
  details.emplace_back("Findings", std::to_string(body.texts("rules").size()) + " certain");
  details.emplace_back("Content", body.text("content"));
  return details;
}

std::vector<Detail> detailsOf(const records::Entry& entry, const records::EntryKind& kind) {
  const records::Body body(entry.body);
  if (entry.kind == "screening") return screeningDetails(body);
  std::vector<Detail> details;
  if (entry.kind == "paper") details.emplace_back("Paper", body.text("name") + "." + body.text("format"));
  if (entry.kind == "eventLetter") details.emplace_back("To whom", body.text("to")), details.emplace_back("Text", body.text("text"));
  if (!details.empty()) return details;
  for (const auto& member : kind.members)
    if (std::string words = valueWords(body, member); !words.empty()) details.emplace_back(records::memberWords(member.name), std::move(words));
  return details;
}

std::string oneLine(const std::vector<Detail>& details) {
  std::string line;
  for (const auto& [term, text] : details) {
    const std::string piece = term == "What" || term == "Text" || term == "Paper" ? text : term + ": " + text;
    if (term != "Content") line += (line.empty() ? "" : "; ") + piece;
  }
  std::replace(line.begin(), line.end(), '\n', ' ');
  return line;
}

}  // namespace

std::vector<TimelineLine> timelineOf(const Clinic& clinic, const std::vector<records::Entry>& entries) {
  std::map<std::string, std::string> names;
  for (const auto& clinician : clinic.file().clinicians()) names[clinician.handle] = clinician.name;
  std::vector<TimelineLine> lines;
  for (const auto& entry : entries) {
    const auto* kind = records::entryKind(entry.kind);
    if (kind == nullptr || entry.kind == records::kDraftKind || entry.kind == "client") continue;
    const auto day = records::Body(entry.body).date("date");
    if (!day) continue;
    const auto who = names.find(entry.by);
    TimelineLine line{entry.id, entry.kind, *day, kind->title, {}, who == names.end() ? entry.by : who->second, detailsOf(entry, *kind)};
    line.words = oneLine(line.details);
    lines.push_back(std::move(line));
  }
  // Entries stand in the order of writing; of one day the last written comes first.
  std::reverse(lines.begin(), lines.end());
  std::stable_sort(lines.begin(), lines.end(), [](const TimelineLine& a, const TimelineLine& b) { return a.date > b.date; });
  return lines;
}

base::Result<std::string> clientTimeline(Clinic& clinic, const std::string& id, base::Date) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  std::string text;
  for (const auto& line : timelineOf(clinic, opened.value().entries()))
    text += line.date.toText() + "  " + line.title + (line.words.empty() ? "" : ": " + line.words) + "  (" + line.by + ")\n";
  return text.empty() ? "Nothing has happened yet.\n" : text;
}

}  // namespace stile::application
