#include "answers/response_tree.h"

#include <algorithm>
#include <map>
#include <utility>

#include "answers/wanted_place.h"
#include "base/near_names.h"
#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using questionnaire::Item;
using questionnaire::ItemType;
namespace extension_url = questionnaire::extension_url;

/// Reads the items of one response, level by level.
class TreeReader {
 public:
  TreeReader(const questionnaire::Form& form, base::Issues& issues) : form_(form), issues_(issues) {}

  void readItems(const std::vector<json::Node>& nodes, const Item* parent, Occurrence& into) {
    std::map<const Item*, int> seen;
    std::size_t latest = 0;
    for (const json::Node& node : nodes) {
      auto read = readItem(node, parent, seen);
      if (!read) continue;
      const std::size_t order = orderOf(*read->item);
      if (order < latest) {
        issues_.add({base::Severity::Note, node.place(), read->item->linkId,
                     "\"" + read->item->linkId + "\" stands in another order than in the form",
                     "keep the order of the form"});
      }
      latest = std::max(latest, order);
      read->within = &into;
      into.items.push_back(std::move(read));
    }
  }

 private:
  std::size_t orderOf(const Item& item) const {
    const auto& order = form_.inOrder();
    return static_cast<std::size_t>(std::find(order.begin(), order.end(), &item) - order.begin());
  }

  std::unique_ptr<ResponseItem> readItem(json::Node node, const Item* parent,
                                         std::map<const Item*, int>& seen) {
    const auto linkId = node.find("linkId");
    json::ObjectReader reader(node, linkId && linkId->isString() ? linkId->string() : std::string(), issues_);
    if (!reader.isObject()) return nullptr;
    questionnaire::Extensions extensions(reader);
    const Item* item = itemOf(reader, parent);
    const auto answers = reader.array("answer");
    const auto nested = reader.array("item");
    for (const char* member : {"answer", "item"}) {
      const auto list = reader.find(member);
      if (list && list->isArray() && list->size() == 0) {
        reader.issue(*list, std::string("\"") + member + "\" is empty",
                     "leave it out; an empty list says nothing");
      }
    }
    questionnaire::acceptUnused(reader, {"linkId", "definition", "text"});
    reader.finish();
    if (!item) return nullptr;
    checkTwice(reader, *item, seen);
    auto result = std::make_unique<ResponseItem>(node);
    result->item = item;
    if (const auto reason =
            extensions.only(extension_url::kDataAbsentReason, "valueCode", json::Kind::String)) {
      result->absentReason = reason->string();
    }
    if (questionnaire::isQuestion(item->type)) {
      readAnswers(reader, answers, nested, *result);
    } else {
      readGroup(reader, answers, nested, *result);
    }
    return result;
  }

  void checkTwice(json::ObjectReader& reader, const Item& item, std::map<const Item*, int>& seen) {
    if (seen[&item]++ == 0 || (item.type == ItemType::Group && item.repeats)) return;
    reader.issue(reader.node(), "\"" + item.linkId + "\" stands here twice",
                 item.repeats ? "put all answers into one item" : "keep one of them");
  }

  const Item* itemOf(json::ObjectReader& reader, const Item* parent) {
    const std::string linkId = questionnaire::requireWords(reader, "linkId");
    if (linkId.empty()) return nullptr;
    const json::Node at = *reader.find("linkId");
    const Item* item = form_.find(linkId);
    if (!item) {
      if (isHelp(linkId, parent)) return nullptr;  // a help text; nothing is asked
      std::vector<std::string> known;
      for (const Item* each : form_.inOrder()) known.push_back(each->linkId);
      reader.issue(at, "the form " + form_.name() + " has no item \"" + linkId + "\"",
                   base::didYouMean(linkId, known, "use the linkIds of the form"));
      return nullptr;
    }
    if (item->parent == parent) return item;
    reader.issue(at, "\"" + linkId + "\" stands in the wrong place",
                 "it belongs " + wantedPlace(item->parent));
    return nullptr;
  }

  static bool isHelp(const std::string& linkId, const Item* parent) {
    return parent && parent->helpLinkId == linkId;
  }

