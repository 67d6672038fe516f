// Two passes. The first finds, for every state of the session (slot, position, lines in this
// section, minutes left, last option of a repeated purpose), the best that can still come in the
// wishes that add up (all but equipment and minutes). The second walks only along selections that
// reach this best and keeps, per state and set of equipment, the one with fewest minutes and
// earliest ids. Both keep every optimum, so the result is exact.
#include "plan/choice.h"

#include <algorithm>
#include <bit>
#include <map>
#include <unordered_map>
#include <utility>

namespace stile::plan {
namespace {

using Gain = std::array<int, 6>;  // the first six places of Worth

struct State {
  int position = -1;  // none yet
  int lines = 0;      // in the section of the slot
  int minutesLeft = 0;
  int last = kSkipped;  // option of the slot before, within one purpose
  auto operator<=>(const State&) const = default;
};

Gain plus(const Gain& a, const Gain& b) {
  Gain sum{};
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = a[i] + b[i];
  return sum;
}

Gain gainOf(const Slot& slot, const Option& option, int position) {
  const bool changes = position >= 0 && position != option.position;
  return {slot.weight, option.preference, option.wish, -option.unsuited, option.isAdapted ? -1 : 0, changes ? -1 : 0};
}

// True if `a` may stand in for `b` in any selection without making it worse.
bool replaces(const Option& a, const Option& b, bool comesEarlier) {
  if (a.position != b.position || a.preference < b.preference || a.wish < b.wish || a.unsuited > b.unsuited ||
      a.isAdapted > b.isAdapted || (a.equipment & ~b.equipment) != 0 || a.minutes > b.minutes ||
      a.budgetMinutes > b.budgetMinutes) {
    return false;
  }
  return comesEarlier || a.preference > b.preference || a.wish > b.wish || a.unsuited < b.unsuited || a.isAdapted < b.isAdapted ||
         a.minutes < b.minutes;
}

class Search {
 public:
  explicit Search(const ChoiceProblem& problem)
      : problem_(problem), usable_(problem.slots.size()), memo_(problem.slots.size() + 1) {
    for (std::size_t i = 0; i < problem.slots.size(); ++i) usable_[i] = usableOptions(i);
  }

  Selection run();

 private:
  // Options that can be part of the best selection: an option that as many others replace as the
  // purpose may have lines is never needed.
  std::vector<int> usableOptions(std::size_t slot) const;
  bool isRepeated(std::size_t slot) const {
    return problem_.slots[slot].copy > 0 || (slot + 1 < problem_.slots.size() && problem_.slots[slot + 1].copy > 0);
  }
  template <class Visit>
  void forEachMove(std::size_t slot, const State& state, Visit visit) const;
  State stateAfter(std::size_t slot, const State& state, int option) const;
  const Gain& best(std::size_t slot, const State& state);

  static std::uint64_t keyOf(const State& state) {
    return (static_cast<std::uint64_t>(state.position + 1) << 48) | (static_cast<std::uint64_t>(state.lines) << 36) |
           (static_cast<std::uint64_t>(state.minutesLeft) << 16) | static_cast<std::uint64_t>(state.last + 1);
  }

