// What clients read of exercises and plans is plain: reading grade by the Flesch-Kincaid formula
// (Kincaid 1975), with syllables estimated from groups of vowels.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>

#include "planning.h"

using namespace stile;
using namespace stile::plan;

namespace {

int syllablesOf(std::string word) {
  const std::size_t size = word.size();
  if (size > 3 && word.substr(size - 2) == "es" && std::string_view("szxhcg").find(word[size - 3]) == std::string_view::npos)
    word.pop_back();
  int groups = 0;
  bool wasVowel = false;
  for (char letter : word) {
    const bool isVowel = std::string_view("aeiouy").find(letter) != std::string_view::npos;
    if (isVowel && !wasVowel) ++groups;
    wasVowel = isVowel;
  }
  if (groups > 1 && word.back() == 'e' && word.substr(word.size() - 2) != "le") --groups;
  return std::max(1, groups);
}

double gradeOf(const std::string& text) {
  int words = 0, sentences = 0, syllables = 0;
  std::string word;
  for (char letter : text + " ") {
    if (std::isalnum(static_cast<unsigned char>(letter)) != 0) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
      continue;
    }
    if (!word.empty()) {
      ++words;
      syllables += syllablesOf(word);
      word.clear();
    }
    if (letter == '.' || letter == ':') ++sentences;
  }
  return std::max(0.0, 0.39 * words / std::max(1, sentences) + 11.8 * syllables / std::max(1, words) - 15.59);
}

std::string clientText(const Exercise& exercise) {
  std::string text = exercise.equipmentWords + " " + exercise.feel;
  for (const std::string& step : exercise.steps) text += " " + step;
  for (const std::string& mistake : exercise.mistakes) text += " " + mistake;
  for (const Easing& easing : exercise.easings) text += " " + easing.sayClient;
  return text;
}

}  // namespace

TEST_CASE("The reading grade agrees with worked examples") {
  CHECK(gradeOf("Walk for ten minutes. Stop if your chest hurts.") == Approx(0).margin(0.01));
}

TEST_CASE("Every exercise reads at grade 6 or below, and half of them at grade 4 or below") {
  std::vector<double> grades;
  for (const Exercise& exercise : realContent().library.exercises) {
    grades.push_back(gradeOf(clientText(exercise)));
    INFO(exercise.id << ": " << clientText(exercise));
    CHECK(grades.back() <= 6);
  }
  std::sort(grades.begin(), grades.end());
  CHECK(grades[grades.size() / 2] <= 4);
}

TEST_CASE("The sentences of a plan read at grade 6 or below and promise nothing") {
  for (char level : {'A', 'B', 'C', 'D'}) {
    const auto plan = Client().hasEverything().startsAt(level).plan();
    std::string all;
    for (const auto* list : {&plan.badDay, &plan.missedWeek, &plan.afterIllness, &plan.notes, &plan.effortWords}) {
      for (const std::string& each : *list) all += each + " ";
    }
    for (const Line& line : plan.lines) all += line.dose.words + " ";
    for (const Week& week : plan.weeks) all += week.words + " ";
    CHECK(gradeOf(all) <= 6);
    for (const char* promise : {" safe", " cleared", " fit "}) CHECK(all.find(promise) == std::string::npos);
  }
}
