// The questionnaires as clients read them in another language: the same items, options and helps, with the
// words of rules/phrases/<lang>/forms/. Nothing is decided by them; answers go into the form that is asked.
#pragma once

#include <map>
#include <memory>
#include <string>

#include "application/translation.h"
#include "base/issue.h"
#include "base/result.h"
#include "questionnaire/form.h"

namespace stile::application {

/// Whether clients are asked what stands in this file of the content. Not for them: modules with
/// "clinician" in their name, tests, and the physician's reply.
bool isFormForClients(const std::string& file);

/// The questionnaires with the client's sentences in the other language. Keys that name no sentence, and
/// translations with other slots than the original, are issues.
std::map<std::string, std::string> translatedForms(const std::map<std::string, std::string>& files,
                                                   const Translation& translation, TranslationCount& count,
                                                   base::Issues& issues);

struct FormInLanguage {
  std::shared_ptr<const questionnaire::Form> form;
  std::string notice;  ///< while nobody licensed has reviewed the translation
};

/// One form in the language. A usage failure where the content has no such translation or form; refused
/// where the translation has errors.
base::Result<FormInLanguage> formInLanguage(const std::string& contentFolder, const std::string& form,
                                            const std::string& language);

/// Whether the content has words in this language.
bool hasTranslation(const std::string& contentFolder, const std::string& language);

}  // namespace stile::application
