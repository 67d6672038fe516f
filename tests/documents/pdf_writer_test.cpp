// Papers as PDF, read back with other people's readers: pdftotext and qpdf.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "base/base64.h"
#include "documents/client_sheets.h"
#include "documents/exercise_blocks.h"
#include "documents/handout.h"
#include "documents/letter.h"
#include "documents/limit_words.h"
#include "documents/pdf_writer.h"
#include "documents/summary.h"
#include "documents/waiting_sheet.h"
#include "drawing/svg.h"
#include "documents/decision_drawing.h"
#include "pdf_words.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

namespace fs = std::filesystem;


Document plainSummary(const screening::Screening& screening) {
  return summaryOf(screening, content(), clinicSettings(), kMaren, {});
}

/// A picture of one point.
std::string logo() {
  return *base::fromBase64("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8DwHwAFBQIAX8jx0gAAAABJRU5ErkJggg==");
}

ClientRequest clientRequest(const screening::Screening& screening, const records::ClinicSettings& settings) {
  return {screening, content(), settings, kMaren, handoutTexts()};
}

}  // namespace

TEST_CASE("the PDF of the summary holds every finding, limit, check and the caution") {
  for (const char* name : {"healthy", "maren", "waiting"}) {
    const auto screening = screened(name);
    const Document paper = plainSummary(screening);
    const std::string words = wordsIn(madeOf(paper), "page");
    for (const auto& finding : screening.findings) {
      INFO(name << ": " << finding.rule->id);
      CHECK(words.find(bare(finding.rule->title)) != std::string::npos);
      if (finding.standing == rules::Standing::Certain)
        CHECK(words.find(bare(afterTitle(finding.rule->title, finding.say.clinician))) != std::string::npos);
    }
    for (const auto& id : screening.floor.limits.checks)
      CHECK(words.find(bare(content().rules.checks.find(id)->second.say.clinician)) != std::string::npos);
    CHECK(words.find(bare(content().intendedUse.caution)) != std::string::npos);
  }
}

TEST_CASE("the PDF of the handout holds every dose, check, gate and step, and the caution") {
  for (const char* name : {"healthy", "maren"}) {
    const auto screening = screened(name);
    const auto settings = clinicSettings();
    const auto paper = handoutOf(clientRequest(screening, settings));
    REQUIRE(paper);
    const std::string words = wordsIn(madeOf(*paper), "Emergency: 112");
    for (const auto& line : screening.plan->lines) {
      INFO(line.exercise->id);
      for (const std::string& step : line.exercise->steps) CHECK(words.find(bare(step)) != std::string::npos);
      CHECK(words.find(bare(doseWordsOf(line, content().library).amount)) != std::string::npos);
    }
    for (const auto& id : screening.floor.limits.checks)
      CHECK(words.find(bare(content().rules.checks.find(id)->second.say.client)) != std::string::npos);
    for (const auto& [measure, gate] : screening.floor.limits.gates)
      for (const std::string& condition : gate.client) CHECK(words.find(bare(condition)) != std::string::npos);
    CHECK(words.find(bare(handoutTexts().phrase("caution"))) != std::string::npos);
  }
}

TEST_CASE("the same document gives the same bytes") {
  const Document paper = plainSummary(screened("maren"));
  CHECK(madeOf(paper) == madeOf(paper));
}

TEST_CASE("another reader finds no fault, the language, the title, the tags and embedded fonts") {
  Document paper = plainSummary(screened("maren"));
  paper.language = "en";
  const Folder folder;
  const auto path = folder / "paper.pdf";
  std::ofstream(path, std::ios::binary) << madeOf(paper);
  const std::string quoted = "'" + path.string() + "'";
  const std::string checked = ran("qpdf --check " + quoted + " 2>&1");
  CHECK(checked.find("No syntax or stream encoding errors found") != std::string::npos);
  const std::string info = ran("pdfinfo " + quoted);
  CHECK(info.find("Title:           Screening summary: Maren Oakshott") != std::string::npos);
  CHECK(std::count(info.begin(), info.end(), '\n') > 5);
  CHECK(info.find("Tagged:          yes") != std::string::npos);
  CHECK(info.find("2026") != std::string::npos);
  const std::string fonts = ran("pdffonts " + quoted);
  CHECK(fonts.find("ClearSans") != std::string::npos);
  CHECK(fonts.find(" no  ") == std::string::npos);
  const std::string json = ran("qpdf --json " + quoted);
  CHECK(json.find("\"/Lang\": \"u:en\"") != std::string::npos);
  CHECK(json.find("\"/Scope\": \"/Row\"") != std::string::npos);
  CHECK(json.find("\"/Alt\": \"u:Decision ladder") != std::string::npos);
  CHECK(json.find("\"/S\": \"/NonStruct\"") == std::string::npos);
  CHECK(json.find("\"/Outlines\"") != std::string::npos);
}

TEST_CASE("A4 and Letter have their sizes") {
  for (const auto& [size, words] : {std::pair(records::PaperSize::A4, "595.276 x 841.89"),
                                    std::pair(records::PaperSize::Letter, "612 x 792")}) {
    Document paper = plainSummary(screened("healthy"));
    paper.paperSize = size;
    const Folder folder;
    const auto path = folder / "paper.pdf";
    std::ofstream(path, std::ios::binary) << madeOf(paper);
    CHECK(ran("pdfinfo '" + path.string() + "'").find(words) != std::string::npos);
  }
}

