// A client's papers in another language: content put into it, the same client screened with it.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "application/screen_client.h"
#include "application/translation.h"
#include "base/issue.h"
#include "base/result.h"
#include "documents/handout_texts.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::application {

/// Screens the client of this run once more with other content.
using ScreenAgain = std::function<base::Result<screening::Screening>(const screening::Content&)>;

struct InLanguage {
  std::shared_ptr<const screening::Content> content;
  std::shared_ptr<const screening::Screening> screening;
  documents::HandoutTexts texts;
  std::string missing;  ///< stands before words that are not translated
  std::string notice;  ///< "" once a licensed translator has reviewed it
};

/// Refused when there is no such translation, when it has errors, or when the screening came out
/// otherwise than in the clinic's own language (which would be a defect).
base::Result<InLanguage> inLanguage(const std::string& language, const std::string& contentFolder,
                                    const screening::Screening& original, const ScreenAgain& screenAgain,
                                    const PolicyChoices& policies, base::Issues& issues);

/// How far each language of the content is translated: a line each, with `isFull` also the keys that are
/// to do. Translations that do not fit are issues.
base::Result<std::string> translationStatus(const std::string& contentFolder, bool isFull, base::Issues& issues);

}  // namespace stile::application
