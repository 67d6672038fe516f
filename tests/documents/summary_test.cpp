// The summary: one or two pages for the clinician, everything else in the annex, and what clinicians
// decided and signed beside what was computed.
#include <catch2/catch.hpp>

#include <algorithm>

#include "documents/pdf_writer.h"
#include "documents/summary.h"
#include "documents/summary_brief.h"
#include "documents/text_writer.h"
#include "facts/fact_display.h"
#include "pdf_words.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

Document summary(const screening::Screening& screening, const records::DecisionNotes& notes = {},
                 const records::ClinicSettings& settings = clinicSettings()) {
  return summaryOf(screening, content(), settings, kMaren, {}, notes);
}

std::string ruleOf(const screening::Screening& screening) {
  for (const auto& finding : screening.findings)
    if (finding.standing == rules::Standing::Certain) return finding.rule->id;
  return "";
}

}  // namespace

TEST_CASE("the first part fills two pages at most, and the annex starts a page of its own where that would not leave one nearly empty") {
  for (const char* name : {"healthy", "maren", "waiting", "emergency", "pressure", "nothing", "half", "crowded"})
    for (const auto size : {records::PaperSize::A4, records::PaperSize::Letter}) {
      auto settings = clinicSettings();
      settings.paperSize = size;
      const auto pages = pagesOf(summary(screened(name), {}, settings));
      const auto annex = std::find_if(pages.begin(), pages.end(), [](const std::string& page) { return has(page, bare(kAnnexHeading)); });
      INFO(name << ", " << idOf(size));
      REQUIRE(annex != pages.end());
      CHECK(annex - pages.begin() <= (std::string(name) == "crowded" ? 3 : 2));
      const std::size_t heading = annex->find(bare(kAnnexHeading));
      const std::string before = heading < 3 ? *(annex - 1) : annex->substr(0, heading);
      CHECK(has(before, bare(content().intendedUse.caution)));
      // About 5000 letters fill a page of small type.
      CHECK(heading < 1700);
    }
}

TEST_CASE("the first part tells the gravest findings in full and names the others; the annex tells all") {
  const auto screening = screened("crowded");
  const Document paper = summary(screening);
  Document first = paper;
  first.sections.pop_back();
  const std::string front = wordsOf(first), all = wordsOf(paper);
  std::size_t certain = 0, named = 0;
  for (const auto& finding : screening.findings) {
    INFO(finding.rule->id);
    CHECK(has(all, finding.rule->title));
    if (finding.standing != rules::Standing::Certain) continue;
    ++certain;
    named += has(front, finding.rule->title) ? 1u : 0u;
    CHECK(has(all, afterTitle(finding.rule->title, finding.say.clinician)));
    for (const auto& reason : finding.reasons)
      if (!reason.value.empty() && !screening.facts.dictionary().at(reason.slot).isPolicy()) CHECK(has(all, reason.label));
  }
  CHECK(certain > 20);
  const Brief brief = Brief::of(screening);
  CHECK(named >= brief.findings + brief.medicines + brief.titles);
  CHECK(has(front, " of less weight"));
  CHECK(has(front, " more in the annex"));
  for (const auto& [measure, gate] : screening.floor.limits.gates)
    for (const std::string& condition : gate.clinician) {
      INFO(condition);
      CHECK(has(front, condition));
    }
  for (const auto& id : screening.floor.limits.checks) CHECK(has(all, content().rules.checks.find(id)->second.say.clinician));
}

TEST_CASE("every answer, every open question and every source stand in the annex") {
  for (const char* name : {"maren", "nothing", "crowded"}) {
    const auto screening = screened(name);
    const Document paper = summary(screening);
    Document last;
    last.sections = {paper.sections.back()};
    const std::string annex = wordsOf(last);
    const auto& dictionary = screening.facts.dictionary();
    for (int slot = 0; slot < dictionary.size(); ++slot) {
      const auto& definition = dictionary.at(slot);
      const auto& fact = screening.facts.at(slot);
      if (!definition.group.empty() || definition.isPolicy() || definition.isOption() || definition.isDerived() || !fact.isGiven()) continue;
      INFO(name << ": " << definition.id);
      CHECK(has(annex, definition.label));
    }
    for (const auto& question : screening.openQuestions) CHECK(has(annex, question.label));
    for (const auto& finding : screening.findings)
      for (const auto& source : finding.rule->sources) CHECK(has(annex, content().rules.cite(source)));
  }
}

TEST_CASE("an override and its reason stand beside the finding, and who signed at the end") {
  const auto screening = screened("maren");
  records::DecisionNotes notes;
  notes.overrides.push_back({ruleOf(screening), "light strength from today", "seen by me, strong and steady", "Ines Calloway", kToday, true, "", ""});
  std::string words = wordsOf(summary(screening, notes));
  const std::string set = "Set by Ines Calloway on 25 November 2026: light strength from today. Why: seen by me, strong and steady.";
  CHECK(has(words, set));
  CHECK(has(words, "It waits for a second signature and does not hold yet."));
  CHECK(has(words, "Set by the clinician in place of a line above"));
  notes.overrides.front().secondBy = "Tomas Redfern";
  notes.signOffs.push_back({"Ines Calloway", kToday});
  notes.amendments.push_back({"the daughter rang: no fall since", "Ines Calloway", kToday});
  words = wordsOf(summary(screening, notes));
  CHECK(has(words, "Second signature: Tomas Redfern."));
  CHECK(has(words, "Signed off. Ines Calloway, 25 November 2026."));
  CHECK(has(words, "the daughter rang: no fall since"));
  CHECK_FALSE(has(words, "Set by the clinician in place of a line above"));
  CHECK_FALSE(has(words, "No line was overridden"));
  notes.overrides.clear();
  CHECK(has(wordsOf(summary(screening, notes)), "No line was overridden"));
}

TEST_CASE("a finding that was overridden is told in full however little it weighs") {
  const auto screening = screened("crowded");
  for (const auto& finding : screening.findings) {
    if (finding.standing != rules::Standing::Certain) continue;
    records::DecisionNotes notes;
    notes.overrides.push_back({finding.rule->id, "as before", "known for years", "Ines Calloway", kToday, false, "", ""});
    Document first = summary(screening, notes);
    first.sections.pop_back();
    INFO(finding.rule->id);
    CHECK(has(wordsOf(first), afterTitle(finding.rule->title, finding.say.clinician)));
  }
}

TEST_CASE("the e-mail address stands in the head, the crisis line beside a referral to mental health") {
  auto settings = clinicSettings();
  settings.email = "desk@tarnside.example";
  settings.crisisLine = "the night line for despair, 01632 960 999";
  const auto calm = wordsOf(summary(screened("healthy"), {}, settings));
  CHECK(has(calm, "desk@tarnside.example"));
  CHECK_FALSE(has(calm, settings.crisisLine));
  CHECK(has(wordsOf(summary(screened("low-mood"), {}, settings)), settings.crisisLine));
}

TEST_CASE("nothing answered: which clearance is wanted is not yet known") {
  const auto paper = summaryOf(screened("nothing"), content(), clinicSettings(), kMaren, {}, {});
  CHECK(has(wordsOf(paper), "not yet known; perhaps before any exercise"));
}
