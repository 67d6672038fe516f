// What the scalar profile refuses: each refusal with its place, its caret and its remedy.
#include "sample_facts.h"

using namespace stile;
using namespace stile::expression;
using namespace stile::expression::sample;

namespace {

const Type kCondition{};
const Type kPureNumber{ValueKind::Number, {}, base::Analyte::None, false};

}  // namespace

TEST_CASE("an unknown fact is refused with the names that are near") {
  CHECK(refusal("%angina or %systolc > 180 'mm[Hg]'") ==
        "f.json:1:12: r: there is no fact %systolc; perhaps %systolic is meant\n"
        "%angina or %systolc > 180 'mm[Hg]'\n"
        "           ^");
  CHECK(refusal("%joynt = 'hip'") ==
        "f.json:1:1: r: there is no fact %joynt; use a fact of the dictionary\n%joynt = 'hip'\n^");
  CHECK(refusal("%join = 'hip'").find("perhaps %joint or %worseJoint is meant") != std::string::npos);
}

TEST_CASE("a fact that cannot be used here is refused with the reason") {
  CHECK(refusal("%medicineName = 'x'") ==
        "f.json:1:1: r: %medicineName cannot be used here: it belongs to the group medicine\n"
        "%medicineName = 'x'\n"
        "^");
}

TEST_CASE("a name without its percent sign is refused") {
  CHECK(refusal("angina and %dizzy") ==
        "f.json:1:1: r: angina stands here without a percent sign; write %angina\nangina and %dizzy\n^");
  CHECK(
      refusal("%joint = hip") ==
      "f.json:1:10: r: hip is neither a fact nor a text; write facts with a percent sign, texts and codes in "
      "single quotes\n%joint = hip\n         ^");
  CHECK(refusal("%systolic.value > 3").find("a fact has no part named value") != std::string::npos);
}

TEST_CASE("a number without a unit is refused where the fact has one") {
  CHECK(refusal("%angina and\n  %systolic >= 180") ==
        "f.json:2:16: r: %systolic is in mm[Hg] and 180 has no unit; write 180 'mm[Hg]' if that is what it "
        "means\n"
        "  %systolic >= 180\n"
        "               ^");
  CHECK(refusal("90 > %saturation").find("write 90 '%' if that is what it means") != std::string::npos);
  CHECK(refusal("%weight + 2 > 3 'kg'").find("write 2 'kg' if that is what it means") != std::string::npos);
  CHECK(refusal("%weight in (70 'kg' | 80)").find("f.json:1:23") == 0);
  CHECK(refusal("%falls > 3 'kg'") ==
        "f.json:1:10: r: %falls is a pure number and 3 'kg' is in kg: they cannot be compared; write both "
        "with the "
        "same kind of unit\n%falls > 3 'kg'\n         ^");
}

TEST_CASE("units that cannot be compared are refused") {
  CHECK(refusal("%systolic > 180 'mg/dL'") ==
        "f.json:1:13: r: mm[Hg] and mg/dL cannot be compared; FHIRPath would silently yield nothing; give it "
        "in "
        "mm[Hg]\n%systolic > 180 'mg/dL'\n            ^");
  CHECK(refusal("180 'mg/dL' < %systolic").find("f.json:1:1: r: mg/dL and mm[Hg] cannot be compared") == 0);
  CHECK(refusal("%weight - %height > 0 'kg'").find("kg and cm cannot be subtracted") != std::string::npos);
  CHECK(refusal("%weight + %height > 0 'kg'").find("kg and cm cannot be added") != std::string::npos);
  CHECK(refusal("%cholesterol > %glucose").find("%cholesterol is cholesterol and %glucose is glucose") !=
        std::string::npos);
  CHECK(refusal("%hba1c > 6.5 'mmol/L'").find("cannot be compared") != std::string::npos);
  CHECK(refusal("%weight > 3 'bananas'") ==
        "f.json:1:11: r: 'bananas' is not a unit known here; write a UCUM unit such as 'mm[Hg]', 'kg' or "
        "'/min'\n"
        "%weight > 3 'bananas'\n          ^");
  CHECK(refusal("%weight > 3 ''").find("'' is not a unit known here") != std::string::npos);
}

