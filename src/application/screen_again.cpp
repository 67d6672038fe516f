#include "application/screen_again.h"

#include <algorithm>
#include <map>
#include <set>

#include "application/stored_inputs.h"
#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

constexpr const char* kMedicine = "medicineName";

const records::Entry* lastScreeningOf(const std::vector<records::Entry>& entries, const records::Entry* before = nullptr) {
  const records::Entry* last = nullptr;
  for (const auto& entry : entries) {
    if (&entry == before) break;
    if (entry.kind == "screening") last = &entry;
  }
  return last;
}

void writeNotConfirmed(json::Writer& writer) { writer.beginObject().member("unknown", "notConfirmed").endObject(); }

/// The repetitions there were, and one of which nothing is known: the list may have grown.
void writeGroup(json::Writer& writer, json::Node repetitions) {
  writer.beginArray();
  std::set<std::string> members;
  for (std::size_t i = 0; i < repetitions.size(); ++i) {
    writer.beginObject();
    for (std::size_t j = 0; j < repetitions.at(i).size(); ++j) {
      members.insert(repetitions.at(i).keyAt(j));
      writer.key(repetitions.at(i).keyAt(j));
      writeNotConfirmed(writer);
    }
    writer.endObject();
  }
  writer.beginObject();
  for (const std::string& member : members) {
    writer.key(member);
    writeNotConfirmed(writer);
  }
  writer.endObject().endArray();
}

/// The plain facts with nothing but reasons in the place of their values.
std::string unconfirmed(json::Node facts, const facts::Dictionary& dictionary) {
  json::Writer draft;
  draft.beginObject();
  for (std::size_t i = 0; i < facts.size(); ++i) {
    const std::string& key = facts.keyAt(i);
    if (key == "date") continue;
    const bool isGroup = dictionary.groupIndex(key) >= 0;
    // A list that was empty may not be so any longer: not asked is as cautious as not confirmed.
    if (isGroup && facts.at(i).size() == 0) continue;
    draft.key(key);
    if (isGroup)
      writeGroup(draft, facts.at(i));
    else
      writeNotConfirmed(draft);
  }
  draft.endObject();
  return draft.text();
}

std::string textOf(json::Node node, const char* key) {
  const auto found = node.find(key);
  return found && found->isString() ? found->string() : "";
}

/// What a filed screening says, flat: for comparing two of them.
struct Flat {
  std::map<std::string, std::string> decision, findings, facts;
  std::multiset<std::string> lists;  ///< "medicine: metformin, twice a day"
};

void flattenDecision(json::Node result, Flat& flat) {
  flat.decision["action"] = textOf(result, "action");
  for (const char* end : {"floor", "reach"})
    if (const auto usable = result.find(end) ? result.find(end)->find("usable") : std::nullopt)
      for (std::size_t i = 0; i < usable->size(); ++i)
        if (usable->at(i).isString()) flat.decision[usable->keyAt(i) + (end == std::string("floor") ? ", sure so far" : ", still possible")] = usable->at(i).string();
}

void flattenFacts(json::Node facts, Flat& flat) {
  std::map<std::pair<std::string, long long>, std::string> rows;
  for (std::size_t i = 0; i < facts.size(); ++i) {
    const json::Node fact = facts.at(i);
    const auto repetition = fact.find("repetition");
    if (!repetition) {
      flat.facts[textOf(fact, "fact")] = textOf(fact, "words");
      continue;
    }
    std::string& row = rows[{textOf(fact, "group"), repetition->integer().value_or(0)}];
    row += (row.empty() ? "" : ", ") + textOf(fact, "fact") + " " + textOf(fact, "words");
  }
  for (const auto& [place, row] : rows) flat.lists.insert(place.first + ": " + row);
}

Flat flatten(const records::Entry& screening) {
  Flat flat;
  const records::Body body(screening.body);
  const auto result = body.root() ? body.root()->find("result") : std::nullopt;
  if (!result) return flat;
  flattenDecision(*result, flat);
  if (const auto findings = result->find("findings"))
    for (std::size_t i = 0; i < findings->size(); ++i) flat.findings[textOf(findings->at(i), "title")] = textOf(findings->at(i), "standing");
  if (const auto facts = result->find("facts")) flattenFacts(*facts, flat);
  return flat;
}

std::vector<Changed> differences(const std::map<std::string, std::string>& before, const std::map<std::string, std::string>& now) {
  std::map<std::string, Changed> all;
  for (const auto& [what, value] : before) all[what] = {what, value, {}};
  for (const auto& [what, value] : now) {
    Changed& line = all[what];
    line.what = what;
    line.now = value;
  }
  std::vector<Changed> changed;
  for (auto& [what, line] : all)
    if (line.before != line.now) changed.push_back(std::move(line));
  return changed;
}

