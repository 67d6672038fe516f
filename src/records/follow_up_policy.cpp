#include "records/follow_up_policy.h"

#include <algorithm>

#include "json/reader.h"
#include "records/entry_kinds.h"

namespace stile::records {
namespace {

base::Period readPeriod(json::ObjectReader& parent, const char* key, base::Issues& issues) {
  const auto node = parent.require(key);
  if (!node) return {};
  json::ObjectReader reader(*node, key, issues);
  const auto value = reader.integer("value");
  const auto unit = base::calendarUnit(reader.requireString("unit"));
  if (!value || *value < 1 || *value > 1000 || !unit) {
    reader.issue(*node, "this is no length of time", "write {\"value\": 2, \"unit\": \"wk\"} with one of d, wk, mo, a");
    return {};
  }
  reader.finish();
  return {static_cast<int>(*value), *unit};
}

/// What may have happened, as entries of the kind "event" say it.
const std::vector<std::string>& eventWords() {
  for (const Member& member : entryKind("event")->members)
    if (member.name == "what") return member.words;
  static const std::vector<std::string> kNone;
  return kNone;
}

void readEvents(json::ObjectReader& parent, FollowUpPolicy& policy, base::Issues& issues) {
  const auto events = parent.require("events");
  if (!events) return;
  json::ObjectReader reader(*events, "events", issues);
  for (const std::string& what : eventWords()) {
    const auto node = reader.require(what);
    if (!node) continue;
    json::ObjectReader one(*node, what, issues);
    policy.events[what] = {one.strings("endsClearanceOf"), one.requireString("letter")};
    one.finish();
  }
  reader.finish();
}

}  // namespace

bool matchesAny(const std::string& rule, const std::vector<std::string>& patterns) {
  return std::any_of(patterns.begin(), patterns.end(), [&rule](const std::string& pattern) {
    if (pattern.ends_with('*')) return rule.starts_with(std::string_view(pattern).substr(0, pattern.size() - 1));
    return rule == pattern;
  });
}

const std::vector<std::string>& taskIds() {
  static const std::vector<std::string> kIds{"actionRecord", "event", "eventLetter", "reconcile",      "symptoms",   "draft",     "signOff",  "secondSignature", "referralIn",
                                             "sendLetter",   "screenReply", "clearanceEnds", "checkIn", "screenAgain"};
  return kIds;
}

FollowUpPolicy FollowUpPolicy::load(const std::string& text, const std::string& file, base::Issues& issues) {
  FollowUpPolicy policy;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return policy;
  json::ObjectReader reader(document->root(), "follow-up", issues);
  for (const json::Node node : reader.array("chase")) {
    json::ObjectReader step(node, "chase", issues);
    const auto days = step.integer("afterDays");
    policy.chase.push_back({static_cast<int>(days.value_or(0)), step.requireString("next")});
    if (!days || *days < 1 || *days > 366 || (policy.chase.size() > 1 && policy.chase[policy.chase.size() - 2].afterDays >= *days))
      step.issue(node, "\"afterDays\" must be a number of days from 1 to 366, later at each step");
    step.finish();
  }
  if (policy.chase.empty()) reader.issue(reader.node(), "there is no step of a chase", "add \"chase\": [{\"afterDays\": 7, \"next\": \"…\"}]");
  policy.checkInAfter = readPeriod(reader, "checkInAfter", issues);
  policy.screenAgainAfter = readPeriod(reader, "screenAgainAfter", issues);
  policy.screenAgainSooner = readPeriod(reader, "screenAgainSooner", issues);
  policy.soonerRules = reader.strings("soonerRules");
  const auto pain = reader.integer("painNextMorningFrom");
  if (!pain || *pain < 1 || *pain > 10) reader.issue(reader.node(), "\"painNextMorningFrom\" must be a whole number from 1 to 10");
  policy.painNextMorningFrom = static_cast<int>(pain.value_or(1));
  policy.progression = readProgression(reader, issues);
  readEvents(reader, policy, issues);
  policy.unreached = reader.strings("unreached");
  if (policy.unreached.empty()) reader.issue(reader.node(), "\"unreached\" must say what to do after an attempt that failed");
  if (const auto next = reader.require("next")) {
    json::ObjectReader sentences(*next, "next", issues);
    for (const std::string& id : taskIds()) policy.next[id] = sentences.requireString(id);
    sentences.finish();
  }
  reader.strings("sources");
  reader.find("reviewed");
  reader.finish();
  return policy;
}

}  // namespace stile::records
