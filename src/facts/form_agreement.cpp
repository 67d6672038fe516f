// Whether the forms ask what the dictionary defines.
#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "facts/dictionary.h"
#include "base/near_names.h"

namespace stile::facts {
namespace {

using questionnaire::Form;
using questionnaire::Item;
using questionnaire::ItemType;

constexpr const char* kOptionSystem = "https://stile.example/option";

bool agrees(ItemType item, FactType fact) {
  switch (fact) {
    case FactType::Boolean:
      return item == ItemType::Boolean;
    case FactType::Integer:
      return item == ItemType::Integer;
    case FactType::Decimal:
      return item == ItemType::Decimal;
    case FactType::Quantity:
      return item == ItemType::Quantity;
    case FactType::Code:
      return item == ItemType::Choice || item == ItemType::OpenChoice;
    case FactType::Date:
      return item == ItemType::Date;
    case FactType::Text:
      return item == ItemType::String || item == ItemType::Text;
  }
  return false;
}

/// Conditions of its own or of a group above, as far up as its repetition.
bool isConditional(const Item& item) {
  for (const Item* at = &item; at; at = at->parent) {
    if (at->type == ItemType::Group && at->repeats) return false;
    if (!at->enableWhen.empty()) return true;
  }
  return false;
}

/// Checks the items of all forms; modules that stand in several forms are reported once.
class Agreement {
 public:
  Agreement(const Dictionary& dictionary, base::Issues& issues) : dictionary_(dictionary), issues_(issues) {}

  void check(const Form& form) {
    for (const Item* item : form.inOrder()) {
      if (item->type == ItemType::Group) {
        checkGroup(*item);
      } else if (item->type != ItemType::Display) {
        checkQuestion(*item);
      } else if (dictionary_.find(item->linkId)) {
        error(item->place, item->linkId,
              "\"" + item->linkId + "\" is a fact, and an item of the type display cannot be answered",
              "give the item the fact's type, or another linkId");
      }
      checkConditions(*item, form);
    }
  }

 private:
  void error(const base::Place& place, const std::string& subject, std::string message, std::string remedy) {
    if (!reported_.insert({place.file, place.line, place.column, subject, message}).second) return;
    issues_.error(place, subject, std::move(message), std::move(remedy));
  }

  void checkGroup(const Item& item) {
    const bool isFactGroup = dictionary_.groupIndex(item.linkId) >= 0;
    if (item.repeats && !isFactGroup) {
      error(item.place, item.linkId,
            "the repeating group \"" + item.linkId + "\" is no group of the dictionary",
            "define it in \"groups\" of a fact file");
    } else if (!item.repeats && isFactGroup) {
      error(item.place, item.linkId, "the dictionary says that the group \"" + item.linkId + "\" repeats",
            "add \"repeats\": true, or give the group another linkId");
    }
  }

  void checkQuestion(const Item& item) {
    const Definition* fact = dictionary_.find(item.linkId);
    if (!fact) {
      error(item.place, item.linkId, "there is no fact \"" + item.linkId + "\"",
            base::didYouMean(dictionary_.similar(item.linkId), "define it in the dictionary"));
      return;
    }
    if (fact->isPolicy() || fact->isOption()) {
      error(item.place, item.linkId,
            fact->isPolicy() ? "a policy is no question" : "an option is no question of its own",
            fact->isPolicy() ? "choose it in rules/policy.json"
                             : "ask \"" + dictionary_.at(fact->derived.of).id + "\"");
      return;
    }
    if (!fact->retiredFor.empty()) {
      error(item.place, item.linkId, "the fact \"" + fact->id + "\" is retired",
            "ask \"" + fact->retiredFor + "\"");
    }
    if (!agrees(item.type, fact->type)) {
      error(item.place, item.linkId, "the fact \"" + fact->id + "\" is of the type " + toText(fact->type),
            "make the item's type agree with it");
      return;
    }
    const Item* group = Form::repeatingGroupOf(item);
    if ((group ? group->linkId : std::string()) != fact->group) {
      error(item.place, item.linkId,
            fact->group.empty() ? "the fact \"" + fact->id + "\" belongs to no repeating group"
                                : "the fact \"" + fact->id + "\" belongs to the group " + fact->group,
            "move the item");
    }
    if (item.repeats != fact->isMultiple) {
      error(item.place, item.linkId,
            fact->isMultiple ? "this choice may have several answers" : "the dictionary allows one answer",
            fact->isMultiple ? "add \"repeats\": true" : "remove \"repeats\"");
    }
    if (item.minValue || item.maxValue) {
      error(item.place, item.linkId, "ranges stand in the dictionary only", "remove minValue and maxValue");
    }
    if (fact->type == FactType::Quantity) checkUnits(item, *fact);
    if (fact->type == FactType::Code) checkOptions(item, *fact);
    if (fact->type == FactType::Code && !fact->isMultiple && !fact->isDerived() && !fact->whenNotApplicable &&
        isConditional(item)) {
      error(item.place, item.linkId,
            "this choice is not always asked, and the dictionary does not say what it is then",
            "add \"whenNotApplicable\" with one of its options to the fact \"" + fact->id + "\"");
    }
  }

