#include "interview/next_question.h"

#include <algorithm>

#include "interview/relevance.h"

namespace stile::interview {
namespace {

using limits::Action;

bool isByWidth(Reason reason) {
  return reason == Reason::RedFlag || reason == Reason::HoldsDecision || reason == Reason::Matters;
}

/// The narrowest in the worst case among those of one reason that may matter; ties by form order. No case is worse
/// than an answer that narrows nothing.
std::optional<QuestionRef> narrowest(Position& position, const Stakes& stakes, std::vector<QuestionRef> questions,
                                     const SearchEffort& effort) {
  const Width now = widthOf(position.totals());
  while (!questions.empty()) {
    std::size_t best = 0;
    Width least = now;
    for (std::size_t i = 0; i < questions.size(); ++i) {
      const Width width = worstWidth(position, questions[i], least);
      if (!(width < least)) continue;
      least = width;
      best = i;
    }
    if (mayMatter(position, stakes, questions[best], Outcome::Limits, effort)) return questions[best];
    questions.erase(questions.begin() + static_cast<std::ptrdiff_t>(best));
  }
  return std::nullopt;
}

/// Whether the plan still waits for the answer. In a list that is being filled in, one answer often tells the next: of
/// a medicine whose name is known nobody need say what kind it is.
bool isOpenForPlan(const Position& position, const QuestionRef& question) {
  const Ground& ground = position.ground();
  const auto& slots = ground.planSlotsFrom(question.place);
  if (question.repetition < 0) return !slots.empty();
  const facts::FactRef own{ground.questions().at(question).fact->slot, question.repetition};
  return std::any_of(slots.begin(), slots.end(), [&](int slot) {
    const bool isInGroup = ground.dictionary().at(slot).groupIndex >= 0;
    const auto open = facts::openInputs(position.facts(), slot, isInGroup ? question.repetition : -1);
    return std::find(open.begin(), open.end(), own) != open.end();
  });
}

}  // namespace

std::optional<Reason> reasonToAsk(const Position& position, const Stakes& stakes, const Candidate& candidate,
                                  bool isPlanWanted) {
  const FormQuestion& question = position.ground().questions().at(candidate.question);
  if (question.isOpening) return Reason::Opening;
  const Stake* stake = stakes.of(candidate.question);
  const bool matters = stake && stake->mattersForLimits();
  const bool isForPlan = isPlanWanted && isOpenForPlan(position, candidate.question);
  if (candidate.isGroupBegun && (matters || question.item->isRequired || isForPlan)) return Reason::GroupBegun;
  // A gate holds no decision: the session waits for the reading, the next question need not.
  if (matters && stake->holds) return stake->couldBecome == Action::Emergency ? Reason::RedFlag : Reason::HoldsDecision;
  if (matters) return Reason::Matters;
  if (question.item->isRequired) return Reason::Minimum;
  return isForPlan ? std::optional(Reason::Plan) : std::nullopt;
}

namespace {

/// All of the width but its parts.
Width decisionWidthOf(const DecisionTotals& totals) {
  Width width;
  for (const limits::Bay bay : limits::kBays)
    width.rungs += std::max(0, static_cast<int>(totals.reach.usable(bay)) - static_cast<int>(totals.floor.usable(bay)));
  width.actionSteps = std::max(0, static_cast<int>(totals.couldBecome) - static_cast<int>(totals.reach.action));
  return width;
}

/// Whatever the parts.
bool isNarrower(const Width& a, const Width& b) { return std::pair(a.rungs, a.actionSteps) < std::pair(b.rungs, b.actionSteps); }

}  // namespace

Width widthOf(const Totals& totals) {
  Width width = decisionWidthOf(totals);
  for (unsigned parts = totals.differingParts; parts != 0; parts &= parts - 1) ++width.parts;
  return width;
}

Width worstWidth(Position& position, const QuestionRef& question, const std::optional<Width>& enough) {
  const auto& answers = position.ground().questions().at(question).answers;
  if (answers.empty()) return widthOf(position.totals());
  Width worst;
  for (const PossibleAnswer& answer : answers) {
    const Trial trial(position, question, answer);
    const DecisionTotals totals = position.decisionTotals();
    // Without its parts, which take longest, it is often told already.
    const Width least = decisionWidthOf(totals);
    if (enough && least >= *enough) return least;
    if (isNarrower(least, worst)) continue;
    worst = std::max(worst, widthOf({totals, position.differingParts()}));
    if (enough && worst >= *enough) break;
  }
  return worst;
}

std::optional<Choice> bestQuestion(Position& position, const Stakes& stakes, const std::vector<Candidate>& candidates,
                                   bool isPlanWanted, const SearchEffort& effort) {
  std::vector<std::pair<Reason, QuestionRef>> wanted;
  for (const Candidate& candidate : candidates)
    if (const auto reason = reasonToAsk(position, stakes, candidate, isPlanWanted)) wanted.emplace_back(*reason, candidate.question);
  for (const Reason reason : {Reason::Opening, Reason::GroupBegun, Reason::RedFlag, Reason::HoldsDecision, Reason::Matters, Reason::Minimum, Reason::Plan}) {
    std::vector<QuestionRef> questions;
    for (const auto& [why, question] : wanted)
      if (why == reason) questions.push_back(question);
    if (questions.empty()) continue;
    if (!isByWidth(reason)) return Choice{questions.front(), reason};
    if (const auto found = narrowest(position, stakes, questions, effort)) return Choice{*found, reason};
    // Proven not to matter: what is in the minimum set, or in the plan, is asked all the same.
    for (const QuestionRef& question : questions) {
      if (position.ground().questions().at(question).item->isRequired) wanted.emplace_back(Reason::Minimum, question);
      else if (isPlanWanted && isOpenForPlan(position, question)) wanted.emplace_back(Reason::Plan, question);
    }
  }
  return std::nullopt;
}

}  // namespace stile::interview
