#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

const std::string kClasses = R"({"classes": [
  {"id": "beta-blocker", "title": "Beta-blockers", "names": ["metoprolol", "bisoprolol"], "sources": ["s"]},
  {"id": "insulin", "title": "Insulins", "names": ["insulin", "insulin glargine"], "sources": ["s"]},
  {"id": "diuretic", "title": "Diuretics", "names": ["hydrochlorothiazide"], "sources": ["s"]}]})";

facts::MedicineClasses classes() {
  base::Issues issues;
  const auto document = json::Document::parse(kClasses, "classes.json", issues);
  auto result = facts::MedicineClasses::read(document->root(), issues);
  REQUIRE(issues.empty());
  return result;
}

Sample medicineSample() {
  return Sample(fact("medicineName", "text", member("medicine")) + "," +
                    fact("takesBetaBlocker", "boolean", derived(R"("class": "beta-blocker")")) + "," +
                    fact("takesInsulin", "boolean", derived(R"("class": "insulin")")) + "," +
                    fact("takesDiuretic", "boolean", derived(R"("class": "diuretic")")),
                "medicine", {}, {{"rules/medicines/classes.json", kClasses}});
}

}  // namespace

TEST_CASE("A medicine matches its exact name, whatever the capitals, the dose and the form") {
  const auto known = classes();
  for (const char* written : {"metoprolol", "  Metoprolol ", "METOPROLOL 50 mg",
                              "metoprolol 47.5mg tablets, once daily", "Metoprolol (tablet) 1x a day"}) {
    CAPTURE(written);
    const auto match = known.match(written);
    CHECK(match.classes == std::vector<int>{0});
    CHECK(match.isResolved);
  }
}

TEST_CASE("Combinations match each of their parts") {
  const auto known = classes();
  for (const char* written :
       {"bisoprolol/hydrochlorothiazide", "bisoprolol and hydrochlorothiazide 5/12.5 mg",
        "bisoprolol + hydrochlorothiazide", "bisoprolol hydrochlorothiazide"}) {
    CAPTURE(written);
    const auto match = known.match(written);
    CHECK(match.classes == std::vector<int>{0, 2});
    CHECK(match.isResolved);
  }
}

TEST_CASE("The longest name is taken, and nothing is guessed") {
  const auto known = classes();
  CHECK(known.match("insulin glargine 10 units at bedtime").isResolved);
  CHECK_FALSE(known.match("insulin degludec").isResolved);
  CHECK(known.match("insulin degludec").classes == std::vector<int>{1});
  CHECK(known.match("metoprolool").classes.empty());
  CHECK_FALSE(known.match("metoprolool").isResolved);
  CHECK_FALSE(known.match("metoprolol and something").isResolved);
  CHECK_FALSE(known.match("50 mg").isResolved);
  CHECK_FALSE(known.match("").isResolved);
}

TEST_CASE("A class fact is true as soon as one medicine is of the class") {
  auto sample = medicineSample();
  const auto set =
      sample.plain(R"({"medicine": [{"medicineName": "metoprolol 50 mg"}, {"medicineName": "xyzol"}]})");
  CHECK(sample.say(set, "takesBetaBlocker") == "yes");
  CHECK(sample.say(set, "takesInsulin") == "unknown: to be resolved");
  CHECK_THAT(sample.asked,
             Contains("\"xyzol\" matches no known name") && Contains("medicine 2: medicineName"));
}

TEST_CASE("A class fact is false only when every medicine is known and none is of the class") {
  auto sample = medicineSample();
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol"}]})"), "takesInsulin") ==
        "no");
  CHECK(sample.say(sample.plain(R"({"medicine": []})"), "takesInsulin") == "no");
  CHECK(sample.asked.empty());
  CHECK(sample.say(sample.plain("{}"), "takesInsulin") == "unknown: not asked");
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": {"unknown": "notSure"}}]})"),
                   "takesInsulin") == "unknown: not sure");
  const auto open = sample.plain(R"({"medicine": [{"medicineName": "xyzol"}, {}]})");
  CHECK(facts::openInputs(open, sample.slot("takesInsulin")) ==
        std::vector<facts::FactRef>{{sample.slot("medicineName"), 0}, {sample.slot("medicineName"), 1}});
}

TEST_CASE("Medicine classes without names or with a doubled id are issues") {
  const auto text =
      dictionaryIssues({{"rules/medicines/classes.json",
                         R"({"classes": [{"id": "a", "title": "A", "names": [], "sources": ["s"]},
                               {"id": "a", "title": "A", "names": ["b/c"], "sources": []}]})"}});
  CHECK_THAT(text, Contains("has no names") && Contains("there is a class \"a\" already") &&
                       Contains("names no source"));
}
