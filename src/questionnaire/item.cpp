#include "questionnaire/item.h"

namespace stile::questionnaire {

const std::string& lineOf(const Item& item) { return item.shortText.empty() ? item.text : item.shortText; }

const std::string& wordsIn(const std::string& language, const std::string& text,
                           const Translations& translations) {
  for (std::string tag = language; !tag.empty(); tag.resize(tag.rfind('-'))) {
    if (const auto found = translations.find(tag); found != translations.end()) return found->second;
    if (tag.find('-') == std::string::npos) break;
  }
  return text;
}

}  // namespace stile::questionnaire
