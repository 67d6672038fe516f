#include "facts/fact_table.h"
#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

TEST_CASE("The dictionary as a table has one row for each fact but the option facts") {
  const Sample sample(
      fact("a", "boolean", R"("sources": ["acsm", "who"])") + "," +
      fact("heart", "code", R"("multiple": true, )" + choices("angina none")) + "," +
      fact("p", "quantity",
           mmHg() +
               R"(, "possible": [40, 320], "freshFor": {"value": 3, "unit": "mo"}, "unknownAs": "gate")") +
      "," + fact("b", "boolean", formula("%a or %heartAngina")));
  const std::string table = facts::tableAsText(sample.dictionary);
  CHECK_THAT(table, Contains("## t\n") &&
                        Contains("| a | a | boolean | – | true | cautious | – | answer | acsm, who |"));
  CHECK_THAT(table, Contains("angina = Words for angina; none = Words for none"));
  CHECK_THAT(table, Contains("quantity in mm[Hg], 40 to 320") && Contains("| gate | 3 months |"));
  CHECK_THAT(table, Contains("expression %a or %heartAngina"));
  CHECK_THAT(table, !Contains("| heartAngina |"));
}

TEST_CASE("The dictionary as JSON can be read back and names every fact") {
  const Sample sample(fact("a", "boolean") + "," +
                          fact("heart", "code", R"("multiple": true, )" + choices("angina none")) + "," +
                          fact("x", "text", member("g")),
                      "g");
  base::Issues issues;
  const auto document = json::Document::parse(facts::tableAsJson(sample.dictionary), "t", issues);
  INFO(textOf(issues));
  REQUIRE(document);
  CHECK(document->root().find("facts")->size() == static_cast<std::size_t>(sample.dictionary.size()));
  CHECK(document->root().find("groups")->at(0).find("id")->string() == "g");
  CHECK(document->root().find("facts")->at(0).find("unknownAs")->string() == "cautious");
}
