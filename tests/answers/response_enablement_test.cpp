#include "answers/response_enablement.h"

#include "validation_sample.h"

using namespace stile;
using namespace stile::sample;
using answers::Occurrence;
using answers::ResponseEnablement;
using answers::ResponseItem;
using answers::ResponseTree;
using expression::Truth;

namespace {

/// A form, a response to it, and what applies.
struct Setting {
  questionnaire::FormSet forms;
  std::shared_ptr<const json::Document> document;
  std::unique_ptr<ResponseTree> tree;
  std::unique_ptr<ResponseEnablement> enablement;

  Setting(const std::string& formItems, const std::string& responseItems) : forms(loadedAny(formItems)) {
    base::Issues issues;
    document = json::Document::parse(responseTo(responseItems), "r.json", issues);
    REQUIRE(document);
    tree = std::make_unique<ResponseTree>(document->root(), *forms.forms().front(), issues);
    enablement = std::make_unique<ResponseEnablement>(*tree, nullptr);
  }

  const questionnaire::Item& item(const std::string& linkId) const {
    return *forms.forms().front()->find(linkId);
  }
  Truth atTop(const std::string& linkId) { return enablement->isEnabled(item(linkId), tree->root()); }
  const Occurrence& in(const Occurrence& within, std::size_t entry, std::size_t occurrence = 0) const {
    return *within.items.at(entry)->occurrences.at(occurrence);
  }
};

/// Of `x`, which has this condition on the question `q`, when `q` has these answers.
Truth decided(const std::string& question, const std::string& condition, const std::string& answers) {
  Setting setting(question + "," + item("x", "boolean", enableWhen(condition)),
                  answers.empty() ? "" : answered("q", answers));
  return setting.atTop("x");
}

const std::string kTrue = "\"answerBoolean\": true";
const std::string kYes = R"({"valueBoolean": true})";
const std::string kNo = R"({"valueBoolean": false})";

}  // namespace

TEST_CASE("Operators have their corrected meaning, for no answer, one and several") {
  const std::string q = item("q", "integer", "\"repeats\": true");
  const auto of = [&](const std::string& op, const std::string& answers) {
    return decided(q, when("q", op, op == "exists" ? "\"answerBoolean\": true" : "\"answerInteger\": 3"),
                   answers);
  };
  const std::string three = R"({"valueInteger": 3})";
  const std::string four = R"({"valueInteger": 4})";
  struct Row {
    const char* op;
    Truth none, isThree, isFour, both;
  };
  const auto t = Truth::True;
  const auto f = Truth::False;
  for (const Row& row :
       {Row{"=", f, t, f, t}, Row{"!=", t, f, t, f}, Row{">", f, f, t, t}, Row{"<", f, f, f, f},
        Row{">=", f, t, t, t}, Row{"<=", f, t, f, t}, Row{"exists", f, t, t, t}}) {
    CAPTURE(row.op);
    CHECK(of(row.op, "") == row.none);
    CHECK(of(row.op, three) == row.isThree);
    CHECK(of(row.op, four) == row.isFour);
    CHECK(of(row.op, three + "," + four) == row.both);
  }
  CHECK(decided(q, when("q", "exists", "\"answerBoolean\": false"), "") == t);
  CHECK(decided(q, when("q", "exists", "\"answerBoolean\": false"), three) == f);
}

