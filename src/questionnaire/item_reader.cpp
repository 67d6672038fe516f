#include "questionnaire/item_reader.h"

#include <algorithm>
#include <utility>

#include "base/near_names.h"
#include "questionnaire/enable_when_reader.h"
#include "questionnaire/expression_reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"
#include "questionnaire/limit_reader.h"
#include "questionnaire/option_reader.h"

namespace stile::questionnaire {
namespace {

/// Reads one item's object; each method takes one aspect of it.
class ItemReader {
 public:
  ItemReader(json::Node node, const ContainedValueSets& valueSets, base::Issues& issues)
      : reader_(node, linkIdOf(node), issues),
        extensions_(reader_),
        valueSets_(valueSets),
        issues_(issues),
        item_(std::make_unique<Item>()) {}

  ReadItem read() {
    ReadItem result;
    if (!reader_.isObject()) return result;
    item_->place = reader_.node().place();
    item_->node = reader_.node();
    item_->linkId = requireWords(reader_, "linkId");
    if (!readType()) return result;
    readWords();
    readFlags();
    readOptions(reader_, extensions_, valueSets_, *item_, issues_);
    readUnits(reader_, extensions_, valueSets_, *item_, issues_);
    readLimits(reader_, extensions_, *item_, issues_);
    readInitial(reader_, *item_, issues_);
    readEnableWhen(reader_, *item_, issues_);
    readExpressions(reader_, extensions_, *item_, issues_);
    result.isHelp = item_->type == ItemType::Display && item_->enableWhen.empty() &&
                    !item_->enableExpression && hasControl("help");
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
    return true;
  }

  void readWords() {
    item_->text = reader_.string("text");
    item_->prefix = reader_.string("prefix");
    item_->translations = translationsOf(reader_.node(), "text");
    if (const auto words = extensions_.only(extension_url::kShortText, "valueString", json::Kind::String)) {
      item_->shortText = words->string();
    }
    item_->weight = numberIn(reader_.node(), {extension_url::kItemWeight});
    for (const json::Node& concept_ :
         extensions_.each(extension_url::kItemControl, "valueCodeableConcept", json::Kind::Object)) {
      const auto codings = concept_.find("coding");
      for (std::size_t i = 0; codings && codings->isArray() && i < codings->size(); ++i) {
        const auto code = codings->at(i).find("code");
        if (code && code->isString()) item_->controls.push_back(code->string());
      }
    }
  }

  void readFlags() {
    item_->isRequired = reader_.boolean("required").value_or(false);
    item_->repeats = reader_.boolean("repeats").value_or(false);
    item_->readOnly = reader_.boolean("readOnly").value_or(false);
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

  bool hasControl(std::string_view code) const {
    return std::find(item_->controls.begin(), item_->controls.end(), code) != item_->controls.end();
  }

  void checkPlaceholder() {
    if (item_->type != ItemType::Display) {
      issueAt("type", "only a display item can take in a module", "write \"type\": \"display\"");
    }
    if (!item_->enableWhen.empty() || item_->enableExpression) {
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
  const ContainedValueSets& valueSets_;
  base::Issues& issues_;
  std::unique_ptr<Item> item_;
};

}  // namespace

ReadItem readItem(json::Node node, const ContainedValueSets& valueSets, base::Issues& issues) {
  return ItemReader(node, valueSets, issues).read();
}

}  // namespace stile::questionnaire
