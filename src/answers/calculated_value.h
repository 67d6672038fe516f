// What an expression yields, as answers to a question. For src/answers only.
#pragma once

#include <string>
#include <vector>

#include "answers/response_tree.h"
#include "expression/item.h"

namespace stile::answers {

/// One answer to be: the member's ending and its JSON.
struct CalculatedAnswer {
  std::string type;   ///< ending of value[x]
  std::string json;   ///< one line
  std::string words;  ///< for messages
};

/// The items of `value` that can answer `question`, in their order; of a question that does not repeat
/// the first. An integer answers a decimal question, and a number a quantity question that offers
/// one unit; items of other types are left out.
std::vector<CalculatedAnswer> calculatedAnswers(const expression::Collection& value,
                                                const questionnaire::Item& question);

/// The same values in the same order; numbers compare by value, whatever digits they are written with.
bool isSameAnswers(const std::vector<CalculatedAnswer>& expected, const ResponseItem& given);

}  // namespace stile::answers
