#include "answers/option_checker.h"

#include "answers/member_text.h"

#include <utility>
#include <vector>

#include "base/near_names.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using questionnaire::Item;
using questionnaire::ItemType;
using questionnaire::Option;

/// What an answer says as far as options go.
struct Said {
  std::string code, system, display;
};

Said saidBy(const Occurrence& answer) {
  const json::Node value = *answer.value;
  if (answer.valueType == "Coding")
    return {memberText(value, "code"), memberText(value, "system"), memberText(value, "display")};
  if (answer.valueType == "Reference") return {memberText(value, "reference"), {}, {}};
  if (value.isString()) return {value.string(), {}, {}};
  return {value.isNumber() ? value.numberText() : std::string(), {}, {}};
}

bool isSame(const Said& said, const std::string& type, const Option& option) {
  if (option.type != type || said.code != option.code) return false;
  if (said.system != option.system && !said.system.empty()) return false;
  return !said.code.empty() || (!said.display.empty() && said.display == option.display);
}

}  // namespace

const Option* optionOf(const Occurrence& answer, const Item& question) {
  if (!answer.value) return nullptr;
  const Said said = saidBy(answer);
  for (const Option& option : question.options) {
    if (isSame(said, answer.valueType, option)) return &option;
  }
  return nullptr;
}

void checkOffered(const Occurrence& answer, const Item& question, base::Issues& issues) {
  const bool isList =
      questionnaire::isChoice(question.type) || !question.options.empty() || !question.valueSet.empty();
  if (!isList || optionOf(answer, question)) return;
  const Said said = saidBy(answer);
  // An open choice takes words, also as a Coding without a code.
  const bool isOpen =
      question.type == ItemType::OpenChoice && (answer.valueType == "String" || said.code.empty());
  if (isOpen) return;
  const std::string name = said.code.empty() ? said.display : said.code;
  if (!question.hasAllOptions) {
    issues.add({base::Severity::Note, answer.value->place(), question.linkId,
                "\"" + name + "\" cannot be checked: the form does not hold every answer that may be chosen",
                "check it where the value set " + question.valueSet + " is kept"});
    return;
  }
  std::vector<std::string> codes;
  std::string list;
  for (const Option& option : question.options) {
    const std::string& words = option.code.empty() ? option.display : option.code;
    if (option.code == said.code && !said.code.empty() && option.type == answer.valueType) {
      issues.error(answer.value->place(), question.linkId,
                   "the option \"" + name + "\" is not of the system " + said.system,
                   "its system is " + (option.system.empty() ? "left out" : option.system));
      return;
    }
    codes.push_back(words);
    list += (list.empty() ? "" : ", ") + words;
  }
  issues.error(answer.value->place(), question.linkId,
               "the option \"" + name + "\" is not offered by this question",
               base::didYouMean(name, codes, "the options are " + list));
}

void checkTogether(const ResponseItem& question, base::Issues& issues) {
  std::vector<std::pair<const Occurrence*, const Option*>> chosen;
  for (const auto& answer : question.occurrences) {
    const Option* option = optionOf(*answer, *question.item);
    for (const auto& [earlier, other] : chosen) {
      if (!option || other != option) continue;
      issues.add({base::Severity::Note, answer->value->place(), question.item->linkId,
                  "the same answer stands twice", "keep one of them"});
      break;
    }
    chosen.emplace_back(answer.get(), option);
  }
  if (question.answerCount() < 2) return;
  for (const auto& [answer, option] : chosen) {
    if (!option || !option->isExclusive) continue;
    const std::string& name = option->code.empty() ? option->display : option->code;
    issues.error(answer->value->place(), question.item->linkId,
                 "\"" + name + "\" excludes the other answers given",
                 "keep either this answer or the others");
  }
}

}  // namespace stile::answers
