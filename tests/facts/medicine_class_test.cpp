#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

const std::string kClasses = R"({
  "words": {"dose": ["mg", "g", "units", "tablet", "tablets", "drops", "once", "daily", "a", "day", "at", "bedtime", "%"],
            "salts": ["succinate", "sodium"]},
  "routes": [{"id": "eye", "title": "in the eye", "words": ["eye", "eyes"], "impliedBy": ["dorzolamide"]},
             {"id": "skin", "title": "on the skin", "words": ["cream", "gel"]}],
  "classes": [
  {"id": "beta-blocker", "title": "Beta-blockers", "names": ["metoprolol", "bisoprolol"], "sources": ["s"]},
  {"id": "insulin", "title": "Insulins", "names": ["insulin", "insulin glargine"], "sources": ["s"]},
  {"id": "diuretic", "title": "Diuretics", "names": ["hydrochlorothiazide"], "sources": ["s"]},
  {"id": "steroid", "title": "Steroids", "names": ["prednisolone", "hydrocortisone"], "notBy": ["eye", "skin"],
   "sources": ["s"]},
  {"id": "beta-blocker-eye", "title": "Beta-blocker drops", "namesOf": ["beta-blocker"], "onlyBy": ["eye"],
   "sources": ["s"]},
  {"id": "known", "title": "Known", "names": ["dorzolamide", "sodium"], "sources": ["s"]}]})";

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
    CHECK(match.possible == std::vector<int>{4});
    CHECK(match.isResolved);
  }
}

TEST_CASE("A salt is passed over behind a name and nowhere else") {
  const auto known = classes();
  CHECK(known.match("metoprolol succinate 50 mg").isResolved);
  CHECK(known.match("metoprolol 50 mg succinate").isResolved);
  CHECK_FALSE(known.match("succinate").isResolved);
  CHECK_FALSE(known.match("metoprolol, succinate").isResolved);
  // A name that is also a salt stays a medicine.
  CHECK(known.match("sodium").classes == std::vector<int>{5});
}

TEST_CASE("The way a medicine is taken decides on classes that depend on it") {
  const auto known = classes();
  CHECK(known.match("prednisolone 5 mg").classes == std::vector<int>{3});
  CHECK(known.match("hydrocortisone 1% cream").classes.empty());
  CHECK(known.match("hydrocortisone 1% cream").isResolved);
  CHECK(known.match("bisoprolol 0.5% eye drops").classes == std::vector<int>{0, 4});
  CHECK(known.match("bisoprolol cream").classes == std::vector<int>{0});
  // A name that is only ever taken in one way tells it for a combination.
  CHECK(known.match("dorzolamide/bisoprolol").classes == std::vector<int>{0, 4, 5});
  CHECK(known.match("bisoprolol").possible == std::vector<int>{4});
}

TEST_CASE("A misspelt medicine is suggested and never guessed") {
  const auto known = classes();
  CHECK(known.near("metoprolool 50 mg") == std::vector<std::string>{"metoprolol"});
  CHECK(known.near("bisoprolol and hydroclorothiazide") == std::vector<std::string>{"hydrochlorothiazide"});
  CHECK(known.near("xyz").empty());
}

TEST_CASE("Combinations match each of their parts") {
  const auto known = classes();
  for (const char* written :
       {"bisoprolol/hydrochlorothiazide", "bisoprolol and hydrochlorothiazide 5/12.5 mg",
        "bisoprolol + hydrochlorothiazide", "bisoprolol hydrochlorothiazide",
        "bisoprolol-hydrochlorothiazide"}) {
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
  CHECK_FALSE(known.match("bisoprolol-something").isResolved);
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

namespace {

/// With the clinician's word, and facts about each single medicine.
Sample resolvingSample() {
  return Sample(
      fact("medicineName", "text", member("medicine")) + "," +
          fact("medicineReason", "code", member("medicine") + "," + choices("heart skin")) + "," +
          fact("medicineLookedUp", "code",
               member("medicine") + "," + choices("noClassHere betaBlocker insulin diuretic")) +
          "," + fact("takesBetaBlocker", "boolean", derived(R"("class": "beta-blocker")")) + "," +
          fact("takesInsulin", "boolean", derived(R"("class": "insulin")")) + "," +
          fact("usesDrops", "boolean", derived(R"("class": "beta-blocker-eye")")) + "," +
          fact("canMeanHeart", "boolean",
               member("medicine") + "," + derived(R"("class": ["beta-blocker", "diuretic"])")) +
          "," +
          fact(
              "forHeart", "boolean",
              derived(
                  R"("summary": {"group": "medicine", "any": "%canMeanHeart and %medicineReason = 'heart'"})")),
      "medicine", {}, {{"rules/medicines/classes.json", kClasses}});
}

std::string lookedUp(const std::string& code, const std::string& by) {
  return R"({"medicine": [{"medicineName": "xyzol", "medicineReason": "skin", "medicineLookedUp": {"value": ")" +
         code + R"(", "givenBy": ")" + by + R"("}}]})";
}

}  // namespace

