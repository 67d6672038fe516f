// What a clinic says of itself on every paper. One small JSON document, given with --settings.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "movement/build.h"

namespace stile::records {

enum class PaperSize { A4, Letter };
const char* idOf(PaperSize size);  ///< "A4", "Letter"

/// Empty members are left out on papers, except the emergency number, which then reads "the
/// emergency number".
struct ClinicSettings {
  std::string name;
  std::string address;
  std::string telephone;
  std::string email;
  std::string openingHours;
  std::string outOfHours;  ///< whom to call when the clinic is shut
  std::string emergencyNumber;
  std::string crisisLine;     ///< local help for someone in despair, with its number
  std::string replyRoute;     ///< how a reply comes back securely: "sealed envelope, or fax 01632 960 418"
  std::string clinician;      ///< who signs, with profession
  std::string logo;           ///< a PNG file, its path relative to the settings file
  PaperSize paperSize = PaperSize::A4;
  std::vector<std::string> languages{"en"};  ///< for clients, BCP 47; the first is the clinic's own
  movement::Build drawnBuild =
      movement::Build::Sturdy;  ///< of the figures on papers, unless the client chose

  /// What the clinic says of itself in other languages: language -> member -> words. Members: clinician,
  /// openingHours, outOfHours, crisisLine.
  std::map<std::string, std::map<std::string, std::string>> translations;

  std::map<std::string, std::string> policies;  ///< policy id -> the alternative that this clinic chose

  /// Unknown members, wrong types, a paper size, language tag or build that is none are issues.
  static ClinicSettings load(const std::string& text, const std::string& file, base::Issues& issues);

  /// These settings with the words of another language. Words that are not translated stay as they are,
  /// with `missing` before them; a bare number needs no translation.
  ClinicSettings inLanguage(const std::string& language, const std::string& missing) const;
};

/// Who a paper is for. Never part of the screening itself.
struct PaperClient {
  std::string name;    ///< may be empty: a line to write on is left
  std::string born;    ///< a date (1963-03-14), which papers put into words, or words, or ""
  std::string record;  ///< record number, or ""
};

}  // namespace stile::records
