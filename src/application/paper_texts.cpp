#include "application/paper_texts.h"

#include <filesystem>

#include "application/content_folder.h"
#include "documents/html_writer.h"
#include "documents/pdf_writer.h"
#include "documents/text_writer.h"

namespace stile::application {
namespace {

namespace fs = std::filesystem;
using base::Failure;
using base::FailureKind;

constexpr std::size_t kLargestLogo = 512u << 10;

}  // namespace

base::Result<std::string> readLogo(const std::string& settingsFile, const std::string& logo) {
  // Relative to the settings file, so that the two can be moved together.
  const fs::path path = fs::path(logo).is_absolute() ? fs::path(logo) : fs::path(settingsFile).parent_path() / logo;
  auto bytes = readFile(path.string());
  if (!bytes) return bytes.failure();
  if (!bytes.value().starts_with("\x89PNG\r\n\x1a\n"))
    return Failure{FailureKind::Refused, path.string() + ": the logo is no PNG file; save it as PNG"};
  if (bytes.value().size() > kLargestLogo)
    return Failure{FailureKind::Refused, path.string() + ": the logo is larger than 512 kB; save it smaller"};
  return bytes;
}

base::Result<records::ClinicSettings> loadSettings(const std::string& settingsFile, base::Issues& issues) {
  const auto text = readFile(settingsFile);
  if (!text) return text.failure();
  auto settings = records::ClinicSettings::load(text.value(), settingsFile, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, settingsFile + ": the clinic settings have errors"};
  return settings;
}

base::Result<PaperTexts> loadPaperTexts(const std::string& contentFolder, const std::string& settingsFile,
                                        base::Issues& issues) {
  PaperTexts texts;
  if (!settingsFile.empty()) {
    auto settings = loadSettings(settingsFile, issues);
    if (!settings) return settings.failure();
    texts.settings = std::move(settings).value();
    if (!texts.settings.logo.empty()) {
      auto logo = readLogo(settingsFile, texts.settings.logo);
      if (!logo) return logo.failure();
      texts.logoPng = std::move(logo).value();
    }
  }
  const auto read = [&](const char* name) { return readFile(contentFolder + "/rules/" + name); };
  const auto handout = read("handout.json"), letters = read("letters.json"), forms = read("forms.json");
  for (const auto* one : {&handout, &letters, &forms})
    if (!*one) return one->failure();
  texts.handout = documents::HandoutTexts::load(handout.value(), contentFolder + "/rules/handout.json", issues);
  texts.letters = documents::LetterTexts::load(letters.value(), contentFolder + "/rules/letters.json", issues);
  texts.forms = documents::FormWords::load(forms.value(), contentFolder + "/rules/forms.json", issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "no paper was written"};
  return texts;
}

base::Result<std::string> bytesOf(const documents::Document& document, std::string_view ending) {
  if (ending == ".pdf") return documents::toPdf(document);
  return ending == ".html" ? documents::toHtml(document) : documents::toText(document);
}

base::Result<bool> writeDocument(const documents::Document& document, const std::string& path) {
  const auto bytes = bytesOf(document, fs::path(path).extension().string());
  if (!bytes) return bytes.failure();
  return writeFile(path, bytes.value());
}

}  // namespace stile::application