TEST_CASE("A clinician resolves a medicine whose name is not known; nobody else does") {
  auto sample = resolvingSample();
  auto set = sample.plain(lookedUp("betaBlocker", "clinician"));
  CHECK(sample.say(set, "takesBetaBlocker") == "yes");
  CHECK(sample.say(set, "takesInsulin") == "no");
  CHECK(sample.asked.empty());
  set = sample.plain(lookedUp("noClassHere", "clinician"));
  CHECK(sample.say(set, "takesBetaBlocker") == "no");
  set = sample.plain(lookedUp("noClassHere", "client"));
  CHECK(sample.say(set, "takesBetaBlocker") == "unknown: to be resolved");
  CHECK_THAT(sample.asked, Contains("only a clinician may say what this medicine is"));
}

TEST_CASE("A clinician's word does not count against a name that is known, or without a name") {
  auto sample = resolvingSample();
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol",
      "medicineLookedUp": {"value": "noClassHere", "givenBy": "clinician"}}]})"),
                   "takesBetaBlocker") == "yes");
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": null,
      "medicineLookedUp": {"value": "noClassHere", "givenBy": "clinician"}}]})"),
                   "takesInsulin") == "unknown: not answered");
}

TEST_CASE("An unknown medicine asks for its name and for the clinician's word") {
  auto sample = resolvingSample();
  const auto set = sample.plain(R"({"medicine": [{"medicineName": "xyzol"}]})");
  CHECK(facts::openInputs(set, sample.slot("takesInsulin")) ==
        std::vector<facts::FactRef>{{sample.slot("medicineName"), 0}, {sample.slot("medicineLookedUp"), 0}});
}

TEST_CASE("A missing reason keeps open only what that medicine can mean") {
  auto sample = resolvingSample();
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "insulin"}]})"), "forHeart") == "no");
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol"}]})"), "forHeart") ==
        "unknown: not asked");
  CHECK(
      sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol", "medicineReason": "heart"}]})"),
                 "forHeart") == "yes");
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "xyzol", "medicineReason": "heart"}]})"),
                   "forHeart") == "unknown: to be resolved");
}

TEST_CASE("Without a way of taking it, a class that needs one stays unknown") {
  auto sample = resolvingSample();
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol eye drops"}]})"),
                   "usesDrops") == "yes");
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol cream"}]})"), "usesDrops") ==
        "no");
  CHECK(sample.say(sample.plain(R"({"medicine": [{"medicineName": "metoprolol"}]})"), "usesDrops") ==
        "unknown: to be resolved");
}

TEST_CASE("Routes and borrowed names that do not exist are issues") {
  const auto text = dictionaryIssues({{"rules/medicines/classes.json",
                                       R"({"routes": [{"id": "eye", "title": "E", "words": ["eye"]},
                                                      {"id": "ear", "title": "E", "words": ["eye"]}],
              "classes": [{"id": "a", "title": "A", "names": ["x", "X"], "notBy": ["nose"], "sources": ["s"]},
                          {"id": "b", "title": "B", "namesOf": ["c"], "sources": ["s"]}]})"}});
  CHECK_THAT(text, Contains("has a meaning already") && Contains("there is no route \"nose\"") &&
                       Contains("there is no other class \"c\"") && Contains("\"X\" is listed twice"));
}

TEST_CASE("Medicine classes without names or with a doubled id are issues") {
  const auto text =
      dictionaryIssues({{"rules/medicines/classes.json",
                         R"({"classes": [{"id": "a", "title": "A", "names": [], "sources": ["s"]},
                               {"id": "a", "title": "A", "names": ["b/c"], "sources": []}]})"}});
  CHECK_THAT(text, Contains("has no names") && Contains("there is a class \"a\" already") &&
                       Contains("names no source"));
}
