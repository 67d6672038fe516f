// What stands beside the ladder: the sentences of a decision, and for each rung what holds it. No
// window in it; the words and the drawing are those of the papers.
#pragma once

#include <string>
#include <vector>

#include "records/decision_notes.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::desktop {

/// Sentences shown of a rung; the others are counted.
inline constexpr std::size_t kHoldsShown = 2;

/// A sentence that holds a rung, and the answer it rests on.
struct HoldLine {
  std::string sentence;  ///< "Type 2 diabetes; until: a physician's reply."
  std::string link;      ///< "diabetes: yes, type 2", or "" when nothing was asked
  int slot = -1;         ///< of the fact the link names
};

struct RungHolds {
  limits::Rung rung = limits::Rung::Light;
  std::vector<HoldLine> lines;  ///< at most kHoldsShown
  std::size_t more = 0;
};

/// Vigorous, moderate, light. A rung open in both bays has no lines; what was said at the rung above
/// is not said again.
std::vector<RungHolds> rungHoldsOf(const screening::Screening& screening);

struct FindingRow {
  std::string title, sentence, because;
  bool isCertain = false;
  std::string rule;  ///< its id
};
/// Certain before open, gravest first within each.
std::vector<FindingRow> findingRowsOf(const screening::Screening& screening);

struct LimitRow {
  std::string term, text, holders;
};
std::vector<LimitRow> limitRowsOf(const screening::Screening& screening, const screening::Content& content);
std::vector<LimitRow> checkRowsOf(const screening::Screening& screening, const screening::Content& content);
/// To whom, how soon, why.
std::vector<LimitRow> referralRowsOf(const screening::Screening& screening, const screening::Content& content);

/// The decision in one screen of text, to copy into another record: at most some thirty lines, and what
/// was folded is counted.
std::string noteOf(const screening::Screening& screening, const screening::Content& content, const records::DecisionNotes& notes);

}  // namespace stile::desktop
