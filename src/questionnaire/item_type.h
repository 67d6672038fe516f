// The words of FHIR for item types, and which answers each takes.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "questionnaire/form.h"

namespace stile::questionnaire {

std::optional<ItemType> itemType(std::string_view fhirName);
const char* fhirName(ItemType type);  ///< "open-choice" …
const std::vector<std::string>& itemTypeNames();

/// Anything but groups and displays.
bool isQuestion(ItemType type);
bool isChoice(ItemType type);

/// The types of value[x] an answer may have, by the ending of the member's name: `Quantity` for
/// valueQuantity. The first is the one to recommend.
std::vector<std::string> answerTypes(const Item& item);

/// All endings that value[x] of an answer may have in R4.
const std::vector<std::string>& allAnswerTypes();

/// `answer` or `value` with an ending: valueQuantity.
std::string memberName(std::string_view stem, std::string_view ending);

}  // namespace stile::questionnaire
