#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

TEST_CASE("A multiple choice makes one boolean fact for each option") {
  const Sample sample(
      fact("heartConditions", "code",
           "\"multiple\": true, \"unknownAs\": \"gate\", \"freshFor\": {\"value\": 1, \"unit\": \"mo\"}, " +
               choices("angina heartFailure none")));
  const facts::Definition* angina = sample.dictionary.find("heartConditionsAngina");
  REQUIRE(angina);
  CHECK(angina->isOption());
  CHECK_FALSE(angina->isDerived());
  CHECK(angina->type == facts::FactType::Boolean);
  CHECK(angina->concern == facts::Concern::True);
  CHECK(angina->unknownAs == facts::UnknownAs::Gate);
  CHECK(angina->freshFor == base::Period{1, base::CalendarUnit::Month});
  CHECK(angina->label == "heartConditions: Words for angina");
  CHECK(sample.dictionary.find("heartConditionsHeartFailure"));
  CHECK(sample.dictionary.find("heartConditionsNone")->concern == facts::Concern::False);
  CHECK_THAT(sample.dictionary.lookup("heartConditions")->usable, Contains("%heartConditionsAngina"));
  CHECK(sample.dictionary.lookup("heartConditionsAngina")->usable.empty());
}

TEST_CASE("Policies are code facts that are always known") {
  Sample sample(
      fact("a", "boolean", formula("%policyStart = 'slow'")), {}, {},
      {{"rules/policy.json",
        R"({"policies": [{"id": "policyStart", "title": "Start", "question": "How?", "value": "slow",
                  "alternatives": [{"code": "slow", "display": "Slowly", "sources": ["s"]},
                  {"code": "fast", "display": "Fast", "sources": ["s"]}], "decides": "One thing.", "sources": ["s"]}]})"}});
  auto set = sample.plain("{}");
  CHECK(sample.say(set, "policyStart") == "Slowly");
  CHECK(sample.in(set, "policyStart").source == "policy");
  CHECK(sample.say(set, "a") == "yes");
  CHECK_THAT(sample.refusedPlain(R"({"policyStart": "fast"})"),
             Contains("is a policy") && Contains("rules/policy.json"));

  base::Issues issues;
  const auto document = json::Document::parse(R"({"policyStart": "fast"})", "f", issues);
  const auto other = facts::factsFromPlain(sample.dictionary, sample.forms, document->root(), kToday, issues,
                                           facts::PolicyChoice::Allowed);
  CHECK(issues.empty());
  CHECK(sample.say(other, "a") == "no");

  set.change(sample.slot("policyStart")).value = expression::Value::code("fast");
  facts::settle(set, sample.forms, kToday, issues);
  CHECK(sample.say(set, "a") == "no");
}

TEST_CASE("Facts of a group are refused outside it and usable through its view") {
  const Sample sample(fact("name", "text", member("medicine")) + "," +
                          fact("other", "text", member("joint")) + "," + fact("alone", "boolean"),
                      "medicine joint");
  CHECK_THAT(sample.dictionary.lookup("name")->usable, Contains("group medicine"));
  const facts::Dictionary::GroupView view(sample.dictionary, "medicine");
  CHECK(view.lookup("name")->usable.empty());
  CHECK(view.lookup("alone")->usable.empty());
  CHECK_THAT(view.lookup("other")->usable, Contains("group joint"));
  CHECK_FALSE(view.lookup("nobody"));
  CHECK(sample.dictionary.similar("zzzzz").empty());
  CHECK(sample.dictionary.similar("alonee") == std::vector<std::string>{"alone"});
}

TEST_CASE("Derived facts are ordered after what they read, whatever the order of the file") {
  const Sample sample(fact("c", "boolean", formula("%b")) + "," + fact("b", "boolean", formula("%a")) + "," +
                      fact("a", "boolean"));
  CHECK(sample.dictionary.derivedInOrder() == std::vector<int>{sample.slot("b"), sample.slot("c")});
}

TEST_CASE("Facts that read each other in a circle are an issue") {
  const auto text = dictionaryIssues(
      {{"rules/facts/t.json",
        factFile(fact("a", "boolean", formula("%b")) + "," + fact("b", "boolean", formula("%c or %a")) + "," +
                 fact("c", "boolean", formula("%d")) + "," + fact("d", "boolean"))}});
  CHECK_THAT(text, Contains("a → b → a") && Contains("rules/facts/t.json:1:"));
}

