// Reads the limits part of a rule (`then`, `meanwhile`) from JSON.
#pragma once

#include <set>
#include <string>

#include "expression/program.h"
#include "json/document.h"
#include "rules/rule.h"
#include "rules/vocabulary.h"

namespace stile::rules {

/// Names a dose may have; caps and floors apart. Their meaning is told in DEVELOPERS.md.
const std::set<std::string, std::less<>>& doseCapNames();
const std::set<std::string, std::less<>>& doseFloorNames();

/// What the reader needs to know of the world.
struct LimitsContext {
  const expression::SymbolTable& symbols;
  const Vocabulary& vocabulary;
  std::string subject;  ///< rule id, for issues
};

/// Reads one limits object; every trouble is an issue at its place.
LimitsTemplate readLimits(json::Node node, const LimitsContext& context, base::Issues& issues);

/// Reads an Amount: a number, or {"value": expression, "ifUnknown": number}.
Amount readAmount(json::Node node, const LimitsContext& context, base::Issues& issues);

}  // namespace stile::rules
