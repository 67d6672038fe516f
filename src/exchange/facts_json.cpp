#include "exchange/facts_json.h"

#include "facts/fact_table.h"

namespace stile::exchange {
namespace {

using expression::Value;
using expression::ValueKind;

void writeValue(json::Writer& writer, const Value& value, const facts::Definition& definition) {
  const std::string& unit = definition.valueType.unit.text;
  switch (value.kind) {
    case ValueKind::Boolean: writer.key("value").boolean(value.truth == expression::Truth::True); return;
    case ValueKind::Text:
    case ValueKind::Code: writer.member("value", *value.text); return;
    case ValueKind::Date: writer.member("value", value.date->toText()); return;
    case ValueKind::Number:
      if (value.isSettled()) {
        writer.key("value").number(*value.low);
      } else {
        if (value.low) writer.key("atLeast").number(*value.low);
        if (value.high) writer.key("atMost").number(*value.high);
      }
      if (definition.type == facts::FactType::Quantity) writer.member("unit", unit);
      return;
  }
}

void writeFact(json::Writer& writer, const facts::Definition& definition, const facts::Fact& fact, int repetition) {
  if (fact.value.isUnknown() && fact.reason == facts::UnknownReason::NotAsked) return;
  if (definition.isPolicy()) return;
  writer.beginObject().member("fact", definition.id);
  if (repetition >= 0) writer.member("group", definition.group).member("repetition", repetition);
  if (!fact.value.isUnknown() && !fact.value.notApplicable) writeValue(writer, fact.value, definition);
  if (fact.reason != facts::UnknownReason::None) writer.member("unknown", idOf(fact.reason));
  writer.member("words", facts::display(definition, fact));
  if (fact.date) writer.member("date", fact.date->toText());
  if (!fact.givenBy.empty()) writer.member("givenBy", fact.givenBy);
  if (!fact.source.empty()) writer.member("source", fact.source);
  writer.endObject();
}

}  // namespace

void writeFacts(json::Writer& writer, const facts::FactSet& facts) {
  writer.beginArray();
  const facts::Dictionary& dictionary = facts.dictionary();
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const facts::Definition& definition = dictionary.at(slot);
    if (definition.group.empty()) {
      writeFact(writer, definition, facts.at(slot), -1);
      continue;
    }
    for (int repetition = 0; repetition < facts.repetitions(definition.group); ++repetition)
      writeFact(writer, definition, facts.at(slot, repetition), repetition);
  }
  writer.endArray();
}

}  // namespace stile::exchange
