// What papers are written with: the clinic's settings with its logo, and the sentences of the content.
#pragma once

#include <string>

#include "base/issue.h"
#include "base/result.h"
#include "documents/blank_form.h"
#include "documents/handout_texts.h"
#include "documents/letter_texts.h"
#include "records/clinic_settings.h"

namespace stile::application {

struct PaperTexts {
  records::ClinicSettings settings;
  std::string logoPng;  ///< bytes, or ""
  documents::HandoutTexts handout;
  documents::LetterTexts letters;
  documents::FormWords forms;
};

/// `settingsFile` may be "". Refused when one of the files has errors (they are in `issues`).
base::Result<PaperTexts> loadPaperTexts(const std::string& contentFolder, const std::string& settingsFile,
                                        base::Issues& issues);

/// The settings of a file, checked; refused when it has errors.
base::Result<records::ClinicSettings> loadSettings(const std::string& settingsFile, base::Issues& issues);
/// The PNG beside the settings file that `logo` names.
base::Result<std::string> readLogo(const std::string& settingsFile, const std::string& logo);

/// The document as a file of that ending: ".pdf", ".html", or text for any other.
base::Result<std::string> bytesOf(const documents::Document& document, std::string_view ending);

/// Writes a document, whole or not at all, by the name of the file: .pdf, .html, or text for any other name.
base::Result<bool> writeDocument(const documents::Document& document, const std::string& path);

}  // namespace stile::application
