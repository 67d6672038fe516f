#include "answers/draft.h"

#include <algorithm>
#include <utility>

#include "answers/expression_scope.h"
#include "answers/option_toggle.h"
#include "answers/response_enablement.h"
#include "answers/response_head.h"
#include "answers/response_tree.h"
#include "answers/response_validator.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::Form;
using questionnaire::Item;
using questionnaire::ItemType;

constexpr std::size_t kDayLength = 10;

std::string write(const Form& form, const DraftItems& items, const std::string& status,
                  const std::string& now, DraftView view) {
  json::Writer out;
  out.beginObject();
  out.member("resourceType", "QuestionnaireResponse");
  if (!form.url().empty()) {
    out.member("questionnaire", form.version().empty() ? form.url() : form.url() + "|" + form.version());
  }
  out.member("status", status);
  out.member("authored", now.size() > kDayLength ? now : now.substr(0, kDayLength));
  writeItems(out, items, view);
  out.endObject();
  return out.text();
}

template <class Visit>
void forEach(const DraftItems& items, Visit visit) {
  for (const auto& item : items) {
    if (item->enabled == Truth::False) continue;
    visit(*item);
    forEach(item->items, visit);
    for (const DraftAnswer& answer : item->answers) forEach(answer.items, visit);
  }
}

}  // namespace

/// One pass: what applies and what is calculated, given the draft as it was before.
class Draft::Settling {
 public:
  Settling(const Form& form, DraftItems& items, const std::string& now)
      : items_(items), text_(write(form, items, "in-progress", now, DraftView::Whole)) {
    document_ = json::Document::parse(text_, "draft", issues_);
    if (!document_) return;
    tree_ = std::make_unique<ResponseTree>(document_->root(), form, issues_);
    scope_ = std::make_unique<ExpressionScope>(*tree_, now);
    enablement_ = std::make_unique<ResponseEnablement>(*tree_, scope_.get());
  }

  /// The items that changed.
  std::vector<const Item*> run() {
    if (tree_) level(items_, tree_->root());
    return std::move(changed_);
  }
  std::vector<const Item*> undecided() { return std::move(undecided_); }

  /// Values of initialExpression, where nothing stands yet.
  void fillInitial() {
    if (tree_) initial(items_, tree_->root());
  }

 private:
  /// The tree holds every item of the draft in the same order, but nothing below what does not apply.
  template <class Visit>
  void walk(DraftItems& items, const Occurrence& within, Visit visit) {
    for (std::size_t i = 0; i < items.size() && i < within.items.size(); ++i) {
      DraftItem& draft = *items[i];
      const ResponseItem& at = *within.items[i];
      visit(draft, at);
      if (draft.item->type == ItemType::Group) {
        if (!at.occurrences.empty()) walk(draft.items, *at.occurrences.front(), visit);
        continue;
      }
      for (std::size_t k = 0; k < draft.answers.size() && k < at.occurrences.size(); ++k) {
        walk(draft.answers[k].items, *at.occurrences[k], visit);
      }
    }
  }

  void level(DraftItems& items, const Occurrence& root) {
    std::vector<std::pair<DraftItem*, const ResponseItem*>> calculated;
    walk(items, root, [&](DraftItem& draft, const ResponseItem& at) {
      const Truth enabled = enablement_->isEnabled(*draft.item, *at.within);
      if (enabled == Truth::Unknown && enablement_->isEnabled(*at.within) == Truth::True) {
        undecided_.push_back(draft.item);
      }
      if (enabled != draft.enabled) changed_.push_back(draft.item);
      draft.enabled = enabled;
      draft.shut = shutOptions({draft.item, at.within, &at}, *scope_);
      const bool isCalculated =
          draft.item->calculatedExpression && !draft.isUsersOwn && enabled == Truth::True;
      if (isCalculated) calculated.emplace_back(&draft, &at);
    });
    // Answers are replaced only after the walk, which goes by them.
    for (const auto& [draft, at] : calculated) calculate(*draft, *at);
  }

  void calculate(DraftItem& draft, const ResponseItem& at) {
    base::Issues why;
    const auto value = scope_->evaluate(*draft.item->calculatedExpression, {draft.item, at.within, &at}, why);
    const auto expected = value ? calculatedAnswers(*value, *draft.item) : std::vector<CalculatedAnswer>{};
    if (isSameAnswers(expected, at)) return;
    changed_.push_back(draft.item);
    draft.answers.clear();
    for (const CalculatedAnswer& each : expected)
      draft.answers.push_back({each, freshItems(draft.item->items)});
  }

  void initial(DraftItems& items, const Occurrence& root) {
    std::vector<std::pair<DraftItem*, std::vector<CalculatedAnswer>>> values;
    walk(items, root, [&](DraftItem& draft, const ResponseItem& at) {
      if (!draft.item->initialExpression || !draft.answers.empty()) return;
      base::Issues why;  // a launch context that nobody gave: the field stays empty
      const auto value = scope_->evaluate(*draft.item->initialExpression, {draft.item, at.within, &at}, why);
      if (value) values.emplace_back(&draft, calculatedAnswers(*value, *draft.item));
    });
    for (auto& [draft, answers] : values) {
      for (CalculatedAnswer& each : answers)
        draft->answers.push_back({std::move(each), freshItems(draft->item->items)});
    }
  }