TEST_CASE("Every fact needs its concern, its unknownAs and its sources") {
  const auto text =
      dictionaryIssues({{"rules/facts/t.json", factFile(R"({"id": "a", "label": "A", "type": "boolean"})")}});
  CHECK_THAT(text, Contains("\"concern\" is missing") && Contains("\"unknownAs\" is missing") &&
                       Contains("\"sources\" is missing"));
}

TEST_CASE("What is wrong with one fact is told with its place and a remedy") {
  struct Case {
    std::string facts;
    std::string expected;
  };
  const std::string reading = fact("reading", "quantity", mmHg() + ", " + member("g"));
  const auto c = GENERATE_COPY(values<Case>({
      {fact("a", "bool"), "is no type"},
      {fact("A", "boolean"), "not lowerCamelCase"},
      {fact("a", "boolean", R"("colour": "red")"), "colour"},
      {fact("a", "quantity"), "\"unit\" is missing"},
      {fact("a", "quantity", R"("unit": "furlong")"), "no unit known here"},
      {fact("a", "integer", R"("unit": "kg")"), "only a quantity has a unit"},
      {fact("a", "quantity", R"("unit": "mmol/L", "analyte": "gold")"), "is no analyte"},
      {fact("a", "integer", R"("possible": [5, 2])"), "the lower first"},
      {fact("a", "integer", R"("possible": [5, 20], "plausible": [4, 10])"), "beyond the possible range"},
      {fact("a", "boolean", R"("possible": [5, 20])"), "only numbers have a range"},
      {fact("a", "code"), "a code needs options"},
      {fact("a", "boolean", choices("x y")), "only a code has options"},
      {fact("a", "code", choices("none x")), "only one answer may be given"},
      {fact("a", "code", choices("x x")), "there is an option \"x\" already"},
      {fact("a", "boolean", R"("concern": "rising")"), "cannot have the concern"},
      {fact("a", "boolean", R"("unknownAs": "boldly")"), "is no unknownAs"},
      {fact("a", "boolean", R"("unknownAs": "optional")"), "an optional fact needs a reason"},
      {fact("a", "boolean", R"("optional": {"because": "why"})"), "the circumstance"},
      {fact("a", "boolean", R"("optional": {"when": "%nobody", "because": "why"})"), "nobody"},
      {fact("a", "code", choices("x y") + R"(, "whenNotApplicable": "z")"), "no value of this fact"},
      {fact("a", "integer", R"("whenNotApplicable": 0.5)"), "comparisons of this fact are then false"},
      {fact("a", "decimal", R"("whenNotApplicable": 3)"), "comparisons of this fact are then false"},
      {fact("a", "boolean", R"("freshFor": {"value": -1, "unit": "d"})"), "whole number of d, wk, mo or a"},
      {fact("a", "boolean", R"("retiredFor": "b")"), "no fact that could replace"},
      {fact("a", "boolean", R"("code": "8480-6")"), "needs its system"},
      {fact("a", "boolean", member("nowhere")), "there is no group \"nowhere\""},
      {fact("a", "boolean") + "," + fact("a", "boolean"), "there is a fact \"a\" already"},
      {fact("a", "code", R"("multiple": true, )" + choices("x none")) + "," + fact("aX", "boolean"),
       "\"aX\" already"},
      {fact("a", "boolean", derived(R"("guess": 1)")), "is no kind of derivation"},
      {fact("a", "boolean", formula("%nobody")), "nobody"},
      {fact("a", "boolean", formula("3 + 4")), "true or false"},
      {reading + "," + fact("a", "boolean", formula("%reading > 3 'mm[Hg]'")), "belongs to each repetition"},
      {fact("d", "boolean") + "," + fact("a", "integer", derived(R"("elapsed": {"since": "d", "in": "a"})")),
       "is no date"},
      {fact("d", "date") + "," +
           fact("a", "integer", derived(R"("elapsed": {"since": "d", "in": "years ago"})")),
       "d, wk, mo or a"},
      {fact("d", "date", member("g")) + "," +
           fact("a", "integer", derived(R"("elapsed": {"since": "d", "in": "a"})")),
       "through a summary"},
      {fact("a", "boolean", derived(R"("summary": {"group": "h", "any": "true"})")),
       "there is no group \"h\""},
      {fact("a", "boolean", derived(R"("summary": {"group": "g"})")), "exactly one"},
      {fact("a", "boolean", derived(R"("summary": {"group": "g", "count": true})")), "a count is an integer"},
      {reading + "," + fact("a", "integer", derived(R"("mean": {"of": "reading"})")), "has another type"},
      {fact("b", "boolean") + "," + fact("a", "integer", derived(R"("mean": {"of": "b"})")),
       "is in no group"},
      {reading + "," +
           fact("a", "quantity", mmHg() + "," + derived(R"("worst": {"of": "reading", "take": "best"})")),
       "largest or smallest"},
      {fact("a", "code", derived(R"("norm": {"table": "t", "of": "b", "sex": "c", "age": "d"})")),
       "there is no norm table"},
      {fact("b", "integer") + "," + fact("a", "integer", derived(R"("score": ["b"])")), "is no boolean"},
      {fact("a", "boolean", derived(R"("class": "statin")")), "there is no medicine class"},
      {fact("b", "boolean") + "," +
           fact("a", "boolean", R"("freshFor": {"value": 1, "unit": "d"}, )" + formula("%b")),
       "an age of its own"},
  }));
  CAPTURE(c.facts);
  const auto text = dictionaryIssues({{"rules/facts/t.json", factFile(c.facts, "g")}});
  CHECK_THAT(text, Contains(c.expected) && Contains("rules/facts/t.json:1:"));
}

