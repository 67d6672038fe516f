// What a clinic says of itself on every paper. One small JSON document, given with --settings.
#pragma once

#include <string>

#include "base/issue.h"

namespace stile::records {

/// Empty members are left out on papers, except the emergency number, which then reads "the
/// emergency number".
struct ClinicSettings {
  std::string name;
  std::string address;
  std::string telephone;
  std::string openingHours;
  std::string outOfHours;       ///< whom to call when the clinic is shut
  std::string emergencyNumber;
  std::string clinician;        ///< who signs, with profession

  /// Unknown members and wrong types are issues.
  static ClinicSettings load(const std::string& text, const std::string& file, base::Issues& issues);
};

/// Who a paper is for. Never part of the screening itself.
struct PaperClient {
  std::string name;     ///< may be empty: a line to write on is left
  std::string born;     ///< in words, or ""
  std::string record;   ///< record number, or ""
};

}  // namespace stile::records
