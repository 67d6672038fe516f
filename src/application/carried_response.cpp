#include "application/carried_response.h"

#include <algorithm>

#include "facts/fact_set.h"
#include "questionnaire/item_type.h"

namespace stile::application {
namespace {

using questionnaire::Form;
using questionnaire::Item;

std::string shapeOf(const Item& item) {
  std::string shape = std::to_string(static_cast<int>(item.type));
  for (const auto& option : item.options) shape += " " + option.code;
  for (const std::string& unit : item.units) shape += " [" + unit;
  return shape;
}

/// Copies the items that the form still asks as they were asked.
class Carrier {
 public:
  Carrier(const Form& form, const Shapes& asked) : form_(form), asked_(asked) {}

  std::string carry(json::Node stored) {
    out_.beginObject().member("resourceType", "QuestionnaireResponse");
    out_.member("questionnaire", form_.version().empty() ? form_.url() : form_.url() + "|" + form_.version());
    for (const char* key : {"status", "authored"})
      if (const auto node = stored.find(key)) out_.key(key).copy(*node);
    carryItems(stored);
    out_.endObject();
    return out_.text();
  }

 private:
  bool isStillAsked(json::Node item) const {
    const auto linkId = item.find("linkId");
    const Item* now = linkId && linkId->isString() ? form_.find(linkId->string()) : nullptr;
    if (now == nullptr) return false;
    if (!questionnaire::isQuestion(now->type)) return true;
    const auto before = asked_.find(now->linkId);
    return before != asked_.end() && before->second == shapeOf(*now);
  }

  void carryItems(json::Node parent) {
    const auto items = parent.find("item");
    bool isOpen = false;  // FHIR has no empty arrays
    for (std::size_t i = 0; items && i < items->size(); ++i) {
      const json::Node item = items->at(i);
      if (!isStillAsked(item)) continue;
      if (!isOpen) out_.key("item").beginArray();
      isOpen = true;
      out_.beginObject();
      for (const char* key : {"linkId", "text", "extension", "answer"})
        if (const auto node = item.find(key)) out_.key(key).copy(*node);
      carryItems(item);
      out_.endObject();
    }
    if (isOpen) out_.endArray();
  }

  const Form& form_;
  const Shapes& asked_;
  json::Writer out_;
};

}  // namespace

Shapes shapesOf(const answers::Response& response) {
  Shapes shapes;
  for (const auto& answered : response.answered)
    if (const Item* item = response.form->find(answered.linkId)) shapes[answered.linkId] = shapeOf(*item);
  return shapes;
}

std::optional<answers::Response> carriedInto(const Form& form, json::Node stored, const Shapes& asked, const screening::Content& content) {
  base::Issues ignored;
  const auto document = json::Document::parse(Carrier(form, asked).carry(stored), "draft", ignored);
  return document ? answers::loadResponse(document->root(), content.forms, ignored) : std::nullopt;
}

answers::Response goneOnWith(answers::Response response, const screening::Content& content, base::Date today) {
  const auto begun = response.authored;
  response.authored = today;
  if (!begun || *begun == today) return response;
  for (auto& answered : response.answered)
    if (!answered.date) answered.date = base::PartialDate(*begun);
  base::Issues ignored;
  const auto facts = facts::factsFromResponses(content.dictionary, content.forms, {response}, today, ignored);
  std::erase_if(response.answered, [&](const answers::Answered& answered) {
    const auto* fact = content.dictionary.find(answered.linkId);
    return fact != nullptr && facts.at(fact->slot, answered.repetition).reason == facts::UnknownReason::OutOfDate;
  });
  return response;
}

}  // namespace stile::application
