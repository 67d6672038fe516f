// The parts of a draft: items with their answers and what stands under them.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "answers/calculated_value.h"
#include "expression/value.h"
#include "json/document.h"
#include "questionnaire/item.h"

namespace stile::answers {

struct DraftItem;
using DraftItems = std::vector<std::unique_ptr<DraftItem>>;

struct DraftAnswer {
  CalculatedAnswer value;
  DraftItems items;  ///< the question's nested items, for this answer
};

/// One item at one place: a repetition of a group, or a question with its answers.
struct DraftItem {
  const questionnaire::Item* item = nullptr;
  expression::Truth enabled = expression::Truth::True;
  DraftItems items;  ///< of a group
  std::vector<DraftAnswer> answers;
  std::string absentReason;
  bool isUsersOwn = false;                         ///< a calculated value that the user changed
  std::vector<const questionnaire::Option*> shut;  ///< options that may not be chosen now
};

/// Fresh items for a level of the form: one repetition of each group, or as many as must be there;
/// initial values filled in.
DraftItems freshItems(const std::vector<std::unique_ptr<questionnaire::Item>>& items);

/// A fresh repetition.
std::unique_ptr<DraftItem> freshItem(const questionnaire::Item& item);

/// What a draft is written for.
enum class DraftView {
  Whole,     ///< every item stands there, those that do not apply without their content
  Response,  ///< only what applies and holds something
};

/// The member `item`, unless there is nothing to write.
void writeItems(json::Writer& out, const DraftItems& items, DraftView view);

}  // namespace stile::answers