  const ChoiceProblem& problem_;
  std::vector<std::vector<int>> usable_;
  std::vector<std::unordered_map<std::uint64_t, Gain>> memo_;
};

std::vector<int> Search::usableOptions(std::size_t slot) const {
  const auto& options = problem_.slots[slot].options;
  std::vector<int> kept;
  for (std::size_t b = 0; b < options.size(); ++b) {
    bool isNeeded = true;
    for (std::size_t a = 0; a < options.size() && isNeeded && !isRepeated(slot); ++a) {
      if (a != b && replaces(options[a], options[b], a < b)) isNeeded = false;
    }
    if (isNeeded) kept.push_back(static_cast<int>(b));
  }
  return kept;
}

State Search::stateAfter(std::size_t slot, const State& state, int option) const {
  State next = state;
  const auto& here = problem_.slots[slot];
  if (option != kSkipped) {
    const auto& taken = here.options[static_cast<std::size_t>(option)];
    next.position = taken.position;
    next.lines += 1;
    if (problem_.minutesAtMost) next.minutesLeft -= taken.budgetMinutes;
  }
  next.last = kSkipped;
  if (slot + 1 < problem_.slots.size()) {
    const auto& coming = problem_.slots[slot + 1];
    if (coming.section != here.section) next.lines = 0;
    if (coming.copy > 0) next.last = option;
  }
  return next;
}

template <class Visit>
void Search::forEachMove(std::size_t slot, const State& state, Visit visit) const {
  const auto& here = problem_.slots[slot];
  const bool hasRoom = state.lines < problem_.linesAtMost[static_cast<std::size_t>(here.section)];
  const bool mayTake = hasRoom && (here.copy == 0 || state.last != kSkipped);
  for (int option : mayTake ? usable_[slot] : std::vector<int>{}) {
    const auto& taken = here.options[static_cast<std::size_t>(option)];
    if (here.copy > 0 && option <= state.last) continue;
    if (problem_.minutesAtMost && taken.budgetMinutes > state.minutesLeft) continue;
    visit(option, gainOf(here, taken, state.position), stateAfter(slot, state, option));
  }
  visit(kSkipped, Gain{}, stateAfter(slot, state, kSkipped));
}

const Gain& Search::best(std::size_t slot, const State& state) {
  static const Gain nothing{};
  if (slot == problem_.slots.size()) return nothing;
  const std::uint64_t key = keyOf(state);
  if (auto known = memo_[slot].find(key); known != memo_[slot].end()) return known->second;
  std::optional<Gain> found;
  forEachMove(slot, state, [&](int, const Gain& gain, const State& next) {
    const Gain total = plus(gain, best(slot + 1, next));
    if (!found || total > *found) found = total;
  });
  return memo_[slot].emplace(key, *found).first->second;
}

struct Label {
  int minutes = 0;
  Selection taken;
};
using Labels = std::map<std::pair<State, std::uint32_t>, Label>;

// In the same state, a label that needs no other pieces, no more minutes and comes first makes the
// other one superfluous: whatever follows, it ends no worse.
Labels withoutWorse(Labels labels) {
  for (auto first = labels.begin(); first != labels.end();) {
    auto last = first;
    while (last != labels.end() && last->first.first == first->first.first) ++last;
    for (auto worse = first; worse != last;) {
      const bool isSuperfluous = std::any_of(first, last, [&](const Labels::value_type& better) {
        return &better != &*worse && (better.first.second & ~worse->first.second) == 0 &&
               better.second.minutes <= worse->second.minutes && comesFirst(better.second.taken, worse->second.taken);
      });
      if (!isSuperfluous) {
        ++worse;
        continue;
      }
      const bool isFirst = worse == first;
      worse = labels.erase(worse);
      if (isFirst) first = worse;
    }
    first = last;
  }
  return labels;
}

Selection Search::run() {
  State start;
  start.minutesLeft = std::max(0, problem_.minutesAtMost.value_or(0));
  Labels labels;
  labels.emplace(std::pair{start, 0u}, Label{});
  for (std::size_t slot = 0; slot < problem_.slots.size(); ++slot) {
    Labels following;
    for (const auto& [key, label] : labels) {
      const auto& [state, equipment] = key;
      const Gain goal = best(slot, state);
      forEachMove(slot, state, [&](int option, const Gain& gain, const State& next) {
        if (plus(gain, best(slot + 1, next)) != goal) return;
        Label longer = label;
        longer.taken.push_back(option);
        std::uint32_t pieces = equipment;
        if (option != kSkipped) {
          const auto& taken = problem_.slots[slot].options[static_cast<std::size_t>(option)];
          longer.minutes += taken.minutes;
          pieces |= taken.equipment;
        }
        auto [at, isNew] = following.try_emplace(std::pair{next, pieces}, longer);
        Label& held = at->second;
        if (!isNew && (longer.minutes < held.minutes ||
                       (longer.minutes == held.minutes && comesFirst(longer.taken, held.taken)))) {
          held = std::move(longer);
        }
      });
    }
    labels = withoutWorse(std::move(following));
  }
  const Label* chosen = nullptr;
  int fewest = 0;
  for (const auto& [key, label] : labels) {
    const int pieces = std::popcount(key.second);
    if (chosen == nullptr || std::pair{pieces, label.minutes} < std::pair{fewest, chosen->minutes} ||
        (pieces == fewest && label.minutes == chosen->minutes && comesFirst(label.taken, chosen->taken))) {
      chosen = &label;
      fewest = pieces;
    }
  }
  return chosen->taken;
}

}  // namespace

std::optional<Worth> worthOf(const ChoiceProblem& problem, const Selection& selection) {
  Worth worth{};
  std::vector<int> lines(problem.linesAtMost.size(), 0);
  std::uint32_t equipment = 0;
  int position = -1, budget = 0;
  for (std::size_t i = 0; i < problem.slots.size(); ++i) {
    const Slot& slot = problem.slots[i];
    const int option = selection[i];
    if (option == kSkipped) continue;
    if (slot.copy > 0 && (selection[i - 1] == kSkipped || option <= selection[i - 1])) return std::nullopt;
    const Option& taken = slot.options[static_cast<std::size_t>(option)];
    const auto section = static_cast<std::size_t>(slot.section);
    if (++lines[section] > problem.linesAtMost[section]) return std::nullopt;
    const Gain gain = gainOf(slot, taken, position);
    for (std::size_t place = 0; place < gain.size(); ++place) worth[place] += gain[place];
    position = taken.position;
    equipment |= taken.equipment;
    worth[7] -= taken.minutes;
    budget += taken.budgetMinutes;
  }
  if (problem.minutesAtMost && budget > std::max(0, *problem.minutesAtMost)) return std::nullopt;
  worth[6] = -std::popcount(equipment);
  return worth;
}

bool comesFirst(const Selection& a, const Selection& b) {
  return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(), [](int left, int right) {
    return static_cast<unsigned>(left) < static_cast<unsigned>(right);  // none (-1) comes last
  });
}

Selection choose(const ChoiceProblem& problem) { return Search(problem).run(); }

}  // namespace stile::plan
