#include "answers/draft_item.h"

#include <algorithm>
#include <utility>

#include "answers/draft.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::Item;
using questionnaire::ItemType;

CalculatedAnswer asWritten(const std::string& type, json::Node value) {
  json::Writer out(0);
  out.copy(value);
  std::string text = out.text();
  while (!text.empty() && text.back() == '\n') text.pop_back();
  return {type, text, text};
}

void fillIn(DraftItem& draft, CalculatedAnswer value) {
  draft.answers.push_back({std::move(value), freshItems(draft.item->items)});
}

bool holdsSomething(const DraftItem& draft, DraftView view) {
  if (view == DraftView::Whole) return true;
  if (draft.enabled == Truth::False) return false;
  if (!draft.answers.empty() || !draft.absentReason.empty()) return true;
  return std::any_of(draft.items.begin(), draft.items.end(),
                     [&](const auto& each) { return holdsSomething(*each, view); });
}

void writeReason(json::Writer& out, const std::string& reason) {
  out.key("extension").beginArray().beginObject();
  out.member("url", std::string(questionnaire::extension_url::kDataAbsentReason));
  out.member("valueCode", reason);
  out.endObject().endArray();
}

void writeAnswers(json::Writer& out, const std::vector<DraftAnswer>& answers, DraftView view) {
  if (answers.empty()) return;
  out.key("answer").beginArray();
  for (const DraftAnswer& answer : answers) {
    base::Issues ignored;  // values are good JSON: they come from documents or from the writer
    const auto document = json::Document::parse(answer.value.json, "answer", ignored);
    out.beginObject();
    if (document) out.key("value" + answer.value.type).copy(document->root());
    writeItems(out, answer.items, view);
    out.endObject();
  }
  out.endArray();
}

void writeItem(json::Writer& out, const DraftItem& draft, DraftView view) {
  out.beginObject();
  if (view == DraftView::Response && !draft.absentReason.empty() && draft.answers.empty()) {
    writeReason(out, draft.absentReason);
  }
  out.member("linkId", draft.item->linkId);
  if (view == DraftView::Response && !draft.item->text.empty()) out.member("text", draft.item->text);
  if (draft.enabled != Truth::False) {
    writeItems(out, draft.items, view);
    writeAnswers(out, draft.answers, view);
  }
  out.endObject();
}

}  // namespace

std::unique_ptr<DraftItem> freshItem(const Item& item) {
  auto draft = std::make_unique<DraftItem>();
  draft->item = &item;
  if (item.type == ItemType::Group) {
    draft->items = freshItems(item.items);
    return draft;
  }
  for (const questionnaire::Initial& initial : item.initial)
    fillIn(*draft, asWritten(initial.type, initial.value));
  for (const questionnaire::Option& option : item.options) {
    const bool isFirst = draft->answers.empty() || item.repeats;
    if (option.isSelected && option.value && isFirst) fillIn(*draft, asWritten(option.type, *option.value));
  }
  return draft;
}

DraftItems freshItems(const std::vector<std::unique_ptr<Item>>& items) {
  DraftItems drafts;
  for (const auto& item : items) {
    if (item->type == ItemType::Display) continue;
    long long count = 1;
    const bool repeats = item->type == ItemType::Group && item->repeats;
    if (repeats && item->minOccurs) {
      count = std::clamp(*item->minOccurs, 1LL, kMaxRepetitions);
    }
    for (long long i = 0; i < count; ++i) drafts.push_back(freshItem(*item));
  }
  return drafts;
}

void writeItems(json::Writer& out, const DraftItems& items, DraftView view) {
  bool isOpen = false;  // FHIR has no empty arrays
  for (const auto& item : items) {
    if (!holdsSomething(*item, view)) continue;
    if (!isOpen) out.key("item").beginArray();
    isOpen = true;
    writeItem(out, *item, view);
  }
  if (isOpen) out.endArray();
}

}  // namespace stile::answers
