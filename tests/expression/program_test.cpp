// What conditions and derived numbers come to, with facts known, unknown and known in part.
#include "expression/program.h"

#include "sample_facts.h"
#include "truths.h"

using namespace stile;
using namespace stile::expression;
using namespace stile::expression::sample;

namespace {

/// The value of a number as "low..high", "-" for no bound.
std::string number(const std::string& text, const Values& values) {
  const Value value = program(text).evaluate(values);
  CHECK(value.kind == ValueKind::Number);
  const auto bound = [](const std::optional<base::Rational>& b) {
    return b ? b->toText() : std::string("-");
  };
  return value.isSettled() ? bound(value.low) : bound(value.low) + ".." + bound(value.high);
}

}  // namespace

TEST_CASE("a comparison of a known number changes just below, at and just above the threshold") {
  struct Row {
    const char* relation;
    Truth below, at, above;
  };
  for (const Row& row : {Row{"<", T, F, F}, Row{"<=", T, T, F}, Row{">", F, F, T}, Row{">=", F, T, T},
                         Row{"=", F, T, F}, Row{"!=", T, F, T}}) {
    const std::string text = std::string("%systolic ") + row.relation + " 180 'mm[Hg]'";
    CAPTURE(text);
    CHECK(truth(text, Values().number("systolic", "179.999")) == row.below);
    CHECK(truth(text, Values().number("systolic", "180")) == row.at);
    CHECK(truth(text, Values().number("systolic", "180.001")) == row.above);
    CHECK(truth(text, Values()) == U);
  }
}

TEST_CASE("a number between bounds decides only what every number between them decides") {
  struct Row {
    const char* low;
    const char* high;
    Truth less, lessOrEqual, greater, greaterOrEqual, equal;
  };
  const Row rows[] = {
      {"1", "4", T, T, F, F, F}, {"1", "5", U, T, F, U, U}, {"1", "9", U, U, U, U, U},
      {"5", "9", F, U, U, T, U}, {"6", "9", F, F, T, T, F}, {"5", "5", F, T, F, T, T},
      {"-", "4", T, T, F, F, F}, {"-", "5", U, T, F, U, U}, {"-", "6", U, U, U, U, U},
      {"5", "-", F, U, U, T, U}, {"6", "-", F, F, T, T, F}, {"4", "-", U, U, U, U, U},
  };
  for (const Row& row : rows) {
    CAPTURE(row.low, row.high);
    Values values;
    values.between("falls", row.low, row.high);
    CHECK(truth("%falls < 5", values) == row.less);
    CHECK(truth("%falls <= 5", values) == row.lessOrEqual);
    CHECK(truth("%falls > 5", values) == row.greater);
    CHECK(truth("%falls >= 5", values) == row.greaterOrEqual);
    CHECK(truth("%falls = 5", values) == row.equal);
    CHECK(truth("%falls != 5", values) == truthNot(row.equal));
    CHECK(truth("5 > %falls", values) == row.less);
  }
}

TEST_CASE("bounds that cross are unknown and never true and false at once") {
  Values values;
  values.between("falls", "9", "1");
  CHECK(truth("%falls < 5", values) == U);
  CHECK(truth("%falls >= 0", values) == U);
}

TEST_CASE("arithmetic carries the bounds") {
  Values values;
  values.between("systolic", "120", "140").between("diastolic", "70", "90").number("falls", "-2");
  CHECK(number("%systolic + %diastolic", values) == "190..230");
  CHECK(number("%systolic - %diastolic", values) == "30..70");
  CHECK(number("-%systolic", values) == "-140..-120");
  CHECK(number("+%systolic", values) == "120..140");
  CHECK(number("%systolic * %falls", values) == "-280..-240");
  CHECK(number("%systolic / %falls", values) == "-70..-60");
  CHECK(number("%systolic / %diastolic * 63", values) == "84..126");
  CHECK(number("(1 + 2) * 3 - 4 / 8", values) == "8.5");
  values.between("diastolic", "70", "-");
  CHECK(number("%systolic + %diastolic", values) == "190..-");
  CHECK(number("%systolic - %diastolic", values) == "-..70");
  CHECK(number("%systolic / %diastolic", values) == "0..2");
  CHECK(number("%diastolic * %falls", values) == "-..-140");
  values.between("falls", "-1", "3");
  CHECK(number("%systolic * %falls", values) == "-140..420");
  CHECK(number("%diastolic * %falls", values) == "-..-");
}

