// A form: an HL7 FHIR R4 Questionnaire, loaded and checked.
//
// Topic modules are Questionnaires of their own; a form takes them in through the standard's
// modular-form extension (sdc-questionnaire-subQuestionnaire on a display item). linkIds are
// unique in the assembled form and are the fact ids.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "base/rational.h"
#include "base/unit.h"
#include "json/document.h"

namespace stile::questionnaire {

enum class ItemType { Group, Display, Boolean, Decimal, Integer, Date, DateTime, Time, String, Text,
                      Url, Choice, OpenChoice, Attachment, Reference, Quantity };

struct Option {
  std::string code;     ///< code, or the text of a string/integer/date option
  std::string system;
  std::string display;
  bool isExclusive = false;  ///< questionnaire-optionExclusive: "none of these"
};

enum class EnableOperator { Exists, Equal, NotEqual, Greater, Less, GreaterOrEqual, LessOrEqual };

struct EnableWhen {
  std::string question;  ///< linkId
  EnableOperator op = EnableOperator::Equal;
  // the answer to compare with; exactly one is set
  std::optional<bool> boolean;
  std::optional<base::Rational> number;  ///< decimal, integer or quantity
  std::string unit;                      ///< UCUM code of a quantity
  std::optional<std::string> text;       ///< code, string, date as written
  std::string answerType;                ///< as in the member's name: "Boolean", "Coding" …
  std::string system;                    ///< of a Coding; "" when not written
  base::Place place;
};

struct Item {
  std::string linkId;
  ItemType type = ItemType::Group;
  std::string text;
  std::string prefix;
  std::string help;              ///< why we ask (item of type display with help control)
  std::string helpLinkId;        ///< of that display item, which is no item of its own here
  bool isRequired = false;
  bool repeats = false;
  bool isHidden = false;
  bool readOnly = false;
  std::vector<Option> options;
  std::vector<std::string> units;  ///< UCUM codes offered (questionnaire-unit, unitOption); first = default
  std::optional<base::Rational> minValue, maxValue;  ///< a quantity's are in its first unit
  std::optional<long long> maxLength;                ///< of texts, in code points
  std::vector<EnableWhen> enableWhen;
  bool enableAny = false;        ///< enableBehavior: any (else all)
  std::vector<std::unique_ptr<Item>> items;
  const Item* parent = nullptr;
  std::string topic;             ///< url of the module it came from
  base::Place place;
};

class Form {
 public:
  const std::string& url() const { return url_; }
  const std::string& version() const { return version_; }
  const std::string& name() const { return name_; }    ///< file name without .json, e.g. "clinic"
  const std::string& title() const { return title_; }
  const std::vector<std::unique_ptr<Item>>& items() const { return items_; }
  const Item* find(std::string_view linkId) const;
  /// Every item in form order.
  const std::vector<const Item*>& inOrder() const { return inOrder_; }
  /// The innermost repeating group an item stands in, or nullptr.
  static const Item* repeatingGroupOf(const Item& item);

 private:
  friend class FormLoader;
  std::string url_, version_, name_, title_;
  std::vector<std::unique_ptr<Item>> items_;
  std::vector<const Item*> inOrder_;
  std::map<std::string, const Item*, std::less<>> byLinkId_;
};

/// All Questionnaires of a folder, by file name; modules taken in where a form names them.
class FormSet {
 public:
  /// Loads and checks every text in `files` (name -> JSON text). All issues are collected:
  /// unknown members, duplicate or missing linkIds, enableWhen on an unknown or later item or
  /// with the wrong type, modules that are missing or contain each other, unknown modifier
  /// extensions, missing texts, options without a code.
  static FormSet load(const std::map<std::string, std::string>& files, base::Issues& issues);
  const Form* byName(std::string_view name) const;  ///< file name without .json
  const Form* byUrl(std::string_view canonical) const;  ///< with or without |version
  const std::vector<std::shared_ptr<const Form>>& forms() const { return forms_; }  ///< assembled, root forms only

 private:
  std::vector<std::shared_ptr<const Form>> forms_;
};

}  // namespace stile::questionnaire
