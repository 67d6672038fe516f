// Papers as PDF, read back with other people's readers: pdftotext and qpdf.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

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
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

namespace fs = std::filesystem;

const records::PaperClient kMaren{"Maren Oakshott", "14 March 1963", "0417"};

class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "stile-pdf-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() { fs::remove_all(path_); }
  fs::path operator/(const std::string& name) const { return path_ / name; }

 private:
  fs::path path_;
};

std::string madeOf(const Document& document) {
  auto bytes = toPdf(document);
  if (!bytes) FAIL(bytes.failure().message);
  return std::move(bytes).value();
}

std::string ran(const std::string& command) {
  FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  while (const std::size_t got = fread(buffer, 1, sizeof buffer, pipe)) out.append(buffer, got);
  pclose(pipe);
  return out;
}

/// Letters, digits and signs only: line ends and page feet fall anywhere in a sentence.
std::string bare(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (static_cast<unsigned char>(c) > 32) out += c;
  return out;
}

/// The words of the file, in the order of reading, without the running feet.
std::string wordsIn(const std::string& pdf, const std::string& foot) {
  const Folder folder;
  const auto path = folder / "paper.pdf";
  std::ofstream(path, std::ios::binary) << pdf;
  std::string text = ran("pdftotext -raw '" + path.string() + "' - 2>/dev/null");
  REQUIRE_FALSE(text.empty());
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    std::string line = text.substr(at, end - at);
    line.erase(std::remove(line.begin(), line.end(), '\f'), line.end());
    if (foot.empty() || line.find(foot) == std::string::npos) out += line + " ";
    at = end + 1;
  }
  return bare(out);
}

Document summary(const screening::Screening& screening) {
  return summaryOf(screening, content(), clinicSettings(), kMaren, {});
}

ClientRequest clientRequest(const screening::Screening& screening, const records::ClinicSettings& settings) {
  return {screening, content(), settings, kMaren, handoutTexts()};
}

}  // namespace

TEST_CASE("the PDF of the summary holds every finding, limit, check and the caution") {
  for (const char* name : {"healthy", "maren", "waiting"}) {
    const auto screening = screened(name);
    const Document paper = summary(screening);
    const std::string words = wordsIn(madeOf(paper), "page");
    for (const auto& finding : screening.findings) {
      INFO(name << ": " << finding.rule->id);
      CHECK(words.find(bare(finding.rule->title)) != std::string::npos);
      if (finding.standing == rules::Standing::Certain)
        CHECK(words.find(bare(finding.say.clinician)) != std::string::npos);
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
  const Document paper = summary(screened("maren"));
  CHECK(madeOf(paper) == madeOf(paper));
}

TEST_CASE("another reader finds no fault, the language, the title, the tags and embedded fonts") {
  Document paper = summary(screened("maren"));
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
    Document paper = summary(screened("healthy"));
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
