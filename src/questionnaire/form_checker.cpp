#include "questionnaire/form_checker.h"

#include <algorithm>
#include <utility>

#include "base/near_names.h"
#include "base/unit.h"
#include "questionnaire/item_type.h"
#include "questionnaire/moment.h"

namespace stile::questionnaire {
namespace {

/// Checks one condition of one item.
class ConditionChecker {
 public:
  ConditionChecker(const Form& form, const Item& item, const EnableWhen& condition, base::Severity notOffered,
                   base::Issues& issues)
      : form_(form), item_(item), condition_(condition), notOffered_(notOffered), issues_(issues) {}

  void check() {
    if (condition_.question.empty()) return;  // said already
    const Item* question = form_.find(condition_.question);
    if (!question) {
      issue(
          "enableWhen looks at \"" + condition_.question + "\", which is no item of the form " + form_.name(),
          base::didYouMean(condition_.question, linkIds(), "name the linkId of an earlier question"));
      return;
    }
    if (!isQuestion(question->type)) {
      issue("enableWhen looks at \"" + question->linkId + "\", which is no question", "name a question");
      return;
    }
    checkAnswer(*question);
  }

 private:
  void issue(std::string message, std::string remedy, base::Severity severity = base::Severity::Error) {
    issues_.add({severity, condition_.place, item_.linkId, std::move(message), std::move(remedy)});
  }

  std::vector<std::string> linkIds() const {
    std::vector<std::string> list;
    for (const Item* item : form_.inOrder()) {
      if (isQuestion(item->type)) list.push_back(item->linkId);
    }
    return list;
  }

  void checkAnswer(const Item& question) {
    const std::string& type = condition_.answerType;
    if (type.empty()) return;
    if (condition_.op == EnableOperator::Exists) {
      if (type != "Boolean") issue("exists needs answerBoolean", "write \"answerBoolean\": true or false");
      return;
    }
    auto types = answerTypes(question);
    if (question.type == ItemType::Url) types = {"String"};  // R4 has no answerUri
    if (std::find(types.begin(), types.end(), type) == types.end()) {
      issue("answer" + type + " does not fit \"" + question.linkId + "\", which is of the type " +
                fhirName(question.type),
            "compare with answer" + types.front());
      return;
    }
    const bool isOrdering =
        condition_.op != EnableOperator::Equal && condition_.op != EnableOperator::NotEqual;
    const bool hasOrder =
        condition_.number || type == "Date" || type == "DateTime" || type == "Time" || type == "String";
    if (isOrdering && (!hasOrder || type == "Coding")) {
      issue("answers of the type " + std::string(fhirName(question.type)) + " have no order", "use = or !=");
    }
    if (isChoice(question.type)) checkOption(question);
    if (question.type == ItemType::Quantity) checkUnit(question);
    if ((type == "Date" || type == "DateTime") && condition_.text && !momentOf(*condition_.text)) {
      issue("\"" + *condition_.text + "\" is not a date of the calendar",
            "write YYYY-MM-DD, YYYY-MM or YYYY");
    }
    if (type == "Time" && condition_.text && !timeOfDay(*condition_.text)) {
      issue("\"" + *condition_.text + "\" is no time of day", "write hh:mm:ss");
    }
  }

  void checkOption(const Item& question) {
    const std::string wanted = condition_.text     ? *condition_.text
                               : condition_.number ? condition_.number->toText()
                                                   : std::string();
    if (wanted.empty() || question.options.empty()) return;  // said already
    std::vector<std::string> codes;
    for (const Option& option : question.options) {
      codes.push_back(option.code);
      if (option.code != wanted || option.type != condition_.answerType) continue;
      if (condition_.system.empty() || condition_.system == option.system) return;
      if (!question.hasAllOptions) return;
      issue("the option \"" + wanted + "\" of \"" + question.linkId + "\" is of the system " + option.system,
            "compare with that system", notOffered_);
      return;
    }
    const bool mayBeAnother = !question.hasAllOptions || question.type == ItemType::OpenChoice;
    if (mayBeAnother) return;
    issue("\"" + wanted + "\" is no option of \"" + question.linkId + "\"",
          base::didYouMean(wanted, codes, "name the code of an option that the question offers"),
          notOffered_);
  }

  void checkUnit(const Item& question) {
    const auto unit = base::parseUnit(condition_.unit);
    if (!unit) return;  // said already
    for (const std::string& offered : question.units) {
      const auto other = base::parseUnit(offered);
      if (other && base::comparable(*unit, *other)) continue;
      issue("the unit " + condition_.unit + " cannot be compared with " + offered + ", which \"" +
                question.linkId + "\" offers",
            "compare in a unit that fits every unit offered");
      return;
    }
  }

  const Form& form_;
  const Item& item_;
  const EnableWhen& condition_;
  base::Severity notOffered_;
  base::Issues& issues_;
};

}  // namespace

void checkForm(const Form& form, base::Severity notOffered, base::Issues& issues) {
  for (const Item* item : form.inOrder()) {
    for (const EnableWhen& condition : item->enableWhen) {
      ConditionChecker(form, *item, condition, notOffered, issues).check();
    }
  }
}

}  // namespace stile::questionnaire
