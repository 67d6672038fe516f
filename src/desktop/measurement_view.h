// What the page of measurements shows: every value that is taken by hand, what it was, how it changed
// and whether it is taken today. No window in it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "application/client_interview.h"
#include "drawing/shape.h"
#include "interview/session.h"
#include "rules/measuring.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::desktop {

struct MeasureRow {
  const rules::Measuring* how = nullptr;
  interview::QuestionRef question;
  std::string section;              ///< of the form
  std::string title;                ///< the fact's label
  std::string said;                 ///< today's value, "" while there is none
  std::string before;               ///< "11 on 12 August 2026", or ""
  std::string change;               ///< "3 more than last time, a real change for the better", or ""
  std::string level;                ///< against published norms, or ""
  std::vector<std::string> leftOut; ///< why it is not done today; a tool is then not offered
  std::optional<drawing::Drawing> plot;
};

/// The measures of `content` that the form of the interview asks, in their order; those that
/// certainly do not apply are left out. A reading that is repeated comes with its next repetition.
std::vector<MeasureRow> measureRowsOf(application::ClientInterview& interview, const screening::Screening& screening,
                                      const screening::Content& content);

/// How a result differs from the one before, as a clause; "" when it cannot be told.
std::string changeInWords(const facts::Definition& definition, const answers::Answered& before, const answers::Answered& now);

}  // namespace stile::desktop
