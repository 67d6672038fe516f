#include "questionnaire/value_set.h"

#include <algorithm>

#include "questionnaire/canonical.h"
#include "questionnaire/extension.h"

namespace stile::questionnaire {
namespace {

std::string text(json::Node node, std::string_view member) {
  const auto found = node.find(member);
  return found && found->isString() ? found->string() : std::string();
}

bool isTrue(json::Node node, std::string_view member) {
  const auto found = node.find(member);
  return found && found->isBoolean() && found->boolean();
}

std::vector<json::Node> list(json::Node node, std::string_view member) {
  std::vector<json::Node> nodes;
  const auto found = node.find(member);
  for (std::size_t i = 0; found && found->isArray() && i < found->size(); ++i) nodes.push_back(found->at(i));
  return nodes;
}

Option optionOf(json::Node concept_, const std::string& system) {
  Option option;
  option.system = system;
  option.code = text(concept_, "code");
  option.display = text(concept_, "display");
  option.prefix = stringIn(concept_, extension_url::kValueSetLabel);
  option.score = numberIn(concept_, {extension_url::kOrdinalValue, extension_url::kItemWeight,
                                     extension_url::kCodeSystemOrdinal, extension_url::kValueSetOrdinal});
  option.translations = translationsOf(concept_, "display");
  for (const json::Node& designation : list(concept_, "designation")) {
    const std::string language = text(designation, "language");
    if (!language.empty()) option.translations.emplace(language, text(designation, "value"));
  }
  return option;
}

void addExpanded(json::Node from, CodeList& into) {
  for (const json::Node& entry : list(from, "contains")) {
    const bool isOffered = !isTrue(entry, "abstract") && !isTrue(entry, "inactive");
    if (isOffered && !text(entry, "code").empty()) {
      into.options.push_back(optionOf(entry, text(entry, "system")));
    }
    addExpanded(entry, into);
  }
}

/// The concepts of a code system or an include, with those below them.
void addConcepts(json::Node from, const std::string& system, CodeList& into) {
  for (const json::Node& concept_ : list(from, "concept")) {
    if (!text(concept_, "code").empty()) into.options.push_back(optionOf(concept_, system));
    addConcepts(concept_, system, into);
  }
}

bool holds(const CodeList& codes, const Option& option) {
  return std::any_of(codes.options.begin(), codes.options.end(), [&](const Option& other) {
    return other.code == option.code && other.system == option.system;
  });
}

/// Adds what is not there yet.
void join(const CodeList& from, CodeList& into) {
  into.isComplete = into.isComplete && from.isComplete;
  for (const Option& option : from.options) {
    if (!holds(into, option)) into.options.push_back(option);
  }
}

CodeList unknownList() {
  CodeList codes;
  codes.isComplete = false;
  return codes;
}

}  // namespace

ContainedValueSets::ContainedValueSets(json::Node questionnaire)
    : resources_(list(questionnaire, "contained")) {}

CodeList ContainedValueSets::codesOf(std::string_view canonical) const {
  return codesOf(canonical, 0);
}

const json::Node* ContainedValueSets::resource(std::string_view type, std::string_view canonical) const {
  for (const json::Node& each : resources_) {
    if (text(each, "resourceType") != type) continue;
    const bool isSame = canonical.starts_with('#') ? text(each, "id") == canonical.substr(1)
                                                   : text(each, "url") == splitCanonical(canonical).url;
    if (isSame && !canonical.empty() && canonical != "#") return &each;
  }
  return nullptr;
}

CodeList ContainedValueSets::codesOf(std::string_view canonical, int depth) const {
  const json::Node* set = resource("ValueSet", canonical);
  if (!set || depth > kMaxValueSetDepth || ++steps_ > kMaxValueSetSteps) {
    CodeList codes = unknownList();
    codes.isFound = set != nullptr;
    return codes;
  }
  if (const auto expansion = set->find("expansion"); expansion && expansion->find("contains")) {
    CodeList codes;
    addExpanded(*expansion, codes);
    const auto total = expansion->find("total");
    const auto count = total && total->isNumber() ? total->integer() : std::nullopt;
    codes.isComplete = !count || *count <= static_cast<long long>(codes.options.size());
    return codes;
  }
  const auto definition = set->find("compose");
  return definition ? compose(*definition, depth) : unknownList();
}

CodeList ContainedValueSets::compose(json::Node compose, int depth) const {
  CodeList codes;
  for (const json::Node& include : list(compose, "include")) join(part(include, depth), codes);
  for (const json::Node& exclude : list(compose, "exclude")) {
    const CodeList without = part(exclude, depth);
    // What is left out but cannot be listed would have to be taken out of the list.
    codes.isComplete = codes.isComplete && without.isComplete;
    std::erase_if(codes.options, [&](const Option& option) { return holds(without, option); });
  }
  return codes;
}

CodeList ContainedValueSets::part(json::Node part, int depth) const {
  const std::string system = text(part, "system");
  CodeList codes;
  if (part.find("filter")) {
    codes = unknownList();
  } else if (part.find("concept")) {
    addConcepts(part, system, codes);
  } else if (!system.empty()) {
    const json::Node* codeSystem = resource("CodeSystem", system);
    const bool isWhole = codeSystem && text(*codeSystem, "content") == "complete";
    if (codeSystem) addConcepts(*codeSystem, system, codes);
    codes.isComplete = isWhole;
  }
  bool isFirst = system.empty() && !part.find("concept");
  for (const json::Node& name : list(part, "valueSet")) {
    const CodeList other = name.isString() ? codesOf(name.string(), depth + 1) : unknownList();
    if (isFirst) {
      codes = other;
    } else if (other.isComplete) {
      std::erase_if(codes.options, [&](const Option& option) { return !holds(other, option); });
    } else {
      codes.isComplete = false;
    }
    isFirst = false;
  }
  return codes;
}

}  // namespace stile::questionnaire
