// How derived facts come about: the second pass over the dictionary, when every id is known.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "facts/dictionary.h"
#include "json/document.h"
#include "json/reader.h"

namespace stile::facts {

/// Reads "derived" and "optional" of one fact at a time, against a dictionary whose ids, types,
/// groups, norms and medicine classes are complete.
class DerivationReader {
 public:
  DerivationReader(const Dictionary& dictionary, base::Issues& issues)
      : dictionary_(dictionary), issues_(issues) {}

  /// The derivation of `definition`; parts that are wrong are issues and left out.
  Derivation read(const Definition& definition, json::Node node);
  /// Fills in optionalWhen and optionalBecause.
  void readOptional(Definition& definition, json::Node node);

 private:
  using Reader = json::ObjectReader;
  void readExpression(const Definition& definition, json::Node node, Derivation& derivation);
  void readElapsed(const Definition& definition, json::Node node, Derivation& derivation);
  void readSummary(const Definition& definition, json::Node node, Derivation& derivation);
  void readReadings(const Definition& definition, json::Node node, Derivation& derivation);
  void readNorm(const Definition& definition, json::Node node, Derivation& derivation);
  void readScore(const Definition& definition, json::Node node, Derivation& derivation);
  void readClass(const Definition& definition, json::Node node, Derivation& derivation);
  void readClassId(const Definition& definition, json::Node node, Derivation& derivation);

  std::optional<expression::Program> compile(json::Node node, const std::string& within,
                                             std::optional<expression::Type> expected,
                                             const std::string& subject);
  /// The fact the string `node` names, if it may be read from inside `within`.
  const Definition* reference(json::Node node, std::string_view within, const std::string& subject);
  void error(json::Node node, const std::string& subject, std::string message, std::string remedy);

  const Dictionary& dictionary_;
  base::Issues& issues_;
};

}  // namespace stile::facts
