#include "documents/paper_head.h"

#include <algorithm>

#include "base/utf8.h"

namespace stile::documents {
namespace {

/// Letters that are written from the right: Hebrew, Arabic and their neighbours.
bool hasRightToLeft(const std::string& text) {
  for (const std::string_view piece : base::codePoints(text)) {
    if (piece.size() == 2) {
      const auto lead = static_cast<unsigned char>(piece[0]);
      if (lead >= 0xD6 && lead <= 0xDF) return true;
    }
    if (piece.size() == 3 && static_cast<unsigned char>(piece[0]) == 0xEF) {
      const auto second = static_cast<unsigned char>(piece[1]);
      if (second >= 0xAC && second <= 0xBB) return true;
    }
  }
  return false;
}

}  // namespace

std::string unbroken(const std::string& number) {
  std::string text;
  for (const char c : number) text += c == ' ' ? std::string("\xC2\xA0") : std::string(1, c);
  return text;
}

std::string clinicianAndClinic(const records::ClinicSettings& settings) {
  std::string by = settings.clinician;
  if (!settings.name.empty()) by += (by.empty() ? "" : ", ") + settings.name;
  return by;
}

std::string bornWords(const std::string& born) {
  const auto date = base::Date::parse(born);
  return date ? date->toLongText() : born;
}

std::string isolated(const std::string& name) {
  return hasRightToLeft(name) ? "\u2068" + name + "\u2069" : name;
}

bool hasUnreviewedRules(const screening::Content& content) {
  return std::any_of(content.rules.rules.begin(), content.rules.rules.end(),
                     [](const rules::Rule& rule) { return !rule.isLicensed; });
}

Document startPaper(const std::string& title, Reader reader, const screening::Screening& screening,
                    const screening::Content& content, const records::ClinicSettings& settings,
                    const records::PaperClient& client) {
  return startPaper(title, reader, screening.date, content, settings, client);
}

Document startPaper(const std::string& title, Reader reader, base::Date date, const screening::Content& content,
                    const records::ClinicSettings& settings, const records::PaperClient& client) {
  Document paper;
  paper.title = title;
  paper.reader = reader;
  paper.date = date;
  paper.paperSize = settings.paperSize;
  // A client finds the e-mail address in the box with the telephone number.
  const std::string email = reader == Reader::Client ? "" : settings.email;
  for (const std::string& part : {settings.name, settings.address, unbroken(settings.telephone), email})
    if (!part.empty()) paper.clinic += (paper.clinic.empty() ? "" : " · ") + part;
  paper.client = isolated(client.name);
  std::string who = client.born.empty() ? "" : "born " + bornWords(client.born);
  if (!client.record.empty()) who += (who.empty() ? "" : " · ") + ("record " + client.record);
  if (!who.empty()) paper.about.push_back(who);
  paper.about.push_back((reader == Reader::Clinician ? "screened " : "") + date.toLongText());
  paper.footer.push_back(content.intendedUse.caution);
  if (hasUnreviewedRules(content)) paper.footer.push_back(content.intendedUse.notReviewed);
  paper.footer.push_back("Questions, rules and exercises: version " + content.version);
  paper.runningFoot = title + (paper.client.empty() ? "" : " · " + paper.client) + (client.record.empty() ? "" : " · " + client.record) + " · " + content.version;
  return paper;
}

}  // namespace stile::documents
