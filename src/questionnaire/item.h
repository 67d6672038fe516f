// One item of a form as the standard describes it: what is asked, of which type, within which limits,
// and under which conditions.
//
// What HL7 FHIR R4 and its Structured Data Capture guide say of an item stands here as plain data.
// Nothing here decides: conditions are evaluated by enablement.h and by the room answers.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/rational.h"
#include "expression/evaluator.h"
#include "json/document.h"

namespace stile::questionnaire {

enum class ItemType {
  Group,
  Display,
  Boolean,
  Decimal,
  Integer,
  Date,
  DateTime,
  Time,
  String,
  Text,
  Url,
  Choice,
  OpenChoice,
  Attachment,
  Reference,
  Quantity
};

/// Language (BCP-47) -> words, from the translation extension.
using Translations = std::map<std::string, std::string>;

/// One answer that may be chosen.
struct Option {
  std::string code;  ///< code, or the text of a string/integer/date/time/reference option
  std::string system;
  std::string display;
  bool isExclusive = false;     ///< questionnaire-optionExclusive: "none of these"
  std::string type = "Coding";  ///< ending of value[x]: Coding, String, Integer, Date, Time, Reference
  std::string prefix;           ///< questionnaire-optionPrefix, valueset-label: "a."
  bool isSelected = false;      ///< initialSelected
  std::optional<base::Rational> score;  ///< ordinalValue or itemWeight
  Translations translations;            ///< of the display
  std::optional<json::Node> value;      ///< as the form writes it; none for options of a value set
};

enum class EnableOperator { Exists, Equal, NotEqual, Greater, Less, GreaterOrEqual, LessOrEqual };

struct Item;

struct EnableWhen {
  std::string question;  ///< linkId
  EnableOperator op = EnableOperator::Equal;
  // the answer to compare with; exactly one is set
  std::optional<bool> boolean;
  std::optional<base::Rational> number;  ///< decimal, integer or quantity
  std::string unit;                      ///< UCUM code of a quantity
  std::optional<std::string> text;       ///< code, string, date, time or reference as written
  std::string answerType;                ///< as in the member's name: "Boolean", "Coding" …
  std::string system;                    ///< of a Coding; "" when not written
  std::optional<json::Node> answer;      ///< as the form writes it
  base::Place place;
  const Item* asked = nullptr;           ///< the question in the same form; null when there is none
};

/// A FHIR Expression. Only FHIRPath is evaluated here.
struct Expression {
  std::string name;      ///< of a variable; else ""
  std::string language;  ///< "text/fhirpath" …
  std::string text;
  std::optional<json::Node> node;                 ///< the string that holds the text
  std::optional<expression::Expression> program;  ///< the text parsed; none in other languages
  base::Place place;

  bool isFhirPath() const { return language == "text/fhirpath"; }
};

/// questionnaire-constraint and targetConstraint: what must hold, and what to say when it does not.
struct Constraint {
  std::string key;
  std::string human;
  bool isWarning = false;  ///< severity "warning": told, and the response stays acceptable
  Expression expression;
  base::Place place;
};

/// A smallest or largest value.
struct Limit {
  std::string type;                      ///< Integer, Decimal, Date, DateTime, Time, Quantity
  std::optional<base::Rational> number;  ///< of numbers and quantities
  std::string unit;                      ///< UCUM code; "" when a quantity has none
  std::string text;                      ///< as written, for messages; of dates and times the value
};

/// A unit that may be chosen for a quantity.
struct UnitOption {
  std::string code, system, display;
};

/// answerOptionsToggleExpression: these options may be chosen only while the condition holds.
struct OptionToggle {
  std::vector<Option> options;
  Expression condition;
};

/// A value that stands there from the start.
struct Initial {
  std::string type;  ///< ending of value[x]
  json::Node value;
};

struct Item {
  std::string linkId;
  ItemType type = ItemType::Group;
  std::string text;
  std::string prefix;
  std::string shortText;              ///< for little room, such as a line of a list; "" = none
  Translations translations;          ///< of the text
  std::string help;                   ///< why we ask (item of type display with help control)
  std::string helpLinkId;             ///< of that display item, which is no item of its own here
  std::vector<std::string> controls;  ///< questionnaire-itemControl codes: drop-down, slider …
  std::string entryFormat;            ///< an example to show in an empty field
  bool isRequired = false;
  bool repeats = false;
  bool isHidden = false;
  bool readOnly = false;
  std::vector<Option> options;
  /// False where `options` is not the whole list: a value set that only a terminology server can
  /// expand, an answerExpression, or a choice that lists nothing.
  bool hasAllOptions = true;
  std::vector<OptionToggle> toggles;
  std::string valueSet;            ///< canonical of answerValueSet; "" = none
  std::vector<std::string> units;  ///< UCUM codes offered (questionnaire-unit, unitOption); first = default
  std::vector<UnitOption> unitOptions;  ///< every unit offered, of any system
  bool unitsAreOpen = false;            ///< others may be used: sdc-questionnaire-unitOpen, unitValueSet
  std::optional<base::Rational> minValue, maxValue;  ///< a quantity's are in its first unit
  std::optional<Limit> least, most;                  ///< the same as written, of every type
  std::optional<long long> minLength, maxLength;     ///< of texts, in code points
  std::optional<long long> maxDecimalPlaces;
  std::optional<long long> minOccurs, maxOccurs;  ///< answers or repetitions
  std::string regex;                              ///< the whole text must match; "" = any
  std::optional<base::Rational> maxSizeBytes;     ///< of an attachment
  std::vector<std::string> mimeTypes;             ///< of an attachment; empty = any
  std::vector<std::string> referenceTypes;        ///< resource types; empty = any
  std::vector<Initial> initial;
  std::vector<EnableWhen> enableWhen;
  bool enableAny = false;                          ///< enableBehavior: any (else all)
  std::optional<Expression> enableExpression;      ///< sdc-questionnaire-enableWhenExpression
  std::optional<Expression> calculatedExpression;  ///< kept up to date while the form is filled in
  std::optional<Expression> initialExpression;     ///< evaluated once, when the form is opened
  std::vector<Expression> variables;               ///< for this item and those within it
  std::vector<Constraint> constraints;
  std::optional<base::Rational> weight;  ///< itemWeight of the item itself
  std::vector<std::unique_ptr<Item>> items;
  const Item* parent = nullptr;
  std::string topic;               ///< url of the module it came from
  std::optional<json::Node> node;  ///< the item as the form writes it (%qitem)
  base::Place place;
};

/// The item as a line of a list with others: its short words, or else the whole text.
const std::string& lineOf(const Item& item);

/// The words in `language`, or in a wider one (de for de-CH), else `text`.
const std::string& wordsIn(const std::string& language, const std::string& text,
                           const Translations& translations);

}  // namespace stile::questionnaire
