// What clients read of exercises and plans is plain: reading grade by the Flesch-Kincaid formula
// (Kincaid 1975), with syllables estimated from groups of vowels.
#include <algorithm>
#include <catch2/catch.hpp>

#include "../support/reading_grade.h"
#include "planning.h"

using namespace stile;
using namespace stile::plan;

namespace {

std::string clientText(const Exercise& exercise) {
  std::string text = exercise.equipmentWords + " " + exercise.feel;
  for (const std::string& step : exercise.steps) text += " " + step;
  for (const std::string& mistake : exercise.mistakes) text += " " + mistake;
  for (const Easing& easing : exercise.easings) text += " " + easing.sayClient;
  return text;
}

}  // namespace

TEST_CASE("The reading grade agrees with worked examples") {
  CHECK(test::readingGrade("Walk for ten minutes. Stop if your chest hurts.") == Approx(0).margin(0.01));
}

TEST_CASE("Every exercise reads at grade 6 or below, and half of them at grade 4 or below") {
  std::vector<double> grades;
  for (const Exercise& exercise : realContent().library.exercises) {
    grades.push_back(test::readingGrade(clientText(exercise)));
    INFO(exercise.id << ": " << clientText(exercise));
    CHECK(grades.back() <= 6);
  }
  std::sort(grades.begin(), grades.end());
  CHECK(grades[grades.size() / 2] <= 4);
}

TEST_CASE("How far to go reads at grade 6 or below") {
  for (const Landmarks& landmarks : realContent().library.doses->easingWords.landmarks)
    for (const Landmark& row : landmarks.rows) {
      INFO(landmarks.id << ": " << row.client);
      CHECK(test::readingGrade(row.client) <= 6);
    }
}

TEST_CASE("The sentences of a plan read at grade 6 or below and promise nothing") {
  for (char level : {'A', 'B', 'C', 'D'}) {
    const auto plan = Client().hasEverything().startsAt(level).is("goalsSteadier", true).is("goalsLessPain", true).plan();
    std::string all;
    for (const auto* list : {&plan.badDay, &plan.missedWeek, &plan.afterIllness, &plan.goingOn, &plan.firstSteps,
                             &plan.notes, &plan.effortWords}) {
      for (const std::string& each : *list) all += each + " ";
    }
    for (const Line& line : plan.lines) all += line.dose.words + " ";
    for (const Week& week : plan.weeks) all += week.words + " ";
    CHECK(test::readingGrade(all) <= 6);
    for (const char* promise : {" safe", " cleared", " fit "}) CHECK(all.find(promise) == std::string::npos);
  }
}
