// One answer on its way from a page into the interview: what was typed is read, what is wrong comes back in words.
#pragma once

#include <set>
#include <string>

#include "application/client_interview.h"
#include "base/result.h"
#include "desktop/question_view.h"

namespace stile::desktop {

struct AnswerStep {
  bool isTaken = false;          ///< the interview has gone on, saved or not
  base::Result<bool> saved = true;
  std::string trouble;           ///< why it was not taken
  bool canBeConfirmed = false;   ///< it is unlikely, not impossible
};

/// A yes, a no, an option, or a reason for giving none, to any question of the form.
AnswerStep takeRow(application::ClientInterview& interview, const interview::QuestionRef& question, const AnswerRow& row);
/// Options by their index.
AnswerStep takeOptions(application::ClientInterview& interview, const interview::QuestionRef& question, const std::set<std::size_t>& chosen);
AnswerStep takeTyped(application::ClientInterview& interview, const interview::QuestionRef& question, const std::string& text, bool isConfirmed);

/// "Saved 09:41:07", or why it was not.
std::string savedWords(const base::Result<bool>& saved);

}  // namespace stile::desktop