  void readGroup(json::ObjectReader& reader, const std::vector<json::Node>& answers,
                 const std::vector<json::Node>& nested, ResponseItem& into) {
    const Item& item = *into.item;
    if (!answers.empty()) {
      reader.issue(
          answers.front(),
          "an item of the type " + std::string(questionnaire::fhirName(item.type)) + " has no answers",
          item.items.empty() ? "remove the answer" : "answer the questions in it");
    }
    if (item.type == ItemType::Display) {
      if (!nested.empty()) reader.issue(nested.front(), "a display item holds no items", "remove them");
      return;
    }
    auto occurrence = std::make_unique<Occurrence>(into.node);
    occurrence->of = &into;
    readItems(nested, &item, *occurrence);
    into.occurrences.push_back(std::move(occurrence));
  }

  void readAnswers(json::ObjectReader& reader, const std::vector<json::Node>& answers,
                   const std::vector<json::Node>& nested, ResponseItem& into) {
    const Item& item = *into.item;
    if (answers.size() > 1 && !item.repeats) {
      reader.issue(answers[1], "only one answer is allowed here", "keep one answer");
    }
    for (const json::Node& node : answers) {
      if (auto answer = readAnswer(node, into)) into.occurrences.push_back(std::move(answer));
    }
    if (nested.empty()) return;
    if (!answers.empty()) {
      reader.issue(nested.front(), "items nested in an answered question belong in its answer",
                   "move them into the member item of the answer");
      return;
    }
    auto unanswered = std::make_unique<Occurrence>(into.node);
    unanswered->of = &into;
    readItems(nested, &item, *unanswered);
    into.occurrences.push_back(std::move(unanswered));
  }

  std::unique_ptr<Occurrence> readAnswer(json::Node node, const ResponseItem& of) {
    json::ObjectReader reader(node, of.item->linkId, issues_);
    if (!reader.isObject()) return nullptr;
    questionnaire::Extensions extensions(reader);
    auto answer = std::make_unique<Occurrence>(node);
    answer->of = &of;
    int given = 0;
    for (const std::string& type : questionnaire::allAnswerTypes()) {
      const std::string member = questionnaire::memberName("value", type);
      const auto value = reader.find(member);
      reader.find("_" + member);
      if (!value || ++given > 1) continue;
      answer->valueType = type;
      answer->value = value;
    }
    const auto nested = reader.array("item");
    reader.finish();
    if (given > 1) {
      reader.issue(node, "the answer has more than one value", "give each value an answer of its own");
    } else if (given == 0) {
      reader.issue(node, "the answer has no value",
                   "give a value, or leave the answer out and state a data-absent-reason on the item");
    }
    readItems(nested, of.item, *answer);
    return answer;
  }

  const questionnaire::Form& form_;
  base::Issues& issues_;
};

}  // namespace

std::size_t ResponseItem::answerCount() const {
  return static_cast<std::size_t>(std::count_if(occurrences.begin(), occurrences.end(),
                                                [](const auto& each) { return each->value.has_value(); }));
}

bool ResponseItem::holdsAnswer() const {
  return std::any_of(occurrences.begin(), occurrences.end(), [](const auto& each) {
    return each->value || std::any_of(each->items.begin(), each->items.end(),
                                      [](const auto& below) { return below->holdsAnswer(); });
  });
}

ResponseTree::ResponseTree(json::Node response, const questionnaire::Form& form, base::Issues& issues)
    : form_(form), root_(std::make_unique<Occurrence>(response)) {
  std::vector<json::Node> nodes;
  const auto list = response.find("item");
  for (std::size_t i = 0; list && list->isArray() && i < list->size(); ++i) nodes.push_back(list->at(i));
  TreeReader(form, issues).readItems(nodes, nullptr, *root_);
}

std::vector<const ResponseItem*> ResponseTree::find(const Occurrence& occurrence, const Item& item) {
  std::vector<const ResponseItem*> found;
  for (const auto& each : occurrence.items) {
    if (each->item == &item) found.push_back(each.get());
  }
  return found;
}

}  // namespace stile::answers
