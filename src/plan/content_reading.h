// What every part of doses.json needs to be read: numbers that must be there, rungs, sections,
// expressions over facts, and sources, which are gathered to be checked together.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/issue.h"
#include "expression/program.h"
#include "facts/dictionary.h"
#include "json/reader.h"
#include "plan/exercise.h"

namespace stile::plan {

using NamedSources = std::vector<std::pair<std::string, base::Place>>;

class ContentReading {
 public:
  ContentReading(const facts::Dictionary& dictionary, NamedSources& sources, base::Issues& issues)
      : dictionary_(dictionary), sources_(sources), issues_(issues) {}

  base::Issues& issues() { return issues_; }
  std::vector<std::string> sourcesOf(json::ObjectReader& reader);  ///< none is an issue
  base::Rational requireNumber(json::ObjectReader& reader, std::string_view key);  ///< 0 and an issue when absent
  int requireInteger(json::ObjectReader& reader, std::string_view key);
  std::optional<limits::Rung> rung(json::ObjectReader& reader, std::string_view key);
  std::optional<Section> section(json::ObjectReader& reader, std::string_view key);
  /// nullopt when absent, or with an issue when it is not acceptable.
  std::optional<expression::Program> program(json::ObjectReader& reader, std::string_view key,
                                             const expression::Type& type);
  int slotOf(json::ObjectReader& reader, std::string_view key);  ///< of the fact named; -1 and an issue

 private:
  const facts::Dictionary& dictionary_;
  NamedSources& sources_;
  base::Issues& issues_;
};

}  // namespace stile::plan
