#include "questionnaire/item_reader.h"

#include <set>
#include <utility>

#include "base/near_names.h"
#include "base/unit.h"
#include "questionnaire/enable_when_reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"
#include "questionnaire/quantity_reader.h"

namespace stile::questionnaire {
namespace {

/// Reads one item's object; each method takes one aspect of it.
class ItemReader {
 public:
  ItemReader(json::Node node, base::Issues& issues)
      : reader_(node, linkIdOf(node), issues),
        extensions_(reader_),
        issues_(issues),
        item_(std::make_unique<Item>()) {}

  ReadItem read() {
    ReadItem result;
    if (!reader_.isObject()) return result;
    item_->place = reader_.node().place();
    item_->linkId = requireWords(reader_, "linkId");
    if (!readType()) return result;
    readWords();
    readFlags();
    readOptions();
    readUnits();
    readLimits();
    readEnableWhen(reader_, *item_, issues_);
    refuseExpressions();
    result.isHelp = item_->type == ItemType::Display && hasControl("help");
    if (const auto module =
            extensions_.only(extension_url::kSubQuestionnaire, "valueCanonical", json::Kind::String)) {
      result.module = module->string();
      checkPlaceholder();
    } else if (extensions_.has(extension_url::kSubQuestionnaire)) {
      return result;  // said already: the extension names no module
    }
    result.children = reader_.array("item");
    checkChildren(result);
    acceptUnused(reader_, {"linkId", "definition", "code", "prefix", "text", "type", "required", "repeats",
                           "readOnly", "maxLength", "answerValueSet", "initial"});
    reader_.finish();
    result.item = std::move(item_);
    return result;
  }

 private:
  static std::string linkIdOf(json::Node node) {
    const auto linkId = node.find("linkId");
    return linkId && linkId->isString() ? linkId->string() : std::string();
  }

  void issueAt(std::string_view member, std::string message, std::string remedy) {
    const auto found = reader_.find(member);
    reader_.issue(found ? *found : reader_.node(), std::move(message), std::move(remedy));
  }

  bool readType() {
    const std::string word = requireWords(reader_, "type");
    if (word.empty()) return false;
    const auto type = itemType(word);
    if (!type) {
      issueAt("type", "\"" + word + "\" is no item type",
              base::didYouMean(word, itemTypeNames(), "use a type of FHIR R4"));
      return false;
    }
    item_->type = *type;
    if (*type == ItemType::Attachment || *type == ItemType::Reference) {
      issueAt("type", "answers of the type " + word + " cannot be kept", "ask for a text instead");
    }
    return true;
  }

  void readWords() {
    item_->text = reader_.string("text");
    item_->prefix = reader_.string("prefix");
    // A group may do without: it may be there for the order alone.
    const bool isPlaceholder = extensions_.has(extension_url::kSubQuestionnaire);
    if (item_->text.empty() && item_->type != ItemType::Group && !isPlaceholder) {
      reader_.issue(reader_.node(), "the item has no text", "add \"text\" with the words to show");
    }
  }

  void readFlags() {
    item_->isRequired = reader_.boolean("required").value_or(false);
    item_->repeats = reader_.boolean("repeats").value_or(false);
    item_->readOnly = reader_.boolean("readOnly").value_or(false);
    item_->maxLength = reader_.integer("maxLength");
    if (item_->type == ItemType::Display) {
      for (const char* member : {"required", "repeats", "readOnly", "code", "initial"}) {
        if (reader_.find(member)) {
          issueAt(member, std::string("a display item cannot have ") + member,
                  "remove it; nothing is asked here");
        }
      }
    }
    if (const auto hidden = extensions_.only(extension_url::kHidden, "valueBoolean", json::Kind::Boolean)) {
      item_->isHidden = hidden->boolean();
    }
  }

  void readOptions() {
    const auto nodes = reader_.array("answerOption");
    for (const json::Node& node : nodes) readOption(node);
    if (const auto valueSet = reader_.find("answerValueSet")) {
      reader_.issue(*valueSet, "value sets are not looked up", "list the options themselves as answerOption");
    } else if (isChoice(item_->type) && nodes.empty()) {
      reader_.issue(reader_.node(), "the choice offers no options", "list them as answerOption");
    }
    if (!nodes.empty() && !isChoice(item_->type)) {
      issueAt("answerOption", std::string("options do not fit the type ") + fhirName(item_->type),
              "use the type choice");
    }
    if (!nodes.empty() && reader_.find("initial")) {
      issueAt("initial", "an item with options cannot have an initial value",
              "use initialSelected on the option");
    }
    std::set<std::string> codes;
    for (std::size_t i = 0; i < item_->options.size(); ++i) {
      const std::string& code = item_->options[i].code;
      if (!code.empty() && !codes.insert(code).second) {
        reader_.issue(i < nodes.size() ? nodes[i] : reader_.node(),
                      "the option \"" + code + "\" stands twice",
                      "give every option of a question a code of its own");
      }
    }
  }

  void readOption(json::Node node) {
    json::ObjectReader option(node, item_->linkId, issues_);
    Option result;
    if (option.isObject()) {
      Extensions extensions(option);
      int given = 0;
      for (const char* type : {"Coding", "String", "Integer", "Date", "Time"}) {
        const auto value = option.find(memberName("value", type));
        option.find(memberName("_value", type));
        if (value && ++given == 1) readOptionValue(option, type, *value, result);
      }
      if (given != 1) {
        option.issue(node, given == 0 ? "the option has no value" : "the option has more than one value",
                     "give each option one valueCoding with system, code and display");
      }
      const auto exclusive =
          extensions.only(extension_url::kOptionExclusive, "valueBoolean", json::Kind::Boolean);
      result.isExclusive = exclusive && exclusive->boolean();
      acceptUnused(option, {"initialSelected"});
      option.finish();
    }
    item_->options.push_back(std::move(result));
  }

