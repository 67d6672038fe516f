#include "answers/response.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using questionnaire::Item;

bool holdsQuestion(const Item& item) {
  if (questionnaire::isQuestion(item.type)) return true;
  for (const auto& child : item.items) {
    if (holdsQuestion(*child)) return true;
  }
  return false;
}

void writeNotAsked(json::Writer& out) {
  out.key("extension").beginArray().beginObject();
  out.member("url", std::string(questionnaire::extension_url::kDataAbsentReason));
  out.member("valueCode", "not-asked");
  out.endObject().endArray();
}

void writeItems(json::Writer& out, const std::vector<std::unique_ptr<Item>>& items);

void writeItem(json::Writer& out, const Item& item) {
  out.beginObject();
  out.member("linkId", item.linkId);
  if (!item.text.empty()) out.member("text", item.text);
  if (questionnaire::isQuestion(item.type)) writeNotAsked(out);
  writeItems(out, item.items);
  out.endObject();
}

void writeItems(json::Writer& out, const std::vector<std::unique_ptr<Item>>& items) {
  bool isOpen = false;  // FHIR has no empty arrays
  for (const auto& item : items) {
    if (!holdsQuestion(*item)) continue;
    if (!isOpen) out.key("item").beginArray();
    isOpen = true;
    writeItem(out, *item);
  }
  if (isOpen) out.endArray();
}

}  // namespace

std::string blankResponse(const questionnaire::Form& form, base::Date authored) {
  json::Writer out;
  out.beginObject();
  out.member("resourceType", "QuestionnaireResponse");
  out.member("questionnaire", form.version().empty() ? form.url() : form.url() + "|" + form.version());
  out.member("status", "in-progress");
  out.member("authored", authored.toText());
  writeItems(out, form.items());
  out.endObject();
  return out.text();
}

}  // namespace stile::answers
