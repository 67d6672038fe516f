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

struct Tally {
  double words = 0, syllables = 0, sentences = 0;
  double grade() const { return words == 0 ? 0 : 0.39 * words / sentences + 11.8 * syllables / words - 15.59; }
};

/// Adds the sentences of a run of text. A full stop within a number ends none; a colon ends none
/// either. What has no end mark is a sentence by itself.
void add(Tally& tally, const std::string& text) {
  std::string word;
  bool inSentence = false;
  const auto end = [&] {
    if (word.empty()) return;
    ++tally.words;
    tally.syllables += syllablesOf(word);
    word.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
      word += c;
      inSentence = true;
      continue;
    }
    end();
    const bool isInNumber = c == '.' && i + 1 < text.size() && std::isdigit(static_cast<unsigned char>(text[i + 1])) != 0;
    if ((c == '.' || c == '?' || c == '!') && !isInNumber && inSentence) {
      ++tally.sentences;
      inSentence = false;
    }
  }
  end();
  if (inSentence) ++tally.sentences;
}

std::size_t wordCount(const std::string& text) {
  Tally tally;
  add(tally, text);
  return static_cast<std::size_t>(tally.words);
}

/// Everything that is read as sentences: paragraphs, list items, the rows of boxes, and cells of tables
/// that hold one. Headings, exercise names, days and numbers in a grid are labels and are not counted:
/// as sentences of one word they would make every paper look easier than it is.
class Reading {
 public:
  explicit Reading(const Document& paper) {
    for (const Section& section : paper.sections) blocks(section.blocks, section.heading);
  }
  const Tally& tally() const { return tally_; }

 private:
  void blocks(const std::vector<Block>& all, const std::string& title) {
    for (const Block& block : all) std::visit([&](const auto& form) { of(form, title); }, block.form);
  }
  void of(const Paragraph& form, const std::string&) { add(tally_, form.lead + " " + form.text); }
  /// An item that ends what its title begins ("Call 112 now if") is read with it.
  void of(const List& form, const std::string& title) {
    const bool goesOn = title.ends_with(" if");
    for (const std::string& item : form.items) add(tally_, goesOn ? title + " " + item : item);
  }
  void of(const Rows& form, const std::string&) {
    for (const Row& row : form.rows) {
      std::string text = row.term;
      for (const auto* list : {&row.text, &row.fine})
        for (const std::string& one : *list) text += (text.empty() || text.ends_with('.') ? " " : ". ") + one;
      add(tally_, text);
    }
  }
  void of(const Table& form, const std::string&) {
    for (const auto& cells : form.rows)
      for (const Cell& cell : cells)
        if (wordCount(cell.text) > 3) add(tally_, cell.text);
  }
  void of(const Box& form, const std::string&) { blocks(form.blocks, form.title); }
  void of(const Fold& form, const std::string&) { blocks(form.blocks, form.title); }
  void of(const Columns& form, const std::string& title) {
    for (const auto& column : form.columns) blocks(column, title);
  }
  template <class Other>
  void of(const Other&, const std::string&) {}

  Tally tally_;
};

double gradeOf(const std::string& text) {
  Tally tally;
  add(tally, text);
  return tally.grade();
}

}  // namespace

TEST_CASE("the formula gives what it gives by hand") {
  // 6 words, 1 sentence, 6 syllables: 0.39 * 6 + 11.8 * 1 - 15.59 = -1.45
  CHECK(gradeOf("The cat sat on the mat.") == Approx(-1.45));
  // 5 words, 1 sentence, 8 syllables.
  CHECK(gradeOf("Measure your blood pressure today.") == Approx(0.39 * 5 + 11.8 * 8 / 5 - 15.59));
  CHECK(gradeOf("Lift 4.5 kg now.") == gradeOf("Lift 45 kg now."));
  CHECK(gradeOf("One. Two.") < gradeOf("One two three four five six seven eight nine ten eleven twelve."));
}

TEST_CASE("handouts and waiting sheets are written at grade 6 or below, by the median") {
  std::vector<double> grades;
  const auto settings = clinicSettings();
  for (const char* name : {"healthy", "maren", "low-mood", "crowded", "half", "waiting", "emergency", "pressure", "nothing", "pregnant", "sternotomy", "telephone"}) {
    const auto screening = screened(name);
    const ClientRequest request{screening, content(), settings, {"Maren Oakshott", "", ""}, handoutTexts()};
    auto paper = handoutOf(request);
    if (!paper) paper = waitingSheetOf(request);
    REQUIRE(paper);
    const Tally tally = Reading(*paper).tally();
    const double grade = tally.grade();
    std::printf("reading level, %s: Flesch-Kincaid grade %.1f (%.0f sentences, %.1f words each)\n", name, grade, tally.sentences,
                tally.words / tally.sentences);
    CHECK(grade < 8);
    grades.push_back(grade);
  }
  std::sort(grades.begin(), grades.end());
  std::printf("reading level, median: %.1f\n", grades[grades.size() / 2]);
  CHECK(grades[grades.size() / 2] <= 6);
}
