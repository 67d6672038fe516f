// Which question to ask next.
//
// The form's first group comes whole and before anything else (every contact begins with the acute
// questions). A group that was begun is finished. Then red flags, then the questions that keep the
// decision from being settled, then what else can change the limits, then the rest of the minimum set,
// then what only the plan needs. Among several, what narrows the decision most in the worst case.
#pragma once

#include <compare>
#include <optional>
#include <vector>

#include "interview/relevance.h"
#include "interview/stakes.h"

namespace stile::interview {

/// How much of the decision is still undecided. Narrower is better, rungs first.
struct Width {
  int rungs = 0;        ///< of both bays that are neither open nor shut
  int actionSteps = 0;  ///< from the certain action up to what it could become
  int parts = 0;        ///< of the other limits whose ends differ
  auto operator<=>(const Width&) const = default;
};
Width widthOf(const Totals& totals);

/// The widest of all known answers ("not sure" narrows nothing, whatever the question). Stops early
/// once it is no narrower than `enough`. A question in free text narrows nothing.
Width worstWidth(Position& position, const QuestionRef& question, const std::optional<Width>& enough = std::nullopt);

enum class Reason { Opening, GroupBegun, RedFlag, HoldsDecision, Matters, Minimum, Plan };

struct Choice {
  QuestionRef question;
  Reason reason = Reason::Matters;
};

/// What may be tried while somebody waits for the next question.
inline const SearchEffort kEffortWhileWaiting{200, {}};

/// A question that may be asked now.
struct Candidate {
  QuestionRef question;
  bool isGroupBegun = false;  ///< it belongs to a repetition that is being filled in
};

/// Why a question would be asked, going by bounds; nullopt when nothing wants its answer.
std::optional<Reason> reasonToAsk(const Position& position, const Stakes& stakes, const Candidate& candidate,
                                  bool isPlanWanted);

/// The best of `candidates` (in form order), or nullopt when none of them is worth asking.
/// `isPlanWanted`: whether questions that only the plan needs are asked too.
std::optional<Choice> bestQuestion(Position& position, const Stakes& stakes, const std::vector<Candidate>& candidates,
                                   bool isPlanWanted, const SearchEffort& effort = kEffortWhileWaiting);

}  // namespace stile::interview
