// What the record holds stands on the printed papers: read back from the PDF with somebody else's reader.
#include <catch2/catch.hpp>

#include "documents/client_sheets.h"
#include "documents/client_wishes.h"
#include "documents/exercise_blocks.h"
#include "documents/handout.h"
#include "documents/letter.h"
#include "documents/limit_words.h"
#include "documents/not_for_now.h"
#include "documents/summary.h"
#include "documents/waiting_sheet.h"
#include "pdf_words.h"
#include "plan/doses.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

const records::PaperClient kNamed{"Wilhelmina-Anastasia Featherstonehaugh-Cholmondeley van der Bruggenhout", "1963-03-14", "TMC-2026-000417-B"};

const records::ClinicSettings& tarnside() {
  static const records::ClinicSettings settings = clinicSettings();
  return settings;
}

ClientRequest requestFor(const screening::Screening& screening, TextSize size) {
  ClientRequest request{screening, content(), tarnside(), kNamed, handoutTexts()};
  request.style.textSize = size;
  return request;
}

/// The words without those that stand at page ends: the running foot may fall into any sentence.
std::string printed(const Document& paper) {
  std::string words;
  for (const std::string& page : pagesOf(paper)) words += page.substr(0, std::min(page.rfind(bare(paper.runningFoot).substr(0, 12)), page.size()));
  return words;
}

void needs(const std::string& words, const std::string& part, const char* what) {
  INFO(what << ": " << part);
  CHECK(words.find(bare(part)) != std::string::npos);
}

}  // namespace

TEST_CASE("the printed summary holds every finding, gate, check and the caution of very different records") {
  for (const char* name : {"low-mood", "pressure", "emergency", "half", "crowded", "nothing", "pregnant", "sternotomy", "telephone"}) {
    const auto screening = screened(name);
    INFO(name);
    const std::string words = printed(summaryOf(screening, content(), tarnside(), kNamed, {}));
    for (const auto& finding : screening.findings) {
      needs(words, finding.rule->title, "finding");
      if (finding.standing == rules::Standing::Certain) needs(words, afterTitle(finding.rule->title, finding.say.clinician), "finding says");
    }
    for (const auto& id : screening.reach.limits.checks) needs(words, content().rules.checks.find(id)->second.say.clinician, "check");
    for (const auto& [measure, gate] : screening.reach.limits.gates)
      for (const std::string& condition : gate.clinician) needs(words, condition.substr(1), "gate");
    needs(words, content().intendedUse.caution, "caution");
  }
}

TEST_CASE("the printed papers of a client hold every dose, check, gate, limit and caution, in every size") {
  for (const char* name : {"healthy", "maren", "pregnant", "telephone"})
    for (const TextSize size : {TextSize::Points14, TextSize::Points18, TextSize::Points24}) {
      if (size == TextSize::Points18 && std::string(name) != "maren") continue;
      const auto screening = screened(name);
      const ClientRequest request = requestFor(screening, size);
      const auto paper = handoutOf(request);
      REQUIRE(paper);
      const std::string words = printed(*paper);
      for (const auto& line : screening.plan->lines) {
        const DoseWords dose = doseWordsOf(line, content().library);
        needs(words, dose.amount, "dose");
        needs(words, dose.manner, "manner");
        needs(words, line.changed, "changed for the client");
      }
      for (const std::string& sentence : checkSentences(request)) needs(words, sentence, "check");
      for (const std::string& sentence : gateSentences(request)) needs(words, sentence, "gate");
      for (const std::string& sentence : keepToSentences(request)) needs(words, sentence, "limit");
      for (const Row& row : notForNowRows(screening, content().rules.vocabulary, handoutTexts())) {
        needs(words, row.term, "not for now");
        for (const std::string& instead : row.text) needs(words, instead, "instead");
      }
      needs(words, handoutTexts().phrase("caution"), "caution");
      const auto weeks = weekPlanOf(request);
      REQUIRE(weeks);
      for (const auto& row : weeksTable(*screening.plan, handoutTexts()).rows) needs(printed(*weeks), row[1].text, "week");
      const auto carer = carerSheetOf(request);
      REQUIRE(carer);
      for (const std::string& sentence : checkSentences(request)) needs(printed(*carer), sentence, "check for the carer");
    }
}

