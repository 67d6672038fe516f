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
#include "questionnaire/item.h"

namespace stile::questionnaire {

namespace extension_url {
inline constexpr std::string_view kHidden = "http://hl7.org/fhir/StructureDefinition/questionnaire-hidden";
inline constexpr std::string_view kItemControl =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-itemControl";
inline constexpr std::string_view kUnit = "http://hl7.org/fhir/StructureDefinition/questionnaire-unit";
inline constexpr std::string_view kUnitOption =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-unitOption";
inline constexpr std::string_view kUnitValueSet =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-unitValueSet";
inline constexpr std::string_view kUnitOpen =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-unitOpen";
inline constexpr std::string_view kOptionExclusive =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-optionExclusive";
inline constexpr std::string_view kOptionPrefix =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-optionPrefix";
inline constexpr std::string_view kMinValue = "http://hl7.org/fhir/StructureDefinition/minValue";
inline constexpr std::string_view kMaxValue = "http://hl7.org/fhir/StructureDefinition/maxValue";
inline constexpr std::string_view kMinQuantity =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-minQuantity";
inline constexpr std::string_view kMaxQuantity =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-maxQuantity";
inline constexpr std::string_view kMinLength = "http://hl7.org/fhir/StructureDefinition/minLength";
inline constexpr std::string_view kMaxDecimalPlaces =
    "http://hl7.org/fhir/StructureDefinition/maxDecimalPlaces";
inline constexpr std::string_view kMinOccurs =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-minOccurs";
inline constexpr std::string_view kMaxOccurs =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-maxOccurs";
inline constexpr std::string_view kRegex = "http://hl7.org/fhir/StructureDefinition/regex";
inline constexpr std::string_view kEntryFormat = "http://hl7.org/fhir/StructureDefinition/entryFormat";
inline constexpr std::string_view kMaxSize = "http://hl7.org/fhir/StructureDefinition/maxSize";
inline constexpr std::string_view kMimeType = "http://hl7.org/fhir/StructureDefinition/mimeType";
inline constexpr std::string_view kReferenceResource =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-referenceResource";
inline constexpr std::string_view kSubQuestionnaire =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-subQuestionnaire";
inline constexpr std::string_view kAssembleExpectation =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-assemble-expectation";
inline constexpr std::string_view kEnableWhenExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-enableWhenExpression";
inline constexpr std::string_view kCalculatedExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-calculatedExpression";
inline constexpr std::string_view kInitialExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-initialExpression";
inline constexpr std::string_view kAnswerExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-answerExpression";
inline constexpr std::string_view kCandidateExpression =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-candidateExpression";
inline constexpr std::string_view kOptionsToggle =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-answerOptionsToggleExpression";
inline constexpr std::string_view kVariable = "http://hl7.org/fhir/StructureDefinition/variable";
inline constexpr std::string_view kConstraint =
    "http://hl7.org/fhir/StructureDefinition/questionnaire-constraint";
inline constexpr std::string_view kTargetConstraint =
    "http://hl7.org/fhir/StructureDefinition/targetConstraint";
inline constexpr std::string_view kLaunchContext =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-launchContext";
inline constexpr std::string_view kShortText =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-shortText";
inline constexpr std::string_view kTranslation = "http://hl7.org/fhir/StructureDefinition/translation";
inline constexpr std::string_view kOrdinalValue = "http://hl7.org/fhir/StructureDefinition/ordinalValue";
inline constexpr std::string_view kItemWeight = "http://hl7.org/fhir/StructureDefinition/itemWeight";
inline constexpr std::string_view kCodeSystemOrdinal =
    "http://hl7.org/fhir/StructureDefinition/codesystem-ordinalValue";
inline constexpr std::string_view kValueSetOrdinal =
    "http://hl7.org/fhir/StructureDefinition/valueset-ordinalValue";
inline constexpr std::string_view kValueSetLabel = "http://hl7.org/fhir/StructureDefinition/valueset-label";
inline constexpr std::string_view kRenderingCritical =
    "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-rendering-criticalExtension";
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
  /// extension but those of the url `understood`, and for extensions without a url.
  explicit Extensions(json::ObjectReader& element, std::string_view understood = {});

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

/// Extensions that a form may call critical for showing it, because they are followed here.
bool isFollowed(std::string_view url);

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

/// The same where words without a code will do.
CodingParts readOpenCoding(json::Node node, const std::string& subject, base::Issues& issues);

/// The translations of the string member `member`, which stand in its twin `_member`.
Translations translationsOf(json::Node element, std::string_view member);

/// The number of the first extension of `element` whose url is one of `urls`; without issues.
std::optional<base::Rational> numberIn(json::Node element, std::initializer_list<std::string_view> urls);

/// The string of the first extension of `element` with this url; "" when there is none.
std::string stringIn(json::Node element, std::string_view url);

}  // namespace stile::questionnaire
