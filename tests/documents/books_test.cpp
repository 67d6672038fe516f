// Forms to fill in by hand, the rule book, and the sheets beside the handout.
#include <catch2/catch.hpp>

#include "documents/blank_form.h"
#include "documents/client_sheets.h"
#include "documents/norm_plot.h"
#include "documents/rule_book.h"
#include "documents/text_writer.h"
#include "plan/doses.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

FormWords formWords() {
  base::Issues issues;
  auto words = FormWords::load(fileText(std::filesystem::path(STILE_SOURCE_DIR) / "rules/forms.json"),
                               "forms.json", issues);
  orThrow(issues);
  return words;
}

}  // namespace

TEST_CASE("a form on paper holds every question and says its branching in words") {
  const auto* form = content().forms.byName("clinic");
  REQUIRE(form != nullptr);
  const std::string words = wordsOf(blankFormOf(*form, formWords(), clinicSettings(), {}));
  bool branches = false;
  for (const auto* item : form->inOrder()) {
    if (item->isHidden || item->type == questionnaire::ItemType::Group ||
        item->type == questionnaire::ItemType::Display)
      continue;
    INFO(item->linkId);
    CHECK(has(words, item->text));
    branches = branches || !item->enableWhen.empty();
  }
  CHECK(branches);
  CHECK(has(words, "Only if "));
  CHECK_FALSE(has(words, "{"));
}

TEST_CASE("a form for home has none of the acute questions and says first when to call") {
  const auto* form = content().forms.byName("clinic");
  REQUIRE(form != nullptr);
  BlankFormOptions options;
  options.isForHome = true;
  for (const auto& sign : handoutTexts().emergency) options.emergencySigns.push_back(sign.say);
  const Document paper = blankFormOf(*form, formWords(), clinicSettings(), options);
  const std::string words = wordsOf(paper);
  CHECK(has(words, "Call 112 now if"));
  for (const auto* item : form->inOrder())
    if (item->topic.ends_with("/acute") && item->type == questionnaire::ItemType::Boolean)
      CHECK_FALSE(has(words, item->text));
}

TEST_CASE("the rule book names every rule with its condition in words, its sources and its review") {
  const std::string words = wordsOf(ruleBookOf(content(), clinicSettings()));
  for (const auto& rule : content().rules.rules) {
    INFO(rule.id);
    CHECK(has(words, "(" + rule.id + ")"));
    CHECK(has(words, conditionInWords(rule.when.text(), content().dictionary)));
    CHECK(has(words, rule.reviewedDate));
  }
  for (const auto& policy : content().rules.policies) CHECK(has(words, policy.title));
}

TEST_CASE(
    "the rule book names every dose, wish, exercise, norm and check, and no row of them lacks its source") {
  const Document book = ruleBookOf(content(), clinicSettings());
  const std::string words = wordsOf(book);
  const auto& library = content().library;
  for (const auto& level : library.doses->levels) CHECK(has(words, level.dose.level + ": " + level.title));
  for (const auto& row : library.doses->efforts) CHECK(has(words, row.client));
  for (const auto& way : library.doses->aerobicGrowth) CHECK(has(words, way.because));
  for (const auto& [key, list] : library.doses->sentences)
    for (const auto& sentence : list) CHECK(has(words, sentence.say));
  for (const auto& purpose : library.purposes) CHECK(has(words, "(" + purpose.id + ")"));
  for (const auto& wish : library.wishes.all) CHECK(has(words, "(" + wish.id + ")"));
  for (const auto& exercise : library.exercises) CHECK(has(words, "(" + exercise.id + ")"));
  for (const auto& [id, check] : content().rules.checks) CHECK(has(words, check.say.client));
  CHECK(has(words, content().dictionary.norm("grip-strength")->title));
  for (const Section& section : book.sections)
    for (const Block& block : section.blocks)
      if (const auto* table = std::get_if<Table>(&block.form)) {
        REQUIRE_FALSE(table->rows.empty());
        for (const auto& row : table->rows) {
          INFO(section.heading << ": " << row.front().text);
          REQUIRE(row.size() == table->columns.size());
          CHECK_FALSE(row.back().text.empty());
        }
      }
}

TEST_CASE("a condition in words has no ids and no UCUM") {
  const std::string words =
      conditionInWords("%restingSystolic >= 180 'mm[Hg]' or %pregnancy = 'yes'", content().dictionary);
  CHECK(words == "\"Resting systolic pressure\" ≥ 180 mmHg or \"" +
                     content().dictionary.find("pregnancy")->label + "\" = yes");
}

TEST_CASE("the sheets beside the handout go out with a plan only, and carry the stop signs") {
  const auto settings = clinicSettings();
  for (const char* name : {"maren", "waiting"}) {
    const auto screening = screened(name);
    const ClientRequest request{screening, content(), settings, kMaren, handoutTexts()};
    const bool hasPlan = screening.planState == screening::PlanState::Made;
    for (const auto& paper : {weekPlanOf(request), recordSheetOf(request), carerSheetOf(request)}) {
      CHECK(paper.has_value() == hasPlan);
      if (paper) {
        CHECK(has(wordsOf(*paper), "Call 112 now if"));
        CHECK(has(wordsOf(*paper), "Stop today and call us if"));
      }
    }
  }
}

TEST_CASE(
    "a result at the edge of the norms counts as within, just below as below, whichever way is better") {
  facts::NormTable table;
  table.rows.push_back({"female", 60, 64, 12, base::Rational(17)});
  const auto words = [&](int result) { return normPlot(table, table.rows.front(), result, "").description; };
  CHECK(has(words(11), "11: below"));
  CHECK(has(words(12), "12: within"));
  CHECK(has(words(17), "17: within"));
  CHECK(has(words(18), "18: above"));
  table.higherIsBetter = false;
  table.rows.front().below = 17;
  table.rows.front().above = base::Rational(12);
  CHECK(has(words(18), "18: slower than"));
  CHECK(has(words(12), "12: within"));
  CHECK(has(words(11), "11: faster than"));
  CHECK(normRowFor(table, "female", 65) == nullptr);
  CHECK(normRowFor(table, "female", 64) != nullptr);
}
