#include "facts/plain_value.h"

#include <algorithm>
#include <utility>

#include "base/near_names.h"
#include "json/reader.h"

namespace stile::facts {
namespace {

using expression::Value;
using expression::ValueKind;

/// Reads the value of one fact; `unit` is the member beside a number, if there is one.
class ValueReader {
 public:
  ValueReader(const Definition& definition, const std::string& subject, base::Issues& issues)
      : definition_(definition), subject_(subject), issues_(issues) {}

  bool read(json::Node node, const std::optional<json::Node>& unit, PlainValue& into) {
    if (unit && definition_.type != FactType::Quantity) {
      return refuse(*unit, "\"" + definition_.label + "\" has no unit", "leave \"unit\" out");
    }
    if (definition_.isMultiple) return readCodes(node, into);
    Given& given = into.given;
    switch (definition_.type) {
      case FactType::Boolean:
        if (!node.isBoolean()) return wrongType(node, "true or false, without quotes");
        given.value = Value::boolean(node.boolean());
        given.written = node.boolean() ? "true" : "false";
        return true;
      case FactType::Integer:
      case FactType::Decimal:
        if (!node.isNumber()) return wrongType(node, "a number without quotes");
        return readNumber(node, node.numberText(), {}, given);
      case FactType::Quantity:
        return readQuantity(node, unit, given);
      case FactType::Code:
        if (!node.isString()) return wrongType(node, "one of " + optionList());
        if (!isOption(node)) return false;
        given.value = Value::code(node.string());
        given.written = node.string();
        return true;
      case FactType::Date:
        return readDate(node, given);
      case FactType::Text:
        if (!node.isString() || node.string().empty()) return wrongType(node, "a text between quotes");
        given.value = Value::ofText(node.string());
        given.written = node.string();
        return true;
    }
    return false;
  }

 private:
  bool refuse(json::Node node, std::string message, std::string remedy) {
    issues_.error(node.place(), subject_, std::move(message), std::move(remedy));
    return false;
  }

  bool wrongType(json::Node node, const std::string& wanted) {
    return refuse(node, "\"" + definition_.label + "\" is of the type " + toText(definition_.type),
                  "write " + wanted);
  }

  std::string optionList() const {
    std::string list;
    for (const OptionDefinition& option : definition_.options)
      list += (list.empty() ? "\"" : ", \"") + option.code + "\"";
    return list;
  }

  bool isOption(json::Node node) {
    if (definition_.option(node.string())) return true;
    std::vector<std::string_view> codes;
    for (const OptionDefinition& option : definition_.options) codes.push_back(option.code);
    return refuse(node, "\"" + node.string() + "\" is no option of \"" + definition_.label + "\"",
                  base::didYouMean(base::nearNames(node.string(), codes), "write one of " + optionList()));
  }

  bool readCodes(json::Node node, PlainValue& into) {
    if (!node.isArray())
      return wrongType(node, "an array of the options chosen, such as [\"" + someOption() + "\"]");
    if (node.size() == 0) {
      return refuse(node, "an empty list does not say whether anything was answered",
                    "write the option that means none of these, or null when it was not answered");
    }
    for (std::size_t i = 0; i < node.size(); ++i) {
      const json::Node one = node.at(i);
      if (!one.isString()) return wrongType(one, "one of " + optionList());
      if (!isOption(one)) return false;
      auto& codes = into.chosen.codes;
      if (std::find(codes.begin(), codes.end(), one.string()) == codes.end()) codes.push_back(one.string());
    }
    return true;
  }

  std::string someOption() const {
    return definition_.options.empty() ? "" : definition_.options.front().code;
  }

  bool readQuantity(json::Node node, const std::optional<json::Node>& unit, Given& given) {
    if (unit && !unit->isString()) return refuse(*unit, "a unit is a text", "write it between quotes");
    if (node.isNumber())
      return readNumber(node, node.numberText(), unit ? unit->string() : std::string(), given);
    if (!node.isString() || unit) {
      return wrongType(node, "for example \"120 " + definition_.valueType.unit.text + "\"");
    }
    const std::string& text = node.string();
    const std::size_t first = text.find_first_not_of(' ');
    const std::size_t end = first == std::string::npos ? first : text.find(' ', first);
    const std::string digits = first == std::string::npos ? "" : text.substr(first, end - first);
    const std::size_t unitStart = end == std::string::npos ? end : text.find_first_not_of(' ', end);
    std::string unitText = unitStart == std::string::npos ? "" : text.substr(unitStart);
    while (!unitText.empty() && unitText.back() == ' ') unitText.pop_back();
    return readNumber(node, digits, unitText, given);
  }