  DraftItems& items_;
  std::string text_;
  base::Issues issues_;
  std::shared_ptr<const json::Document> document_;
  std::unique_ptr<ResponseTree> tree_;
  std::unique_ptr<ExpressionScope> scope_;
  std::unique_ptr<ResponseEnablement> enablement_;
  std::vector<const Item*> changed_;
  std::vector<const Item*> undecided_;
};

Draft::Draft(const Form& form, std::string now)
    : form_(form), now_(std::move(now)), items_(freshItems(form.items())) {
  Settling(form_, items_, now_).fillInitial();
  settle();
}

Draft::~Draft() = default;
Draft::Draft(Draft&&) noexcept = default;

void Draft::settle() {
  // Each pass settles at least one more level of what depends on what; more passes than items means
  // that some of them change each other for ever.
  const std::size_t most = form_.inOrder().size() + 2;
  for (std::size_t pass = 0; pass < most; ++pass) {
    Settling settling(form_, items_, now_);
    unsettled_ = settling.run();
    undecided_ = settling.undecided();
    if (unsettled_.empty()) return;
  }
}

std::vector<const DraftItem*> Draft::questions() const {
  std::vector<const DraftItem*> list;
  forEach(items_, [&](const DraftItem& item) {
    if (item.enabled == Truth::True && questionnaire::isQuestion(item.item->type)) list.push_back(&item);
  });
  return list;
}

std::vector<const DraftItem*> Draft::repeatingGroups() const {
  std::vector<const DraftItem*> list;
  const DraftItem* last = nullptr;
  forEach(items_, [&](const DraftItem& item) {
    if (item.item->type != ItemType::Group || !item.item->repeats) return;
    if (last && last->item == item.item && !list.empty() && list.back() == last) list.pop_back();
    list.push_back(&item);
    last = &item;
  });
  return list;
}

void Draft::answer(const DraftItem& question, std::vector<CalculatedAnswer> answers) {
  DraftItem* own = find(question);
  if (!own) return;
  DraftItem& draft = *own;
  std::vector<DraftAnswer> kept = std::move(draft.answers);
  draft.answers.clear();
  draft.isUsersOwn = !answers.empty();
  if (!answers.empty()) draft.absentReason.clear();
  for (std::size_t i = 0; i < answers.size(); ++i) {
    draft.answers.push_back(
        {std::move(answers[i]), i < kept.size() ? std::move(kept[i].items) : freshItems(draft.item->items)});
  }
  settle();
}

void Draft::setAbsent(const DraftItem& question, std::string reason) {
  if (DraftItem* own = find(question)) own->absentReason = std::move(reason);
}

DraftItems* Draft::listOf(const DraftItem& item) {
  const auto look = [&](auto&& self, DraftItems& items) -> DraftItems* {
    for (auto& each : items) {
      if (each.get() == &item) return &items;
      if (DraftItems* found = self(self, each->items)) return found;
      for (DraftAnswer& answer : each->answers) {
        if (DraftItems* found = self(self, answer.items)) return found;
      }
    }
    return nullptr;
  };
  return look(look, items_);
}

DraftItem* Draft::find(const DraftItem& item) {
  DraftItems* list = listOf(item);
  if (!list) return nullptr;
  return std::find_if(list->begin(), list->end(), [&](const auto& each) { return each.get() == &item; })
      ->get();
}

bool Draft::repeat(const DraftItem& group) {
  DraftItems* siblings = listOf(group);
  if (!siblings || !group.item->repeats) return false;
  const auto count = std::count_if(siblings->begin(), siblings->end(),
                                   [&](const auto& item) { return item->item == group.item; });
  if (count >= group.item->maxOccurs.value_or(kMaxRepetitions) || count >= kMaxRepetitions) return false;
  const auto at = std::find_if(siblings->begin(), siblings->end(),
                               [&](const auto& item) { return item.get() == &group; });
  siblings->insert(at + 1, freshItem(*group.item));
  settle();
  return true;
}

void Draft::remove(const DraftItem& group) {
  DraftItems* siblings = listOf(group);
  if (!siblings) return;
  const auto at = std::find_if(siblings->begin(), siblings->end(),
                               [&](const auto& item) { return item.get() == &group; });
  const auto count = std::count_if(siblings->begin(), siblings->end(),
                                   [&](const auto& item) { return item->item == group.item; });
  if (count > 1) {
    siblings->erase(at);
  } else {
    *at = freshItem(*group.item);
  }
  settle();
}

std::string Draft::toJson(const std::string& status) const {
  return write(form_, items_, status, now_, DraftView::Response);
}

std::optional<std::string> Draft::complete(base::Issues& issues) const {
  for (const Item* item : undecided_) {
    issues.error(item->place, item->linkId, "whether \"" + item->linkId + "\" applies cannot be decided",
                 "check the answers its condition depends on");
  }
  for (const Item* item : unsettled_) {
    issues.error(item->place, item->linkId,
                 "\"" + item->linkId + "\" changes with every calculation: it depends on itself",
                 "take the circle out of the form, or give the value yourself");
  }
  if (issues.hasErrors()) return std::nullopt;
  const std::string text = toJson("completed");
  const auto document = json::Document::parse(text, "response", issues);
  if (!document) return std::nullopt;
  base::Issues found;
  const ResponseHead head{&form_, "completed", now_};
  ResponseValidator(document->root(), head, now_, found).validate();
  issues.append(found);
  if (found.hasErrors()) return std::nullopt;
  return text;
}

}  // namespace stile::answers
