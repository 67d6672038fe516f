#include "resource_maker.h"

#include <functional>

#include "json/document.h"

namespace stile::differential {
namespace {

using json::Writer;

void list(Writer& writer, const std::string& name, int count, const std::function<void()>& element) {
  if (count == 0) return;
  writer.key(name).beginArray();
  for (int i = 0; i < count; ++i) element();
  writer.endArray();
}

void quantity(Writer& writer, const std::string& name, Random& random) {
  const std::string unit = random.oneOf({"mg", "g", "kg", "cm", "m", "mm[Hg]", "a", "d", "wk", "/min", "%"});
  writer.key(name).beginObject().key("value").numberText(makeDecimal(random));
  writer.member("unit", random.oneIn(2) ? unit : "units");
  writer.member("system", "http://unitsofmeasure.org").member("code", unit).endObject();
}

void coding(Writer& writer, Random& random) {
  writer.beginObject().member("system", random.oneOf({"http://a.example", "http://b.example"}));
  writer.member("code", random.oneOf({"a", "b", "c"}));
  if (random.oneIn(2)) writer.member("display", makeWord(random));
  writer.endObject();
}

void patient(Writer& writer, Random& random) {
  writer.member("id", "p" + std::to_string(random.below(9)));
  writer.member("active", random.oneIn(2));
  if (!random.oneIn(4)) writer.member("birthDate", makeDate(random));
  if (!random.oneIn(4)) writer.member("gender", random.oneOf({"male", "female", "other", "unknown"}));
  list(writer, "name", random.below(4), [&] {
    writer.beginObject().member("use", random.oneOf({"official", "usual", "old"}));
    if (!random.oneIn(4)) writer.member("family", makeWord(random));
    list(writer, "given", random.below(3), [&] { writer.string(makeWord(random)); });
    if (random.oneIn(3)) {
      writer.key("period")
          .beginObject()
          .member("start", makeDateTime(random))
          .member("end", makeDateTime(random))
          .endObject();
    }
    writer.endObject();
  });
  list(writer, "telecom", random.below(3), [&] {
    writer.beginObject().member("system", random.oneOf({"phone", "email"})).member("value", makeWord(random));
    if (random.oneIn(2)) writer.member("rank", random.between(1, 5));
    writer.endObject();
  });
  if (random.oneIn(2))
    writer.member("multipleBirthInteger", random.between(1, 3));
  else
    writer.member("multipleBirthBoolean", random.oneIn(2));
}

void value(Writer& writer, const std::string& name, Random& random) {
  switch (random.below(9)) {
    case 0:
      writer.member(name + "Boolean", random.oneIn(2));
      break;
    case 1:
      writer.member(name + "Integer", random.between(-20, 200));
      break;
    case 2:
      writer.member(name + "String", makeWord(random));
      break;
    case 3:
      writer.member(name + "DateTime", makeDateTime(random));
      break;
    case 4:
      writer.member(name + "Time",
                    random.padded(0, 23, 2) + ":" + random.padded(0, 59, 2) + ":" + random.padded(0, 59, 2));
      break;
    default:
      quantity(writer, name + "Quantity", random);
      break;
  }
}

void observation(Writer& writer, Random& random) {
  writer.member("status", random.oneOf({"final", "preliminary"}));
  writer.key("code").beginObject();
  list(writer, "coding", random.between(1, 3), [&] { coding(writer, random); });
  writer.endObject();
  if (!random.oneIn(4)) writer.member("effectiveDateTime", makeDateTime(random));
  if (random.oneIn(2))
    writer.member("issued", "2024-0" + std::to_string(random.between(1, 9)) + "-11T10:30:15.250Z");
  value(writer, "value", random);
  list(writer, "component", random.below(4), [&] {
    writer.beginObject().key("code").beginObject();
    list(writer, "coding", 1, [&] { coding(writer, random); });
    writer.endObject();
    if (!random.oneIn(4)) value(writer, "value", random);
    writer.endObject();
  });
}

void answerValue(Writer& writer, Random& random) {
  switch (random.below(7)) {
    case 0:
      writer.member("valueBoolean", random.oneIn(2));
      break;
    case 1:
      writer.key("valueDecimal").numberText(makeDecimal(random));
      break;
    case 2:
      writer.member("valueInteger", random.between(-20, 200));
      break;
    case 3:
      writer.member("valueDate", makeDate(random));
      break;
    case 4:
      writer.member("valueString", makeWord(random));
      break;
    case 5:
      writer.key("valueCoding");
      coding(writer, random);
      break;
    default:
      quantity(writer, "valueQuantity", random);
      break;
  }
}

void responseItem(Writer& writer, Random& random, int depth) {
  writer.beginObject().member("linkId", std::string(1, static_cast<char>('a' + random.below(5))));
  list(writer, "answer", random.below(3), [&] {
    writer.beginObject();
    answerValue(writer, random);
    writer.endObject();
  });
  if (depth > 0) list(writer, "item", random.below(3), [&] { responseItem(writer, random, depth - 1); });
  writer.endObject();
}

void formItem(Writer& writer, Random& random, int depth) {
  writer.beginObject().member("linkId", std::string(1, static_cast<char>('a' + random.below(5))));
  writer.member("type", random.oneOf({"group", "boolean", "integer", "string"}));
  if (random.oneIn(2)) writer.member("text", makeWord(random));
  if (random.oneIn(2)) writer.member("required", random.oneIn(2));
  if (random.oneIn(3)) writer.member("maxLength", random.between(1, 60));
  if (depth > 0) list(writer, "item", random.below(3), [&] { formItem(writer, random, depth - 1); });
  writer.endObject();
}

}  // namespace

std::string makeDate(Random& random) {
  std::string text = std::to_string(random.between(1950, 2026));
  if (random.oneIn(8)) return text;
  text += "-" + random.padded(1, 12, 2);
  return random.oneIn(6) ? text : text + "-" + random.padded(1, 28, 2);
}

std::string makeTime(Random& random) {
  std::string text = random.padded(0, 23, 2) + ":" + random.padded(0, 59, 2);
  if (random.oneIn(4)) return text;
  text += ":" + random.padded(0, 59, 2);
  return random.oneIn(2) ? text : text + "." + random.padded(0, 999, 3);
}

std::string makeDateTime(Random& random) {
  const std::string date = makeDate(random);
  if (date.size() < 10 || random.oneIn(5)) return date;
  std::string text =
      date + "T" + random.padded(0, 23, 2) + ":" + random.padded(0, 59, 2) + ":" + random.padded(0, 59, 2);
  if (random.oneIn(2)) text += "." + random.padded(0, 999, 3);
  return text + random.oneOf({"Z", "+02:00", "-05:00", "+05:30", "+00:00"});
}

std::string makeDecimal(Random& random) {
  std::string text = random.oneIn(5) ? "-" : "";
  text += std::to_string(random.oneIn(4) ? random.below(10000) : random.below(100));
  if (random.oneIn(4)) return text;
  text += ".";
  for (int i = random.between(1, 4); i > 0; --i) text += std::to_string(random.below(10));
  return text;
}

std::string makeWord(Random& random) {
  return random.oneOf({"Maren", "Oakshott", "ada", "Ada", "x", "", "two words", "a,b,c", "12", "1.5", "true",
                       "2020-01-05", "5 mg", "caf\xC3\xA9", "abcabc", " padded ", "A", "b"});
}

std::string makeResource(ResourceKind kind, Random& random) {
  Writer writer(0);
  writer.beginObject();
  switch (kind) {
    case ResourceKind::Patient:
      writer.member("resourceType", "Patient");
      patient(writer, random);
      break;
    case ResourceKind::Observation:
      writer.member("resourceType", "Observation");
      observation(writer, random);
      break;
    case ResourceKind::Questionnaire:
      writer.member("resourceType", "Questionnaire").member("status", "draft");
      list(writer, "item", random.between(1, 4), [&] { formItem(writer, random, 2); });
      break;
    case ResourceKind::QuestionnaireResponse:
      writer.member("resourceType", "QuestionnaireResponse").member("status", "completed");
      writer.member("authored", makeDateTime(random));
      list(writer, "item", random.between(1, 4), [&] { responseItem(writer, random, 2); });
      break;
  }
  writer.endObject();
  std::string text = writer.text();
  text.pop_back();  // the newline
  return text;
}

}  // namespace stile::differential