TEST_CASE("a listening reader gets whole sentences in order, with headings, lists, table heads and drawings in words") {
  const auto screening = screened("maren");
  const auto paper = handoutOf(requestFor(screening, TextSize::Points14));
  REQUIRE(paper);
  const Folder folder;
  std::ofstream(folder / "paper.pdf", std::ios::binary) << madeOf(*paper);
  const std::string path = "'" + (folder / "paper.pdf").string() + "'";
  const std::string heard = bare(ran("pdfinfo -struct-text " + path + " 2>/dev/null"));
  std::size_t at = 0;
  for (const Section& section : paper->sections) {
    if (section.heading.empty()) continue;
    INFO(section.heading);
    at = heard.find("H2(block)\"" + bare(section.heading), at);
    REQUIRE(at != std::string::npos);
  }
  for (const auto& line : screening.plan->lines)
    for (const std::string& step : line.exercise->steps) needs(heard, step.substr(0, step.find(' ', 12)), "step");
  for (const char* tag : {"LBody(block)", "Table(block)TR", "TH:", "Figure"}) needs(heard, tag, "tag");
  CHECK(ran("mutool info " + path + " 2>&1").find("error") == std::string::npos);
}

TEST_CASE("what the weeks have in common is said once, and nothing of a week is lost") {
  const auto screening = screened("maren");
  const Table table = weeksTable(*screening.plan, handoutTexts());
  REQUIRE(table.rows.size() > 2);
  const std::string common = table.rows.front()[1].text;
  const std::string held = content().library.doses->phrase("weekHeld");
  for (plan::Week week : screening.plan->weeks) {
    INFO(week.number << ": " << week.words);
    // A week that is as the last one shares its row, which says so.
    if (week.words.ends_with(" " + held)) week.words.resize(week.words.size() - held.size() - 1);
    CHECK(std::any_of(table.rows.begin() + 1, table.rows.end(), [&](const auto& row) {
      const std::string said = common + " " + row[1].text + " ";
      for (std::size_t at = 0; at < week.words.size();) {
        const std::size_t end = std::min(week.words.find(". ", at), week.words.size() - 1) + 1;
        if (said.find(week.words.substr(at, end - at) + " ") == std::string::npos) return false;
        at = end + 1;
      }
      return true;
    }));
  }
}

TEST_CASE("no heading stands alone at the foot of a page, and no line of a running foot is lost") {
  const std::string telephone = "Emergency: 112 · Call us: " + tarnside().telephone;
  for (const TextSize size : {TextSize::Points14, TextSize::Points18, TextSize::Points24})
    for (const char* name : {"healthy", "maren", "waiting"}) {
      const auto screening = screened(name);
      const ClientRequest request = requestFor(screening, size);
      for (const auto& paper : {handoutOf(request), waitingSheetOf(request), carerSheetOf(request), weekPlanOf(request)}) {
        if (!paper) continue;
        for (const std::string& page : pagesOf(*paper)) {
          INFO(name << ", " << paper->title << ": " << page);
          CHECK(page.find(bare("Emergency: 112")) != std::string::npos);
          CHECK(page.find(bare(tarnside().telephone)) != std::string::npos);
          CHECK(page.find(bare("record " + kNamed.record)) != std::string::npos);
          for (const Section& section : paper->sections)
            if (!section.heading.empty()) CHECK(page.find(bare(section.heading) + bare("Emergency: 112")) == std::string::npos);
        }
      }
    }
}

TEST_CASE("letters to others are one page in ordinary cases") {
  base::Issues issues;
  const auto texts = LetterTexts::load(fileText(std::filesystem::path(STILE_SOURCE_DIR) / "rules/letters.json"), "letters.json", issues);
  for (const char* name : {"maren", "waiting", "healthy", "pressure", "low-mood"}) {
    const auto screening = screened(name);
    for (const auto size : {records::PaperSize::A4, records::PaperSize::Letter}) {
      auto settings = clinicSettings();
      settings.paperSize = size;
      const LetterRequest request{screening, content(), settings, kNamed, texts, "Dr Rowan Teale, Millgate Surgery"};
      INFO(name);
      CHECK(pagesOf(outcomeLetterOf(request)).size() == 1);
      for (const auto& [service, letter] : referralLettersOf(request, false)) {
        INFO(service);
        CHECK(pagesOf(letter).size() == 1);
      }
    }
  }
}

TEST_CASE("who may not stand is told of nothing that is done standing") {
  const auto insteads = [](std::initializer_list<limits::BanKey> bans) {
    auto screening = screened("healthy");
    screening.floor.limits.bans = bans;
    std::string words;
    for (const Row& row : notForNowRows(screening, content().rules.vocabulary, handoutTexts()))
      for (const auto& text : row.text) words += bare(text) + " ";
    return words;
  };
  const limits::BanKey falls{"fallRisk", limits::Side::Both}, standing{"weightBearing", limits::Side::Left};
  CHECK(insteads({falls}).find(bare("walk on flat ground")) != std::string::npos);
  CHECK(insteads({falls, standing}).find(bare("flat ground")) == std::string::npos);
  CHECK(insteads({falls, standing}).find(bare("move while seated")) != std::string::npos);
}