TEST_CASE("a code that is not an option is refused with the options") {
  CHECK(refusal("%joint = 'shoulder'") ==
        "f.json:1:10: r: 'shoulder' is not an option of %joint; its options are hip, knee and ankle\n"
        "%joint = 'shoulder'\n         ^");
  CHECK(refusal("'Hip' != %joint").find("f.json:1:1: r: 'Hip' is not an option of %joint") == 0);
  CHECK(refusal("%joint in ('hip' | 'toe' | 'knee')").find("f.json:1:20: r: 'toe' is not an option") == 0);
  CHECK(refusal("%joint = %pregnancy").find("have no option in common") != std::string::npos);
  CHECK(refusal("%joint = %note").find("is a code and %note is a text") != std::string::npos);
}

TEST_CASE("things of different kinds are not compared") {
  CHECK(refusal("%joint = 3") ==
        "f.json:1:10: r: %joint is a code and 3 is a number: they cannot be compared; its options are hip, "
        "knee and "
        "ankle\n%joint = 3\n         ^");
  CHECK(refusal("%angina = 'yes'").find("a fact that is true or false needs no comparison") !=
        std::string::npos);
  CHECK(refusal("%surgeryDate < '2026-01-05'").find("write dates as @2026-01-05, without quotes") !=
        std::string::npos);
  CHECK(refusal("%falls = '3'").find("%falls is a number and '3' is a text") != std::string::npos);
  CHECK(refusal("1 < %falls < 5").find("they cannot be compared") != std::string::npos);
}

TEST_CASE("what has no order is not ordered") {
  CHECK(
      refusal("%joint < 'knee'") ==
      "f.json:1:1: r: texts and codes have no order here; compare them with =, != or in\n%joint < 'knee'\n^");
  CHECK(refusal("%angina > false").find("true and false have no order") != std::string::npos);
}

TEST_CASE("functions that turn unknown into a firm answer are refused with the reason") {
  for (const char* name : {"exists", "empty", "count", "where", "all", "iif"}) {
    const std::string text = "%dizzy and %angina." + std::string(name) + "()";
    const std::string expected =
        "f.json:1:12: r: " + std::string(name) +
        "() is refused here: it turns unknown into a firm answer; name the fact itself; for a "
        "repeating group use a summary fact\n" +
        text + "\n           ^";
    CHECK(refusal(text) == expected);
  }
  CHECK(refusal("iif(%angina, 1, 2)").find("it turns unknown into a firm answer") != std::string::npos);
  CHECK(refusal("%surgeryDate < today()").find("conditions never read the clock") != std::string::npos);
  CHECK(refusal("%note.startsWith('x')") ==
        "f.json:1:1: r: startsWith() is not part of the scalar profile; not() is its only function\n"
        "%note.startsWith('x')\n^");
  CHECK(refusal("not(%angina)") ==
        "f.json:1:1: r: not() stands behind what it negates and takes nothing; write "
        "(…).not()\nnot(%angina)\n^");
}

TEST_CASE("calculating with dates is refused with the reason") {
  for (const char* text : {"%surgeryDate + 6 weeks < @2026-11-25", "%surgeryDate - 6 'wk' < @2026-11-25"}) {
    CHECK(refusal(text) ==
          "f.json:1:1: r: dates cannot be calculated with: FHIRPath cuts the duration to the precision of "
          "the date, "
          "which gives false certainty for a date known in part; use a derived fact of the kind elapsed and "
          "compare "
          "it with the duration\n" +
              std::string(text) + "\n^");
  }
  CHECK(refusal("@2026-11-25 - %surgeryDate > 6 'wk'").find("dates cannot be calculated with") !=
        std::string::npos);
}

TEST_CASE("temperatures and HbA1c are compared and never calculated with") {
  CHECK(
      refusal("%temperature + 1 'Cel' > 38 'Cel'").find("f.json:1:1: r: temperatures can only be compared") ==
      0);
  CHECK(refusal("-%temperature > 38 'Cel'").find("temperatures can only be compared") != std::string::npos);
  CHECK(refusal("%hba1c * 2 > 48 'mmol/mol'").find("HbA1c values can only be compared") != std::string::npos);
}

