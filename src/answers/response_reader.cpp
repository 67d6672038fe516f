#include "answers/response_reader.h"

#include <algorithm>
#include <utility>

#include "answers/answer_reader.h"
#include "answers/wanted_place.h"
#include "base/near_names.h"
#include "questionnaire/canonical.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using questionnaire::Extensions;
using questionnaire::Item;
using questionnaire::ItemType;
namespace extension_url = questionnaire::extension_url;

const std::vector<std::string> kGivers{"client", "carer", "interpreter", "record", "clinician"};
const std::vector<std::string> kAbsenceCodes{"not-asked", "unknown", "asked-unknown", "asked-declined"};

std::optional<Absence> absenceOf(const std::string& code) {
  if (code == "not-asked") return Absence::NotAsked;
  if (code == "unknown") return Absence::NotAnswered;
  if (code == "asked-unknown") return Absence::NotSure;
  if (code == "asked-declined") return Absence::Declined;
  return std::nullopt;
}

std::string listOf(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  return list;
}

}  // namespace

Response ResponseReader::read(json::Node node) {
  json::ObjectReader reader(node, "response", issues_);
  if (!reader.isObject()) return response_;
  const std::string type = questionnaire::requireWords(reader, "resourceType");
  if (type != "QuestionnaireResponse") {
    if (!type.empty()) {
      reader.issue(*reader.find("resourceType"), "this is a " + type + ", not a QuestionnaireResponse",
                   "give a response to one of the forms");
    }
    return response_;
  }
  readHead(reader);
  const auto items = reader.array("item");
  questionnaire::acceptUnused(
      reader, {"id", "meta", "implicitRules", "language", "text", "contained", "identifier", "basedOn",
               "partOf", "questionnaire", "status", "subject", "encounter", "authored", "author", "source"});
  reader.finish();
  if (response_.form) readItems(items, nullptr, -1);
  return response_;
}

void ResponseReader::readHead(json::ObjectReader& reader) {
  Extensions extensions(reader);
  if (const std::string giver = readGivenBy(extensions, "response"); !giver.empty())
    response_.givenBy = giver;
  if (const auto rules = reader.find("implicitRules")) {
    reader.issue(*rules, "implicit rules are not understood", "remove implicitRules");
  }
  readForm(reader);
  readStatus(reader);
  if (const auto authored = reader.find("authored")) {
    if (const auto date = readDateTime(*authored, "response", issues_)) {
      if (date->isExact()) {
        response_.authored = date->first();
      } else {
        reader.issue(*authored, "the day of the response is not known", "write authored with the day");
      }
    }
  }
}

void ResponseReader::readForm(json::ObjectReader& reader) {
  const std::string canonical = questionnaire::requireWords(reader, "questionnaire");
  if (canonical.empty()) return;
  const json::Node at = *reader.find("questionnaire");
  const auto wanted = questionnaire::splitCanonical(canonical);
  response_.form = forms_.byUrl(wanted.url);
  if (!response_.form) {
    std::vector<std::string> urls;
    for (const auto& form : forms_.forms()) urls.push_back(form->url());
    reader.issue(at, "the form " + wanted.url + " is not known",
                 base::didYouMean(wanted.url, urls, "the forms are " + listOf(urls)));
    return;
  }
  readVersion(at, wanted.version);
}

void ResponseReader::readVersion(json::Node at, const std::string& version) {
  response_.formVersion = version;
  const std::string& ours = response_.form->version();
  if (version.empty()) return;  // as the standard says: not bound to one version
  const auto order = questionnaire::compareVersions(version, ours);
  if (!order) {
    issues_.error(at.place(), "response",
                  "the form's version " + version + " cannot be compared with this program's " +
                      (ours.empty() ? "form, which has none" : ours),
                  "answer the form that comes with this program");
  } else if (*order > 0) {
    issues_.error(at.place(), "response",
                  "the form's version " + version + " is newer than this program's content (" + ours + ")",
                  "update the content to " + version + " or newer");
  }
}

void ResponseReader::readStatus(json::ObjectReader& reader) {
  const std::string status = questionnaire::requireWords(reader, "status");
  if (status.empty()) return;
  static const std::vector<std::string> kRead{"completed", "in-progress", "amended", "stopped"};
  if (std::find(kRead.begin(), kRead.end(), status) != kRead.end()) return;
  const json::Node at = *reader.find("status");
  if (status == "entered-in-error") {
    reader.issue(at, "the response was entered in error", "leave this response out");
  } else {
    reader.issue(at, "the status \"" + status + "\" is not read", "it must be one of " + listOf(kRead));
  }
}

void ResponseReader::readItems(const std::vector<json::Node>& nodes, const Item* parent, int repetition) {
  std::map<std::string, int> seen;
  for (const json::Node& node : nodes) readItem(node, parent, repetition, seen);
}

