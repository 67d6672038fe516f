#include "application/translated_papers.h"

#include "application/content_folder.h"
#include "application/policy_choices.h"
#include "application/translated_forms.h"

namespace stile::application {

base::Result<InLanguage> inLanguage(const std::string& language, const std::string& contentFolder,
                                    const screening::Screening& original, const ScreenAgain& screenAgain,
                                    const PolicyChoices& policies, base::Issues& issues) {
  using base::Failure;
  using base::FailureKind;
  auto files = readContentFolder(contentFolder);
  if (!files) return files.failure();
  choosePolicies(files.value(), policies, issues);
  const auto loaded = Translation::load(files.value(), language, issues);
  if (!loaded)
    return Failure{FailureKind::Usage, "--language " + language + ": there is no rules/phrases/" + language + ".json in the content"};
  const Translation& translation = *loaded;
  TranslationCount count;
  const auto texts = translated(files.value(), translation, count, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "no paper was written"};
  InLanguage result;
  auto content = screening::Content::load(texts, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "no paper was written: the translation does not fit the content"};
  base::Issues unused;
  content.version = screening::Content::load(files.value(), unused).version;
  result.content = std::make_shared<const screening::Content>(std::move(content));
  auto again = screenAgain(*result.content);
  if (!again) return again.failure();
  if (again.value().floor.limits != original.floor.limits || again.value().reach.limits != original.reach.limits ||
      again.value().planState != original.planState) {
    // Sentences of gates differ by language; everything else must be the same.
    auto a = again.value().floor.limits, b = original.floor.limits;
    for (auto* limits : {&a, &b})
      for (auto& [measure, gate] : limits->gates) gate.client.clear();
    if (a != b || again.value().planState != original.planState)
      return Failure{FailureKind::Refused, "the screening in \"" + language + "\" is not the same; no paper was written"};
  }
  result.screening = std::make_shared<const screening::Screening>(std::move(again).value());
  result.texts = documents::HandoutTexts::load(texts.at("rules/handout.json"), "rules/handout.json", issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "no paper was written"};
  result.missing = translation.missing;
  if (!translation.isReviewed) result.notice = translation.notice;
  return result;
}

base::Result<std::string> translationStatus(const std::string& contentFolder, bool isFull, base::Issues& issues) {
  const auto files = readContentFolder(contentFolder);
  if (!files) return files.failure();
  const std::string folder = "rules/phrases/", ending = ".json";
  std::string text;
  for (const auto& [file, unused] : files.value()) {
    if (!file.starts_with(folder) || file.find('/', folder.size()) != std::string::npos) continue;
    const std::string language = file.substr(folder.size(), file.size() - folder.size() - ending.size());
    const auto translation = Translation::load(files.value(), language, issues);
    if (!translation) continue;
    TranslationCount count;
    translated(files.value(), *translation, count, issues);
    translatedForms(files.value(), *translation, count, issues);
    text += "Language " + language + (translation->isReviewed ? "" : ", a draft") + ": " + std::to_string(count.sentences) +
            " sentences for clients, " + std::to_string(count.missing) + " not translated, " + std::to_string(count.changed) +
            " changed since they were translated.\n";
    if (isFull)
      for (const std::string& key : count.toDo) text += "  " + key + "\n";
  }
  if (issues.hasErrors()) return base::Failure{base::FailureKind::Refused, "a translation does not fit the content"};
  return text;
}

}  // namespace stile::application