  void readOptionValue(json::ObjectReader& option, std::string_view type, json::Node value, Option& result) {
    if (type == "Coding") {
      const CodingParts coding = readCoding(value, item_->linkId, issues_);
      result.code = coding.code;
      result.system = coding.system;
      result.display = coding.display;
      if (result.display.empty() && !result.code.empty()) {
        option.issue(value, "the option \"" + result.code + "\" has no text",
                     "add \"display\" with the words to show");
      }
    } else if (type == "Integer") {
      if (option.integer("valueInteger")) result.code = result.display = value.numberText();
    } else {
      result.code = result.display = option.string(memberName("value", type));
      if (result.code.empty()) option.issue(value, "the option is empty", "write the words of the option");
    }
  }

  void readUnits() {
    std::vector<json::Node> codings =
        extensions_.each(extension_url::kUnit, "valueCoding", json::Kind::Object);
    const auto more = extensions_.each(extension_url::kUnitOption, "valueCoding", json::Kind::Object);
    codings.insert(codings.end(), more.begin(), more.end());
    std::set<std::string> seen;
    for (const json::Node& node : codings) {
      const CodingParts unit = readCoding(node, item_->linkId, issues_);
      if (unit.code.empty()) continue;
      if (unit.system != kUcumSystem) {
        reader_.issue(node, "the unit's system is not " + std::string(kUcumSystem), "use UCUM codes only");
      } else if (!base::parseUnit(unit.code)) {
        reader_.issue(node, "the unit \"" + unit.code + "\" is not known",
                      "use a UCUM code such as mm[Hg] or kg");
      } else if (seen.insert(unit.code).second) {
        item_->units.push_back(unit.code);
      }
    }
    if (item_->type == ItemType::Quantity && codings.empty()) {
      reader_.issue(reader_.node(), "the quantity question offers no unit",
                    "add the extension " + std::string(extension_url::kUnitOption) + " for each unit");
    }
  }

  void readLimits() {
    item_->minValue = plainLimit(extension_url::kMinValue);
    item_->maxValue = plainLimit(extension_url::kMaxValue);
    if (const auto least = quantityLimit(extension_url::kMinQuantity)) item_->minValue = least;
    if (const auto most = quantityLimit(extension_url::kMaxQuantity)) item_->maxValue = most;
  }

  std::optional<base::Rational> plainLimit(std::string_view url) {
    const auto found = extensions_.all(url);
    if (found.empty()) return std::nullopt;
    const bool takesNumbers = item_->type == ItemType::Integer || item_->type == ItemType::Decimal;
    auto value = found.front().find("valueInteger");
    if (!value) value = found.front().find("valueDecimal");
    const auto number = value && value->isNumber() ? value->number() : std::nullopt;
    if (!number || !takesNumbers) {
      reader_.issue(
          found.front(), "this limit is not understood",
          "limits here are for integer and decimal questions; ranges of facts stand in the dictionary");
      return std::nullopt;
    }
    return number;
  }

  std::optional<base::Rational> quantityLimit(std::string_view url) {
    const auto node = extensions_.only(url, "valueQuantity", json::Kind::Object);
    if (!node) return std::nullopt;
    const auto quantity = readQuantity(*node, item_->linkId, issues_);
    if (!quantity) return std::nullopt;
    const auto unit = base::parseUnit(quantity->unit);
    const auto first = item_->units.empty() ? std::nullopt : base::parseUnit(item_->units.front());
    const auto converted = unit && first ? base::convert(quantity->value, *unit, *first) : std::nullopt;
    if (!converted) {
      reader_.issue(*node, "the limit's unit " + quantity->unit + " does not fit the units of the question",
                    "give the limit in the question's first unit");
    }
    return converted;
  }

  bool hasControl(std::string_view code) {
    for (const json::Node& concept_ :
         extensions_.each(extension_url::kItemControl, "valueCodeableConcept", json::Kind::Object)) {
      const auto codings = concept_.find("coding");
      for (std::size_t i = 0; codings && i < codings->size(); ++i) {
        const auto found = codings->isArray() ? codings->at(i).find("code") : std::nullopt;
        if (found && found->isString() && found->string() == code) return true;
      }
    }
    return false;
  }

  void refuseExpressions() {
    for (const std::string_view url : {extension_url::kEnableWhenExpression, extension_url::kAnswerExpression,
                                       extension_url::kOptionsToggle}) {
      const auto found = extensions_.all(url);
      if (found.empty()) continue;
      reader_.issue(found.front(), "the extension " + std::string(url) + " is not supported",
                    "use enableWhen and answerOption; without it the form would ask something else");
    }
  }

  void checkPlaceholder() {
    if (item_->type != ItemType::Display) {
      issueAt("type", "only a display item can take in a module", "write \"type\": \"display\"");
    }
    if (!item_->enableWhen.empty()) {
      issueAt("enableWhen", "a condition on the place of a module would be lost",
              "put it on a group around the place");
    }
  }

  void checkChildren(const ReadItem& result) {
    if (item_->type == ItemType::Display && !result.children.empty()) {
      issueAt("item", "a display item cannot hold items", "use the type group");
    }
    if (item_->type == ItemType::Group && result.children.empty()) {
      reader_.issue(reader_.node(), "the group is empty", "put items into it, or use the type display");
    }
  }

  json::ObjectReader reader_;
  Extensions extensions_;
  base::Issues& issues_;
  std::unique_ptr<Item> item_;
};

}  // namespace

ReadItem readItem(json::Node node, base::Issues& issues) {
  return ItemReader(node, issues).read();
}

}  // namespace stile::questionnaire