TEST_CASE("what cannot be calculated is unknown") {
  Values values;
  values.number("systolic", "120").number("falls", "0");
  CHECK(number("%systolic / %falls", values) == "-..-");
  values.between("falls", "-1", "1");
  CHECK(number("%systolic / %falls", values) == "-..-");
  values.between("falls", "0", "1");
  CHECK(truth("%systolic / %falls > 1 'mm[Hg]'", values) == U);
  values.between("falls", "-", "-");
  CHECK(number("%falls * 0", values) == "-..-");
  values.number("falls", "1e30");
  CHECK(number("%falls * %falls * %falls", values) == "-..-");
  CHECK(truth("%falls * %falls * %falls > 1", values) == U);
}

TEST_CASE("a date known in part is every day it can be") {
  const auto with = [](const char* date) { return Values().date("surgeryDate", date); };
  CHECK(truth("%surgeryDate < @2026-03-15", with("2026-03-14")) == T);
  CHECK(truth("%surgeryDate < @2026-03-15", with("2026-03-15")) == F);
  CHECK(truth("%surgeryDate <= @2026-03-15", with("2026-03-15")) == T);
  CHECK(truth("%surgeryDate > @2026-03-15", with("2026-03-16")) == T);
  CHECK(truth("%surgeryDate = @2026-03-15", with("2026-03-15")) == T);
  CHECK(truth("%surgeryDate != @2026-03-15", with("2026-03-16")) == T);

  CHECK(truth("%surgeryDate < @2026-03-15", with("2026-02")) == T);
  CHECK(truth("%surgeryDate < @2026-03-15", with("2026-03")) == U);
  CHECK(truth("%surgeryDate < @2026-03-15", with("2026-04")) == F);
  CHECK(truth("%surgeryDate <= @2026-03-31", with("2026-03")) == T);
  CHECK(truth("%surgeryDate < @2026-03-31", with("2026-03")) == U);
  CHECK(truth("%surgeryDate >= @2026-03-01", with("2026-03")) == T);
  CHECK(truth("%surgeryDate = @2026-03-15", with("2026-03")) == U);
  CHECK(truth("%surgeryDate = @2026-03-15", with("2026-04")) == F);

  CHECK(truth("%surgeryDate < @2026-03-15", with("2025")) == T);
  CHECK(truth("%surgeryDate < @2026-03-15", with("2026")) == U);
  CHECK(truth("%surgeryDate < @2026-03-15", with("2027")) == F);
  CHECK(truth("%surgeryDate >= @2026-01-01", with("2026")) == T);
  CHECK(truth("%surgeryDate < @2026-03-15", Values()) == U);

  CHECK(truth("%surgeryDate < @2026", with("2025-12-31")) == T);
  CHECK(truth("%surgeryDate < @2026", with("2026-06-01")) == U);
  CHECK(truth("%surgeryDate > @2026-02", with("2026-03-01")) == T);
  CHECK(truth("%surgeryDate in (@2026-01-05 | @2026-02-05)", with("2026-02-05")) == T);
  CHECK(truth("%lastFall < %surgeryDate", with("2026-03").date("lastFall", "2026-02-28")) == T);
  CHECK(truth("%lastFall < %surgeryDate", with("2026").date("lastFall", "2026-02-28")) == U);
}

TEST_CASE("codes and texts are compared to the letter") {
  Values values;
  values.code("joint", "hip").set("note", Value::ofText("Hip"));
  CHECK(truth("%joint = 'hip'", values) == T);
  CHECK(truth("'hip' = %joint", values) == T);
  CHECK(truth("%joint != 'hip'", values) == F);
  CHECK(truth("%joint = 'knee'", values) == F);
  CHECK(truth("%note = 'hip'", values) == F);
  CHECK(truth("%note = 'Hip'", values) == T);
  CHECK(truth("%joint = 'hip'", Values()) == U);
  CHECK(truth("%joint = %worseJoint", values.code("worseJoint", "knee")) == F);
}

