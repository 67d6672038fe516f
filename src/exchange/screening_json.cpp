#include "exchange/screening_json.h"

#include "exchange/facts_json.h"
#include "exchange/limits_json.h"
#include "exchange/plan_json.h"
#include "json/document.h"

namespace stile::exchange {
namespace {

using screening::Screening;

const char* idOf(screening::RungState state) {
  switch (state) {
    case screening::RungState::Open: return "open";
    case screening::RungState::Shut: return "shut";
    case screening::RungState::NotYetKnown: return "notYetKnown";
  }
  return "";
}

const char* idOf(screening::PlanState state) {
  switch (state) {
    case screening::PlanState::Made: return "made";
    case screening::PlanState::Held: return "held";
    case screening::PlanState::Nothing: return "none";
  }
  return "";
}

void writeFinding(json::Writer& writer, const rules::Finding& finding) {
  writer.beginObject().member("rule", finding.rule->id).member("title", finding.rule->title);
  if (finding.repetition >= 0) {
    writer.member("repetition", finding.repetition);
    if (!finding.where.empty()) writer.member("where", finding.where);
  }
  const bool isCertain = finding.standing == rules::Standing::Certain;
  writer.member("standing", isCertain ? "certain" : "open");
  if (!isCertain) writer.member("counted", rules::idOf(finding.counted));
  if (finding.unsureCall != limits::Action::None) writer.member("unsureCall", limits::idOf(finding.unsureCall));
  writer.member("clinician", finding.say.clinician).member("client", finding.say.client);
  writer.key("reasons").beginArray();
  for (const auto& reason : finding.reasons) {
    writer.beginObject().member("fact", reason.factId).member("label", reason.label).member("value", reason.value);
    if (reason.isUnknown) writer.member("unknown", facts::idOf(reason.why));
    if (!reason.source.empty()) writer.member("source", reason.source);
    writer.endObject();
  }
  writer.endArray();
  if (!finding.basis.empty()) writer.member("basis", finding.basis);
  if (finding.rule->until.key != rules::KeyKind::None)
    writer.key("until").beginObject().member("key", rules::idOf(finding.rule->until.key)).member("say", finding.rule->until.say).endObject();
  writer.key("limits");
  writeLimits(writer, finding.floor);
  writer.key("sources").beginArray();
  for (const std::string& source : finding.rule->sources) writer.string(source);
  writer.endArray();
  writer.member("licensed", finding.rule->isLicensed);
  writer.endObject();
}

void writeEnd(json::Writer& writer, const char* key, const screening::End& end) {
  writer.key(key).beginObject();
  writer.key("usable").beginObject();
  for (const auto bay : limits::kBays) writer.member(limits::idOf(bay), limits::idOf(end.usable[bay]));
  writer.endObject();
  writer.key("limits");
  writeLimits(writer, end.limits);
  writer.endObject();
}

void writeRungs(json::Writer& writer, const Screening& screening) {
  writer.key("rungs").beginArray();
  for (const auto& rung : screening.rungs) {
    writer.beginObject().member("bay", limits::idOf(rung.bay)).member("rung", limits::idOf(rung.rung));
    writer.member("state", idOf(rung.state));
    writer.key("reasons").beginArray();
    for (const auto& reason : rung.reasons) {
      writer.beginObject().member("rule", screening.findings[reason.finding].rule->id);
      writer.member("key", rules::idOf(reason.keyKind)).member("until", reason.key).endObject();
    }
    writer.endArray().endObject();
  }
  writer.endArray();
}

void writeCoverage(json::Writer& writer, const Screening& screening) {
  writer.key("clearances").beginArray();
  for (const auto& one : screening.coverage) {
    writer.beginObject().member("rule", one.ruleId).member("by", one.by).member("covers", one.covers);
    writer.member("because", one.because);
    if (one.covers) {
      writer.key("upTo").beginObject();
      for (const auto bay : limits::kBays) writer.member(limits::idOf(bay), limits::idOf(one.upTo[bay]));
      writer.endObject();
    }
    if (one.until) writer.member("until", one.until->toText());
    writer.endObject();
  }
  writer.endArray();
}

void writeQuestions(json::Writer& writer, const Screening& screening) {
  writer.key("openQuestions").beginArray();
  for (const auto& question : screening.openQuestions) {
    writer.beginObject().member("fact", question.factId).member("label", question.label);
    writer.member("unknown", facts::idOf(question.why)).member("couldBecome", limits::idOf(question.couldBecome));
    writer.member("holdsRungs", question.shutsRungs);
    writer.key("rules").beginArray();
    for (const std::string& rule : question.ruleIds) writer.string(rule);
    writer.endArray().endObject();
  }
  writer.endArray();
}

void writePolicies(json::Writer& writer, const Screening& screening) {
  writer.key("policies").beginArray();
  for (const auto& policy : screening.policies) {
    writer.beginObject().member("id", policy.id).member("title", policy.title).member("value", policy.value);
    writer.member("decides", policy.decides).endObject();
  }
  writer.endArray();
}

void writeAskedBack(json::Writer& writer, const base::Issues& issues) {
  writer.key("askedBack").beginArray();
  for (const auto& issue : issues.all())
    if (issue.severity == base::Severity::AskBack)
      writer.beginObject().member("subject", issue.subject).member("message", issue.message).member("remedy", issue.remedy).endObject();
  writer.endArray();
}

}  // namespace

std::string toJson(const Screening& screening, const screening::Content& content, const base::Issues& askedBack, int indent) {
  json::Writer writer(indent);
  writer.beginObject();
  writer.member("format", kScreeningFormat).member("content", content.version).member("date", screening.date.toText());
  writer.member("action", limits::idOf(screening.reach.limits.action)).member("couldBecome", limits::idOf(screening.couldBecome));
  writer.member("settled", screening.isSettled);
  writeEnd(writer, "floor", screening.floor);
  writeEnd(writer, "reach", screening.reach);
  writeRungs(writer, screening);
  writer.key("findings").beginArray();
  for (const auto& finding : screening.findings) writeFinding(writer, finding);
  writer.endArray();
  writeCoverage(writer, screening);
  writeQuestions(writer, screening);
  writePolicies(writer, screening);
  writeAskedBack(writer, askedBack);
  writer.key("facts");
  writeFacts(writer, screening.facts);
  writer.member("planState", idOf(screening.planState));
  if (!screening.planBecause.empty()) writer.member("planBecause", screening.planBecause);
  if (screening.plan) {
    writer.key("plan");
    writePlan(writer, *screening.plan);
  }
  if (screening.heldPlan) {
    writer.key("heldPlan");
    writePlan(writer, *screening.heldPlan);
  }
  writer.member("caution", content.intendedUse.caution);
  writer.endObject();
  return writer.text();
}

}  // namespace stile::exchange
