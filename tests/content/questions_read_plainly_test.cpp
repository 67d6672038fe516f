// What clients are asked is plain: reading grade by the Flesch-Kincaid formula (Kincaid 1975).
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <vector>

#include "../support/content.h"
#include "../support/reading_grade.h"

using namespace stile;
using questionnaire::Item;
using questionnaire::ItemType;

namespace {

constexpr double kMostOfOne = 9;  // short questions with one long word swing widely
constexpr double kMedian = 6;

bool isQuestion(const Item& item) {
  return item.type != ItemType::Group && item.type != ItemType::Display;
}

/// Every question that a client hears or reads, once.
std::map<std::string, const Item*> clientQuestions() {
  std::map<std::string, const Item*> questions;
  for (const auto& form : test::content().forms.forms()) {
    if (form->name() == "clearance-reply") continue;  // a physician fills it in
    for (const Item* item : form->inOrder())
      if (isQuestion(*item)) questions.emplace(item->linkId, item);
  }
  return questions;
}

int sentencesIn(const std::string& text) {
  return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) { return c == '?'; }));
}

}  // namespace

TEST_CASE("The reading grade of questions agrees with worked examples") {
  CHECK(test::readingGrade("Walk for ten minutes. Stop if your chest hurts.") == Approx(0).margin(0.01));
  // 5 words, 1 sentence, 8 syllables by the estimate: 1.95 + 18.88 - 15.59.
  CHECK(test::readingGrade("Cardiology requires medical review today.") > 12);
}

TEST_CASE("Questions and their help read at grade 6 in the middle and 9 at the worst") {
  std::vector<double> grades;
  std::pair<double, std::string> worst{0, ""};
  for (const auto& [id, item] : clientQuestions()) {
    const double grade = test::readingGrade(item->text + " " + item->help);
    INFO(id << ": " << item->text << " " << item->help);
    CHECK(grade <= kMostOfOne);
    grades.push_back(grade);
    worst = std::max(worst, std::pair(grade, id));
  }
  std::sort(grades.begin(), grades.end());
  CHECK(grades[grades.size() / 2] <= kMedian);
  WARN(grades.size() << " questions, median grade " << grades[grades.size() / 2] << ", worst " << worst.first
                     << " (" << worst.second << ")");
}

TEST_CASE("A question asks one thing: one question mark, and no time frame twice") {
  for (const auto& [id, item] : clientQuestions()) {
    INFO(id << ": " << item->text);
    CHECK(sentencesIn(item->text) <= 1);
    CHECK(item->text.find("and/or") == std::string::npos);
  }
}

TEST_CASE("Every question says why it is asked, save those that only name a side, a date or a part") {
  int without = 0;
  for (const auto& [id, item] : clientQuestions()) {
    if (!item->help.empty()) continue;
    ++without;
    INFO(id << ": " << item->text);
    const bool isPart = item->type == ItemType::Choice || item->type == ItemType::Date ||
                        item->type == ItemType::Quantity || item->type == ItemType::String;
    CHECK(isPart);
    const Item* group = item->parent;
    const bool isFollowUp =
        !item->enableWhen.empty() || (group && (!group->enableWhen.empty() || group->repeats));
    CHECK(isFollowUp);
  }
  WARN(without << " questions without help");
}

TEST_CASE("Both forms ask the same facts, but for what is measured in the clinic and the call itself") {
  const auto& content = test::content();
  const auto* clinic = content.forms.byName("clinic");
  const auto* telephone = content.forms.byName("telephone");
  REQUIRE(clinic);
  REQUIRE(telephone);
  for (const Item* item : clinic->inOrder()) {
    if (!isQuestion(*item) || telephone->find(item->linkId)) continue;
    INFO(item->linkId << " of " << item->topic);
    const bool isMeasuredHere = item->topic.find("/tests") != std::string::npos ||
                                item->topic.find("/measurements-by-clinician") != std::string::npos;
    CHECK(isMeasuredHere);
  }
}