  bool readNumber(json::Node node, const std::string& digits, const std::string& unit, Given& given) {
    const auto number = base::Rational::parse(digits);
    if (!number) {
      return refuse(node, "\"" + digits + "\" is no number that can be used here",
                    definition_.type == FactType::Quantity
                        ? "write for example \"120 " + definition_.valueType.unit.text + "\""
                        : "write digits with a point for decimals");
    }
    given.written = unit.empty() ? digits : digits + " " + unit;
    const auto value =
        checkedNumber(definition_, *number, unit, given.written, node.place(), subject_, issues_);
    if (!value) return false;
    given.value = Value::number(*value);
    return true;
  }

  bool readDate(json::Node node, Given& given) {
    const auto date = node.isString() ? base::PartialDate::parse(node.string()) : std::nullopt;
    if (!date) return wrongType(node, "\"2026-03-15\", or \"2026-03\" or \"2026\" when no more is known");
    given.value = Value::ofDate(*date);
    given.written = node.string();
    return true;
  }

  const Definition& definition_;
  const std::string& subject_;
  base::Issues& issues_;
};

void setUnknown(const Definition& definition, UnknownReason reason, PlainValue& into) {
  into.given.reason = reason;
  into.given.value = Value::unknown(definition.valueType.kind);
  into.chosen.othersUnknown = reason;
}

}  // namespace

std::optional<base::PartialDate> readPlainDate(json::Node node, base::Date today, const std::string& subject,
                                               base::Issues& issues) {
  const auto date = node.isString() ? base::PartialDate::parse(node.string()) : std::nullopt;
  if (!date) {
    issues.error(node.place(), subject, "this is no date",
                 "write \"2026-11-25\", or \"2026-11\" when the day is not known");
    return std::nullopt;
  }
  if (date->first() > today) {
    issues.error(node.place(), subject,
                 "the date " + date->toText() + " lies after the screening date " + today.toText(),
                 "correct the date");
    return std::nullopt;
  }
  return date;
}

std::optional<UnknownReason> readStatedReason(json::Node node, const std::string& subject,
                                              base::Issues& issues) {
  const auto reason = node.isString() ? statedReason(node.string()) : std::nullopt;
  if (!reason) {
    issues.error(node.place(), subject, "this is no reason for a missing answer",
                 "write one of \"notSure\", \"declined\", \"notAsked\", \"notAnswered\", \"notConfirmed\"");
  }
  return reason;
}

std::optional<PlainValue> readPlainValue(const Definition& definition, const std::string& subject,
                                         json::Node node, base::Date today, base::Issues& issues) {
  PlainValue result;
  if (node.isNull()) {
    setUnknown(definition, UnknownReason::NotAnswered, result);
    return result;
  }
  ValueReader values(definition, subject, issues);
  if (!node.isObject()) {
    return values.read(node, std::nullopt, result) ? std::optional(std::move(result)) : std::nullopt;
  }
  json::ObjectReader reader(node, subject, issues);
  const auto unknown = reader.find("unknown");
  const auto value = reader.find("value");
  const auto unit = reader.find("unit");
  result.given.givenBy = reader.string("givenBy");
  bool isGood = true;
  if (const auto date = reader.find("date")) {
    result.given.date = readPlainDate(*date, today, subject, issues);
    isGood = result.given.date.has_value();
  }
  reader.finish();
  if (unknown.has_value() == value.has_value()) {
    reader.issue(node, "a value given as an object has either \"value\" or \"unknown\"",
                 "write for example {\"value\": …, \"date\": \"2026-11-01\"}");
    return std::nullopt;
  }
  if (unknown) {
    const auto reason = readStatedReason(*unknown, subject, issues);
    if (!reason) return std::nullopt;
    setUnknown(definition, *reason, result);
  } else if (value->isNull()) {
    setUnknown(definition, UnknownReason::NotAnswered, result);
  } else {
    isGood = values.read(*value, unit, result) && isGood;
  }
  return isGood ? std::optional(std::move(result)) : std::nullopt;
}

}  // namespace stile::facts
