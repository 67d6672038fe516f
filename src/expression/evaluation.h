// Running a compiled expression on values, and saying what decided. For src/expression only.
#pragma once

#include <optional>
#include <set>
#include <vector>

#include "expression/code.h"

namespace stile::expression {

/// One run over one set of values.
class Evaluation {
 public:
  Evaluation(const Instructions& code, const Slots& slots) : code_(code), slots_(slots) {}

  Value value() const;
  std::vector<int> decidedBy() const;

 private:
  Truth truth(int node) const;
  Interval number(int node) const;
  Interval converted(const Interval& value, const Scale& scale) const;
  Truth compareTexts(const Node& node) const;
  Truth compareDates(const Node& node) const;
  const std::string* text(int node) const;
  const base::PartialDate* date(int node) const;

  Value absent() const;  ///< of a text, code or date that is not there
  /// The slot (-1 when none) below `node` that does not apply.
  int notApplicableBelow(int node) const;
  void explainDecided(int node, std::set<int>& found) const;
  void explainFirst(const Node& node, Truth decisive, std::set<int>& found) const;
  void explainOpen(int node, bool isSettledToo, std::set<int>& found) const;
  void explainOpenValue(int node, bool isSettledToo, std::set<int>& found) const;
  void allBelow(int node, std::set<int>& found) const;

  const Instructions& code_;
  const Slots& slots_;
};

/// See Program::knownWhen().
std::set<int> knownWhen(const Instructions& code, bool outcome);

}  // namespace stile::expression
