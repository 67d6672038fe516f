#include "interview/question.h"

#include "questionnaire/item_type.h"

namespace stile::interview {
namespace {

bool standsIn(const questionnaire::Item* item, const questionnaire::Item* group) {
  for (; item; item = item->parent)
    if (item == group) return true;
  return false;
}

}  // namespace

Questions::Questions(const questionnaire::Form& form, const facts::Dictionary& dictionary)
    : placeOf_(static_cast<std::size_t>(dictionary.size()), -1) {
  const questionnaire::Item* opening = nullptr;
  for (const auto& item : form.items())
    if (!opening && item->type == questionnaire::ItemType::Group) opening = item.get();
  for (const questionnaire::Item* item : form.inOrder()) {
    if (!questionnaire::isQuestion(item->type) || item->isHidden || item->readOnly) continue;
    const facts::Definition* fact = dictionary.find(item->linkId);
    if (!fact || fact->isDerived() || fact->isPolicy()) continue;
    FormQuestion question;
    question.item = item;
    question.fact = fact;
    question.group = fact->groupIndex;
    question.isOpening = opening && standsIn(item, opening);
    question.isListable = fact->type == facts::FactType::Boolean && fact->concern == facts::Concern::True &&
                          fact->groupIndex < 0 && item->enableWhen.empty();
    placeOf_[static_cast<std::size_t>(fact->slot)] = static_cast<int>(all_.size());
    for (const facts::OptionDefinition& option : fact->options)
      if (option.slot >= 0) placeOf_[static_cast<std::size_t>(option.slot)] = static_cast<int>(all_.size());
    all_.push_back(std::move(question));
  }
}

}  // namespace stile::interview
