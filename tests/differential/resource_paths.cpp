#include "resource_paths.h"

namespace stile::differential {

const TypedPaths& typedPathsOf(ResourceKind kind) {
  static const std::map<ResourceKind, TypedPaths> all{
      {ResourceKind::Patient,
       {{Wanted::Boolean, {"active", "multipleBirth.ofType(boolean)"}},
        {Wanted::Integer, {"telecom.rank", "multipleBirth.ofType(integer)"}},
        {Wanted::Text,
         {"name.given", "name.family", "name.use", "telecom.value", "gender", "id", "Patient.name.given"}},
        {Wanted::Date, {"birthDate", "Patient.birthDate"}},
        {Wanted::DateTime, {"name.period.start", "name.period.end"}}}},
      {ResourceKind::Observation,
       {{Wanted::Boolean, {"value.ofType(boolean)", "component.value.ofType(boolean)"}},
        {Wanted::Integer, {"value.ofType(integer)", "component.value.ofType(integer)"}},
        {Wanted::Decimal, {"value.ofType(Quantity).value", "component.value.ofType(Quantity).value"}},
        {Wanted::Text,
         {"value.ofType(string)", "code.coding.code", "component.code.coding.display", "status"}},
        {Wanted::DateTime, {"effective", "value.ofType(dateTime)", "issued"}},
        {Wanted::Time, {"value.ofType(time)", "component.value.ofType(time)"}},
        {Wanted::Quantity, {"value.ofType(Quantity)", "component.value.ofType(Quantity)"}}}},
      {ResourceKind::Questionnaire,
       {{Wanted::Boolean, {"item.required", "repeat(item).required"}},
        {Wanted::Integer, {"item.maxLength", "repeat(item).maxLength"}},
        {Wanted::Text,
         {"item.linkId", "item.item.linkId", "repeat(item).text", "descendants().linkId", "item.type"}}}},
      {ResourceKind::QuestionnaireResponse,
       {{Wanted::Boolean, {"item.answer.value.ofType(boolean)"}},
        {Wanted::Integer, {"item.answer.value.ofType(integer)", "repeat(item).answer.value.ofType(integer)"}},
        {Wanted::Decimal, {"item.answer.value.ofType(decimal)", "descendants().ofType(decimal)"}},
        {Wanted::Text,
         {"item.linkId", "repeat(item).linkId", "item.answer.value.ofType(string)",
          "item.answer.value.ofType(Coding).code"}},
        {Wanted::Date, {"item.answer.value.ofType(date)"}},
        {Wanted::DateTime, {"authored"}},
        {Wanted::Quantity, {"item.answer.value.ofType(Quantity)"}}}}};
  return all.at(kind);
}

const std::vector<std::string>& anyPathsOf(ResourceKind kind) {
  static const std::map<ResourceKind, std::vector<std::string>> all{
      {ResourceKind::Patient,
       {"name", "telecom", "multipleBirth", "name.period", "children()", "Patient", "nothing",
        "name.nothing"}},
      {ResourceKind::Observation,
       {"code", "code.coding", "value", "component", "component.value", "component.code",
        "Observation.value"}},
      {ResourceKind::Questionnaire, {"item", "item.item", "repeat(item)", "Questionnaire.item"}},
      {ResourceKind::QuestionnaireResponse,
       {"item", "item.answer", "item.answer.value", "repeat(item)", "repeat(item | answer)", "item.item"}}};
  return all.at(kind);
}

}  // namespace stile::differential