TEST_CASE("a name from the right, a very long name and nothing known still make every paper") {
  const records::PaperClient clients[] = {
      {"שרה לוי", "1 January 1950", "0001"},
      {"Wilhelmina Theodora Featherstonehaugh-Cholmondeley of Upper Tarnside and the Outer Fells", "", "0002"},
      {"", "", ""}};
  const auto settings = clinicSettings();
  for (const auto& client : clients)
    for (const char* name : {"healthy", "nothing", "emergency", "waiting"}) {
      const auto screening = screened(name);
      const ClientRequest request{screening, content(), settings, client, handoutTexts()};
      CHECK(madeOf(summaryOf(screening, content(), settings, client, {})).size() > 1000);
      for (const auto& paper : {handoutOf(request), waitingSheetOf(request), weekPlanOf(request), recordSheetOf(request), carerSheetOf(request)})
        if (paper) CHECK(madeOf(*paper).size() > 1000);
    }
}

TEST_CASE("larger letters and black only: the handout is made in every size") {
  const auto screening = screened("maren");
  const auto settings = clinicSettings();
  for (const TextSize size : {TextSize::Points14, TextSize::Points18, TextSize::Points24}) {
    ClientRequest request = clientRequest(screening, settings);
    request.style.textSize = size;
    request.style.isBlackOnly = size == TextSize::Points24;
    const auto paper = handoutOf(request);
    REQUIRE(paper);
    CHECK(paper->textSize == size);
    CHECK(madeOf(*paper).size() > 1000);
  }
}

TEST_CASE("a drawing of the decision is at most 15 kB") {
  for (const char* name : {"healthy", "maren", "waiting", "nothing", "emergency"})
    CHECK(drawing::toSvg(ladderOf(screened(name), "112")).size() <= 15 * 1024);
}

TEST_CASE("a table that goes on on a new page has its head there too, for the eye only") {
  Document paper;
  paper.title = "Long";
  Table table{"Long", {"Number of the row", "What it says"}, {}, false};
  for (int i = 1; i <= 120; ++i) table.rows.push_back({{std::to_string(i), CellKind::Text}, {"a cell", CellKind::Text}});
  paper.sections.push_back({"Rows", {{std::move(table)}}, false});
  const auto pages = pagesOf(paper);
  REQUIRE(pages.size() > 2);
  for (const std::string& page : pages) CHECK(page.find("Numberoftherow") != std::string::npos);
  const Folder folder;
  std::ofstream(folder / "paper.pdf", std::ios::binary) << madeOf(paper);
  const std::string structure = ran("pdfinfo -struct-text '" + (folder / "paper.pdf").string() + "' 2>/dev/null");
  const auto first = structure.find("Number of the row");
  REQUIRE(first != std::string::npos);
  CHECK(structure.find("Number of the row", first + 1) == std::string::npos);
}

TEST_CASE("an exercise never falls apart between pages, in any size, on either paper") {
  const records::PaperClient client{"Maren Oakshott", "14 March 1963", "0417"};
  for (const char* name : {"healthy", "maren", "crowded", "low-mood"}) {
    const auto screening = screened(name);
    if (!screening.plan) continue;
    for (const auto paperSize : {records::PaperSize::A4, records::PaperSize::Letter})
      for (const TextSize size : {TextSize::Points14, TextSize::Points18, TextSize::Points24}) {
        auto settings = clinicSettings();
        settings.paperSize = paperSize;
        ClientRequest request{screening, content(), settings, client, handoutTexts()};
        request.style.textSize = size;
        const auto paper = handoutOf(request);
        REQUIRE(paper);
        const auto pages = pagesOf(*paper);
        for (const Section& section : paper->sections)
          for (const Block& block : section.blocks) {
            const auto* box = std::get_if<Box>(&block.form);
            if (box == nullptr || box->kind != BoxKind::Exercise) continue;
            std::vector<std::string> parts{bare(box->title)};
            for (const Block& inner : box->blocks) {
              if (const auto* list = std::get_if<List>(&inner.form))
                for (const std::string& item : list->items) parts.push_back(bare(item));
              // The easier way may follow on the next page: in the largest letters there is no other way.
              const auto* paragraph = std::get_if<Paragraph>(&inner.form);
              if (paragraph != nullptr && (size != TextSize::Points24 || paragraph->lead != handoutTexts().phrase("tooHardLead")))
                parts.push_back(bare(paragraph->text));
            }
            INFO(name << ", " << box->title);
            CHECK(std::any_of(pages.begin(), pages.end(), [&](const std::string& page) {
              return std::all_of(parts.begin(), parts.end(), [&](const std::string& part) { return page.find(part) != std::string::npos; });
            }));
          }
      }
  }
}

TEST_CASE("the clinic's logo stands in the head of a tagged PDF") {
  Document paper = plainSummary(screened("healthy"));
  paper.logoPng = logo();
  const std::string with = madeOf(paper);
  const Folder folder;
  std::ofstream(folder / "logo.pdf", std::ios::binary) << with;
  CHECK(ran("pdfimages -list '" + (folder / "logo.pdf").string() + "' 2>&1").find(" image ") != std::string::npos);
  CHECK(ran("qpdf --check '" + (folder / "logo.pdf").string() + "' 2>&1").find("No syntax or stream encoding errors") != std::string::npos);
  CHECK(wordsIn(with, "page") == wordsIn(madeOf(plainSummary(screened("healthy"))), "page"));
}
