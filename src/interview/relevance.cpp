#include "interview/relevance.h"

#include <map>
#include <optional>

namespace stile::interview {
namespace {

using base::Rational;
using screening::EndKind;

/// An outcome in a form that can be compared.
struct Signature {
  Decision floor, reach, granted;
  std::vector<std::pair<int, Rational>> atFloor, atReach;
  bool operator==(const Signature&) const = default;
};

std::vector<std::pair<int, Rational>> strictestOf(const Position& position, EndKind end) {
  std::map<int, Rational> strictest;
  Strictest all;
  position.addTo(all, end);
  for (const auto& states : position.states())
    for (const RuleState& state : states) {
      if (state.isOut()) continue;
      for (const LimitAtom& atom : (end == EndKind::Floor ? state.floor : state.reach)->atoms) {
        const int both = position.keys().coveredBy(atom.key);
        const LimitAtom asBoth{both, atom.strictness};
        if (both >= 0 && all.covers(asBoth, position.keys())) continue;  // the demand of both sides says it
        const auto [at, isNew] = strictest.emplace(atom.key, atom.strictness);
        if (!isNew && at->second < atom.strictness) at->second = atom.strictness;
      }
    }
  return {strictest.begin(), strictest.end()};
}

Signature signatureOf(const Position& position, Outcome outcome) {
  const Totals totals = position.totals();
  Signature signature{totals.floor, totals.reach, totals.granted, {}, {}};
  if (outcome == Outcome::Decision) return signature;
  signature.atFloor = strictestOf(position, EndKind::Floor);
  signature.atReach = strictestOf(position, EndKind::Reach);
  return signature;
}

/// One question of the search with every answer to it, "not sure" last.
struct Branch {
  QuestionRef question;
  std::vector<PossibleAnswer> answers;
};

class Completions {
 public:
  Completions(Position& position, std::vector<Branch> branches, std::size_t asked, Outcome outcome, std::stop_token stop)
      : position_(position), branches_(std::move(branches)), asked_(asked), outcome_(outcome), stop_(std::move(stop)),
        chosen_(branches_.size(), kNone) {}

  Verdict run() {
    descend(0);
    if (differs_) return Verdict::Matters;
    return stop_.stop_requested() ? Verdict::NotSettled : Verdict::DoesNotMatter;
  }

 private:
  static constexpr int kNone = -1;  ///< does not apply, so that any answer is as good

  void descend(std::size_t at) {
    if (differs_ || stop_.stop_requested()) return;
    if (at == branches_.size()) return record();
    const Branch& branch = branches_[at];
    if (!position_.isEnabled(branch.question)) {
      chosen_[at] = kNone;
      if (at != asked_) descend(at + 1);  // a question that is not asked has no two answers
      return;
    }
    for (std::size_t i = 0; i < branch.answers.size(); ++i) {
      const Trial trial(position_, branch.question, branch.answers[i]);
      chosen_[at] = static_cast<int>(i);
      descend(at + 1);
    }
  }

  void record() {
    std::vector<int> others = chosen_;
    others[asked_] = kNone;
    expand(others, 0, signatureOf(position_, outcome_));
  }

  /// What was not asked stands for each of its answers.
  void expand(std::vector<int>& others, std::size_t from, const Signature& signature) {
    while (from < others.size() && (from == asked_ || others[from] != kNone)) ++from;
    if (from == others.size()) {
      const auto [at, isNew] = seen_.emplace(others, signature);
      differs_ = differs_ || (!isNew && !(at->second == signature));
      return;
    }
    for (std::size_t i = 0; i < branches_[from].answers.size() && !differs_; ++i) {
      others[from] = static_cast<int>(i);
      expand(others, from + 1, signature);
    }
    others[from] = kNone;
  }

  Position& position_;
  std::vector<Branch> branches_;
  std::size_t asked_;
  Outcome outcome_;
  std::stop_token stop_;
  std::vector<int> chosen_;
  std::map<std::vector<int>, Signature> seen_;
  bool differs_ = false;
};

/// Asked, and left without an answer: it is no open question any more.
bool wasAskedInVain(const Position& position, const QuestionRef& ref) {
  using facts::UnknownReason;
  const int slot = position.ground().questions().at(ref).fact->slot;
  const UnknownReason why = position.facts().at(slot, ref.repetition).givenReason;
  return why == UnknownReason::NotSure || why == UnknownReason::Declined || why == UnknownReason::NotAnswered;
}

/// The branches in form order, or nullopt when they cannot all be tried.
std::optional<std::vector<Branch>> branchesOf(const Position& position, const Stakes& stakes, const SearchEffort& effort) {
  std::vector<Branch> branches;
  long completions = 1;
  for (const auto& [question, stake] : stakes.all()) {
    if (wasAskedInVain(position, question)) continue;
    const FormQuestion& asked = position.ground().questions().at(question);
    if (!asked.isComplete || asked.group >= 0) return std::nullopt;
    Branch branch{question, asked.answers};
    branch.answers.push_back({facts::UnknownReason::NotSure, {}, {}});
    completions *= static_cast<long>(branch.answers.size());
    if (completions > effort.mostCompletions) return std::nullopt;
    branches.push_back(std::move(branch));
  }
  return branches;
}

}  // namespace

Verdict tryAll(Position& position, const Stakes& stakes, const QuestionRef& question, Outcome outcome,
               const SearchEffort& effort) {
  auto branches = branchesOf(position, stakes, effort);
  if (!branches) return Verdict::NotSettled;
  for (std::size_t i = 0; i < branches->size(); ++i)
    if ((*branches)[i].question == question)
      return Completions(position, std::move(*branches), i, outcome, effort.stop).run();
  return Verdict::DoesNotMatter;
}

bool mayMatter(Position& position, const Stakes& stakes, const QuestionRef& question, Outcome outcome,
               const SearchEffort& effort) {
  const Stake* stake = stakes.of(question);
  if (!stake || (outcome == Outcome::Decision ? !stake->decides : !stake->mattersForLimits())) return false;
  return tryAll(position, stakes, question, outcome, effort) != Verdict::DoesNotMatter;
}

}  // namespace stile::interview
