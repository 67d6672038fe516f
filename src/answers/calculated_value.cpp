#include "answers/calculated_value.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "answers/member_text.h"
#include "base/unit.h"
#include "json/document.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using expression::TemporalKind;
using questionnaire::ItemType;
using questionnaire::Option;

std::string oneLine(json::Writer& writer) {
  std::string text = writer.text();
  while (!text.empty() && text.back() == '\n') text.pop_back();
  return text;
}

CalculatedAnswer ofText(const char* type, const std::string& text) {
  json::Writer out(0);
  out.string(text);
  return {type, oneLine(out), text};
}

CalculatedAnswer ofNode(const char* type, json::Node node, std::string words) {
  json::Writer out(0);
  out.copy(node);
  return {type, oneLine(out), std::move(words)};
}

CalculatedAnswer ofOption(const Option& option) {
  if (option.value) return ofNode(option.type.c_str(), *option.value, option.display);
  json::Writer out(0);
  out.beginObject();
  if (!option.system.empty()) out.member("system", option.system);
  out.member("code", option.code);
  if (!option.display.empty()) out.member("display", option.display);
  out.endObject();
  return {"Coding", oneLine(out), option.display};
}

std::optional<CalculatedAnswer> choiceAnswer(const expression::Item& item,
                                             const questionnaire::Item& question) {
  const bool isObject = item.node && item.node->isObject();
  if (isObject && !memberText(*item.node, "code").empty()) {
    return ofNode("Coding", *item.node, memberText(*item.node, "code"));
  }
  const auto words = item.toText();
  if (!words) return std::nullopt;
  for (const Option& option : question.options) {
    if (option.code == *words) return ofOption(option);
  }
  if (question.type == ItemType::OpenChoice) return ofText("String", *words);
  return std::nullopt;
}

std::optional<CalculatedAnswer> quantityAnswer(const expression::Item& item,
                                               const questionnaire::Item& question) {
  if (item.node && item.node->isObject())
    return ofNode("Quantity", *item.node, item.toText().value_or("a quantity"));
  std::string digits;
  std::string unit;
  if (const auto quantity = item.quantity()) {
    digits = quantity->value.toText();
    unit = quantity->unit;
  } else if (const auto number = item.number(); number && question.unitOptions.size() == 1) {
    digits = number->toText();
    unit = question.unitOptions.front().code;
  }
  if (digits.empty()) return std::nullopt;
  json::Writer out(0);
  out.beginObject().key("value").numberText(digits);
  out.member("unit", unit).member("system", std::string(questionnaire::kUcumSystem)).member("code", unit);
  out.endObject();
  return CalculatedAnswer{"Quantity", oneLine(out), digits + " " + unit};
}

std::optional<CalculatedAnswer> momentAnswer(const expression::Item& item, ItemType type) {
  if (!item.isTemporal()) return std::nullopt;
  const TemporalKind kind = item.temporal().kind;
  const std::string written = item.temporal().toText();
  if (type == ItemType::Time) {
    return kind == TemporalKind::Time ? std::optional(ofText("Time", written)) : std::nullopt;
  }
  if (kind == TemporalKind::Time) return std::nullopt;
  if (type == ItemType::DateTime) return ofText("DateTime", written);
  return ofText("Date", written.substr(0, written.find('T')));
}

std::optional<CalculatedAnswer> answerOf(const expression::Item& item, const questionnaire::Item& question) {
  switch (question.type) {
    case ItemType::Boolean:
      if (!item.isBoolean()) return std::nullopt;
      return CalculatedAnswer{"Boolean", item.boolean() ? "true" : "false",
                              item.boolean() ? "true" : "false"};
    case ItemType::Integer: {
      const auto number = item.number();
      if (!number || !number->value.isWhole()) return std::nullopt;
      const std::string digits = number->value.toText(0);
      return CalculatedAnswer{"Integer", digits, digits};
    }
    case ItemType::Decimal: {
      const auto number = item.number();
      if (!number) return std::nullopt;
      return CalculatedAnswer{"Decimal", number->toText(), number->toText()};
    }
    case ItemType::Date:
    case ItemType::DateTime:
    case ItemType::Time:
      return momentAnswer(item, question.type);
    case ItemType::String:
    case ItemType::Text:
    case ItemType::Url: {
      const auto words = item.toText();
      if (!words || words->empty()) return std::nullopt;
      return ofText(question.type == ItemType::Url ? "Uri" : "String", *words);
    }
    case ItemType::Choice:
    case ItemType::OpenChoice:
      return choiceAnswer(item, question);
    case ItemType::Quantity:
      return quantityAnswer(item, question);
    case ItemType::Attachment:
    case ItemType::Reference:
      if (!item.node || !item.node->isObject()) return std::nullopt;
      return ofNode(question.type == ItemType::Reference ? "Reference" : "Attachment", *item.node,
                    "a resource");
    case ItemType::Group:
    case ItemType::Display:
      return std::nullopt;
  }
  return std::nullopt;
}

/// Words beside a code say nothing more than the code.
bool isDecoration(const std::string& member) {
  return member == "display" || member == "unit" || member == "id" || member == "extension" ||
         member == "userSelected";
}

bool isSame(json::Node expected, json::Node given) {
  if (expected.isNumber() && given.isNumber()) return expected.number() == given.number();
  if (expected.kind() != given.kind()) return false;
  if (expected.isString()) return expected.string() == given.string();
  if (expected.isBoolean()) return expected.boolean() == given.boolean();
  if (expected.isArray() && expected.size() != given.size()) return false;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    if (expected.isObject() && isDecoration(expected.keyAt(i))) continue;
    const auto other = expected.isObject() ? given.find(expected.keyAt(i)) : std::optional(given.at(i));
    if (!other || !isSame(expected.at(i), *other)) return false;
  }
  return true;
}

}  // namespace

std::vector<CalculatedAnswer> calculatedAnswers(const expression::Collection& value,
                                                const questionnaire::Item& question) {
  std::vector<CalculatedAnswer> answers;
  for (const expression::Item& item : value) {
    auto answer = answerOf(item, question);
    if (answer) answers.push_back(std::move(*answer));
    if (!answers.empty() && !question.repeats) break;
  }
  return answers;
}

bool isSameAnswers(const std::vector<CalculatedAnswer>& expected, const ResponseItem& given) {
  if (expected.size() != given.answerCount()) return false;
  std::size_t at = 0;
  for (const auto& answer : given.occurrences) {
    if (!answer->value) continue;
    const CalculatedAnswer& wanted = expected[at++];
    base::Issues ignored;  // written by this file, so it is good JSON
    const auto document = json::Document::parse(wanted.json, "calculated", ignored);
    if (!document || wanted.type != answer->valueType || !isSame(document->root(), *answer->value))
      return false;
  }
  return true;
}

}  // namespace stile::answers
