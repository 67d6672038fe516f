// What FHIR adds to FHIRPath (FHIR R4, "FHIRPath: additional functions") and its questionnaires
// (Structured Data Capture, "Additional capabilities": weight() and ordinal()).
#include <array>

#include "expression/function_table.h"
#include "expression/navigation.h"

namespace stile::expression {
namespace {

constexpr std::array<std::string_view, 3> kWeights{
    "http://hl7.org/fhir/StructureDefinition/itemWeight",
    "http://hl7.org/fhir/StructureDefinition/ordinalValue",
    "http://hl7.org/fhir/StructureDefinition/questionnaire-ordinalValue"};

const TypeModel& model(const Call& call) {
  return call.machine.model();
}

/// The extensions of an item with that url.
void appendExtensions(const Call& call, const Item& item, std::string_view url, Collection& into) {
  Collection extensions;
  appendMember(item, "extension", model(call), extensions);
  for (Item& extension : extensions) {
    const auto written = extension.node ? extension.node->find("url") : std::nullopt;
    if (written && written->isString() && written->string() == url) into.push_back(std::move(extension));
  }
}

Collection extension(Call& call) {
  const auto url = call.textArgument(0);
  Collection result;
  if (!url) return result;
  for (const Item& item : call.input) {
    call.machine.budget().step();
    appendExtensions(call, item, *url, result);
  }
  return result;
}

bool hasOwnValue(const Item& item) {
  return !std::holds_alternative<std::monostate>(item.value);
}

Collection hasValue(Call& call) {
  return {Item::boolean(call.input.size() == 1 && hasOwnValue(call.input.front()))};
}

Collection getValue(Call& call) {
  if (call.input.size() != 1 || !hasOwnValue(call.input.front())) return {};
  Item value;
  value.value = call.input.front().value;
  return {value};
}

/// The resource contained in `%rootResource` (or `%resource`) that a reference `#id` names. Others
/// would have to be fetched, which an expression never does: they are left out.
Collection resolve(Call& call) {
  Collection result;
  const Collection root = call.machine.variable("rootResource", call.syntax);
  for (const Item& item : call.input) {
    std::string reference;
    if (item.isText()) reference = item.text();
    if (item.node && item.node->isObject()) {
      const auto written = item.node->find("reference");
      if (written && written->isString()) reference = written->string();
    }
    if (!reference.starts_with('#')) continue;
    for (const Item& owner : root) {
      if (reference == "#") result.push_back(owner);
      Collection contained;
      appendMember(owner, "contained", model(call), contained);
      for (Item& candidate : contained) {
        call.machine.budget().step();
        const auto id = candidate.node ? candidate.node->find("id") : std::nullopt;
        if (id && id->isString() && id->string() == reference.substr(1))
          result.push_back(std::move(candidate));
      }
    }
  }
  return result;
}

/// The score of an answer or option: the extension on it, on its Coding, or, for a Coding, on the
/// option of %questionnaire with the same code.
Collection weightOf(Call& call, const Item& item) {
  Collection places{item};
  appendMember(item, "value", model(call), places);
  Collection extensions;
  for (const Item& place : places) {
    for (const std::string_view url : kWeights) appendExtensions(call, place, url, extensions);
    if (!extensions.empty()) break;
  }
  Collection result;
  if (!extensions.empty()) appendMember(extensions.front(), "value", model(call), result);
  return result;
}

std::string memberText(const Item& item, std::string_view name) {
  const auto member = item.node && item.node->isObject() ? item.node->find(name) : std::nullopt;
  return member && member->isString() ? member->string() : std::string();
}

bool isSameCoding(const Item& a, const Item& b) {
  return !memberText(a, "code").empty() && memberText(a, "code") == memberText(b, "code") &&
         memberText(a, "system") == memberText(b, "system");
}

/// The options of the form, at any depth, whose Coding is `coding`.
Collection optionsFor(Call& call, const Item& coding) {
  Collection found;
  if (!call.machine.hasVariable("questionnaire")) return found;
  Collection level = call.machine.variable("questionnaire", call.syntax);
  while (!level.empty() && found.empty()) {
    Collection next;
    for (const Item& owner : level) {
      call.machine.budget().step();
      Collection options;
      appendMember(owner, "answerOption", model(call), options);
      for (Item& option : options) {
        call.machine.budget().step();
        Collection values;
        appendMember(option, "value", model(call), values);
        if (!values.empty() && isSameCoding(values.front(), coding)) found.push_back(std::move(option));
      }
      appendMember(owner, "item", model(call), next);
      call.machine.budget().items(next.size());
    }
    level = std::move(next);
  }
  return found;
}

Collection weight(Call& call) {
  Collection result;
  for (const Item& item : call.input) {
    Collection own = weightOf(call, item);
    if (own.empty()) {
      Collection codings;
      appendMember(item, "value", model(call), codings);
      const Item& coding = codings.empty() ? item : codings.front();
      const Collection options = optionsFor(call, coding);
      if (!options.empty()) own = weightOf(call, options.front());
    }
    result.insert(result.end(), own.begin(), own.end());
  }
  return result;
}

Collection needsTerminology(Call& call) {
  call.fail(call.syntax.text + "() needs a terminology or profile service, and there is none here",
            "compare codes with = or in instead");
}

constexpr std::array<FunctionEntry, 11> kFhirFunctions{{{"extension", 1, 1, extension},
                                                    {"hasValue", 0, 0, hasValue},
                                                    {"getValue", 0, 0, getValue},
                                                    {"resolve", 0, 0, resolve},
                                                    {"weight", 0, 0, weight},
                                                    {"ordinal", 0, 0, weight},
                                                    {"memberOf", 1, 1, needsTerminology},
                                                    {"subsumes", 1, 1, needsTerminology},
                                                    {"subsumedBy", 1, 1, needsTerminology},
                                                    {"conformsTo", 1, 1, needsTerminology},
                                                    {"elementDefinition", 0, 0, needsTerminology}}};

}  // namespace

std::span<const FunctionEntry> fhirFunctions() {
  return kFhirFunctions;
}

}  // namespace stile::expression
