#include "base/unit.h"

#include <catch2/catch.hpp>

using namespace stile::base;

namespace {

Unit unit(std::string_view text) {
  CAPTURE(std::string(text));
  const auto parsed = parseUnit(text);
  REQUIRE(parsed);
  return *parsed;
}

/// The converted value as text with up to nine decimals; "-" when it cannot be converted.
std::string converted(std::string_view value, std::string_view from, std::string_view to,
                      Analyte analyte = Analyte::None) {
  const auto number = Rational::parse(value);
  REQUIRE(number);
  const auto result = convert(*number, unit(from), unit(to), analyte);
  return result ? result->toText(9) : "-";
}

}  // namespace

TEST_CASE("unit definitions are those of UCUM") {
  CHECK(converted("1", "mm[Hg]", "Pa") == "133.322");
  CHECK(converted("1", "m[Hg]", "kPa") == "133.322");
  CHECK(converted("1", "L", "dm3") == "1");
  CHECK(converted("1", "l", "L") == "1");
  CHECK(converted("1", "[lb_av]", "g") == "453.59237");
  CHECK(converted("1", "[stone_av]", "[lb_av]") == "14");
  CHECK(converted("16", "[oz_av]", "[lb_av]") == "1");
  CHECK(converted("1", "[in_i]", "cm") == "2.54");
  CHECK(converted("1", "[ft_i]", "[in_i]") == "12");
  CHECK(converted("1", "[yd_i]", "[ft_i]") == "3");
  CHECK(converted("1", "[mi_i]", "[yd_i]") == "1760");
  CHECK(converted("1", "cal", "J") == "4.184");
  CHECK(converted("1", "bar", "kPa") == "100");
  CHECK(converted("1", "a", "d") == "365.25");
  CHECK(converted("12", "mo", "a") == "1");
  CHECK(converted("1", "wk", "d") == "7");
  CHECK(converted("1", "h", "min") == "60");
  CHECK(converted("60", "U", "umol/s") == "1");
  CHECK(converted("60", "/min", "Hz") == "1");
  CHECK(converted("1", "N.m", "J") == "1");
  CHECK(converted("1", "J/s", "W") == "1");
  CHECK(converted("50", "%", "1") == "0.5");
  CHECK(converted("1", "[MET]", "mL/min/kg") == "3.5");
}

TEST_CASE("temperatures have an offset") {
  CHECK(converted("0", "Cel", "K") == "273.15");
  CHECK(converted("100.4", "[degF]", "Cel") == "38");
  CHECK(converted("38", "Cel", "[degF]") == "100.4");
  CHECK(converted("-40", "Cel", "[degF]") == "-40");
  CHECK(converted("0", "K", "[degF]") == "-459.67");
}

TEST_CASE("a threshold is met exactly in the other unit") {
  CHECK(converted("88", "cm", "m") == "0.88");
  CHECK(convert(*Rational::parse("70"), unit("[in_i]"), unit("cm")) == *Rational::parse("177.8"));
  CHECK(convert(Rational(200), unit("[lb_av]"), unit("kg")) == *Rational::parse("90.718474"));
}

TEST_CASE("a unit converts there and back to the same number") {
  const std::pair<const char*, const char*> pairs[] = {{"mm[Hg]", "kPa"}, {"[degF]", "Cel"},
                                                       {"[lb_av]", "kg"}, {"[mi_i]/h", "m/s"},
                                                       {"kcal", "kJ"},    {"mo", "wk"}};
  for (const auto& [from, to] : pairs) {
    for (const char* text : {"0", "1", "98.6", "-17.25", "120", "0.001"}) {
      const Rational value = *Rational::parse(text);
      const auto there = convert(value, unit(from), unit(to));
      REQUIRE(there);
      CHECK(convert(*there, unit(to), unit(from)) == value);
    }
  }
}

