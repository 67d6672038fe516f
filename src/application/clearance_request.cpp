#include "application/clearance_request.h"

#include "json/document.h"

namespace stile::application {
namespace {

using limits::Rung;

bool isCovered(const screening::Screening& screening, const rules::Finding& finding) {
  for (const auto& one : screening.coverage)
    if (one.covers && one.ruleId == finding.rule->id && one.repetition == finding.repetition) return true;
  return false;
}

void writeItem(json::Writer& writer, const char* linkId, const char* valueKey, const std::string& value) {
  writer.beginObject().member("linkId", linkId).key("answer").beginArray();
  writer.beginObject();
  if (std::string_view(valueKey) == "valueCoding")
    writer.key(valueKey).beginObject().member("system", "https://stile.example/option").member("code", value).endObject();
  else
    writer.member(valueKey, value);
  writer.endObject().endArray().endObject();
}

}  // namespace

Rung wantedIntensity(const screening::Screening& screening) {
  const auto* definition = screening.facts.dictionary().find("desiredIntensity");
  if (definition == nullptr) return Rung::Light;
  const auto& value = screening.facts.at(definition->slot).value;
  return value.text ? limits::rungOf(*value.text).value_or(Rung::Light) : Rung::Light;
}

std::vector<std::size_t> findingsToClear(const screening::Screening& screening) {
  std::vector<std::size_t> indices;
  const Rung intensity = wantedIntensity(screening);
  for (std::size_t i = 0; i < screening.findings.size(); ++i) {
    const rules::Finding& finding = screening.findings[i];
    if (finding.standing != rules::Standing::Certain || isCovered(screening, finding)) continue;
    bool bars = false;
    for (const auto bay : limits::kBays) {
      bars = bars || limits::leftOpenBy(finding.full.clearance[bay]) < intensity;
      bars = bars || (finding.rule->until.key == rules::KeyKind::Clearance && finding.full.ceiling[bay] < intensity);
    }
    if (bars) indices.push_back(i);
  }
  return indices;
}

std::string blankReply(const screening::Screening& screening, const screening::Content& content) {
  const auto* form = content.forms.byName("clearance-reply");
  json::Writer writer;
  writer.beginObject().member("resourceType", "QuestionnaireResponse");
  if (form != nullptr) writer.member("questionnaire", form->url() + "|" + form->version());
  writer.member("status", "in-progress").member("authored", screening.date.toText());
  writer.key("item").beginArray();
  for (const std::size_t index : findingsToClear(screening)) {
    const rules::Finding& finding = screening.findings[index];
    writer.beginObject().member("linkId", "replyFinding").key("item").beginArray();
    writeItem(writer, "replyRule", "valueString", finding.rule->id);
    writeItem(writer, "replyBasis", "valueString", finding.basis);
    writeItem(writer, "replyBay", "valueCoding", "both");
    writeItem(writer, "replyIntensity", "valueCoding", limits::idOf(wantedIntensity(screening)));
    writer.endArray().endObject();
  }
  writer.endArray().endObject();
  return writer.text();
}

}  // namespace stile::application
