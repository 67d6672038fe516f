// A response while it is filled in: answers, repetitions, what applies now, calculated values.
//
// For forms of any shape. The draft keeps every answer, also of items that stopped to apply; they come
// back when the item applies again, and are in no response written meanwhile. Pure; the clock is passed
// in.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "answers/calculated_value.h"
#include "answers/draft_item.h"
#include "base/issue.h"
#include "questionnaire/form.h"

namespace stile::answers {

/// Repetitions that one group may have in a draft.
inline constexpr long long kMaxRepetitions = 1000;

class Draft {
 public:
  /// A new response with the form's initial values. `form` must outlive the draft. `now` is text such
  /// as 2026-11-25T10:30:00+00:00; its date is when the response was written.
  Draft(const questionnaire::Form& form, std::string now);
  ~Draft();
  Draft(Draft&&) noexcept;

  /// Questions that apply now, in form order, hidden and read-only ones too. The pointers hold until
  /// the draft is next changed.
  std::vector<const DraftItem*> questions() const;
  /// Groups that repeat and apply now: the last repetition of each.
  std::vector<const DraftItem*> repeatingGroups() const;
  /// Items whose enablement cannot be decided as the answers stand, outermost ones only.
  const std::vector<const questionnaire::Item*>& undecided() const { return undecided_; }
  /// Items whose conditions or calculations change each other for ever.
  const std::vector<const questionnaire::Item*>& unsettled() const { return unsettled_; }

  /// Replaces the answers of a question. Items under an answer stay with the answer of the same place.
  /// An answer to a calculated question is the user's own from then on; with no answers it is calculated
  /// again.
  void answer(const DraftItem& question, std::vector<CalculatedAnswer> answers);
  /// States why there is no answer: a code of data-absent-reason, "" to take it back.
  void setAbsent(const DraftItem& question, std::string reason);
  /// One more repetition after the given one; false at kMaxRepetitions or the form's maxOccurs.
  bool repeat(const DraftItem& group);
  /// Removes a repetition; the last one is emptied instead.
  void remove(const DraftItem& group);

  /// The response as it stands, with the items that apply and hold something.
  std::string toJson(const std::string& status) const;
  /// The response with the status completed. nullopt and issues when something is undecided or unsettled,
  /// or the response does not satisfy the form.
  std::optional<std::string> complete(base::Issues& issues) const;

 private:
  class Settling;

  void settle();
  /// The list an item stands in; nullptr when it is none of this draft.
  DraftItems* listOf(const DraftItem& item);
  /// The item itself, to be changed; nullptr when it is none of this draft.
  DraftItem* find(const DraftItem& item);

  const questionnaire::Form& form_;
  std::string now_;
  DraftItems items_;
  std::vector<const questionnaire::Item*> undecided_;
  std::vector<const questionnaire::Item*> unsettled_;
};

}  // namespace stile::answers
