#include "interview/nearest_change.h"

#include <algorithm>

namespace stile::interview {
namespace {

using limits::Bay;

/// What one rule contributes to decisionOf().
Decision partOf(const RuleState& state) {
  Decision part = state.floor->decision;
  part.action = state.reach->decision.action;
  return part;
}

/// Iterative deepening over sets of changes. A set that reaches the goal must move, at every point on
/// the way, some rule that stands in its way: only answers that can move that rule are tried.
class ChangeSearch {
 public:
  ChangeSearch(Position& position, const std::vector<QuestionRef>& given, Direction direction, std::stop_token stop)
      : position_(position), given_(given), direction_(direction), stop_(std::move(stop)), start_(decisionOf(position)) {
    const Ground& ground = position.ground();
    moves_.resize(ground.rules().rules.size());
    for (std::size_t i = 0; i < given.size(); ++i) {
      const facts::Definition& fact = *ground.questions().at(given[i]).fact;
      std::vector<int> reached = ground.dependents().allFrom(fact.slot);
      for (std::size_t rule = 0; rule < moves_.size(); ++rule) {
        const auto& reads = ground.shape(rule).reads;
        const bool isRead = std::any_of(reads.begin(), reads.end(), [&](int slot) {
          return std::binary_search(reached.begin(), reached.end(), slot);
        });
        if (isRead) moves_[rule].push_back(i);
      }
    }
  }

  NearestChange run() {
    for (int depth = 1; depth <= kMostChanges; ++depth) {
      if (descend(depth)) return {NearestChange::Kind::Found, changes_};
      if (stop_.stop_requested()) return {NearestChange::Kind::Stopped, {}};
    }
    return {};
  }

 private:
  bool isReached(const Decision& now) const {
    if (now == start_) return false;
    return direction_ == Direction::Milder ? now.isAtMost(start_) : start_.isAtMost(now);
  }

  bool descend(int changesLeft) {
    if (stop_.stop_requested()) return false;
    for (const std::size_t i : worthChanging()) {
      const QuestionRef& ref = given_[i];
      const bool isChanged = std::any_of(changes_.begin(), changes_.end(), [&](const AnswerChange& change) { return change.question == ref; });
      if (isChanged || !position_.isEnabled(ref)) continue;
      for (const PossibleAnswer& answer : position_.ground().questions().at(ref).answers) {
        const Trial trial(position_, ref, answer);
        changes_.push_back({ref, answer});
        if (isReached(decisionOf(position_)) || (changesLeft > 1 && descend(changesLeft - 1))) return true;
        changes_.pop_back();
        if (stop_.stop_requested()) return false;
      }
    }
    return false;
  }

  /// Indices of the given answers of which at least one must change next.
  std::vector<std::size_t> worthChanging() const {
    const Decision now = decisionOf(position_);
    std::vector<std::size_t> indices;
    const auto add = [&](std::size_t rule) { indices.insert(indices.end(), moves_[rule].begin(), moves_[rule].end()); };
    if (direction_ == Direction::Milder)
      addHolders(now, add);
    else
      addRaisers(now, add);
    std::sort(indices.begin(), indices.end());
    indices.erase(std::unique(indices.begin(), indices.end()), indices.end());
    return indices;
  }

  /// Calls `add` with rules of which one has to let go.
  template <class Add>
  void addHolders(const Decision& now, Add add) const {
    // Something graver than at the start has to go first of all.
    if (!now.isAtMost(start_)) {
      forFirst([&](const Decision& part) { return !part.isAtMost(start_); }, add);
      return;
    }
    // Else some part has to become milder, and the first rule that holds it has to let go.
    Decision nothing;
    if (start_.action > nothing.action)
      forFirst([&](const Decision& part) { return part.action >= start_.action; }, add);
    for (const Bay bay : limits::kBays) {
      if (start_.clearance[bay] > nothing.clearance[bay])
        forFirst([&](const Decision& part) { return part.clearance[bay] >= start_.clearance[bay]; }, add);
      if (start_.ceiling[bay] < nothing.ceiling[bay])
        forFirst([&](const Decision& part) { return part.ceiling[bay] <= start_.ceiling[bay]; }, add);
    }
  }

  template <class Holds, class Add>
  void forFirst(Holds holds, Add add) const {
    for (std::size_t i = 0; i < position_.states().size(); ++i)
      for (const RuleState& state : position_.states()[i])
        if (!state.isOut() && holds(partOf(state))) return add(i);
  }

  /// Calls `add` with every rule that could make the missing part graver.
  template <class Add>
  void addRaisers(const Decision& now, Add add) const {
    const bool isMissing = !start_.isAtMost(now);
    for (std::size_t i = 0; i < moves_.size(); ++i) {
      Decision most = position_.ground().shape(i).mostAtFloor.decision;
      most.tighten(position_.ground().shape(i).mostAtReach.decision);
      // While something is milder than at the start, a rule must bring it back; else one must go beyond.
      Decision sum = now;
      sum.tighten(most);
      if (isMissing ? !(sum == now) : !most.isAtMost(start_)) add(i);
    }
  }

  Position& position_;
  const std::vector<QuestionRef>& given_;
  Direction direction_;
  std::stop_token stop_;
  Decision start_;
  std::vector<std::vector<std::size_t>> moves_;  ///< by rule: which given answers can move it
  std::vector<AnswerChange> changes_;
};

}  // namespace

Decision decisionOf(const Position& position) {
  const Totals totals = position.totals();
  Decision decision = totals.floor;
  decision.action = totals.reach.action;
  return decision;
}

NearestChange nearestChange(Position& position, const std::vector<QuestionRef>& given, Direction direction, std::stop_token stop) {
  return ChangeSearch(position, given, direction, std::move(stop)).run();
}

}  // namespace stile::interview
