// The types of FHIR R4 as the evaluator reads them.
#include "expression/type_model.h"

#include <catch2/catch.hpp>

using namespace stile::expression;

TEST_CASE("the types of R4 are read whole") {
  const TypeModel& model = r4Model();
  const ModelType* patient = model.find("Patient");
  REQUIRE(patient);
  CHECK(patient->isResource);
  CHECK(patient->isKindOf(*model.find("DomainResource")));
  CHECK(patient->isKindOf(*model.find("Resource")));
  CHECK_FALSE(patient->isKindOf(*model.find("Element")));
  CHECK(patient->element("birthDate")->types.front()->name == "date");
  CHECK(patient->element("id")->types.front()->isSystem);
  CHECK_FALSE(patient->element("nothing"));
  REQUIRE(patient->element("deceased"));
  CHECK(patient->element("deceased")->isChoice);
  CHECK(patient->element("deceased")->types.size() == 2);
  // A group, and an element that repeats a group further up.
  const ModelType* item = model.find("Questionnaire.item");
  REQUIRE(item);
  CHECK(item->name == "BackboneElement");
  CHECK(item->element("item")->types.front() == item);
  CHECK(item->element("modifierExtension"));
  // Specialised primitives, and the open choice of an extension.
  CHECK(model.find("code")->isKindOf(*model.find("string")));
  CHECK(model.find("uuid")->isKindOf(*model.find("uri")));
  CHECK(model.find("Age")->isKindOf(*model.find("Quantity")));
  CHECK(model.find("Extension")->element("value")->types.size() > 40);
}

TEST_CASE("a model that names a type it does not define is refused") {
  CHECK(TypeModel::parse("complex Element: id:id\nprimitive id:Element"));
  CHECK_FALSE(TypeModel::parse("complex Element: id:id"));
  CHECK_FALSE(TypeModel::parse("complex Thing:Nothing"));
  CHECK_FALSE(TypeModel::parse("complex Element: value[string"));
  CHECK_FALSE(TypeModel::parse("complex Element: group{a:Element"));
  CHECK_FALSE(TypeModel::parse("nonsense"));
}