TEST_CASE("compound units and exponents are read from left to right") {
  CHECK(comparable(unit("kg/m2"), unit("g.m-2")));
  CHECK(converted("25", "kg/m2", "g/cm2") == "2.5");
  CHECK(converted("1", "10*9/L", "10*6/mL") == "1");
  CHECK(converted("1", "10^9/L", "10*9/L") == "1");
  CHECK(converted("1", "10*-3", "1") == "0.001");
  CHECK(converted("1", "m/s/s", "m/s2") == "1");
  CHECK(converted("1", "m/(s.s)", "m/s2") == "1");
  CHECK(converted("1", "m/s.s", "m") == "1");
  CHECK(converted("1", "mL/kg/min", "mL/(kg.min)") == "1");
  CHECK(converted("1", "/d", "d-1") == "1");
  CHECK(converted("1", "mL/min/{1.73_m2}", "mL/min") == "1");
  CHECK(converted("1", "s+1", "s") == "1");
  CHECK(converted("2", "2.m", "m") == "4");
}

TEST_CASE("prefixes stand on metric atoms only") {
  for (const char* text : {"kg", "mm[Hg]", "cm[H2O]", "umol", "ng/mL", "hPa", "kcal", "mU/L", "ks", "dam",
                           "kgf", "mmol/L", "meq/L"}) {
    CAPTURE(text);
    CHECK(parseUnit(text));
  }
  for (const char* text : {"kmin", "m[in_i]", "k[lb_av]", "mCel", "k%", "mwk", "kdeg", "kkg", "m[pH]"}) {
    CAPTURE(text);
    CHECK_FALSE(parseUnit(text));
  }
}

TEST_CASE("an atom is preferred to a prefix with an atom") {
  CHECK(comparable(unit("min"), unit("s")));
  CHECK(comparable(unit("Pa"), unit("bar")));
  CHECK(comparable(unit("cal"), unit("J")));
  CHECK(comparable(unit("mo"), unit("d")));
  CHECK(comparable(unit("mol"), unit("mmol")));
}

TEST_CASE("annotations are pure numbers") {
  CHECK(unit("{score}").isPureNumber());
  CHECK(unit("1").isPureNumber());
  CHECK(unit("%").isPureNumber());
  CHECK(unit("10*").isPureNumber());
  CHECK(comparable(unit("{beats}/min"), unit("/min")));
  CHECK(comparable(unit("kg{dry}"), unit("kg")));
  CHECK_FALSE(unit("deg").isPureNumber());
}

TEST_CASE("the text stays as written") {
  CHECK(unit("mm[Hg]").text == "mm[Hg]");
  CHECK(unit("years").text == "years");
  CHECK(unit("{score}").text == "{score}");
}

TEST_CASE("calendar words are read as units of time") {
  CHECK(converted("1", "year", "a") == "1");
  CHECK(converted("3", "months", "mo") == "3");
  CHECK(converted("1", "week", "days") == "7");
  CHECK(converted("1", "hour", "minutes") == "60");
  CHECK(converted("1", "second", "milliseconds") == "1000");
}

TEST_CASE("what is no unit is refused") {
  for (const char* text :
       {"",        " ",    "kg ",  " kg",      "KG",      "mmHg",    "foo", "m[",         "[in_i",
        "m]",      "{",    "{a",   "a}",       "{a b}",   "/",       "kg/", "kg//m",      "kg.",
        ".m",      "(m",   "m)",   "()",       "m2.",     "m-",      "m99", "10*99",      "0",
        "Cel/min", "Cel2", "[pH]/L", "[pH]2", "m(s)", "{score}2", "kg/week", "m{a}{b}", "°C",  "10*30.10*30"}) {
    CAPTURE(text);
    CHECK_FALSE(parseUnit(text));
  }
  CHECK_FALSE(parseUnit(std::string(200, 'm')));
  CHECK_FALSE(parseUnit(std::string(20, '(') + "m" + std::string(20, ')')));
}

TEST_CASE("different dimensions are not comparable") {
  CHECK_FALSE(comparable(unit("kg"), unit("m")));
  CHECK_FALSE(comparable(unit("deg"), unit("1")));
  CHECK_FALSE(comparable(unit("mol"), unit("1")));
  CHECK_FALSE(comparable(unit("[iU]/L"), unit("U/L")));
  CHECK_FALSE(comparable(unit("[pH]"), unit("1")));
  CHECK(comparable(unit("[iU]/L"), unit("[IU]/mL")));
  CHECK(converted("1", "kg", "m") == "-");
}

