// Which facts decided, which could still turn the outcome, and which are known in every case.
#include "sample_facts.h"

using namespace stile;
using namespace stile::expression;
using namespace stile::expression::sample;

namespace {

using Names = std::vector<std::string>;

Names decidedBy(const std::string& text, const Values& values) {
  return names(program(text).decidedBy(values));
}

Names knownWhen(const std::string& text, bool outcome) {
  const std::set<int> slots = program(text).knownWhen(outcome);
  return names({slots.begin(), slots.end()});
}

}  // namespace

TEST_CASE("a true or false outcome names the first sufficient facts") {
  Values values;
  values.set("angina", false).set("dizzy", false).set("breathless", true);
  CHECK(decidedBy("%angina and %dizzy", values) == Names{"angina"});
  CHECK(decidedBy("%breathless and %dizzy", values) == Names{"dizzy"});
  CHECK(decidedBy("%breathless or %dizzy.not()", values) == Names{"breathless"});
  CHECK(decidedBy("%angina or %dizzy", values) == Names{"angina", "dizzy"});
  CHECK(decidedBy("%breathless and %dizzy.not()", values) == Names{"breathless", "dizzy"});
  CHECK(decidedBy("%angina implies %dizzy", values) == Names{"angina"});
  CHECK(decidedBy("%breathless implies %dizzy.not()", values) == Names{"dizzy"});
  CHECK(decidedBy("%breathless implies %dizzy", values) == Names{"breathless", "dizzy"});
  CHECK(decidedBy("%breathless xor %dizzy", values) == Names{"breathless", "dizzy"});
  CHECK(decidedBy("%angina and %dizzy", Values().set("dizzy", false)) == Names{"dizzy"});
  CHECK(decidedBy("%angina or (%breathless and %dizzy.not())", values) == Names{"breathless", "dizzy"});
  CHECK(decidedBy("true", values).empty());
}

TEST_CASE("comparisons name every fact they read") {
  Values values;
  values.number("systolic", "190").between("diastolic", "60", "80").code("joint", "hip");
  CHECK(decidedBy("%systolic - %diastolic > 100 'mm[Hg]'", values) == Names{"systolic", "diastolic"});
  CHECK(decidedBy("%joint in ('knee' | 'hip')", values) == Names{"joint"});
  CHECK(decidedBy("%joint in ('knee' | 'ankle')", values) == Names{"joint"});
  CHECK(decidedBy("%diastolic < 90 'mm[Hg]'", values) == Names{"diastolic"});
}

TEST_CASE("an open outcome names exactly the facts that could still turn it") {
  Values values;
  values.set("angina", true).set("breathless", false);
  CHECK(decidedBy("%angina and %dizzy", values) == Names{"dizzy"});
  CHECK(decidedBy("%breathless or %dizzy", values) == Names{"dizzy"});
  CHECK(decidedBy("(%breathless and %systolic > 1 'mm[Hg]') or %dizzy", values) == Names{"dizzy"});
  CHECK(decidedBy("(%angina or %falls > 1) and %joint = 'hip'", values) == Names{"joint"});
  CHECK(decidedBy("%dizzy or %falls > 1", values) == Names{"dizzy", "falls"});
  CHECK(decidedBy("%angina implies (%breathless implies %falls > 1) and %dizzy", values) == Names{"dizzy"});
  CHECK(decidedBy("%angina xor %dizzy", values) == Names{"dizzy"});
  CHECK(decidedBy("%angina = %dizzy", values) == Names{"dizzy"});
}

TEST_CASE("an open comparison names the numbers that are not settled") {
  Values values;
  values.number("systolic", "150").between("diastolic", "60", "120");
  CHECK(decidedBy("%systolic - %diastolic > 50 'mm[Hg]'", values) == Names{"diastolic"});
  CHECK(decidedBy("%systolic - %diastolic > 100 'mm[Hg]'", values) == Names{"systolic", "diastolic"});
  CHECK(decidedBy("%diastolic * 0 + %weight / 1 'kg' * 1 'mm[Hg]' > 3 'mm[Hg]'", values) == Names{"weight"});
  CHECK(decidedBy("%surgeryDate < @2026-03-15", Values().date("surgeryDate", "2026")) ==
        Names{"surgeryDate"});
}

