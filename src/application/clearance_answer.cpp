#include "application/clearance_answer.h"

#include "application/clearance_request.h"
#include "application/client_screening.h"
#include "application/stored_inputs.h"
#include "json/document.h"
#include "questionnaire/item_type.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;
using questionnaire::ItemType;

constexpr const char* kAnswerForm = "clearance-reply";

const records::Entry* entryWithId(const std::vector<records::Entry>& entries, const std::string& id) {
  for (const auto& entry : entries)
    if (entry.id == id) return &entry;
  return nullptr;
}

/// The answer of one item as the standard writes it.
void writeAnswer(json::Writer& writer, const questionnaire::Item& item, const std::string& typed) {
  writer.beginObject().member("linkId", item.linkId).key("answer").beginArray().beginObject();
  if (questionnaire::isChoice(item.type)) {
    std::string system;
    for (const auto& option : item.options)
      if (option.code == typed) system = option.system;
    writer.key("valueCoding").beginObject().member("system", system).member("code", typed).endObject();
  } else if (item.type == ItemType::Date) {
    writer.member("valueDate", typed);
  } else if (const auto number = base::Rational::parse(typed); item.type == ItemType::Quantity && number && !item.units.empty()) {
    writer.key("valueQuantity").beginObject().key("value").numberText(typed);
    writer.member("system", "http://unitsofmeasure.org").member("code", item.units.front()).endObject();
  } else {
    writer.member("valueString", typed);
  }
  writer.endObject().endArray().endObject();
}

void writeItems(json::Writer& writer, const questionnaire::Form& form, const TypedReply& typed) {
  for (const auto* item : form.inOrder())
    if (const auto at = typed.find(item->linkId); at != typed.end() && !at->second.empty()) writeAnswer(writer, *item, at->second);
}

}  // namespace

base::Result<std::vector<FindingAsked>> findingsAsked(Clinic& clinic, const std::string& id, const std::string& request, const screening::Content& content) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const auto& entries = opened.value().entries();
  const auto* asked = entryWithId(entries, request);
  if (asked == nullptr) return Failure{FailureKind::Usage, request + ": this client has no request of that id"};
  const auto* about = entryWithId(entries, records::Body(asked->body).text("screening"));
  const auto day = about == nullptr ? std::nullopt : records::Body(about->body).date("date");
  if (!day) return Failure{FailureKind::File, request + ": the screening it asks about is not in the record"};
  base::Issues issues;
  const auto screened = screenClient(content, StoredInputs(about->body).inputs(), *day, issues);
  if (!screened) return Failure{FailureKind::Refused, "the screening that was asked about cannot be read with the present content (" + screened.failure().message + ")"};
  std::vector<FindingAsked> findings;
  for (const std::size_t index : findingsToClear(screened.value())) {
    const auto& finding = screened.value().findings[index];
    findings.push_back({finding.rule->id, finding.rule->title + (finding.where.empty() ? "" : ", " + finding.where), finding.basis});
  }
  return findings;
}

std::string replyResponse(const screening::Content& content, const std::vector<FindingAsked>& asked, const PhysicianReply& reply) {
  const auto* form = content.forms.byName(kAnswerForm);
  json::Writer writer(0);
  writer.beginObject().member("resourceType", "QuestionnaireResponse");
  if (form == nullptr) return writer.endObject().text();
  writer.member("questionnaire", form->url() + "|" + form->version()).member("status", "completed");
  if (const auto day = reply.whole.find("replyDate"); day != reply.whole.end()) writer.member("authored", day->second);
  writer.key("item").beginArray();
  writeItems(writer, *form, reply.whole);
  for (std::size_t i = 0; i < asked.size() && i < reply.findings.size(); ++i) {
    TypedReply one = reply.findings[i];
    if (one["replyAnswer"].empty()) continue;
    one["replyRule"] = asked[i].rule;
    one["replyBasis"] = asked[i].basis;
    writer.beginObject().member("linkId", "replyFinding").key("item").beginArray();
    writeItems(writer, *form, one);
    writer.endArray().endObject();
  }
  return writer.endArray().endObject().text();
}

}  // namespace stile::application