TEST_CASE("Answers of every type compare") {
  const auto of = [](const std::string& type, const std::string& op, const std::string& wanted,
                     const std::string& given) {
    return decided(item("q", type), when("q", op, "\"answer" + wanted), "{\"value" + given + "}");
  };
  CHECK(of("boolean", "=", "Boolean\": true", "Boolean\": true") == Truth::True);
  CHECK(of("decimal", ">", "Decimal\": 1.5", "Decimal\": 1.50") == Truth::False);
  CHECK(of("string", "=", "String\": \"a\"", "String\": \"a\"") == Truth::True);
  CHECK(of("string", "<", "String\": \"b\"", "String\": \"a\"") == Truth::True);
  CHECK(of("time", ">", "Time\": \"11:11:11\"", "Time\": \"11:11:12\"") == Truth::True);
  CHECK(of("date", ">=", "Date\": \"2000-01-01\"", "Date\": \"2000-01-01\"") == Truth::True);
  CHECK(of("date", ">", "Date\": \"2000-06-01\"", "Date\": \"2000\"") == Truth::Unknown);
  CHECK(of("dateTime", "<", "DateTime\": \"2000-01-01T12:00:00Z\"",
           "DateTime\": \"2000-01-01T12:30:00+01:00\"") == Truth::True);
  CHECK(of("quantity", ">", "Quantity\": " + quantity("1", "kg"), "Quantity\": " + quantity("1001", "g")) ==
        Truth::True);
  CHECK(of("quantity", ">", "Quantity\": " + quantity("1", "kg"), "Quantity\": " + quantity("1", "m")) ==
        Truth::Unknown);
  CHECK(of("quantity", "=", "Quantity\": {\"value\": 1, \"unit\": \"cups\"}",
           "Quantity\": {\"value\": 1, \"unit\": \"cups\"}") == Truth::True);
  CHECK(of("reference", "=", "Reference\": {\"reference\": \"Patient/1\"}",
           "Reference\": {\"reference\": \"Patient/1\"}") == Truth::True);
  const std::string coding = R"(Coding": {"system": "s", "code": "c"})";
  CHECK(of("choice", "=", coding, coding) == Truth::True);
  CHECK(of("choice", "=", coding, R"(Coding": {"system": "t", "code": "c"})") == Truth::False);
  CHECK(of("open-choice", "=", coding, R"(String": "c")") == Truth::False);
  CHECK(of("open-choice", "!=", coding, R"(String": "c")") == Truth::True);
}

TEST_CASE("A question is looked up in the same repetition, however deep the groups repeat") {
  const std::string inner = item("s", "group",
                                 "\"repeats\": true, \"item\": [" + item("q", "boolean") + "," +
                                     item("x", "boolean", enableWhen(when("q", "=", kTrue))) + "]");
  Setting setting(item("r", "group", "\"repeats\": true, \"item\": [" + inner + "]"),
                  group("r", group("s", answered("q", kYes)) + "," + group("s", answered("q", kNo))) + "," +
                      group("r", group("s", "") + "," + group("s", answered("q", kYes))));
  const auto of = [&](std::size_t outer, std::size_t at) {
    const Occurrence& r = setting.in(setting.tree->root(), outer);
    return setting.enablement->isEnabled(setting.item("x"), setting.in(r, at));
  };
  CHECK(of(0, 0) == Truth::True);
  CHECK(of(0, 1) == Truth::False);
  CHECK(of(1, 0) == Truth::False);  // unanswered here; the answer of another repetition does not count
  CHECK(of(1, 1) == Truth::True);
}

TEST_CASE("From outside, the last repetition before the item counts, else the first after it") {
  const std::string g = item("g", "group", "\"repeats\": true, \"item\": [" + item("q", "boolean") + "]");
  const std::string x = item("x", "boolean", enableWhen(when("q", "=", kTrue)));
  const std::string noThenYes = group("g", answered("q", kNo)) + "," + group("g", answered("q", kYes));
  CHECK(Setting(g + "," + x, noThenYes).atTop("x") == Truth::True);
  CHECK(Setting(x + "," + g, noThenYes).atTop("x") == Truth::False);
}

TEST_CASE("An item under an answer may look at its question and at others under the same answer") {
  const std::string under = item("n", "integer") + "," +
                            item("x", "boolean", enableWhen(when("n", ">", "\"answerInteger\": 3"))) + "," +
                            item("y", "boolean", enableWhen(when("q", "=", "\"answerString\": \"b\"")));
  Setting setting(item("q", "string", "\"repeats\": true, \"item\": [" + under + "]"),
                  R"({"linkId": "q", "answer": [{"valueString": "a", "item": [)" +
                      answered("n", R"({"valueInteger": 4})") + R"(]}, {"valueString": "c", "item": [)" +
                      answered("n", R"({"valueInteger": 3})") + "]}]}");
  const auto of = [&](const std::string& linkId, std::size_t answer) {
    return setting.enablement->isEnabled(setting.item(linkId), setting.in(setting.tree->root(), 0, answer));
  };
  CHECK(of("x", 0) == Truth::True);
  CHECK(of("x", 1) == Truth::False);
  CHECK(of("y", 0) == Truth::False);
}

TEST_CASE("A disabled question counts as unanswered, and disables what stands in it") {
  const std::string form =
      item("a", "boolean") + "," +
      item("g", "group", enableWhen(when("a", "=", kTrue)) + ", \"item\": [" + item("q", "boolean") + "]") +
      "," + item("x", "boolean", enableWhen(when("q", "=", kTrue))) + "," +
      item("y", "boolean", enableWhen(when("q", "!=", kTrue)));
  Setting off(form, answered("a", kNo) + "," + group("g", answered("q", kYes)));
  CHECK(off.enablement->isEnabled(off.item("q"), off.in(off.tree->root(), 1)) == Truth::False);
  CHECK(off.atTop("x") == Truth::False);
  CHECK(off.atTop("y") == Truth::True);
  Setting on(form, answered("a", kYes) + "," + group("g", answered("q", kYes)));
  CHECK(on.atTop("x") == Truth::True);
  CHECK(on.atTop("y") == Truth::False);
}

TEST_CASE("A circle of conditions is undecided only where it decides") {
  const std::string circle = item("c", "boolean") + "," +
                             item("a", "boolean",
                                  enableWhen(when("b", "=", kTrue) + "," + when("c", "=", kTrue)) +
                                      ", \"enableBehavior\": \"any\"") +
                             "," + item("b", "boolean", enableWhen(when("a", "=", kTrue)));
  const std::string both = "," + answered("a", kYes) + "," + answered("b", kYes);
  Setting open(circle, answered("c", kNo) + both);
  CHECK(open.atTop("a") == Truth::Unknown);
  CHECK(open.atTop("b") == Truth::Unknown);
  Setting closed(circle, answered("c", kYes) + both);
  CHECK(closed.atTop("a") == Truth::True);
  CHECK(closed.atTop("b") == Truth::True);
}

TEST_CASE("Many conditions that go in circles come to an end") {
  std::string items;
  std::string answers;
  constexpr int kItems = 60;
  for (int i = 0; i < kItems; ++i) {
    std::string conditions;
    for (int k = 0; k < kItems; ++k) {
      conditions += (k ? "," : "") + when("q" + std::to_string(k), "=", kTrue);
    }
    items += (i ? "," : "") + item("q" + std::to_string(i), "boolean",
                                   enableWhen(conditions) + ", \"enableBehavior\": \"all\"");
    answers += (i ? "," : "") + answered("q" + std::to_string(i), kYes);
  }
  Setting setting(items, answers);
  for (int i = 0; i < 3; ++i) CHECK(setting.atTop("q" + std::to_string(i)) == Truth::Unknown);
}