TEST_CASE("All issues of all files are told, not only the first") {
  const auto text = dictionaryIssues({{"rules/facts/a.json", factFile(fact("a", "bool"))},
                                      {"rules/facts/b.json", "{"},
                                      {"rules/facts/c.json", factFile(fact("c", "code"))},
                                      {"rules/other.json", "not read here"}});
  CHECK_THAT(text, Contains("a.json") && Contains("b.json") && Contains("c.json") && !Contains("other.json"));
}

TEST_CASE("Groups may be defined in one file and used in another, but only once") {
  const Files good{{"rules/facts/a.json", factFile("", "g")},
                   {"rules/facts/b.json", factFile(fact("x", "boolean", member("g")))}};
  CHECK(dictionaryIssues(good).empty());
  const Files twice{{"rules/facts/a.json", factFile("", "g")}, {"rules/facts/b.json", factFile("", "g")}};
  CHECK_THAT(dictionaryIssues(twice), Contains("there is a group \"g\" already"));
}

TEST_CASE("A retired fact is refused in expressions, and the new one is named") {
  const auto text =
      dictionaryIssues({{"rules/facts/t.json",
                         factFile(fact("old", "boolean", R"("retiredFor": "fresh")") + "," +
                                  fact("fresh", "boolean") + "," + fact("a", "boolean", formula("%old")))}});
  CHECK_THAT(text, Contains("%fresh"));
}

TEST_CASE("An issue in an expression stands at the line and column of the word") {
  const auto text =
      dictionaryIssues({{"rules/facts/t.json", "{\"topic\": \"t\", \"facts\": [\n" +
                                                   fact("a", "boolean", formula("%oops")) + "]}"}});
  CHECK_THAT(text, Contains("rules/facts/t.json:2:"));
}

TEST_CASE("A smallest change is a positive number with a source, on a number") {
  const Sample sample(
      fact("distance", "quantity",
           R"("unit": "m", "sources": ["s"], "smallestChange": {"value": 30, "sources": ["s"]})"));
  CHECK(sample.dictionary.find("distance")->smallestChange == base::Rational(30));
  CHECK(sample.dictionary.find("distance")->smallestChangeSources == std::vector<std::string>{"s"});
  const auto text = dictionaryIssues(
      {{"rules/facts/t.json",
        factFile(
            fact("a", "boolean", R"("sources": ["s"], "smallestChange": {"value": 1, "sources": ["s"]})") +
            "," +
            fact("b", "integer", R"("sources": ["s"], "smallestChange": {"value": 0, "sources": []})"))}});
  CHECK_THAT(text, Contains("only a number has a smallest change") && Contains("must be more than nothing") &&
                       Contains("names no source"));
}
