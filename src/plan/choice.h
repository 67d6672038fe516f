// The choice of exercises as a bare combinatorial problem: slots in session order, options for
// each, and the best selection by a fixed order of wishes. Knows no exercises and no limits.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace stile::plan {

/// One way to fill a slot.
struct Option {
  int preference = 0;           ///< 1 preferred by findings, -1 discouraged
  int wish = 0;                 ///< 1 what the client likes or aims at, -1 what the client would rather not
  int unsuited = 0;             ///< how far the starting level is from those it is meant for
  bool isAdapted = false;
  int position = 0;             ///< number of the position it is done in
  std::uint32_t equipment = 0;  ///< one bit per piece
  int minutes = 0;
  int budgetMinutes = 0;        ///< minutes that count against the session cap
};

/// A purpose to be covered. Options are sorted by id. Where a purpose may have several
/// exercises, its slots follow each other with rising `copy` and the same options; each takes a
/// later option than the one before.
struct Slot {
  int weight = 0;   ///< priority of the purpose
  int section = 0;  ///< number of the section; slots of one section stand together
  int copy = 0;
  std::vector<Option> options;
};

struct ChoiceProblem {
  std::vector<Slot> slots;
  std::vector<int> linesAtMost;      ///< by section number
  std::optional<int> minutesAtMost;  ///< for the sum of budgetMinutes
};

/// What a selection is worth, first wish first; greater is better in every place:
/// weight of the purposes covered, preference, the client's wishes, - distance from the level, - adaptations, - position changes,
/// - pieces of equipment, - minutes.
using Worth = std::array<int, 8>;

inline constexpr int kSkipped = -1;
inline constexpr int kMostPieces = 32;  ///< different pieces of equipment
/// The option taken in each slot, or kSkipped.
using Selection = std::vector<int>;

/// nullopt when the selection breaks a bound of the problem.
std::optional<Worth> worthOf(const ChoiceProblem& problem, const Selection& selection);

/// True if `a` comes first where both are worth the same: the earlier option in the first slot
/// that differs, an option before none.
bool comesFirst(const Selection& a, const Selection& b);

/// The best selection, exactly; deterministic.
Selection choose(const ChoiceProblem& problem);

}  // namespace stile::plan