TEST_CASE("where everything is settled and nothing follows the settled facts are named") {
  Values values;
  values.number("systolic", "150").number("falls", "0").set("angina", true);
  CHECK(decidedBy("%angina and %systolic / %falls > 1 'mm[Hg]'", values) == Names{"systolic", "falls"});
  CHECK(decidedBy("%surgeryDate < @2026", Values().date("surgeryDate", "2026-05-05")) ==
        Names{"surgeryDate"});
}

TEST_CASE("a fact that does not apply decides its comparison alone") {
  Values values;
  values.notApplicable("falls").number("systolic", "150");
  CHECK(decidedBy("%falls * 1 'mm[Hg]' > %systolic", values) == Names{"falls"});
  CHECK(decidedBy("%systolic < %falls * 1 'mm[Hg]'", values) == Names{"falls"});
}

TEST_CASE("a number names what it was made of, or what keeps it open") {
  Values values;
  values.number("systolic", "150").between("diastolic", "60", "80");
  CHECK(decidedBy("%systolic + 1 'mm[Hg]'", values) == Names{"systolic"});
  CHECK(decidedBy("%systolic + %diastolic", values) == Names{"diastolic"});
  CHECK(decidedBy("%joint", values) == Names{"joint"});
}

TEST_CASE("what is known in every case follows from the logic") {
  CHECK(knownWhen("%angina", true) == Names{"angina"});
  CHECK(knownWhen("%angina", false) == Names{"angina"});
  CHECK(knownWhen("%angina and %dizzy", true) == Names{"angina", "dizzy"});
  CHECK(knownWhen("%angina and %dizzy", false).empty());
  CHECK(knownWhen("%angina or %dizzy", true).empty());
  CHECK(knownWhen("%angina or %dizzy", false) == Names{"angina", "dizzy"});
  CHECK(knownWhen("(%angina or %dizzy).not()", true) == Names{"angina", "dizzy"});
  CHECK(knownWhen("%angina implies %dizzy", true).empty());
  CHECK(knownWhen("%angina implies %dizzy", false) == Names{"angina", "dizzy"});
  CHECK(knownWhen("%angina implies %angina", true) == Names{"angina"});
  CHECK(knownWhen("%angina xor %dizzy", true) == Names{"angina", "dizzy"});
  CHECK(knownWhen("%angina != %dizzy", false) == Names{"angina", "dizzy"});
  CHECK(knownWhen("(%angina or %dizzy) xor %breathless", true) == Names{"breathless"});
}

TEST_CASE("a comparison knows what it reads, unless a fact that does not apply made it false") {
  CHECK(knownWhen("%joint in ('hip' | 'knee')", true) == Names{"joint"});
  CHECK(knownWhen("%joint in ('hip' | 'knee')", false) == Names{"joint"});
  CHECK(knownWhen("%systolic * 2 - %systolic > 60 'mm[Hg]'", false) == Names{"systolic"});
  CHECK(knownWhen("%systolic - %diastolic > 60 'mm[Hg]'", true) == Names{"systolic", "diastolic"});
  CHECK(knownWhen("%systolic - %diastolic > 60 'mm[Hg]'", false).empty());
  CHECK(truth("%systolic > %diastolic", Values().notApplicable("diastolic")) == Truth::False);
  CHECK(knownWhen("(%joint = 'hip' and %falls > 1) or (%joint = 'knee' and %dizzy)", true) == Names{"joint"});
}

TEST_CASE("a case that cannot happen takes nothing away") {
  CHECK(knownWhen("%angina or false", true) == Names{"angina"});
  CHECK(knownWhen("%angina and true", false) == Names{"angina"});
  CHECK(knownWhen("%angina or true", true).empty());
  CHECK(knownWhen("%angina and false", true) == Names{"angina"});
  CHECK(knownWhen("%falls + 1", true).empty());
}
