// FHIR extensions by url, and the members every FHIR element may have.
//
// Extensions nobody here knows are ignored, as the standard says; modifier extensions are refused,
// because they may turn the meaning of what they stand on.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "json/reader.h"

namespace stile::questionnaire {

namespace extension_url {
inline constexpr std::string_view kHidden = "http://hl7.org/fhir/StructureDefinition/questionnaire-hidden";
inline constexpr std::string_view kItemControl =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-itemControl";
inline constexpr std::string_view kUnit = "http://hl7.org/fhir/StructureDefinition/questionnaire-unit";
inline constexpr std::string_view kUnitOption =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-unitOption";
inline constexpr std::string_view kOptionExclusive =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-optionExclusive";
inline constexpr std::string_view kMinValue = "http://hl7.org/fhir/StructureDefinition/minValue";
inline constexpr std::string_view kMaxValue = "http://hl7.org/fhir/StructureDefinition/maxValue";
inline constexpr std::string_view kMinQuantity =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-minQuantity";
inline constexpr std::string_view kMaxQuantity =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-maxQuantity";
inline constexpr std::string_view kSubQuestionnaire =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-subQuestionnaire";
inline constexpr std::string_view kAssembleExpectation =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-assemble-expectation";
inline constexpr std::string_view kEnableWhenExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-enableWhenExpression";
inline constexpr std::string_view kAnswerExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-answerExpression";
inline constexpr std::string_view kOptionsToggle =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-answerOptionsToggleExpression";
inline constexpr std::string_view kDataAbsentReason =
    "http://hl7.org/fhir/StructureDefinition/data-absent-reason";
inline constexpr std::string_view kGivenBy = "https://stile.example/extension/given-by";
inline constexpr std::string_view kAnswerDate = "https://stile.example/extension/answer-date";
}  // namespace extension_url

inline constexpr std::string_view kUcumSystem = "http://unitsofmeasure.org";

/// The extensions of one element.
class Extensions {
 public:
  /// Reads `id`, `extension` and `modifierExtension` of the element, with an issue for every modifier
  /// extension and for extensions without a url.
  explicit Extensions(json::ObjectReader& element);

  /// The extension objects with this url, in their order.
  std::vector<json::Node> all(std::string_view url) const;
  bool has(std::string_view url) const { return !all(url).empty(); }
  /// The member `member` (such as valueCode) of the only extension with this url; an issue when it
  /// is missing, of another kind, or when the url stands more than once.
  std::optional<json::Node> only(std::string_view url, std::string_view member, json::Kind kind);
  /// The same for extensions that may repeat.
  std::vector<json::Node> each(std::string_view url, std::string_view member, json::Kind kind);

 private:
  json::ObjectReader& element_;
  std::vector<std::pair<std::string, json::Node>> list_;
};

/// A required string; an issue also when it is empty, which FHIR has no use for.
std::string requireWords(json::ObjectReader& element, std::string_view member);

/// Asks for members that the standard allows and this program does not use, each with its
/// `_member` twin, so that finish() does not complain of them.
void acceptUnused(json::ObjectReader& element, std::initializer_list<std::string_view> members);

/// A Coding's parts; an issue when it has no code.
struct CodingParts {
  std::string system, code, display;
};
CodingParts readCoding(json::Node node, const std::string& subject, base::Issues& issues);

}  // namespace stile::questionnaire
