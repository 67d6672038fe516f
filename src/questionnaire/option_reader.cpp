#include "questionnaire/option_reader.h"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>
#include <utility>

#include "base/unit.h"
#include "questionnaire/item_type.h"

namespace stile::questionnaire {
namespace {

constexpr std::array<const char*, 6> kOptionTypes{"Coding", "String", "Integer", "Date", "Time", "Reference"};

/// Reads one element of answerOption.
class OptionReader {
 public:
  OptionReader(json::Node node, const Item& item, base::Issues& issues)
      : reader_(node, item.linkId, issues), item_(item), issues_(issues) {}

  Option read() {
    if (!reader_.isObject()) return option_;
    Extensions extensions(reader_);
    int given = 0;
    for (const char* type : kOptionTypes) {
      const auto value = reader_.find(memberName("value", type));
      reader_.find(memberName("_value", type));
      if (value && ++given == 1) readValue(type, *value);
    }
    if (given != 1) {
      reader_.issue(reader_.node(),
                    given == 0 ? "the option has no value" : "the option has more than one value",
                    "give each option one valueCoding with system, code and display");
    }
    const auto exclusive =
        extensions.only(extension_url::kOptionExclusive, "valueBoolean", json::Kind::Boolean);
    option_.isExclusive = exclusive && exclusive->boolean();
    const auto prefix = extensions.only(extension_url::kOptionPrefix, "valueString", json::Kind::String);
    if (prefix) option_.prefix = prefix->string();
    if (!option_.score) {
      option_.score = numberIn(reader_.node(), {extension_url::kOrdinalValue, extension_url::kItemWeight});
    }
    option_.isSelected = reader_.boolean("initialSelected").value_or(false);
    acceptUnused(reader_, {"initialSelected"});
    reader_.finish();
    return option_;
  }

 private:
  void readValue(const std::string& type, json::Node value) {
    option_.type = type;
    option_.value = value;
    if (type == "Coding") {
      const CodingParts coding = readOpenCoding(value, item_.linkId, issues_);
      option_.code = coding.code;
      option_.system = coding.system;
      option_.display = coding.display;
      option_.translations = translationsOf(value, "display");
      option_.score = numberIn(value, {extension_url::kOrdinalValue, extension_url::kItemWeight});
    } else if (type == "Integer") {
      if (reader_.integer("valueInteger")) option_.code = option_.display = value.numberText();
    } else if (type == "Reference") {
      const auto reference = value.find("reference");
      const auto display = value.find("display");
      if (reference && reference->isString()) option_.code = option_.display = reference->string();
      if (display && display->isString()) option_.display = display->string();
    } else {
      option_.code = option_.display = reader_.string(memberName("value", type));
      option_.translations = translationsOf(reader_.node(), memberName("value", type));
      if (option_.code.empty()) reader_.issue(value, "the option is empty", "write the words of the option");
    }
    checkType(type, value);
  }

  /// Choices take every kind; other questions only options of their own type.
  void checkType(const std::string& type, json::Node value) {
    if (isChoice(item_.type)) return;
    const auto types = answerTypes(item_);
    if (std::find(types.begin(), types.end(), type) != types.end()) return;
    reader_.issue(
        value, "options of the type " + type + " do not fit a question of the type " + fhirName(item_.type),
        "use the type choice");
  }

