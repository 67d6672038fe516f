// A compiled expression: a tree of typed steps over fact slots and constants, kept in an array.
// For src/expression only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/rational.h"
#include "expression/interval.h"
#include "expression/program.h"
#include "expression/value.h"

namespace stile::expression {

enum class Step : unsigned char {
  Truth,      ///< constant; a = 0 or 1
  SlotTruth,  ///< a = slot
  Not,        ///< of a
  And,
  Or,
  Xor,
  Implies,
  SameTruth,  ///< a = b of two booleans
  CompareNumbers,
  CompareTexts,
  CompareDates,
  Number,
  Text,
  Date,  ///< constant; a = index
  SlotNumber,
  SlotText,
  SlotDate,  ///< a = slot
  Negate,
  Add,
  Subtract,
  Multiply,
  Divide,
  Convert,  ///< a turned into another unit; b = index of the scale
};

/// One step; `a` and `b` are operands, which stand before it, unless the step says otherwise.
struct Node {
  Step step = Step::Truth;
  Relation relation = Relation::Equal;
  int a = -1;
  int b = -1;
};

/// A change of unit: value * slope + offset.
struct Scale {
  base::Rational slope = 1;
  base::Rational offset;
};

struct Instructions {
  std::vector<Node> nodes;
  std::vector<base::Rational> numbers;
  std::vector<std::string> texts;
  std::vector<base::PartialDate> dates;
  std::vector<Scale> scales;
  int root = -1;
  Type type;
  std::string text;
  std::vector<int> slots;  ///< in reading order, each once

  const Node& at(int node) const { return nodes[static_cast<std::size_t>(node)]; }
  template <class T>
  static const T& item(const std::vector<T>& list, int index) {
    return list[static_cast<std::size_t>(index)];
  }
};

bool isConstant(Step step);
bool isSlot(Step step);
/// Steps whose `a` is another node; those of `hasTwoOperands` have it in `b` too.
bool hasOperand(Step step);
bool hasTwoOperands(Step step);

struct Program::Code {
  Instructions instructions;
};

}  // namespace stile::expression
