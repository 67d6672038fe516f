#include "plan/library.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "planning.h"

using namespace stile;
using namespace stile::plan;

namespace {

/// Issues of the real content with one text changed; the text must occur.
base::Issues issuesWith(const std::string& file, const std::string& from, const std::string& to) {
  auto files = planFiles();
  std::string& text = files.at(file);
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
  return PlanContent(files).issues;
}

bool says(const base::Issues& issues, const std::string& words, const std::string& file) {
  return std::any_of(issues.all().begin(), issues.all().end(), [&](const base::Issue& issue) {
    return issue.message.find(words) != std::string::npos && issue.place.file == file && issue.place.line > 0;
  });
}

const std::string kWarmUp = "rules/exercises/warm-up.json";
const std::string kLegs = "rules/exercises/strength-legs.json";
const std::string kDoses = "rules/doses.json";

}  // namespace

TEST_CASE("The shipped exercises and doses load without an issue") {
  for (const auto& issue : realContent().issues.all()) FAIL_CHECK(base::toText(issue));
  CHECK(realContent().library.exercises.size() >= 70);
  CHECK(realContent().library.find("sit-to-stand") != nullptr);
  CHECK(realContent().library.find("no-such-exercise") == nullptr);
}

TEST_CASE("Every section has exercises, and every purpose at least one for each starting level") {
  const Library& library = realContent().library;
  for (Section section : kSections) {
    CHECK(std::any_of(library.exercises.begin(), library.exercises.end(),
                      [&](const Exercise& exercise) { return exercise.section == section; }));
  }
}

TEST_CASE("A mistake in an exercise is reported where it stands") {
  CHECK(says(issuesWith(kWarmUp, "\"homeHasChair\"", "\"homeHasSofa\""), "no fact \"homeHasSofa\"", kWarmUp));
  CHECK(says(issuesWith(kLegs, "\"movement\": \"kneeFlexion\"", "\"movement\": \"kneeBend\""),
             "unknown movement \"kneeBend\"", kLegs));
  CHECK(says(issuesWith(kLegs, "\"involves\": [\"weightBearing\"", "\"involves\": [\"weight\""),
             "unknown ban \"weight\"", kLegs));
  CHECK(says(issuesWith(kLegs, "\"harder\": \"step-up\"", "\"harder\": \"step-down\""),
             "no other exercise \"step-down\"", kLegs));
  CHECK(says(issuesWith(kLegs, "\"degrees\": 106", "\"degrees\": 160"), "out of the joint's range", kLegs));
  CHECK(says(issuesWith(kLegs, "\"sources\": [\"acsm-2011-dose\", \"common practice, no source\"]", "\"sources\": []"),
             "no source", kLegs));
  CHECK(says(issuesWith(kLegs, "\"acsm-2011-dose\"", "\"somebody-2099\""), "unknown source", kLegs));
  CHECK(says(issuesWith(kLegs, "\"id\": \"step-up\"", "\"id\": \"bridge\""), "stands twice", kLegs));
  CHECK(says(issuesWith(kLegs, "\"purpose\": \"leg-strength\"", "\"purpose\": \"leg-beauty\""), "no purpose", kLegs));
  CHECK(says(issuesWith(kLegs, "\"purpose\": \"leg-strength\"", "\"purpose\": \"stretch-calf\""),
             "belongs to the section stretching", kLegs));
  CHECK(says(issuesWith(kLegs, "\"hipFlexion\": 80", "\"hipFlexion\": 110"), "does not ask for less", kLegs));
  CHECK(says(issuesWith(kLegs, "\"dose\": \"repetitions\"", "\"doze\": \"repetitions\""), "doze", kLegs));
}

TEST_CASE("Effort numbers, words and ceiling must agree") {
  const std::string row = "\"rung\": \"light\", \"low\": 3, \"high\": 4, \"words\": \"light\"";
  CHECK(says(issuesWith(kDoses, row, "\"rung\": \"light\", \"low\": 3, \"high\": 4, \"words\": \"moderate\""),
             "do not agree with the effort scale", kDoses));
  CHECK(says(issuesWith(kDoses, row, "\"rung\": \"light\", \"low\": 3, \"high\": 6, \"words\": \"light to moderate\""),
             "above what the ceiling light allows", kDoses));
  CHECK(says(issuesWith(kDoses, "\"repetitionsInReserve\": 5,", ""), "needs \"repetitionsInReserve\"", kDoses));
}

TEST_CASE("A mistake in the doses is reported where it stands") {
  CHECK(says(issuesWith(kDoses, "%regularlyActive", "%regularlyActiv"), "regularlyActiv", kDoses));
  CHECK(says(issuesWith(kDoses, "\"restSeconds\": 60, ", ""), "restSeconds", kDoses));
  CHECK(says(issuesWith(kDoses, "\"turnTo\": \"physiotherapy\"", "\"turnTo\": \"nobody\""), "unknown service", kDoses));
  CHECK(says(issuesWith(kDoses, "\"missedWeek\"", "\"mistWeek\""), "missedWeek", kDoses));
  CHECK(says(issuesWith(kDoses, "\"priority\": 3000", "\"priority\": 300"), "whole main part", kDoses));
  auto files = planFiles();
  files.erase(kDoses);
  CHECK(PlanContent(files).issues.hasErrors());
}