TEST_CASE("mass and amount concentration convert for a known substance only") {
  CHECK(converted("5", "mmol/L", "mg/dL", Analyte::Glucose) == "90.08");
  CHECK(converted("90.08", "mg/dL", "mmol/L", Analyte::Glucose) == "5");
  CHECK(converted("1", "mmol/L", "mg/dL", Analyte::Cholesterol) == "38.67");
  CHECK(converted("1", "mmol/L", "mg/dL", Analyte::Triglycerides) == "88.57");
  CHECK(converted("1", "g/L", "mg/dL", Analyte::Glucose) == "100");
  for (const Analyte analyte : {Analyte::None, Analyte::HbA1c}) {
    CHECK(converted("5", "mmol/L", "mg/dL", analyte) == "-");
    CHECK_FALSE(comparable(unit("mmol/L"), unit("mg/dL"), analyte));
  }
  CHECK_FALSE(comparable(unit("mg/dL"), unit("mmol"), Analyte::Glucose));
}

TEST_CASE("glucose converts as the ADA's printed table") {
  // American Diabetes Association, Standards of Care: mg/dL with mmol/L to one decimal.
  const std::pair<const char*, const char*> printed[] = {
      {"54", "3"},   {"70", "3.9"},   {"90", "5"},     {"100", "5.6"}, {"126", "7"},   {"150", "8.3"},
      {"180", "10"}, {"200", "11.1"}, {"250", "13.9"}, {"270", "15"},  {"300", "16.7"}};
  for (const auto& [milligrams, millimoles] : printed) {
    const auto value = convert(*Rational::parse(milligrams), unit("mg/dL"), unit("mmol/L"), Analyte::Glucose);
    REQUIRE(value);
    CHECK(value->toText(1) == millimoles);
  }
}

TEST_CASE("HbA1c converts by the IFCC-NGSP master equation") {
  // Printed pairs of the NGSP (ngsp.org): % with mmol/mol to the whole.
  const std::pair<const char*, const char*> printed[] = {{"5", "31"},   {"5.7", "39"}, {"6", "42"},
                                                         {"6.5", "48"}, {"7", "53"},   {"8", "64"},
                                                         {"9", "75"},   {"10", "86"},  {"12", "108"}};
  for (const auto& [percent, ratio] : printed) {
    const auto value = convert(*Rational::parse(percent), unit("%"), unit("mmol/mol"), Analyte::HbA1c);
    REQUIRE(value);
    CHECK(value->toText(0) == ratio);
    CHECK(convert(*value, unit("mmol/mol"), unit("%"), Analyte::HbA1c) == *Rational::parse(percent));
  }
  CHECK(converted("7", "%", "%", Analyte::HbA1c) == "7");
  CHECK(converted("7", "%", "1", Analyte::HbA1c) == "-");
  CHECK(converted("1", "%", "mmol/mol") == "10");
}

TEST_CASE("a number that does not fit is not converted") {
  const Rational large = *Rational::parse("1e30");
  CHECK_FALSE(convert(large, unit("Gg"), unit("ng")));
}

TEST_CASE("products and quotients of units read back as the same unit") {
  const auto bodyMassIndex = divide(unit("kg"), unit("m2"));
  REQUIRE(bodyMassIndex);
  CHECK(bodyMassIndex->text == "kg/m2");
  const auto product = multiply(*bodyMassIndex, unit("years"));
  REQUIRE(product);
  CHECK(product->text == "kg/m2.a");
  const auto quotient = divide(unit("kg"), *bodyMassIndex);
  REQUIRE(quotient);
  CHECK(quotient->text == "kg/(kg/m2)");
  CHECK(divide(unit("kg"), unit("1"))->text == "kg");
  CHECK(multiply(unit("1"), unit("kg"))->text == "kg");
  CHECK(divide(unit("1"), unit("min"))->text == "1/min");
  for (const auto& made : {bodyMassIndex, product, quotient}) {
    const Unit again = unit(made->text);
    CHECK(again.factor == made->factor);
    CHECK(again.dimension == made->dimension);
  }
  CHECK_FALSE(multiply(unit("Cel"), unit("m")));
  CHECK_FALSE(multiply(unit("[pH]"), unit("m")));
  CHECK_FALSE(divide(unit("m"), unit("[degF]")));
}
