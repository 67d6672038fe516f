#include "application/clinic_document.h"

#include "base/base64.h"
#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

constexpr const char* kClinicKind = "clinic";

std::string cardOf(const ClinicDocument& document) {
  json::Writer writer(0);
  writer.beginObject();
  for (const auto& [key, value] : {std::pair("settings", &document.text), std::pair("logoEntry", &document.logoEntry), std::pair("adopted", &document.adoptedContent)})
    writer.member(key, *value);
  writer.endObject();
  return writer.text();
}

/// The clinic's record in `change`, made when there is none yet.
void ensureRecord(ClinicDocument& document, store::Change& change) {
  if (document.record.empty()) document.record = change.newRecord(kClinicKind, "");
}

std::string dated(base::Date today, const char* key, const std::string& value) {
  json::Writer writer(0);
  writer.beginObject().member("date", today.toText()).member(key, value).endObject();
  return writer.text();
}

}  // namespace

ClinicDocument clinicDocument(const Clinic& clinic) {
  ClinicDocument document;
  for (const auto& card : clinic.file().cards()) {
    if (card.kind != kClinicKind) continue;
    const records::Body body(card.card);
    document.record = card.id;
    document.text = body.text("settings");
    document.logoEntry = body.text("logoEntry");
    document.adoptedContent = body.text("adopted");
    base::Issues checkedWhenSaved;
    if (!document.text.empty()) document.settings = records::ClinicSettings::load(document.text, "clinic settings", checkedWhenSaved);
  }
  return document;
}

base::Result<bool> saveClinicSettings(Clinic& clinic, const std::string& text, const std::string& file, const std::string& logoPng, base::Date today,
                                      base::Issues& issues) {
  if (!clinic.file().who().maySign()) return Failure{FailureKind::Refused, "the clinic's settings are a clinician's to change"};
  records::ClinicSettings::load(text, file, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, file + ": the clinic's settings were not changed"};
  ClinicDocument document = clinicDocument(clinic);
  store::Change change;
  ensureRecord(document, change);
  document.text = text;
  change.add(document.record, "settings", dated(today, "settings", text));
  document.logoEntry = logoPng.empty() ? "" : change.add(document.record, "logo", dated(today, "png", base::toBase64(logoPng)));
  change.setCard(document.record, cardOf(document));
  return clinic.commit(change);
}

base::Result<bool> changeClinicSettings(Clinic& clinic, const std::map<std::string, std::string>& members, base::Date today, base::Issues& issues) {
  const ClinicDocument document = clinicDocument(clinic);
  const auto logo = clinicLogo(clinic);
  if (!logo) return logo.failure();
  json::Writer writer(0);
  writer.beginObject();
  if (const auto before = json::Document::parse(document.text.empty() ? "{}" : document.text, "clinic settings", issues); before && before->root().isObject())
    for (std::size_t i = 0; i < before->root().size(); ++i)
      if (members.count(before->root().keyAt(i)) == 0) writer.key(before->root().keyAt(i)).copy(before->root().at(i));
  for (const auto& [member, words] : members)
    if (!words.empty()) writer.member(member, words);
  writer.endObject();
  return saveClinicSettings(clinic, writer.text(), "the settings", logo.value(), today, issues);
}

base::Result<std::string> clinicLogo(Clinic& clinic) {
  const ClinicDocument document = clinicDocument(clinic);
  if (document.logoEntry.empty()) return std::string();
  const auto entries = clinic.file().read(document.record);
  if (!entries) return entries.failure();
  for (const auto& entry : entries.value())
    if (entry.id == document.logoEntry) return base::fromBase64(records::Body(entry.body).text("png")).value_or("");
  return std::string();
}

base::Result<bool> adoptContent(Clinic& clinic, const screening::Content& content, base::Date today) {
  if (clinic.file().who().role != records::Role::Lead) return Failure{FailureKind::Refused, "the clinic's lead approves the content, and nobody else"};
  ClinicDocument document = clinicDocument(clinic);
  store::Change change;
  ensureRecord(document, change);
  document.adoptedContent = content.version;
  change.add(document.record, "adopted", dated(today, "content", content.version), true);
  change.setCard(document.record, cardOf(document));
  return clinic.commit(change);
}

}  // namespace stile::application
