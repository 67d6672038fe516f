#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

std::string agreement(const std::string& facts, const std::string& items, const std::string& groups = {}) {
  const auto dictionary =
      dictionaryOf({{"rules/facts/t.json", factFile(facts + "," + fact("known", "boolean"), groups)}});
  const auto forms = loaded(item("known", "boolean") + "," + items);
  base::Issues issues;
  dictionary.checkForms(forms, issues);
  return textOf(issues);
}

std::string offered(const std::string& code, bool isExclusive = false) {
  return "\"answerOption\": [" + option(code, isExclusive) + "]";
}

}  // namespace

TEST_CASE("A form that agrees with the dictionary has no issue") {
  CHECK(agreement(
            fact("a", "boolean") + "," + fact("b", "integer") + "," + fact("c", "quantity", mmHg()) + "," +
                fact("d", "date") + "," + fact("e", "text") + "," + fact("f", "code", choices("x y")) + "," +
                fact("g", "code", R"("multiple": true, )" + choices("x none")) + "," + fact("h", "decimal") +
                "," + fact("i", "text", member("m")),
            item("a", "boolean") + "," + item("b", "integer") + "," + item("c", "quantity", units("kPa")) +
                "," + item("d", "date") + "," + item("e", "text") + "," + item("f", "choice", offered("x")) +
                "," + item("g", "choice", R"("repeats": true, )" + offered("none", true)) + "," +
                item("h", "decimal") + "," +
                item("m", "group", R"("repeats": true, "item": [)" + item("i", "string") + "]"),
            "m")
            .empty());
}

TEST_CASE("Where a form and the dictionary differ the item's place is told") {
  struct Case {
    std::string facts;
    std::string items;
    const char* expected;
  };
  const auto c = GENERATE_COPY(values<Case>({
      {fact("a", "boolean"), item("aa", "boolean"), "there is no fact \"aa\"; did you mean \"a\"?"},
      {fact("a", "boolean"), item("a", "integer"), "is of the type boolean"},
      {fact("a", "boolean"), item("a", "display"), "an item of the type display cannot be answered"},
      {fact("a", "quantity", mmHg()), item("a", "quantity", units("kg")), "cannot be converted to mm[Hg]"},
      {fact("a", "code", choices("x y")), item("a", "choice", offered("z")),
       "\"z\" is no option of the fact"},
      {fact("a", "code", choices("x y")), item("a", "choice", R"("repeats": true, )" + offered("x")),
       "allows one answer"},
      {fact("a", "code", R"("multiple": true, )" + choices("x none")), item("a", "choice", offered("x")),
       "may have several answers"},
      {fact("a", "code", R"("multiple": true, )" + choices("x none")),
       item("a", "choice", R"("repeats": true, )" + offered("none")), "optionExclusive"},
      {fact("a", "code", R"("multiple": true, )" + choices("x none")), item("aX", "boolean"),
       "no question of its own"},
      {fact("a", "boolean", R"("retiredFor": "known")"), item("a", "boolean"), "is retired"},
      {fact("a", "boolean", member("m")), item("a", "boolean"), "belongs to the group m"},
      {fact("a", "boolean"), item("m", "group", R"("repeats": true, "item": [)" + item("a", "boolean") + "]"),
       "belongs to no repeating group"},
      {fact("a", "boolean"), item("n", "group", R"("repeats": true, "item": [)" + item("a", "boolean") + "]"),
       "no group of the dictionary"},
      {fact("a", "boolean", member("m")), item("m", "group", "\"item\": [" + item("a", "boolean") + "]"),
       "repeats"},
      {fact("a", "code", choices("x y")),
       item("a", "choice", offered("x") + ", " + enableWhen(when("known", "=", R"("answerBoolean": true)"))),
       "whenNotApplicable"},
  }));
  const auto text = agreement(c.facts, c.items, "m");
  CAPTURE(c.items);
  CHECK_THAT(text, Contains(c.expected) && Contains("t.json:1:"));
}

TEST_CASE("A choice that is asked under conditions is settled by its whenNotApplicable, or by its group") {
  CHECK(
      agreement(fact("a", "code", choices("x y") + R"(, "whenNotApplicable": "y")") + "," +
                    fact("b", "code", choices("x y") + ", " + member("m")),
                item("a", "choice",
                     offered("x") + ", " + enableWhen(when("known", "=", R"("answerBoolean": true)"))) +
                    "," +
                    item("m", "group",
                         R"("repeats": true, )" + enableWhen(when("known", "=", R"("answerBoolean": true)")) +
                             ", \"item\": [" + item("b", "choice", offered("x")) + "]"),
                "m")
          .empty());
}

TEST_CASE("A form that asks no fact is not the dictionary's business") {
  const auto dictionary = dictionaryOf({{"rules/facts/t.json", factFile(fact("a", "boolean"))}});
  base::Issues issues;
  dictionary.checkForms(loaded(item("reply", "boolean")), issues);
  CHECK(issues.empty());
}
