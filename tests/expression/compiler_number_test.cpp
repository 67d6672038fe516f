// Units: everything is converted when a condition is compiled, and exactly.
#include "sample_facts.h"

using namespace stile;
using namespace stile::expression;
using namespace stile::expression::sample;

namespace {

Type in(const char* unit, base::Analyte analyte = base::Analyte::None) {
  return {ValueKind::Number, *base::parseUnit(unit), analyte, false};
}

std::string valueIn(const std::string& text, const Type& type, const Values& values) {
  const Program compiled = program(text, type);
  CHECK(compiled.type().unit.text == type.unit.text);
  const Value value = compiled.evaluate(values);
  REQUIRE(value.isSettled());
  return value.low->toText(9);
}

}  // namespace

TEST_CASE("a threshold in another unit of pressure is the same threshold") {
  // 180 mm[Hg] = 23.99796 kPa exactly.
  const auto at = [](const char* digits) { return Values().number("systolic", digits); };
  CHECK(truth("%systolic >= 23.99796 'kPa'", at("180")) == Truth::True);
  CHECK(truth("%systolic > 23.99796 'kPa'", at("180")) == Truth::False);
  CHECK(truth("%systolic >= 23.99796 'kPa'", at("179.999")) == Truth::False);
  CHECK(truth("23.99796 'kPa' = %systolic", at("180")) == Truth::True);
  CHECK(truth("%systolic = 18 'cm[Hg]'", at("180")) == Truth::True);
}

TEST_CASE("glucose is compared in mg/dL and in mmol/L") {
  // 18.016 mg/dL of glucose are 1 mmol/L.
  const auto at = [](const char* digits) { return Values().number("glucose", digits); };
  CHECK(truth("%glucose = 18.016 'mg/dL'", at("1")) == Truth::True);
  CHECK(truth("%glucose < 70 'mg/dL'", at("3.88")) == Truth::True);
  CHECK(truth("%glucose < 70 'mg/dL'", at("3.89")) == Truth::False);
  CHECK(truth("%glucose >= 16.7 'mmol/L'", at("16.7")) == Truth::True);
  CHECK(truth("%glucose + 18.016 'mg/dL' = 3 'mmol/L'", at("2")) == Truth::True);
  CHECK(truth("%glucose * 2 >= 72.064 'mg/dL'", at("2")) == Truth::True);
}

TEST_CASE("HbA1c is compared in both of its units") {
  // The master equation: 48 mmol/mol are 6.54304 %.
  const auto at48 = Values().number("hba1c", "48");
  CHECK(truth("%hba1c = 6.54304 '%'", at48) == Truth::True);
  CHECK(truth("%hba1c > 6.5 '%'", at48) == Truth::True);
  CHECK(truth("%hba1c >= 48 'mmol/mol'", at48) == Truth::True);
}

TEST_CASE("temperatures are compared in degrees of both scales") {
  CHECK(truth("%temperature = 100.4 '[degF]'", Values().number("temperature", "38")) == Truth::True);
  CHECK(truth("%temperature >= 100.4 '[degF]'", Values().number("temperature", "37.9")) == Truth::False);
  CHECK(truth("%temperature > -5 'Cel'", Values().number("temperature", "0")) == Truth::True);
  CHECK(valueIn("%temperature", in("[degF]"), Values().number("temperature", "38")) == "100.4");
}

TEST_CASE("durations are read in UCUM units and in calendar words") {
  const auto at = [](const char* digits) { return Values().number("monthsSinceSurgery", digits); };
  CHECK(truth("%monthsSinceSurgery < 3 'mo'", at("2")) == Truth::True);
  CHECK(truth("%monthsSinceSurgery < 3 months", at("3")) == Truth::False);
  CHECK(truth("%monthsSinceSurgery = 1 year", at("12")) == Truth::True);
}

TEST_CASE("products and quotients have the unit that follows") {
  Values values;
  values.number("weight", "80").number("height", "200");
  CHECK(truth("%weight / (%height * %height) = 20 'kg/m2'", values) == Truth::True);
  CHECK(truth("%weight / (%height * %height) > 19.999 'kg/m2'", values) == Truth::True);
  CHECK(valueIn("%weight / (%height * %height)", in("kg/m2"), values) == "20");
  CHECK(valueIn("%weight / %height / %height", in("g/cm2"), values) == "2");
  CHECK(valueIn("%weight * 0.5", in("[lb_av]"), Values().number("weight", "0.90718474")) == "1");
}

TEST_CASE("units that cancel leave a pure number") {
  Values values;
  values.number("height", "150").number("systolic", "140").number("diastolic", "70");
  CHECK(truth("%height / 1 'm' = 1.5", values) == Truth::True);
  CHECK(truth("%systolic / %diastolic = 2", values) == Truth::True);
  CHECK(truth("%height * 2 '/m' = 3", values) == Truth::True);
}

TEST_CASE("facts in different units of one kind are compared") {
  Values values;
  values.number("monthsSinceSurgery", "12").between("systolic", "100", "120");
  CHECK(truth("%systolic * 2 > 100 'kPa' - 50 'kPa'", values) == Truth::False);
  CHECK(truth("1 'kPa' * 2 < 20 'mm[Hg]'", values) == Truth::True);
}

TEST_CASE("a result is turned into the unit the caller asks for") {
  Values values;
  values.number("systolic", "180").between("diastolic", "60", "-");
  CHECK(valueIn("%systolic", in("kPa"), values) == "23.99796");
  CHECK(valueIn("%systolic", in("mm[Hg]"), values) == "180");
  CHECK(valueIn("90 'mg/dL'", in("mmol/L", base::Analyte::Glucose), values) == "4.995559503");
  const Value open = program("%diastolic", in("kPa")).evaluate(values);
  CHECK(open.low->toText() == "7.99932");
  CHECK_FALSE(open.high);
}
