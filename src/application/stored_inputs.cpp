#include "application/stored_inputs.h"

#include <algorithm>

#include "application/client_events.h"
#include "records/body.h"

namespace stile::application {
namespace {

constexpr const char* kInterview = "interview";

/// Plain facts with the day they were given; anything else as it is.
std::string withDay(const Input& input, base::Date day) {
  base::Issues ignored;
  const auto document = json::Document::parse(input.text, input.name, ignored);
  if (!document || !document->root().isObject() || document->root().find("resourceType") || document->root().find("date")) return input.text;
  const json::Node facts = document->root();
  json::Writer writer;
  writer.beginObject().member("date", day.toText());
  for (std::size_t i = 0; i < facts.size(); ++i) writer.key(facts.keyAt(i)).copy(facts.at(i));
  writer.endObject();
  return writer.text();
}

/// The rule that one answered finding of a reply is about, "" for any other item.
std::string ruleOf(json::Node item) {
  const auto linkId = item.find("linkId");
  const auto members = item.find("item");
  if (!linkId || !linkId->isString() || linkId->string() != "replyFinding" || !members) return {};
  for (std::size_t i = 0; i < members->size(); ++i) {
    const auto name = members->at(i).find("linkId");
    const auto answers = members->at(i).find("answer");
    if (!name || !name->isString() || name->string() != "replyRule" || !answers || answers->size() == 0) continue;
    const auto rule = answers->at(0).find("valueString");
    return rule && rule->isString() ? rule->string() : "";
  }
  return {};
}

/// A reply without the findings that `isEnded`; "" when none is left.
template <class IsEnded>
std::string withoutEnded(json::Node response, IsEnded isEnded) {
  bool isAnyLeft = false;
  json::Writer writer;
  writer.beginObject();
  for (std::size_t i = 0; i < response.size(); ++i) {
    writer.key(response.keyAt(i));
    if (response.keyAt(i) != "item") {
      writer.copy(response.at(i));
      continue;
    }
    writer.beginArray();
    for (std::size_t j = 0; j < response.at(i).size(); ++j) {
      const std::string rule = ruleOf(response.at(i).at(j));
      if (!rule.empty() && isEnded(rule)) continue;
      isAnyLeft = isAnyLeft || !rule.empty();
      writer.copy(response.at(i).at(j));
    }
    writer.endArray();
  }
  writer.endObject();
  return isAnyLeft ? writer.text() : "";
}

}  // namespace

StoredInputs::StoredInputs(const std::string& body) {
  const records::Body read(body);
  if (!read.root()) return;
  day_ = read.date("date");
  const auto list = read.root()->find("inputs");
  for (std::size_t i = 0; list && i < list->size(); ++i) {
    const auto name = list->at(i).find("name"), text = list->at(i).find("text");
    if (!name || !text || !name->isString() || !text->isString()) continue;
    inputs_.push_back({name->string(), text->string()});
    if (name->string() == kInterview) interview_ = text->string();
  }
  if (const std::string whole = read.text("whole"); !whole.empty()) interview_ = whole;
  edits_ = read.text("edits");
  const auto asked = read.root()->find("asked");
  for (std::size_t i = 0; asked && i < asked->size(); ++i)
    if (asked->at(i).isString()) asked_[asked->keyAt(i)] = asked->at(i).string();
}

std::vector<Input> StoredInputs::inputsOn(base::Date today) const {
  std::vector<Input> inputs = inputs_;
  if (day_ && *day_ != today)
    for (Input& input : inputs) input.text = withDay(input, *day_);
  return inputs;
}

void StoredInputs::write(json::Writer& writer, const std::vector<Input>& inputs, const Shapes& asked) {
  writer.key("inputs").beginArray();
  for (const Input& input : inputs) writer.beginObject().member("name", input.name).member("text", input.text).endObject();
  writer.endArray();
  if (asked.empty()) return;
  writer.key("asked").beginObject();
  for (const auto& [linkId, shape] : asked) writer.member(linkId, shape);
  writer.endObject();
}

std::string StoredInputs::draft(base::Date day, const std::vector<Input>& inputs) {
  json::Writer writer(0);
  writer.beginObject().member("date", day.toText());
  write(writer, inputs, {});
  writer.endObject();
  return writer.text();
}

std::string StoredInputs::interviewDraft(base::Date day, const std::string& contentVersion, const std::string& counting, const std::string& whole,
                                         const Shapes& asked, const std::string& edits) {
  json::Writer writer(0);
  writer.beginObject().member("date", day.toText()).member("content", contentVersion);
  write(writer, {{kInterview, counting}}, asked);
  if (!whole.empty()) writer.member("whole", whole);
  if (!edits.empty()) writer.member("edits", edits);
  writer.endObject();
  return writer.text();
}

std::vector<Input> repliesOnRecord(const RecordWork& work) {
  const auto folded = work.folded();
  std::vector<Input> inputs;
  for (const auto& entry : work.entries()) {
    if (entry.kind != "clearanceReply") continue;
    const records::Body body(entry.body);
    const bool isClosed = std::any_of(folded.clearances.begin(), folded.clearances.end(), [&body](const auto& one) { return one.id == body.text("request") && one.isClosed; });
    const auto response = body.root() ? body.root()->find("response") : std::nullopt;
    const auto given = body.date("date");
    if (isClosed || !response || !given) continue;
    const auto isEnded = [&](const std::string& rule) { return isEndedByEvent(folded, work.clinic().policy(), rule, *given); };
    if (std::string text = withoutEnded(*response, isEnded); !text.empty()) inputs.push_back({kReplyInput + entry.id.substr(0, 12), std::move(text)});
  }
  return inputs;
}

const questionnaire::Form* formOf(json::Node response, const screening::Content& content) {
  const auto canonical = response.find("questionnaire");
  if (!canonical || !canonical->isString()) return nullptr;
  const std::string& text = canonical->string();
  return content.forms.byUrl(text.substr(0, text.find('|')));
}

}  // namespace stile::application
