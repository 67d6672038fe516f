// The words of limits: movements, bans, settings, times, measures and services, for both readers.
// Read from rules/vocabulary.json.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"

namespace stile::rules {

struct Term {
  std::string id;
  std::string clinician;
  std::string client;
  std::string instead;            ///< what to do instead, for the client; every ban says it
  /// Bans under which nobody can do what `instead` says; what such a ban says instead stands in its place.
  std::vector<std::string> insteadNot;
  bool hasSides = false;          ///< movements and bans
  std::vector<std::string> facts; ///< measures: the facts that record it
};

struct Vocabulary {
  std::map<std::string, Term, std::less<>> movements, bans, settings, timing, measures, services;
  static Vocabulary load(const std::string& text, const std::string& file, base::Issues& issues);
};

}  // namespace stile::rules
