#include "questionnaire/own_form_checker.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "base/unit.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"

namespace stile::questionnaire {
namespace {

using Order = std::map<const Item*, std::size_t>;

Order orderOf(const Form& form) {
  Order order;
  for (const Item* item : form.inOrder()) order.emplace(item, order.size());
  return order;
}

/// Checks one item of our own content.
class OwnItemChecker {
 public:
  OwnItemChecker(const Form& form, const Order& order, const Item& item, base::Issues& issues)
      : form_(form), order_(order), item_(item), issues_(issues) {}

  void check() {
    checkWords();
    checkNesting();
    checkOptions();
    checkUnits();
    checkLimits();
    refuseExpressions();
    for (const EnableWhen& condition : item_.enableWhen) checkCondition(condition);
  }

 private:
  void issue(std::string message, std::string remedy) {
    issues_.error(item_.place, item_.linkId, std::move(message), std::move(remedy));
  }
  void issue(const base::Place& place, std::string message, std::string remedy) {
    issues_.error(place, item_.linkId, std::move(message), std::move(remedy));
  }

  void checkWords() {
    // A group may do without: it may be there for the order alone.
    if (item_.text.empty() && item_.type != ItemType::Group) {
      issue("the item has no text", "add \"text\" with the words to show");
    }
    if (item_.type == ItemType::Attachment || item_.type == ItemType::Reference) {
      issue(std::string("answers of the type ") + fhirName(item_.type) + " cannot be kept",
            "ask for a text instead");
    }
    const bool isHelp =
        item_.type == ItemType::Display && !item_.enableWhen.empty() &&
        std::find(item_.controls.begin(), item_.controls.end(), "help") != item_.controls.end();
    if (isHelp) {
      issue("a help text cannot have a condition", "remove enableWhen; help is shown with its question");
    }
  }

  void checkNesting() {
    if (item_.type == ItemType::Group && item_.repeats && Form::repeatingGroupOf(item_)) {
      issue("a repeating group stands within a repeating group", "put it beside the other one");
    }
    if (isQuestion(item_.type) && item_.repeats && !item_.items.empty()) {
      issue("a question with several answers cannot hold items",
            "use a repeating group, or put the items after the question");
    }
  }

  void checkOptions() {
    if (!item_.valueSet.empty()) {
      issue("value sets are not looked up", "list the options themselves as answerOption");
      return;
    }
    if (isChoice(item_.type) && item_.options.empty()) {
      issue("the choice offers no options", "list them as answerOption");
    }
    if (!isChoice(item_.type) && !item_.options.empty()) {
      issue(std::string("options do not fit the type ") + fhirName(item_.type), "use the type choice");
    }
    std::set<std::string> codes;
    for (const Option& option : item_.options) {
      const base::Place place = option.value ? option.value->place() : item_.place;
      if (option.code.empty()) {
        issue(place, "the member \"code\" is missing", "add it");
      } else if (!codes.insert(option.code).second) {
        issue(place, "the option \"" + option.code + "\" stands twice",
              "give every option of a question a code of its own");
      } else if (option.display.empty()) {
        issue(place, "the option \"" + option.code + "\" has no text",
              "add \"display\" with the words to show");
      }
    }
  }

  void checkUnits() {
    for (const UnitOption& unit : item_.unitOptions) {
      if (unit.system != kUcumSystem) {
        issue("the unit's system is not " + std::string(kUcumSystem), "use UCUM codes only");
      } else if (!base::parseUnit(unit.code)) {
        issue("the unit \"" + unit.code + "\" is not known", "use a UCUM code such as mm[Hg] or kg");
      }
    }
    if (item_.type == ItemType::Quantity && item_.unitOptions.empty()) {
      issue("the quantity question offers no unit",
            "add the extension " + std::string(extension_url::kUnitOption) + " for each unit");
    }
  }

  void checkLimits() {
    const bool isNumber = item_.type == ItemType::Integer || item_.type == ItemType::Decimal;
    for (const auto& limit : {item_.least, item_.most}) {
      if (!limit || isNumber || limit->type == "Quantity") continue;
      issue("this limit is not understood",
            "limits here are for integer and decimal questions; ranges of facts stand in the dictionary");
    }
  }

  void refuseExpressions() {
    const auto refuse = [&](bool isThere, const char* name) {
      if (!isThere) return;
      issue(std::string("the extension ") + name + " is not supported",
            "use enableWhen and answerOption; without it the form would ask something else");
    };
    refuse(item_.enableExpression.has_value(), "sdc-questionnaire-enableWhenExpression");
    refuse(item_.calculatedExpression.has_value(), "sdc-questionnaire-calculatedExpression");
    refuse(item_.initialExpression.has_value(), "sdc-questionnaire-initialExpression");
    refuse(!item_.toggles.empty(), "sdc-questionnaire-answerOptionsToggleExpression");
    refuse(!item_.variables.empty(), "variable");
    refuse(!item_.constraints.empty(), "questionnaire-constraint");
    refuse(!item_.options.empty() && !item_.hasAllOptions, "sdc-questionnaire-answerExpression");
  }

  void checkCondition(const EnableWhen& condition) {
    const Item* question = form_.find(condition.question);
    if (!question || !isQuestion(question->type)) return;  // said already
    if (order_.at(question) >= order_.at(&item_)) {
      issue(condition.place,
            "enableWhen looks at \"" + question->linkId + "\", which comes later in the form " + form_.name(),
            "put the question before the items that depend on it");
    }
    const Item* group = Form::repeatingGroupOf(*question);
    if (group && group != Form::repeatingGroupOf(item_) && group != &item_) {
      issue(condition.place,
            "enableWhen looks into the repeating group \"" + group->linkId + "\" from outside",
            "move the item into the group; outside it there is no one answer");
    }
    if (condition.answerType == "Quantity" && condition.unit.empty()) {
      issue(condition.place, "the quantity has no unit code; units are never guessed",
            "give the unit as a UCUM code such as mm[Hg]");
    }
  }

  const Form& form_;
  const Order& order_;
  const Item& item_;
  base::Issues& issues_;
};

}  // namespace

void checkOwnForm(const Form& form, base::Issues& issues) {
  const Order order = orderOf(form);
  for (const Item* item : form.inOrder()) OwnItemChecker(form, order, *item, issues).check();
}

void noteOddities(const Form& form, base::Issues& issues) {
  const Order order = orderOf(form);
  const auto note = [&](const base::Place& place, const Item& item, std::string message, std::string remedy) {
    issues.add({base::Severity::Note, place, item.linkId, std::move(message), std::move(remedy)});
  };
  for (const Item* item : form.inOrder()) {
    if (item->text.empty() && item->type != ItemType::Group) {
      note(item->place, *item, "the item has no text", "add \"text\" with the words to show");
    }
    if (isChoice(item->type) && !item->hasAllOptions) {
      note(item->place, *item, "the form does not hold every answer that may be chosen here",
           "answers outside the list are accepted and told");
    }
    for (const EnableWhen& condition : item->enableWhen) {
      const Item* question = form.find(condition.question);
      if (!question || order.at(question) < order.at(item)) continue;
      note(condition.place, *item,
           "enableWhen looks at \"" + question->linkId + "\", which comes later in the form",
           "put the question before the items that depend on it");
    }
  }
}

}  // namespace stile::questionnaire