  json::ObjectReader reader_;
  const Item& item_;
  base::Issues& issues_;
  Option option_;
};

/// The standard's rule que-5: which types may offer answers.
bool mayOffer(ItemType type) {
  switch (type) {
    case ItemType::Choice:
    case ItemType::OpenChoice:
    case ItemType::Decimal:
    case ItemType::Integer:
    case ItemType::Date:
    case ItemType::DateTime:
    case ItemType::Time:
    case ItemType::String:
    case ItemType::Text:
    case ItemType::Reference:
    case ItemType::Quantity:
      return true;
    default:
      return false;
  }
}

void checkTwice(json::ObjectReader& reader, const std::vector<json::Node>& nodes, const Item& item) {
  std::set<std::tuple<std::string, std::string, std::string>> seen;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    const Option& option = item.options[i];
    if (option.code.empty() || seen.emplace(option.type, option.system, option.code).second) continue;
    reader.issue(nodes[i], "the option \"" + option.code + "\" stands twice",
                 "give every option of a question a code of its own");
  }
}

void readValueSet(json::ObjectReader& reader, const ContainedValueSets& valueSets, json::Node node,
                  Item& item) {
  if (!node.isString()) {
    reader.string("answerValueSet");  // says what is wrong
    return;
  }
  item.valueSet = node.string();
  CodeList codes = valueSets.codesOf(item.valueSet);
  if (!codes.isFound && item.valueSet.starts_with('#')) {
    reader.issue(node, "the form does not contain the value set " + item.valueSet,
                 "put it into \"contained\", with the id after the #");
  }
  item.hasAllOptions = codes.isComplete;
  item.options = std::move(codes.options);
}

}  // namespace

void readOptions(json::ObjectReader& reader, Extensions& extensions, const ContainedValueSets& valueSets,
                 Item& item, base::Issues& issues) {
  const auto nodes = reader.array("answerOption");
  const auto valueSet = reader.find("answerValueSet");
  reader.find("_answerValueSet");
  for (const json::Node& node : nodes) item.options.push_back(OptionReader(node, item, issues).read());
  checkTwice(reader, nodes, item);
  if (!nodes.empty() && valueSet) {
    reader.issue(*valueSet, "answerOption and answerValueSet exclude each other", "keep one of them");
  } else if (valueSet) {
    readValueSet(reader, valueSets, *valueSet, item);
  } else if (nodes.empty()) {
    item.hasAllOptions = false;
  }
  if (extensions.has(extension_url::kAnswerExpression)) item.hasAllOptions = false;
  if ((!nodes.empty() || valueSet) && !mayOffer(item.type)) {
    reader.issue(nodes.empty() ? *valueSet : nodes.front(),
                 std::string("options do not fit the type ") + fhirName(item.type), "use the type choice");
  }
  if (const auto initial = reader.find("initial"); initial && !nodes.empty()) {
    reader.issue(*initial, "an item with options cannot have an initial value",
                 "use initialSelected on the option");
  }
}

void readUnits(json::ObjectReader& reader, Extensions& extensions, const ContainedValueSets& valueSets,
               Item& item, base::Issues& issues) {
  std::vector<json::Node> codings = extensions.each(extension_url::kUnit, "valueCoding", json::Kind::Object);
  const auto more = extensions.each(extension_url::kUnitOption, "valueCoding", json::Kind::Object);
  codings.insert(codings.end(), more.begin(), more.end());
  for (const json::Node& node : codings) {
    const CodingParts unit = readOpenCoding(node, item.linkId, issues);
    item.unitOptions.push_back({unit.code, unit.system, unit.display});
  }
  if (const auto set = extensions.only(extension_url::kUnitValueSet, "valueCanonical", json::Kind::String)) {
    const CodeList codes = valueSets.codesOf(set->string());
    if (!codes.isFound && set->string().starts_with('#')) {
      reader.issue(*set, "the form does not contain the value set " + set->string(),
                   "put it into \"contained\", with the id after the #");
    }
    for (const Option& code : codes.options)
      item.unitOptions.push_back({code.code, code.system, code.display});
    item.unitsAreOpen = !codes.isComplete;
  }
  item.unitsAreOpen =
      item.unitsAreOpen || item.unitOptions.empty() || extensions.has(extension_url::kUnitOpen);
  for (const UnitOption& unit : item.unitOptions) {
    if (unit.system != kUcumSystem || !base::parseUnit(unit.code)) continue;
    if (std::find(item.units.begin(), item.units.end(), unit.code) == item.units.end()) {
      item.units.push_back(unit.code);
    }
  }
}

}  // namespace stile::questionnaire
