// How easy the whole handout is to read.
//
// Flesch-Kincaid grade: 0.39 * words per sentence + 11.8 * syllables per word - 15.59 (Kincaid and
// others, Naval Technical Training Command report 8-75, 1975; from memory). Syllables are estimated as
// groups of vowels without a silent final e, so a grade is good to about half a grade.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <cstdio>

#include "documents/handout.h"
#include "documents/text_writer.h"
#include "documents/waiting_sheet.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

bool isVowel(char c) {
  return std::string_view("aeiouy").find(static_cast<char>(std::tolower(static_cast<unsigned char>(c)))) != std::string_view::npos;
}

int syllablesOf(const std::string& word) {
  int count = 0;
  bool wasVowel = false;
  for (const char c : word) {
    if (isVowel(c) && !wasVowel) ++count;
    wasVowel = isVowel(c);
  }
  if (count > 1 && word.size() > 2 && word.back() == 'e' && !isVowel(word[word.size() - 2]) && word[word.size() - 2] != 'l') --count;
  return std::max(count, 1);
}

/// Grade of a text in which each line is a sentence or several.
double gradeOf(const std::string& text) {
  double words = 0, syllables = 0, sentences = 0;
  std::string word;
  bool inSentence = false;
  const auto end = [&] {
    if (!word.empty()) {
      ++words;
      syllables += syllablesOf(word);
      word.clear();
    }
  };
  for (const char c : text + "\n") {
    if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
      word += c;
      inSentence = true;
    } else {
      end();
      if ((c == '.' || c == '?' || c == '!' || c == '\n' || c == ':') && inSentence) {
        ++sentences;
        inSentence = false;
      }
    }
  }
  return words == 0 ? 0 : 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
}

}  // namespace

TEST_CASE("the formula gives what it gives by hand") {
  // 6 words, 1 sentence, 6 syllables: 0.39 * 6 + 11.8 * 1 - 15.59 = -1.45
  CHECK(gradeOf("The cat sat on the mat.") == Approx(-1.45));
  // 5 words, 1 sentence, 8 syllables.
  CHECK(gradeOf("Measure your blood pressure today.") == Approx(0.39 * 5 + 11.8 * 8 / 5 - 15.59));
  CHECK(gradeOf("One. Two.") < gradeOf("One two three four five six seven eight nine ten eleven twelve."));
}

TEST_CASE("handouts and waiting sheets are written at grade 6 or below, by the median") {
  std::vector<double> grades;
  const auto settings = clinicSettings();
  for (const char* name : {"healthy", "maren", "half", "waiting", "emergency", "pressure", "nothing"}) {
    const auto screening = screened(name);
    const ClientRequest request{screening, content(), settings, {"Maren Oakshott", "", ""}, handoutTexts()};
    auto paper = handoutOf(request);
    if (!paper) paper = waitingSheetOf(request);
    REQUIRE(paper);
    paper->footer.clear();  // the version is no sentence
    const double grade = gradeOf(wordsOf(*paper));
    std::printf("reading level, %s: Flesch-Kincaid grade %.1f\n", name, grade);
    CHECK(grade < 8);
    grades.push_back(grade);
  }
  std::sort(grades.begin(), grades.end());
  std::printf("reading level, median: %.1f\n", grades[grades.size() / 2]);
  CHECK(grades[grades.size() / 2] <= 6);
}
