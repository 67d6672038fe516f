#include "facts/fact_table.h"

#include "facts/derivation_order.h"
#include "json/document.h"

namespace stile::facts {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

/// A cell may hold anything but a bar or a line's end.
std::string cell(const std::string& text) {
  std::string safe;
  for (const char letter : text) {
    if (letter == '|') safe += '\\';
    safe += letter == '\n' ? ' ' : letter;
  }
  return safe.empty() ? "–" : safe;
}

std::string typeWords(const Definition& definition) {
  std::string text = toText(definition.type);
  if (definition.isMultiple) text += ", several answers";
  if (definition.type == FactType::Quantity) text += " in " + definition.valueType.unit.text;
  if (definition.possibleLow)
    text += ", " + definition.possibleLow->toText() + " to " + definition.possibleHigh->toText();
  return text;
}

std::string optionWords(const Definition& definition) {
  std::string text;
  for (const OptionDefinition& option : definition.options) {
    text += (text.empty() ? "" : "; ") + option.code + " = " + option.display;
  }
  return text;
}

std::string originWords(const Dictionary& dictionary, const Definition& definition) {
  if (definition.isPolicy()) return "policy, now " + *definition.policy->text;
  if (!definition.isDerived())
    return definition.group.empty() ? "answer" : "answer, each of " + definition.group;
  const Derivation& derived = definition.derived;
  std::string text = toText(derived.kind);
  if (derived.kind == DerivedKind::Expression && derived.program) return text + " " + derived.program->text();
  if (derived.kind == DerivedKind::ClassMember) return text + " " + joined(derived.codes);
  if (derived.kind == DerivedKind::Norm) text += " " + derived.table;
  std::vector<std::string> reads;
  for (const int slot : slotsReadBy(definition)) reads.push_back(dictionary.at(slot).id);
  return reads.empty() ? text : text + " of " + joined(reads);
}

std::string unknownWords(const Definition& definition) {
  std::string text = toText(definition.unknownAs);
  if (definition.optionalWhen) text += ", optional when " + definition.optionalWhen->text();
  if (!definition.optionalBecause.empty()) text += " (" + definition.optionalBecause + ")";
  return text;
}

void writePeriod(json::Writer& out, const base::Period& period) {
  out.member("freshFor", base::toText(period));
}

void writeFact(json::Writer& out, const Dictionary& dictionary, const Definition& definition) {
  out.beginObject();
  out.member("id", definition.id).member("topic", definition.topic).member("label", definition.label);
  if (!definition.group.empty()) out.member("group", definition.group);
  out.member("type", toText(definition.type));
  if (definition.type == FactType::Quantity) out.member("unit", definition.valueType.unit.text);
  if (definition.isMultiple) out.member("multiple", true);
  if (!definition.options.empty()) {
    out.key("options").beginArray();
    for (const OptionDefinition& option : definition.options) {
      out.beginObject().member("code", option.code).member("display", option.display);
      if (option.isNone) out.member("none", true);
      out.endObject();
    }
    out.endArray();
  }
  if (definition.possibleLow) {
    out.key("possible")
        .beginArray()
        .number(*definition.possibleLow)
        .number(*definition.possibleHigh)
        .endArray();
  }
  if (definition.plausibleLow) {
    out.key("plausible")
        .beginArray()
        .number(*definition.plausibleLow)
        .number(*definition.plausibleHigh)
        .endArray();
  }
  if (definition.smallestChange) out.key("smallestChange").number(*definition.smallestChange);
  out.member("concern", toText(definition.concern)).member("unknownAs", toText(definition.unknownAs));
  if (definition.optionalWhen) out.member("optionalWhen", definition.optionalWhen->text());
  if (!definition.optionalBecause.empty()) out.member("optionalBecause", definition.optionalBecause);
  if (definition.freshFor) writePeriod(out, *definition.freshFor);
  out.member("origin", originWords(dictionary, definition));
  if (!definition.retiredFor.empty()) out.member("retiredFor", definition.retiredFor);
  if (!definition.code.empty()) out.member("code", definition.code);
  out.key("sources").beginArray();
  for (const std::string& source : definition.sources) out.string(source);
  out.endArray().endObject();
}

}  // namespace

std::string tableAsText(const Dictionary& dictionary) {
  std::string text;
  std::string topic;
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const Definition& definition = dictionary.at(slot);
    if (definition.isOption()) continue;
    if (text.empty() || definition.topic != topic) {
      topic = definition.topic;
      text += (text.empty() ? "## " : "\n## ") + topic + "\n\n";
      text +=
          "| fact | meaning | type | options | concern | if unknown | counts for | comes from | sources |\n";
      text += "| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
    }
    const std::string age = definition.freshFor ? base::toText(*definition.freshFor) : "";
    const std::string id = definition.retiredFor.empty() ? definition.id : definition.id + " (retired)";
    for (const std::string& words : {id, definition.label, typeWords(definition), optionWords(definition),
                                     std::string(toText(definition.concern)), unknownWords(definition), age,
                                     originWords(dictionary, definition), joined(definition.sources)}) {
      text += "| " + cell(words) + " ";
    }
    text += "|\n";
  }
  return text;
}

std::string tableAsJson(const Dictionary& dictionary) {
  json::Writer out;
  out.beginObject().key("groups").beginArray();
  for (const std::string& group : dictionary.groups()) {
    out.beginObject().member("id", group).member("title", dictionary.groupTitles().at(group)).endObject();
  }
  out.endArray().key("facts").beginArray();
  for (int slot = 0; slot < dictionary.size(); ++slot) writeFact(out, dictionary, dictionary.at(slot));
  out.endArray().endObject();
  return out.text();
}

}  // namespace stile::facts