  void checkUnits(const Item& item, const Definition& fact) {
    for (const std::string& text : item.units) {
      const auto unit = base::parseUnit(text);
      if (unit && base::comparable(*unit, fact.valueType.unit, fact.valueType.analyte)) continue;
      error(item.place, item.linkId,
            "the unit \"" + text + "\" cannot be converted to " + fact.valueType.unit.text,
            "offer a unit of the same kind");
    }
  }

  void checkOptions(const Item& item, const Definition& fact) {
    for (const questionnaire::Option& offered : item.options) {
      const OptionDefinition* option = fact.option(offered.code);
      if (!option) {
        error(item.place, item.linkId,
              "\"" + offered.code + "\" is no option of the fact \"" + fact.id + "\"",
              "use the codes of the dictionary");
        continue;
      }
      if (option->isNone != offered.isExclusive) {
        error(item.place, item.linkId,
              option->isNone
                  ? "the option \"" + offered.code + "\" means none of the others"
                  : "the option \"" + offered.code + "\" is exclusive here, but not in the dictionary",
              option->isNone ? "add the optionExclusive extension"
                             : "remove the extension, or mark the option \"none\"");
      }
      if (offered.system != kOptionSystem) {
        error(item.place, item.linkId,
              "the option \"" + offered.code + "\" has the system \"" + offered.system + "\"",
              std::string("write ") + kOptionSystem);
      }
    }
  }

  void checkConditions(const Item& item, const Form& form) {
    for (const questionnaire::EnableWhen& condition : item.enableWhen) {
      const Definition* fact = dictionary_.find(condition.question);
      if (!fact || !form.find(condition.question)) continue;
      const auto unit = condition.unit.empty() ? std::nullopt : base::parseUnit(condition.unit);
      if (unit && !base::comparable(*unit, fact->valueType.unit, fact->valueType.analyte)) {
        error(condition.place, item.linkId,
              "the unit \"" + condition.unit + "\" cannot be compared with " + fact->valueType.unit.text,
              "compare in a unit of the same kind");
      }
      if (fact->type == FactType::Code && condition.text && !fact->option(*condition.text)) {
        error(condition.place, item.linkId,
              "\"" + *condition.text + "\" is no option of the fact \"" + fact->id + "\"",
              "use the codes of the dictionary");
      }
    }
  }

  const Dictionary& dictionary_;
  base::Issues& issues_;
  std::set<std::tuple<std::string, int, int, std::string, std::string>> reported_;
};

}  // namespace

void Dictionary::checkForms(const questionnaire::FormSet& forms, base::Issues& issues) const {
  Agreement agreement(*this, issues);
  for (const auto& form : forms.forms()) {
    // A form that asks no fact at all, such as a physician's reply, is read by others.
    const auto& items = form->inOrder();
    const bool asksFacts =
        std::any_of(items.begin(), items.end(), [&](const Item* item) { return find(item->linkId); });
    if (asksFacts) agreement.check(*form);
  }
}

}  // namespace stile::facts
