// A response as a tree beside its form: every item with its answers, repetitions and nested items.
//
// For forms of any shape: groups within groups that repeat, items under a question's answers. The flat
// `Response` of response.h is made for facts; this tree is made for enablement, calculation and
// validation, and reads as far as it can whatever is wrong.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::answers {

struct ResponseItem;

/// What holds items: the response itself, one repetition of a group, or one answer of a question.
struct Occurrence {
  const ResponseItem* of = nullptr;  ///< nullptr: the response itself
  json::Node node;                   ///< the response, the group's item, or the element of `answer`
  std::string valueType;             ///< of an answer, the ending of value[x]; "" = no answer
  std::optional<json::Node> value;   ///< of an answer
  std::vector<std::unique_ptr<ResponseItem>> items;

  explicit Occurrence(json::Node at) : node(at) {}
};

/// One element of `item`. A group has one occurrence, a question one per answer; a question without
/// an answer that holds items all the same has one occurrence without a value.
struct ResponseItem {
  const questionnaire::Item* item = nullptr;
  json::Node node;
  const Occurrence* within = nullptr;
  std::string absentReason;  ///< code of data-absent-reason; "" = none
  std::vector<std::unique_ptr<Occurrence>> occurrences;

  explicit ResponseItem(json::Node at) : node(at) {}
  std::size_t answerCount() const;
  /// Some answer stands here or in an item below.
  bool holdsAnswer() const;
};

/// Always true: every item of the tree stands where its form has it; what does not is left out, with
/// an issue. Keeps pointers into the form and the document, which must outlive it.
class ResponseTree {
 public:
  /// Issues: unknown or misplaced linkIds, items that stand twice, answers where none can be, unknown
  /// members, modifier extensions, answers with no value or several.
  ResponseTree(json::Node response, const questionnaire::Form& form, base::Issues& issues);

  const questionnaire::Form& form() const { return form_; }
  json::Node node() const { return root_->node; }
  const Occurrence& root() const { return *root_; }
  /// The items of `occurrence` that stand for `item`, in their order.
  static std::vector<const ResponseItem*> find(const Occurrence& occurrence, const questionnaire::Item& item);

 private:
  const questionnaire::Form& form_;
  std::unique_ptr<Occurrence> root_;
};

}  // namespace stile::answers
