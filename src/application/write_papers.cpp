#include "application/write_papers.h"

#include <filesystem>

#include "documents/handout.h"
#include "documents/html_writer.h"
#include "documents/pdf_writer.h"
#include "documents/summary.h"
#include "documents/text_writer.h"
#include "documents/waiting_sheet.h"

namespace stile::application {
namespace {

namespace fs = std::filesystem;
using base::Failure;
using base::FailureKind;

struct Paper {
  const char* file;
  std::optional<documents::Document> document;  ///< nullopt: this paper does not go out today
};

}  // namespace

base::Result<std::string> writePapers(const screening::Screening& screening, const screening::Content& content,
                                      const base::Issues& askedBack, const std::string& contentFolder,
                                      const PaperOptions& options, base::Issues& issues) {
  records::ClinicSettings settings;
  if (!options.settingsFile.empty()) {
    const auto text = readFile(options.settingsFile);
    if (!text) return text.failure();
    settings = records::ClinicSettings::load(text.value(), options.settingsFile, issues);
  }
  const std::string textsFile = contentFolder + "/rules/handout.json";
  const auto handoutText = readFile(textsFile);
  if (!handoutText) return handoutText.failure();
  const auto texts = documents::HandoutTexts::load(handoutText.value(), textsFile, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "no paper was written"};

  const documents::Document summary = documents::summaryOf(screening, content, settings, options.client, askedBack);
  const Paper papers[] = {{"summary", summary},
                          {"handout", documents::handoutOf(screening, content, settings, options.client, texts)},
                          {"waiting-sheet", documents::waitingSheetOf(screening, content, settings, options.client, texts)}};
  std::error_code trouble;
  fs::create_directories(options.folder, trouble);
  if (trouble) return Failure{FailureKind::File, options.folder + ": cannot be made (" + trouble.message() + ")"};
  std::string text = documents::toText(summary) + "\nPapers:\n";
  for (const Paper& paper : papers)
    for (const bool isPdf : {false, true}) {
      const std::string path = (fs::path(options.folder) / paper.file).string() + (isPdf ? ".pdf" : ".html");
      if (!paper.document || !(isPdf ? options.pdf : options.html)) {
        fs::remove(path, trouble);
        continue;
      }
      const auto bytes = isPdf ? documents::toPdf(*paper.document)
                               : base::Result<std::string>(documents::toHtml(*paper.document));
      if (!bytes) return bytes.failure();
      const auto written = writeFile(path, bytes.value());
      if (!written) return written.failure();
      text += "  " + path + "\n";
    }
  return text;
}

}  // namespace stile::application
