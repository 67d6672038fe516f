// Which facts decided, which could still turn the outcome, and which are known in any case.
#include <algorithm>
#include <iterator>

#include "expression/evaluation.h"

namespace stile::expression {
namespace {

/// A set of slots, or "every slot there is": what is known in a case that cannot happen.
struct Known {
  bool isEverything = false;
  std::set<int> slots;
};

Known both(Known a, const Known& b) {
  a.isEverything = a.isEverything || b.isEverything;
  a.slots.insert(b.slots.begin(), b.slots.end());
  return a;
}

Known common(const Known& a, const Known& b) {
  if (a.isEverything) return b;
  if (b.isEverything) return a;
  Known result;
  std::set_intersection(a.slots.begin(), a.slots.end(), b.slots.begin(), b.slots.end(),
                        std::inserter(result.slots, result.slots.end()));
  return result;
}

/// What is known when a node is true, and when it is false. Both are worked out at once: asking
/// twice at each `xor` would double the work at every level.
struct KnownEither {
  Known whenTrue, whenFalse;
};

/// Every slot at or below a step that is no boolean.
std::set<int> slotsBelow(const Instructions& code, int index) {
  const Node& node = code.at(index);
  if (isSlot(node.step)) return {node.a};
  std::set<int> found;
  if (hasOperand(node.step)) found = slotsBelow(code, node.a);
  if (hasTwoOperands(node.step)) found.merge(slotsBelow(code, node.b));
  return found;
}

KnownEither knownEither(const Instructions& code, int index) {
  const Node& node = code.at(index);
  if (node.step == Step::Truth)
    return node.a != 0 ? KnownEither{{}, {true, {}}} : KnownEither{{true, {}}, {}};
  const bool isLogic = node.step == Step::Not || node.step == Step::And || node.step == Step::Or ||
                       node.step == Step::Implies || node.step == Step::Xor || node.step == Step::SameTruth;
  if (!isLogic) {
    const Known known{false, slotsBelow(code, index)};
    // A fact that does not apply makes a comparison false whether the others are known or not.
    return {known, known.slots.size() > 1 ? Known{} : known};
  }
  KnownEither a = knownEither(code, node.a);
  if (node.step == Step::Not) return {a.whenFalse, a.whenTrue};
  const KnownEither b = knownEither(code, node.b);
  const auto same = [&] { return common(both(a.whenTrue, b.whenTrue), both(a.whenFalse, b.whenFalse)); };
  const auto different = [&] { return common(both(a.whenTrue, b.whenFalse), both(a.whenFalse, b.whenTrue)); };
  switch (node.step) {
    case Step::And:
      return {both(a.whenTrue, b.whenTrue), common(a.whenFalse, b.whenFalse)};
    case Step::Or:
      return {common(a.whenTrue, b.whenTrue), both(a.whenFalse, b.whenFalse)};
    case Step::Implies:
      return {common(a.whenFalse, b.whenTrue), both(a.whenTrue, b.whenFalse)};
    case Step::Xor:
      return {different(), same()};
    default:
      return {same(), different()};
  }
}

}  // namespace

std::set<int> knownWhen(const Instructions& code, bool outcome) {
  if (code.type.kind != ValueKind::Boolean) return {};
  const KnownEither either = knownEither(code, code.root);
  const Known& known = outcome ? either.whenTrue : either.whenFalse;
  if (known.isEverything) return {code.slots.begin(), code.slots.end()};
  return known.slots;
}

std::vector<int> Evaluation::decidedBy() const {
  std::set<int> found;
  const bool isBoolean = code_.type.kind == ValueKind::Boolean;
  if (isBoolean && truth(code_.root) != Truth::Unknown) {
    explainDecided(code_.root, found);
  } else if (!isBoolean && value().isSettled()) {
    allBelow(code_.root, found);
  } else {
    explainOpen(code_.root, false, found);
    // Every fact is settled and still nothing follows (a division by zero, a number too large, a
    // date literal without a day): then those facts are what keeps it open.
    if (found.empty()) explainOpen(code_.root, true, found);
  }
  std::vector<int> inOrder;
  std::copy_if(code_.slots.begin(), code_.slots.end(), std::back_inserter(inOrder),
               [&](int slot) { return found.contains(slot); });
  return inOrder;
}

int Evaluation::notApplicableBelow(int index) const {
  const std::set<int> slots = slotsBelow(code_, index);
  const auto found =
      std::find_if(slots.begin(), slots.end(), [&](int slot) { return slots_.valueOf(slot).notApplicable; });
  return found == slots.end() ? -1 : *found;
}

void Evaluation::allBelow(int index, std::set<int>& found) const {
  found.merge(slotsBelow(code_, index));
}

/// The first operand in reading order that alone decides, or both.
void Evaluation::explainFirst(const Node& node, Truth decisive, std::set<int>& found) const {
  const Truth decisiveLeft = node.step == Step::Implies ? truthNot(decisive) : decisive;
  if (truth(node.a) == decisiveLeft) return explainDecided(node.a, found);
  if (truth(node.b) == decisive) return explainDecided(node.b, found);
  explainDecided(node.a, found);
  explainDecided(node.b, found);
}

void Evaluation::explainDecided(int index, std::set<int>& found) const {
  const Node& node = code_.at(index);
  switch (node.step) {
    case Step::Truth:
      return;
    case Step::Not:
      return explainDecided(node.a, found);
    case Step::And:
      return explainFirst(node, Truth::False, found);
    case Step::Or:
    case Step::Implies:
      return explainFirst(node, Truth::True, found);
    case Step::Xor:
    case Step::SameTruth:
      explainDecided(node.a, found);
      return explainDecided(node.b, found);
    case Step::CompareNumbers:
    case Step::CompareTexts:
    case Step::CompareDates: {
      const int missing = notApplicableBelow(index);
      if (missing >= 0) {
        found.insert(missing);
        return;
      }
      break;
    }
    default:
      break;
  }
  allBelow(index, found);
}

/// `index` is undecided.
void Evaluation::explainOpen(int index, bool isSettledToo, std::set<int>& found) const {
  const Node& node = code_.at(index);
  switch (node.step) {
    case Step::Not:
      return explainOpen(node.a, isSettledToo, found);
    case Step::And:
    case Step::Or:
    case Step::Implies:
    case Step::Xor:
    case Step::SameTruth:
      // A decided operand cannot turn any more, and here it does not decide either.
      if (truth(node.a) == Truth::Unknown) explainOpen(node.a, isSettledToo, found);
      if (truth(node.b) == Truth::Unknown) explainOpen(node.b, isSettledToo, found);
      return;
    default:
      return explainOpenValue(index, isSettledToo, found);
  }
}

/// The slots at or below a step that are not settled, without those of settled parts.
void Evaluation::explainOpenValue(int index, bool isSettledToo, std::set<int>& found) const {
  const Node& node = code_.at(index);
  if (isSlot(node.step)) {
    if (isSettledToo || !slots_.valueOf(node.a).isSettled()) found.insert(node.a);
    return;
  }
  if (node.step >= Step::Negate && number(index).isSettled()) return;
  if (hasOperand(node.step)) explainOpenValue(node.a, isSettledToo, found);
  if (hasTwoOperands(node.step)) explainOpenValue(node.b, isSettledToo, found);
}

}  // namespace stile::expression
