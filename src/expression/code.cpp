#include "expression/code.h"

namespace stile::expression {

bool isConstant(Step step) {
  return step == Step::Truth || step == Step::Number || step == Step::Text || step == Step::Date;
}

bool isSlot(Step step) {
  return step == Step::SlotTruth || step == Step::SlotNumber || step == Step::SlotText ||
         step == Step::SlotDate;
}

bool hasOperand(Step step) {
  return !isConstant(step) && !isSlot(step);
}

bool hasTwoOperands(Step step) {
  return hasOperand(step) && step != Step::Not && step != Step::Negate && step != Step::Convert;
}

}  // namespace stile::expression
