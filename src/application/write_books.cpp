#include "application/write_books.h"

#include "application/content_folder.h"
#include "application/paper_texts.h"
#include "documents/rule_book.h"
#include "documents/text_writer.h"

namespace stile::application {
namespace {

base::Result<std::string> give(documents::Document document, const PaperTexts& texts, const BookOptions& options) {
  if (options.path.empty()) return documents::toText(document);
  document.logoPng = texts.logoPng;
  const auto written = writeDocument(document, options.path);
  if (!written) return written.failure();
  return options.path + "\n";
}

}  // namespace

base::Result<std::string> writeForm(const screening::Content& content, const std::string& contentFolder,
                                    const std::string& name, const BookOptions& options, base::Issues& issues) {
  const auto* form = content.forms.byName(name);
  if (form == nullptr) {
    std::string names;
    for (const auto& one : content.forms.forms()) names += (names.empty() ? "" : ", ") + one->name();
    return base::Failure{base::FailureKind::Usage, name + ": there is no such form; use one of " + names};
  }
  const auto texts = loadPaperTexts(contentFolder, options.settingsFile, issues);
  if (!texts) return texts.failure();
  documents::BlankFormOptions formOptions;
  formOptions.isForHome = options.isForHome;
  for (const auto& sign : texts.value().handout.emergency)
    if (sign.ifRules.empty()) formOptions.emergencySigns.push_back(sign.say);
  formOptions.version = content.version;
  formOptions.caution = content.intendedUse.caution;
  return give(documents::blankFormOf(*form, texts.value().forms, texts.value().settings, formOptions), texts.value(), options);
}

base::Result<std::string> writeRuleBook(const screening::Content& content, const std::string& contentFolder,
                                        const BookOptions& options, base::Issues& issues) {
  const auto texts = loadPaperTexts(contentFolder, options.settingsFile, issues);
  if (!texts) return texts.failure();
  return give(documents::ruleBookOf(content, texts.value().settings), texts.value(), options);
}

}  // namespace stile::application
