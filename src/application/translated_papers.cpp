#include "application/translated_papers.h"

#include "application/content_folder.h"
#include "application/policy_choices.h"

namespace stile::application {

base::Result<InLanguage> inLanguage(const std::string& language, const std::string& contentFolder,
                                    const screening::Screening& original, const ScreenAgain& screenAgain,
                                    const PolicyChoices& policies, base::Issues& issues) {
  using base::Failure;
  using base::FailureKind;
  auto files = readContentFolder(contentFolder);
  if (!files) return files.failure();
  choosePolicies(files.value(), policies, issues);
  const std::string name = "rules/phrases/" + language + ".json";
  const auto phrases = files.value().find(name);
  if (phrases == files.value().end())
    return Failure{FailureKind::Usage, "--language " + language + ": there is no " + name + " in the content"};
  const Translation translation = Translation::load(phrases->second, name, issues);
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
  if (!translation.isReviewed) result.notice = translation.notice;
  return result;
}

}  // namespace stile::application
