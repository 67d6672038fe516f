#include "records/clinic_settings.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "json/reader.h"
#include "records/drawn_build.h"

namespace stile::records {
namespace {

/// A language tag as far as papers need it: "en", "es", "es-MX".
bool isLanguageTag(const std::string& tag) {
  const auto isLetter = [](unsigned char c) { return std::isalpha(c) != 0 || c == '-'; };
  return tag.size() >= 2 && tag.size() <= 10 && tag.front() != '-' && tag.back() != '-' &&
         std::all_of(tag.begin(), tag.end(), isLetter);
}

/// The members that hold words, and so differ by language.
constexpr std::array<std::pair<const char*, std::string ClinicSettings::*>, 4> kWords{
    {{"clinician", &ClinicSettings::clinician},
     {"openingHours", &ClinicSettings::openingHours},
     {"outOfHours", &ClinicSettings::outOfHours},
     {"crisisLine", &ClinicSettings::crisisLine}}};

bool hasLetters(const std::string& text) {
  return std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0 || c >= 0x80; });
}

/// {"es": {"openingHours": "…"}}
void readTranslations(json::ObjectReader& reader, base::Issues& issues, ClinicSettings& settings) {
  const auto node = reader.find("translations");
  if (!node) return;
  json::ObjectReader languages(*node, "translations", issues);
  for (std::size_t i = 0; node->isObject() && i < node->size(); ++i) {
    const std::string tag = node->keyAt(i);
    if (!isLanguageTag(tag)) languages.issue(*node, "\"" + tag + "\" is no language tag", "write tags such as en or es");
    const auto words = languages.find(tag.c_str());
    if (!words) continue;
    json::ObjectReader entry(*words, "translations", issues);
    for (const auto& [member, unused] : kWords)
      if (std::string text = entry.string(member); !text.empty()) settings.translations[tag][member] = std::move(text);
    entry.finish();
  }
  languages.finish();
}

}  // namespace

const char* idOf(PaperSize size) {
  return size == PaperSize::A4 ? "A4" : "Letter";
}

ClinicSettings ClinicSettings::load(const std::string& text, const std::string& file, base::Issues& issues) {
  ClinicSettings settings;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return settings;
  json::ObjectReader reader(document->root(), "settings", issues);
  settings.name = reader.requireString("name");
  settings.address = reader.string("address");
  settings.telephone = reader.string("telephone");
  settings.email = reader.string("email");
  settings.openingHours = reader.string("openingHours");
  settings.outOfHours = reader.string("outOfHours");
  settings.emergencyNumber = reader.requireString("emergencyNumber");
  settings.crisisLine = reader.string("crisisLine");
  settings.replyRoute = reader.string("replyRoute");
  settings.clinician = reader.string("clinician");
  settings.logo = reader.string("logo");
  if (const std::string size = reader.string("paperSize", "A4"); size == "Letter")
    settings.paperSize = PaperSize::Letter;
  else if (size != "A4")
    reader.issue(*reader.find("paperSize"), "there is no paper size " + size, "write A4 or Letter");
  if (auto languages = reader.strings("languages"); !languages.empty()) {
    for (const std::string& tag : languages)
      if (!isLanguageTag(tag))
        reader.issue(*reader.find("languages"), "\"" + tag + "\" is no language tag",
                     "write tags such as en or es");
    settings.languages = std::move(languages);
  }
  settings.drawnBuild = readBuild(reader, "drawnBuild").value_or(settings.drawnBuild);
  readTranslations(reader, issues, settings);
  if (const auto chosen = reader.find("policies")) {
    for (std::size_t i = 0; i < chosen->size(); ++i) {
      if (chosen->isObject() && chosen->at(i).isString())
        settings.policies[chosen->keyAt(i)] = chosen->at(i).string();
      else
        reader.issue(*chosen, "\"policies\" names a choice for each policy", "write {\"policyDiabetesClearance\": \"ada\"}");
    }
  }
  reader.finish();
  return settings;
}

ClinicSettings ClinicSettings::inLanguage(const std::string& language, const std::string& missing) const {
  ClinicSettings settings = *this;
  const auto words = translations.find(language);
  for (const auto& [member, place] : kWords) {
    std::string& text = settings.*place;
    if (text.empty()) continue;
    const bool isTranslated = words != translations.end() && words->second.contains(member);
    if (isTranslated)
      text = words->second.at(member);
    else if (hasLetters(text))
      text = missing + text;
  }
  return settings;
}

}  // namespace stile::records