TEST_CASE("the rest of FHIRPath is refused as not part of the profile") {
  CHECK(refusal("%joint ~ 'hip'")
            .find("f.json:1:8: r: the operator ~ is not part of the scalar profile; write =") == 0);
  CHECK(refusal("%falls div 2 = 1").find("the operator div") != std::string::npos);
  CHECK(refusal("('hip' | 'knee') contains %joint").find("write the fact first") != std::string::npos);
  CHECK(refusal("%note & 'x' = 'y'").find("the operator & is not") != std::string::npos);
  CHECK(refusal("%joint = ('hip' | 'knee')").find("a list may stand only behind in") != std::string::npos);
  CHECK(refusal("%joint in (%worseJoint | 'hip')") ==
        "f.json:1:12: r: in needs a list of written values; write %fact in ('a' | 'b')\n"
        "%joint in (%worseJoint | 'hip')\n           ^");
  CHECK(refusal("%angina = {}").find("{} is refused here") != std::string::npos);
  CHECK(refusal("%surgeryDate < @2026-01-05T10:00").find("times of day are not part") != std::string::npos);
  CHECK(refusal("%falls[0] > 1").find("a fact has one value and no index") != std::string::npos);
  CHECK(refusal("$this").find("$this, $index and $total") != std::string::npos);
  CHECK(refusal("%falls is Integer").find("every fact has one fixed type") != std::string::npos);
}

TEST_CASE("a condition must be true or false") {
  CHECK(refusal("%systolic", kCondition) ==
        "f.json:1:1: r: a condition must be true or false, and this is a number; compare it with a number, "
        "for example "
        "with >=\n%systolic\n^");
  CHECK(refusal("%angina and %joint", kCondition) ==
        "f.json:1:13: r: and joins conditions, and %joint is a code; compare it with one of its options: "
        "hip, knee or "
        "ankle\n%angina and %joint\n            ^");
  CHECK(refusal("%falls.not()").find("not() negates a condition, and %falls is a number") !=
        std::string::npos);
  CHECK(
      refusal("%angina + 1 > 2").find("only numbers can be calculated with, and %angina is true or false") !=
      std::string::npos);
  CHECK(refusal("-%angina").find("a sign needs a number") != std::string::npos);
}

TEST_CASE("the result must be what the caller needs") {
  const Type pressure{ValueKind::Number, *base::parseUnit("kPa"), base::Analyte::None, false};
  const Type glucose{ValueKind::Number, *base::parseUnit("mg/dL"), base::Analyte::Glucose, false};
  CHECK(refusal("%angina", kPureNumber).find("a number is needed here, and this is true or false") !=
        std::string::npos);
  CHECK(refusal("%systolic", kPureNumber).find("a pure number is needed here, and this is in mm[Hg]") !=
        std::string::npos);
  CHECK(refusal("%falls", pressure).find("a number in kPa is needed here, and this has no unit") !=
        std::string::npos);
  CHECK(refusal("%weight", pressure).find("a number in kPa is needed here, and this is in kg") !=
        std::string::npos);
  CHECK(refusal("%cholesterol", glucose).find("glucose is needed here, and this is cholesterol") !=
        std::string::npos);
  CHECK(refusal("%note", Type{ValueKind::Code, {}, {}, false})
            .find("a code is needed here, and this is a text") != std::string::npos);
}

TEST_CASE("numbers that do not fit and divisions by zero are refused") {
  CHECK(refusal("%falls > 12345678901234567890123456789012345").find("this number has too many digits") !=
        std::string::npos);
  CHECK(refusal("%falls / 0 > 1") == "f.json:1:10: r: this divides by zero\n%falls / 0 > 1\n         ^");
  CHECK(refusal("%falls / (2 - 2) > 1").find("this divides by zero") != std::string::npos);
  const std::string huge = "1000000000000000000000000000000";
  CHECK(refusal("%falls > " + huge + " * " + huge).find("the number does not fit") != std::string::npos);
}

TEST_CASE("all issues of an expression are reported, each once") {
  const std::vector<std::string> all = refusals(
      "%systolc > 3 and %joint = 'toe' or %angina.exists() and %weight < 3 or (%falls and %surgeryDate < "
      "'x')");
  REQUIRE(all.size() == 6);
  CHECK(all[0].find("no fact %systolc") != std::string::npos);
  CHECK(all[1].find("'toe' is not an option") != std::string::npos);
  CHECK(all[2].find("exists() is refused") != std::string::npos);
  CHECK(all[3].find("%weight is in kg") != std::string::npos);
  CHECK(all[4].find("and 'x' is a text") != std::string::npos);
  CHECK(all[5].find("%falls is a number") != std::string::npos);
}