TEST_CASE("in is true for one of the list, false for none and unknown for unknown") {
  Values values;
  values.code("joint", "knee").between("falls", "2", "3");
  CHECK(truth("%joint in ('hip' | 'knee')", values) == T);
  CHECK(truth("%joint in ('hip' | 'ankle')", values) == F);
  CHECK(truth("%joint in 'hip' | 'knee'", values) == T);
  CHECK(truth("%joint in 'knee'", values) == T);
  CHECK(truth("(%joint in ('hip' | 'knee')).not()", values) == F);
  CHECK(truth("%joint in ('hip' | 'knee')", Values()) == U);
  CHECK(truth("%falls in (0 | 1 | 4)", values) == F);
  CHECK(truth("%falls in (1 | 2)", values) == U);
  CHECK(truth("%weight in (70 'kg' | 80000 'g')", Values().number("weight", "80")) == T);
}

TEST_CASE("a comparison with a fact that does not apply is false") {
  Values values;
  for (const char* name : {"falls", "surgeryDate", "joint", "note"}) values.notApplicable(name);
  for (const char* text :
       {"%falls > 3", "%falls <= 3", "%falls = 3", "%falls != 3", "%falls + 1 > 0", "%falls in (1 | 2)",
        "3 * %falls < %saturation / 1 '%'", "%surgeryDate < @2026-01-01", "%joint = 'hip'", "%joint != 'hip'",
        "%note = 'x'"}) {
    CAPTURE(text);
    CHECK(truth(text, values) == F);
  }
  CHECK(truth("(%falls > 3).not()", values) == T);
  CHECK(program("%falls + 1").evaluate(values) == Value::ofNotApplicable(ValueKind::Number));
  CHECK(program("%joint").evaluate(values) == Value::ofNotApplicable(ValueKind::Code));
  CHECK(truth("%joint = 'hip'", values.code("joint", "hip")) == T);
}

TEST_CASE("the longest chain that parses also compiles, runs and explains itself") {
  std::string text = "%angina";
  for (int i = 2; i < kMaxHeight; ++i) text += i % 2 == 0 ? " or %dizzy" : " or %falls > 3";
  const Program chain = program(text);
  CHECK(chain.evaluate(Values()).truth == U);
  CHECK(names(chain.decidedBy(Values())) == std::vector<std::string>{"angina", "dizzy", "falls"});
  CHECK(chain.knownWhen(false).size() == 3);
  CHECK(chain.knownWhen(true).empty());
}

TEST_CASE("a program knows its type, its text and what it reads") {
  const std::string text =
      "%diastolic > 90 'mm[Hg]' or %systolic > 140 'mm[Hg]' and %diastolic > 80 'mm[Hg]'";
  const Program condition = program(text, Type{});
  CHECK(condition.type().kind == ValueKind::Boolean);
  CHECK(condition.text() == text);
  CHECK(names(condition.slotsRead()) == std::vector<std::string>{"diastolic", "systolic"});
  CHECK(program("%falls + 1").type().isWhole);
  CHECK_FALSE(program("%falls / 2").type().isWhole);
  CHECK_FALSE(program("%falls + 1.0").type().isWhole);
  CHECK(program("%joint").type().kind == ValueKind::Code);
  CHECK(program("'hip'", Type{ValueKind::Code, {}, {}, false}).evaluate(Values()) == Value::code("hip"));
  CHECK(program("%joint").evaluate(Values()) == Value::unknown(ValueKind::Code));
  CHECK(program("%surgeryDate").evaluate(Values().date("surgeryDate", "2026-03")) ==
        Value::ofDate(*base::PartialDate::parse("2026-03")));
  CHECK(program("true").evaluate(Values()) == Value::boolean(true));
}