void addLists(const Flat& before, const Flat& now, std::vector<Changed>& changed) {
  std::multiset<std::string> gone, come = now.lists;
  for (const std::string& row : before.lists) {
    if (const auto same = come.find(row); same != come.end())
      come.erase(same);
    else
      gone.insert(row);
  }
  const auto split = [](const std::string& row) { return std::pair(row.substr(0, row.find(": ")), row.substr(row.find(": ") + 2)); };
  for (const std::string& row : gone) changed.push_back({split(row).first, split(row).second, {}});
  for (const std::string& row : come) changed.push_back({split(row).first, {}, split(row).second});
}

std::string firstWord(const std::string& medicine) {
  const std::string plain = records::searchable(medicine);
  return plain.substr(0, plain.find(' '));
}

std::vector<std::string> missingFrom(const std::vector<std::string>& ones, const std::vector<std::string>& others) {
  std::vector<std::string> missing;
  for (const std::string& one : ones)
    if (std::none_of(others.begin(), others.end(), [&one](const std::string& other) { return firstWord(other) == firstWord(one); })) missing.push_back(one);
  return missing;
}

}  // namespace

base::Result<bool> prefill(Clinic& clinic, const std::string& id, const facts::Dictionary& dictionary, base::Date today) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  for (const auto& entry : work.entries())
    if (entry.kind == records::kDraftKind) return Failure{FailureKind::Refused, "there is a draft already; screen or remove it first"};
  const auto* last = lastScreeningOf(work.entries());
  if (last == nullptr) return Failure{FailureKind::Usage, "there is no screening yet to start from"};
  const StoredInputs stored(last->body);
  for (const Input& input : stored.inputs()) {
    base::Issues ignored;
    const auto facts = json::Document::parse(input.text, input.name, ignored);
    if (!facts || !facts->root().isObject() || facts->root().find("resourceType")) continue;
    work.saveDraft(StoredInputs::draft(today, {{"answers", unconfirmed(facts->root(), dictionary)}}));
    return work.commit();
  }
  return Failure{FailureKind::Usage, "the last screening was an interview; \"stile client interview\" offers its answers again"};
}

base::Result<Comparison> compareScreenings(Clinic& clinic, const std::string& id) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  return compareScreenings(opened.value().entries(), {});
}

base::Result<Comparison> compareScreenings(const std::vector<records::Entry>& entries, const std::string& screening) {
  const auto* last = lastScreeningOf(entries);
  for (const auto& entry : entries)
    if (entry.kind == "screening" && entry.id == screening) last = &entry;
  const auto* before = last == nullptr ? nullptr : lastScreeningOf(entries, last);
  if (before == nullptr) return Failure{FailureKind::Usage, "there are no two screenings to compare"};
  const Flat old = flatten(*before), now = flatten(*last);
  Comparison comparison{*records::Body(before->body).date("date"), *records::Body(last->body).date("date"), differences(old.decision, now.decision),
                        differences(old.findings, now.findings), differences(old.facts, now.facts)};
  addLists(old, now, comparison.facts);
  return comparison;
}

base::Result<std::string> whatChanged(Clinic& clinic, const std::string& id) {
  const auto compared = compareScreenings(clinic, id);
  if (!compared) return compared.failure();
  const Comparison& one = compared.value();
  std::string text = "From " + one.from.toText() + " to " + one.to.toText() + "\n";
  const std::pair<const char*, const std::vector<Changed>*> parts[] = {{"Decision", &one.decision}, {"Findings", &one.findings}, {"Answers and measurements", &one.facts}};
  bool isAny = false;
  for (const auto& [title, lines] : parts) {
    if (lines->empty()) continue;
    isAny = true;
    text += std::string(title) + "\n";
    for (const Changed& line : *lines) text += "  " + line.what + ": " + (line.before.empty() ? "-" : line.before) + " -> " + (line.now.empty() ? "-" : line.now) + "\n";
  }
  return text + (isAny ? "" : "  Nothing changed.\n");
}

base::Result<MedicineDifferences> compareMedicines(Clinic& clinic, const std::string& id, const std::string& referral) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const auto record = opened.value().folded();
  const auto at = std::find_if(record.referrals.begin(), record.referrals.end(), [&referral](const auto& one) { return one.id == referral; });
  if (at == record.referrals.end()) return Failure{FailureKind::Usage, referral + ": this client has no referral of that id"};
  const auto* last = lastScreeningOf(opened.value().entries());
  if (last == nullptr) return Failure{FailureKind::Usage, "there is no screening yet to compare with"};
  const records::Body body(last->body);
  std::vector<std::string> told;
  const auto result = body.root()->find("result");
  const auto facts = result ? result->find("facts") : std::nullopt;
  for (std::size_t i = 0; facts && i < facts->size(); ++i)
    if (textOf(facts->at(i), "fact") == kMedicine && facts->at(i).find("value")) told.push_back(textOf(facts->at(i), "value"));
  return MedicineDifferences{missingFrom(at->medicines, told), missingFrom(told, at->medicines)};
}

}  // namespace stile::application
