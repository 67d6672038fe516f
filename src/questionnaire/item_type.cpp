#include "questionnaire/item_type.h"

#include <algorithm>
#include <array>
#include <utility>

namespace stile::questionnaire {
namespace {

constexpr std::array<std::pair<ItemType, const char*>, 16> kNames{{
    {ItemType::Group, "group"},
    {ItemType::Display, "display"},
    {ItemType::Boolean, "boolean"},
    {ItemType::Decimal, "decimal"},
    {ItemType::Integer, "integer"},
    {ItemType::Date, "date"},
    {ItemType::DateTime, "dateTime"},
    {ItemType::Time, "time"},
    {ItemType::String, "string"},
    {ItemType::Text, "text"},
    {ItemType::Url, "url"},
    {ItemType::Choice, "choice"},
    {ItemType::OpenChoice, "open-choice"},
    {ItemType::Attachment, "attachment"},
    {ItemType::Reference, "reference"},
    {ItemType::Quantity, "quantity"},
}};

std::vector<std::string> choiceAnswerTypes(const Item& item) {
  std::vector<std::string> types;
  const auto add = [&](const std::string& type) {
    if (std::find(types.begin(), types.end(), type) == types.end()) types.push_back(type);
  };
  for (const Option& option : item.options) add(option.type);
  // A value set holds codes; a choice that lists nothing may be meant for answers of any kind.
  if (types.empty() || !item.valueSet.empty()) add("Coding");
  if (item.options.empty() && item.valueSet.empty()) {
    for (const char* type : {"String", "Integer", "Date", "Time", "Reference"}) add(type);
  }
  if (item.type == ItemType::OpenChoice) {
    add("String");
    add("Coding");
  }
  return types;
}

}  // namespace

std::optional<ItemType> itemType(std::string_view fhirName) {
  for (const auto& [type, name] : kNames) {
    if (name == fhirName) return type;
  }
  return std::nullopt;
}

const char* fhirName(ItemType type) {
  for (const auto& [known, name] : kNames) {
    if (known == type) return name;
  }
  return "";
}

const std::vector<std::string>& itemTypeNames() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> list;
    list.reserve(kNames.size());
    for (const auto& [type, name] : kNames) list.emplace_back(name);
    return list;
  }();
  return names;
}

bool isQuestion(ItemType type) {
  return type != ItemType::Group && type != ItemType::Display;
}

bool isChoice(ItemType type) {
  return type == ItemType::Choice || type == ItemType::OpenChoice;
}

std::vector<std::string> answerTypes(const Item& item) {
  switch (item.type) {
    case ItemType::Group:
    case ItemType::Display:
      return {};
    case ItemType::Boolean:
      return {"Boolean"};
    case ItemType::Decimal:
      return {"Decimal"};
    case ItemType::Integer:
      return {"Integer"};
    case ItemType::Date:
      return {"Date"};
    case ItemType::DateTime:
      return {"DateTime"};
    case ItemType::Time:
      return {"Time"};
    case ItemType::String:
    case ItemType::Text:
      return {"String"};
    case ItemType::Url:
      return {"Uri"};
    case ItemType::Choice:
    case ItemType::OpenChoice:
      return choiceAnswerTypes(item);
    case ItemType::Attachment:
      return {"Attachment"};
    case ItemType::Reference:
      return {"Reference"};
    case ItemType::Quantity:
      return {"Quantity"};
  }
  return {};
}

const std::vector<std::string>& allAnswerTypes() {
  static const std::vector<std::string> types{"Boolean",  "Decimal",  "Integer",    "Date",
                                              "DateTime", "Time",     "String",     "Uri",
                                              "Coding",   "Quantity", "Attachment", "Reference"};
  return types;
}

std::string memberName(std::string_view stem, std::string_view ending) {
  return std::string(stem) + std::string(ending);
}

}  // namespace stile::questionnaire