void ResponseReader::readItem(json::Node node, const Item* parent, int repetition,
                              std::map<std::string, int>& seen) {
  const auto linkId = node.find("linkId");
  json::ObjectReader reader(node, linkId && linkId->isString() ? linkId->string() : std::string(), issues_);
  if (!reader.isObject()) return;
  Extensions extensions(reader);
  questionnaire::acceptUnused(reader, {"linkId", "definition", "text"});
  for (const char* member : {"answer", "item"}) {
    const auto list = reader.find(member);
    if (list && list->isArray() && list->size() == 0) {
      reader.issue(*list, std::string("\"") + member + "\" is empty",
                   "leave it out; an empty list says nothing");
    }
  }
  reader.finish();
  const Item* item = itemOf(reader, parent);
  if (!item) return;
  const bool mayRepeat = item->type == ItemType::Group && item->repeats;
  if (seen[item->linkId]++ > 0 && !mayRepeat) {
    reader.issue(node, "\"" + item->linkId + "\" stands here twice",
                 item->repeats ? "put all answers into one item" : "keep one of them");
    return;
  }
  if (questionnaire::isQuestion(item->type)) {
    readQuestion(reader, *item, extensions, repetition);
    return;
  }
  refuseOwnExtensions(reader, extensions, *item);
  if (const auto answer = reader.find("answer")) {
    reader.issue(
        *answer,
        "an item of the type " + std::string(questionnaire::fhirName(item->type)) + " has no answers",
        item->items.empty() ? "remove the answer" : "answer the questions in it");
  }
  if (item->type == ItemType::Group) {
    readGroup(reader, *item, repetition);
  } else if (reader.find("item")) {
    reader.issue(*reader.find("item"), "a display item holds no items", "remove them");
  }
}

const Item* ResponseReader::itemOf(json::ObjectReader& reader, const Item* parent) {
  const std::string linkId = questionnaire::requireWords(reader, "linkId");
  if (linkId.empty()) return nullptr;
  const json::Node at = *reader.find("linkId");
  const Item* item = response_.form->find(linkId);
  if (!item) {
    if (parent && parent->helpLinkId == linkId) return nullptr;  // a help text; nothing is asked
    std::vector<std::string> known;
    for (const Item* each : response_.form->inOrder()) known.push_back(each->linkId);
    reader.issue(at, "the form " + response_.form->name() + " has no item \"" + linkId + "\"",
                 base::didYouMean(linkId, known, "use the linkIds of the form"));
    return nullptr;
  }
  if (item->parent != parent) {
    reader.issue(at, "\"" + linkId + "\" stands in the wrong place",
                 "it belongs " + wantedPlace(item->parent));
    return nullptr;
  }
  return item;
}

void ResponseReader::readGroup(json::ObjectReader& reader, const Item& group, int repetition) {
  if (group.repeats) repetition = response_.repetitions[group.linkId]++;
  readItems(reader.array("item"), &group, repetition);
}

void ResponseReader::readQuestion(json::ObjectReader& reader, const Item& question, Extensions& extensions,
                                  int repetition) {
  Answered answered;
  answered.linkId = question.linkId;
  answered.repetition = repetition;
  answered.place = reader.node().place();
  answered.givenBy = readGivenBy(extensions, question.linkId);
  if (const auto date = extensions.only(extension_url::kAnswerDate, "valueDate", json::Kind::String)) {
    answered.date = readDate(*date, question.linkId, issues_);
  }
  const auto nodes = reader.array("answer");
  if (nodes.size() > 1 && !question.repeats) {
    reader.issue(nodes[1], "only one answer is allowed here", "keep one answer");
  }
  std::vector<json::Node> children = reader.array("item");
  if (!children.empty() && !nodes.empty()) {
    reader.issue(children.front(), "items nested in an answered question belong in its answer",
                 "move them into the member item of the answer");
  }
  for (const json::Node& node : nodes) {
    ReadAnswer read = readAnswer(node, question, issues_);
    if (read.answer) answered.answers.push_back(std::move(*read.answer));
    children.insert(children.end(), read.children.begin(), read.children.end());
  }
  checkTogether(answered.answers, question, issues_);
  readAbsence(reader, question, extensions, answered);
  response_.answered.push_back(std::move(answered));
  readItems(children, &question, repetition);
}

void ResponseReader::readAbsence(json::ObjectReader& reader, const Item& question, Extensions& extensions,
                                 Answered& answered) {
  const bool hasAnswer = reader.find("answer").has_value();
  const auto code = extensions.only(extension_url::kDataAbsentReason, "valueCode", json::Kind::String);
  if (!code) {
    // The item is there, so it was before someone, and nothing was written.
    if (!hasAnswer) answered.absence = Absence::NotAnswered;
    return;
  }
  answered.absence = absenceOf(code->string());
  if (!answered.absence) {
    reader.issue(*code, "\"" + code->string() + "\" is no reason that is read here",
                 base::didYouMean(code->string(), kAbsenceCodes, "use one of " + listOf(kAbsenceCodes)));
  } else if (hasAnswer && !question.repeats) {
    reader.issue(*code, "the question has an answer and a reason for having none", "remove one of them");
  }
}

std::string ResponseReader::readGivenBy(Extensions& extensions, const std::string& subject) {
  const auto code = extensions.only(extension_url::kGivenBy, "valueCode", json::Kind::String);
  if (!code) return {};
  if (std::find(kGivers.begin(), kGivers.end(), code->string()) == kGivers.end()) {
    issues_.error(code->place(), subject, "\"" + code->string() + "\" is no one who gives answers",
                  base::didYouMean(code->string(), kGivers, "use one of " + listOf(kGivers)));
  }
  return code->string();
}

void ResponseReader::refuseOwnExtensions(json::ObjectReader& reader, const Extensions& extensions,
                                         const Item& item) {
  for (const std::string_view url :
       {extension_url::kDataAbsentReason, extension_url::kGivenBy, extension_url::kAnswerDate}) {
    const auto found = extensions.all(url);
    if (found.empty()) continue;
    reader.issue(found.front(),
                 std::string(url) + " on \"" + item.linkId + "\" would be lost; it is no question",
                 "state it on each question it is about");
  }
}

}  // namespace stile::answers
