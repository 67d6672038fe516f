#include "application/write_papers.h"

#include <algorithm>
#include <filesystem>
#include <set>

#include "application/clearance_request.h"
#include "application/paper_texts.h"
#include "documents/client_sheets.h"
#include "documents/handout.h"
#include "documents/letter.h"
#include "documents/summary.h"
#include "documents/text_writer.h"
#include "documents/waiting_sheet.h"

namespace stile::application {
namespace {

namespace fs = std::filesystem;
using base::Failure;
using base::FailureKind;
using documents::Document;
using documents::LetterWording;

struct Paper {
  std::string name;  ///< of the file, without its ending
  std::optional<Document> document;
};

/// Everything that can be on the list; what goes out today has a document.
constexpr const char* kNames[] = {"summary",      "handout",       "week-plan",        "record-sheet",
                                  "carer-sheet",  "waiting-sheet", "clearance-letter", "outcome-letter"};

base::Result<documents::TextSize> textSize(int points, const screening::Screening& screening, const documents::HandoutTexts& texts) {
  switch (points) {
    case 0:
      return documents::letterSizeFor(screening, texts).textSize;
    case 14:
      return documents::TextSize::Points14;
    case 18:
      return documents::TextSize::Points18;
    case 24:
      return documents::TextSize::Points24;
    default:
      return Failure{FailureKind::Usage, "--text " + std::to_string(points) + ": use 14, 18 or 24"};
  }
}

/// Takes away what an earlier run left and this one does not give.
void clear(const fs::path& folder, const std::set<std::string>& kept) {
  std::error_code trouble;
  for (const auto& entry : fs::directory_iterator(folder, trouble)) {
    const std::string name = entry.path().filename().string(), stem = entry.path().stem().string();
    const std::string ending = entry.path().extension().string();
    const bool isOurs = (ending == ".html" || ending == ".pdf") &&
                        (stem.starts_with("referral-") ||
                         std::find(std::begin(kNames), std::end(kNames), stem) != std::end(kNames));
    if (isOurs && !kept.contains(name)) fs::remove(entry.path(), trouble);
  }
}

/// All are made before any is written: what cannot be made leaves nothing behind.
base::Result<std::vector<MadePaper>> set(std::vector<Paper>& papers, const std::string& logoPng, const PaperOptions& options) {
  std::erase_if(papers, [&options](const Paper& paper) { return !paper.document || (!options.only.empty() && paper.name != options.only); });
  std::vector<MadePaper> made;
  for (std::size_t i = 0; i < papers.size(); ++i) {
    Paper& paper = papers[i];
    if (options.progress && !options.progress(i, papers.size(), paper.name)) return Failure{FailureKind::Refused, "called off; no paper was written"};
    paper.document->logoPng = logoPng;
    for (const auto& [ending, isWanted] : {std::pair(".html", options.html), std::pair(".pdf", options.pdf)}) {
      if (!isWanted) continue;
      auto bytes = bytesOf(*paper.document, ending);
      if (!bytes) return bytes.failure();
      made.push_back({paper.name, ending, std::move(bytes).value()});
    }
  }
  return made;
}

void addLetters(const documents::LetterRequest& letter, const std::string& referrer, std::vector<Paper>& papers) {
  auto clearance = documents::clearanceLetterOf(letter, findingsToClear(letter.screening), wantedIntensity(letter.screening));
  const bool isAskedAlready = clearance.has_value();
  papers.push_back({"clearance-letter", std::move(clearance)});
  for (auto& [service, document] : documents::referralLettersOf(letter, isAskedAlready))
    papers.push_back({"referral-" + service, std::move(document)});
  if (referrer.empty()) return;
  documents::LetterRequest outcome = letter;
  outcome.recipient = referrer;
  papers.push_back({"outcome-letter", documents::outcomeLetterOf(outcome)});
}

/// The wording of every letter as the program wrote it; letters for which other wording is given take it.
base::Result<std::vector<LetterWording>> rewordLetters(std::vector<Paper>& papers, const PaperOptions& options,
                                                       const documents::LetterTexts& texts, base::Issues& issues) {
  std::vector<LetterWording> given = options.wordings, asWritten;
  for (const std::string& path : options.wordingFiles) {
    const auto text = readFile(path);
    if (!text) return text.failure();
    given.push_back(documents::letterWordingFrom(text.value(), path, issues));
    if (issues.hasErrors()) return Failure{FailureKind::Refused, "no paper was written"};
  }
  for (Paper& paper : papers) {
    if (!paper.document || paper.document->reader != documents::Reader::Physician) continue;
    asWritten.push_back(documents::wordingOf(paper.name, *paper.document, texts));
    const auto mine = std::find_if(given.begin(), given.end(), [&](const LetterWording& one) { return one.letter == paper.name; });
    if (mine == given.end()) continue;
    if (const auto done = documents::reword(*paper.document, *mine, texts); !done) return done.failure();
    given.erase(mine);
  }
  if (!given.empty())
    return Failure{FailureKind::Refused, "the wording of " + given.front().letter + ": this letter is not written for the client today, or has wording already"};
  return asWritten;
}

base::Result<WrittenPapers> writeWordings(std::vector<LetterWording> wordings, const std::string& folder) {
  WrittenPapers result{wordings.empty() ? "No letter is written for this client today.\n" : "Wording of letters, to change:\n", {}, {}};
  std::error_code trouble;
  fs::create_directories(folder, trouble);
  if (trouble) return Failure{FailureKind::File, folder + ": cannot be made (" + trouble.message() + "); choose another folder"};
  for (const LetterWording& wording : wordings) {
    const std::string path = (fs::path(folder) / (wording.letter + ".txt")).string();
    if (const auto written = writeFile(path, documents::toText(wording)); !written) return written.failure();
    result.text += "  " + path + "\n";
  }
  result.wordings = std::move(wordings);
  return result;
}

}  // namespace

base::Result<std::vector<std::string>> savePapers(const std::vector<MadePaper>& papers, const std::string& folder, const std::string& only) {
  std::error_code trouble;
  fs::create_directories(folder, trouble);
  if (trouble) return Failure{FailureKind::File, folder + ": cannot be made (" + trouble.message() + "); choose another folder"};
  std::set<std::string> names;
  for (const MadePaper& paper : papers) names.insert(paper.name + paper.ending);
  // What no longer holds goes first, so that whatever happens then, no handout stands beside a waiting sheet.
  clear(folder, names);
  std::vector<std::string> paths;
  for (const MadePaper& paper : papers) {
    if (!only.empty() && paper.name != only) continue;
    const std::string path = (fs::path(folder) / (paper.name + paper.ending)).string();
    if (const auto written = writeFile(path, paper.bytes); !written)
      return Failure{written.failure().kind, written.failure().message + "; " + std::to_string(paths.size()) + " of " +
                                                 std::to_string(papers.size()) + " papers were written, each of them whole"};
    paths.push_back(path);
  }
  return paths;
}

base::Result<MadePapers> makePapers(const screening::Screening& screening, const screening::Content& content,
                                    const base::Issues& askedBack, const std::string& contentFolder,
                                    const PaperOptions& options, base::Issues& issues) {
  auto loaded = loadPaperTexts(contentFolder, options.settingsFile, issues);
  if (!loaded) return loaded.failure();
  PaperTexts& texts = loaded.value();
  if (options.given) {
    texts.settings = options.given->settings;
    texts.logoPng = options.given->logoPng;
  }
  const auto size = textSize(options.textPoints, screening, texts.handout);
  if (!size) return size.failure();

  Document summary = documents::summaryOf(screening, content, texts.settings, options.client, askedBack, options.notes);
  const std::string summaryText = documents::toText(summary);
  std::vector<Paper> papers;
  papers.push_back({"summary", std::move(summary)});
  const documents::LetterRequest letter{screening, content, texts.settings, options.client, texts.letters, options.physician};
  if (options.isSharedWithPhysician) addLetters(letter, options.referrer, papers);
  documents::ClientStyle style{size.value(),
                               options.isBlackOnly,
                               options.build.value_or(texts.settings.drawnBuild),
                               texts.settings.languages.front(),
                               "",
                               texts.logoPng};
  std::optional<InLanguage> other;
  if (!options.language.empty() && options.language != texts.settings.languages.front()) {
    auto made = inLanguage(options.language, contentFolder, screening, options.screenAgain, texts.settings.policies, issues);
    if (!made) return made.failure();
    other = std::move(made).value();
    style.language = options.language;
    style.notice = other->notice;
  }
  const records::ClinicSettings settings = other ? texts.settings.inLanguage(options.language, other->missing) : texts.settings;
  if (options.textPoints == 0) style.sizeReason = documents::letterSizeFor(screening, other ? other->texts : texts.handout).say;
  const documents::ClientRequest client{other ? *other->screening : screening, other ? *other->content : content,
                                        settings, options.client, other ? other->texts : texts.handout, style};
  papers.push_back({"handout", documents::handoutOf(client)});
  papers.push_back({"week-plan", documents::weekPlanOf(client)});
  papers.push_back({"record-sheet", documents::recordSheetOf(client)});
  papers.push_back({"carer-sheet", documents::carerSheetOf(client)});
  papers.push_back({"waiting-sheet", documents::waitingSheetOf(client)});

  auto wordings = rewordLetters(papers, options, texts.letters, issues);
  if (!wordings) return wordings.failure();
  if (options.isWordingOnly) return MadePapers{summaryText, {}, std::move(wordings).value()};
  auto made = set(papers, texts.logoPng, options);
  if (!made) return made.failure();
  return MadePapers{summaryText, std::move(made).value(), std::move(wordings).value()};
}

base::Result<WrittenPapers> writePapers(const screening::Screening& screening, const screening::Content& content,
                                        const base::Issues& askedBack, const std::string& contentFolder,
                                        const PaperOptions& options, base::Issues& issues) {
  auto made = makePapers(screening, content, askedBack, contentFolder, options, issues);
  if (!made) return made.failure();
  if (options.isWordingOnly) return writeWordings(std::move(made.value().wordings), options.folder);
  auto written = savePapers(made.value().papers, options.folder);
  if (!written) return written.failure();
  WrittenPapers result{made.value().summary + "\nPapers:\n", std::move(written).value(), std::move(made.value().wordings)};
  for (const std::string& path : result.files) result.text += "  " + path + "\n";
  return result;
}

}  // namespace stile::application
