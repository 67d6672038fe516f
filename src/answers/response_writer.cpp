#include "answers/response_writer.h"

#include <map>
#include <utility>

#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using questionnaire::Item;
using questionnaire::ItemType;
namespace extension_url = questionnaire::extension_url;

const char* codeOf(Absence absence) {
  switch (absence) {
    case Absence::NotAsked: return "not-asked";
    case Absence::NotAnswered: return "unknown";
    case Absence::NotSure: return "asked-unknown";
    case Absence::Declined: return "asked-declined";
  }
  return "unknown";
}

class ResponseWriter {
 public:
  explicit ResponseWriter(const Response& response) : response_(response) {
    for (const Answered& answered : response.answered) byPlace_[{answered.linkId, answered.repetition}] = &answered;
  }

  std::string write(Status status) {
    const questionnaire::Form& form = *response_.form;
    out_.beginObject();
    out_.member("resourceType", "QuestionnaireResponse");
    out_.member("questionnaire", form.version().empty() ? form.url() : form.url() + "|" + form.version());
    out_.member("status", status == Status::Completed ? "completed" : "in-progress");
    if (response_.authored) out_.member("authored", response_.authored->toText());
    writeItems(form.items(), -1);
    out_.endObject();
    return out_.text();
  }

 private:
  /// Whether something below stands in the response, in that repetition.
  bool isPresent(const Item& item, int repetition) const {
    if (questionnaire::isQuestion(item.type)) {
      const bool isGrouped = questionnaire::Form::repeatingGroupOf(item) != nullptr;
      return byPlace_.count({item.linkId, isGrouped ? repetition : -1}) != 0;
    }
    if (item.type == ItemType::Group && item.repeats) return repetitionsOf(item) > 0;
    for (const auto& child : item.items)
      if (isPresent(*child, repetition)) return true;
    return false;
  }

  int repetitionsOf(const Item& group) const {
    const auto at = response_.repetitions.find(group.linkId);
    return at == response_.repetitions.end() ? 0 : at->second;
  }

  void writeItems(const std::vector<std::unique_ptr<Item>>& items, int repetition) {
    bool isOpen = false;  // FHIR has no empty arrays
    const auto open = [&] {
      if (!isOpen) out_.key("item").beginArray();
      isOpen = true;
    };
    for (const auto& item : items) {
      if (item->type == ItemType::Group && item->repeats) {
        for (int i = 0; i < repetitionsOf(*item); ++i) {
          open();
          writeRepetition(*item, i);
        }
      } else if (isPresent(*item, repetition)) {
        open();
        writeItem(*item, repetition);
      }
    }
    if (isOpen) out_.endArray();
  }

  void writeHead(const Item& item) {
    out_.beginObject();
    out_.member("linkId", item.linkId);
    if (!item.text.empty()) out_.member("text", item.text);
  }

  void writeRepetition(const Item& group, int repetition) {
    writeHead(group);
    bool isEmpty = true;
    for (const auto& child : group.items) isEmpty = isEmpty && !isPresent(*child, repetition);
    if (isEmpty) {
      writeUnasked(group);
    } else {
      writeItems(group.items, repetition);
    }
    out_.endObject();
  }

  void writeUnasked(const Item& group) {
    for (const auto& child : group.items) {
      if (!questionnaire::isQuestion(child->type)) continue;
      out_.key("item").beginArray();
      writeHead(*child);
      out_.key("extension").beginArray();
      writeExtension(extension_url::kDataAbsentReason, "valueCode", codeOf(Absence::NotAsked));
      out_.endArray().endObject().endArray();
      return;
    }
  }

  void writeItem(const Item& item, int repetition) {
    writeHead(item);
    if (questionnaire::isQuestion(item.type)) {
      const bool isGrouped = questionnaire::Form::repeatingGroupOf(item) != nullptr;
      const auto at = byPlace_.find({item.linkId, isGrouped ? repetition : -1});
      if (at != byPlace_.end()) writeAnswered(item, *at->second);
    }
    writeItems(item.items, repetition);
    out_.endObject();
  }

  void writeExtension(std::string_view url, std::string_view member, const std::string& value) {
    out_.beginObject().member("url", std::string(url)).member(member, value).endObject();
  }

  void writeAnswered(const Item& item, const Answered& answered) {
    if (answered.absence || answered.date || !answered.givenBy.empty()) {
      out_.key("extension").beginArray();
      if (answered.absence) writeExtension(extension_url::kDataAbsentReason, "valueCode", codeOf(*answered.absence));
      if (!answered.givenBy.empty()) writeExtension(extension_url::kGivenBy, "valueCode", answered.givenBy);
      if (answered.date) writeExtension(extension_url::kAnswerDate, "valueDate", answered.date->toText());
      out_.endArray();
    }
    if (answered.answers.empty()) return;
    out_.key("answer").beginArray();
    for (const Answer& answer : answered.answers) {
      out_.beginObject();
      writeAnswer(item, answer);
      out_.endObject();
    }
    out_.endArray();
  }

  void writeAnswer(const Item& item, const Answer& answer) {
    if (answer.boolean) {
      out_.member("valueBoolean", *answer.boolean);
    } else if (answer.code) {
      writeCoding(item, *answer.code);
    } else if (answer.number && item.type == ItemType::Quantity) {
      out_.key("valueQuantity").beginObject().key("value").numberText(answer.numberText);
      out_.member("system", std::string(questionnaire::kUcumSystem)).member("code", answer.unit).endObject();
    } else if (answer.number) {
      out_.key(item.type == ItemType::Integer ? "valueInteger" : "valueDecimal").numberText(answer.numberText);
    } else if (answer.date) {
      out_.member("valueDate", answer.date->toText());
    } else {
      out_.member("valueString", answer.text.value_or(std::string()));
    }
  }

  void writeCoding(const Item& item, const std::string& code) {
    out_.key("valueCoding").beginObject();
    for (const auto& option : item.options) {
      if (option.code != code) continue;
      if (!option.system.empty()) out_.member("system", option.system);
      out_.member("code", code);
      if (!option.display.empty()) out_.member("display", option.display);
    }
    out_.endObject();
  }

  const Response& response_;
  std::map<std::pair<std::string, int>, const Answered*> byPlace_;
  json::Writer out_;
};

}  // namespace

std::string writeResponse(const Response& response, Status status) { return ResponseWriter(response).write(status); }

}  // namespace stile::answers
