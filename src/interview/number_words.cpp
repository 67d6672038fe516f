#include "interview/number_words.h"

#include <algorithm>

#include "facts/fact_display.h"
#include "interview/typed_answer.h"
#include "questionnaire/item_type.h"

namespace stile::interview {
namespace {

using base::Rational;
using questionnaire::ItemType;

/// A bound of the fact in the unit of the prompt; nullopt when it has none.
std::optional<Rational> boundIn(const FormQuestion& question, const std::optional<Rational>& bound,
                                const std::string& unit) {
  if (!bound || unit == question.fact->valueType.unit.text) return bound;
  const auto to = base::parseUnit(unit);
  return to ? base::convert(*bound, question.fact->valueType.unit, *to, question.fact->valueType.analyte)
            : std::nullopt;
}

std::string unitOfPrompt(const FormQuestion& question) {
  const auto& offered = question.item->units;
  const std::string& kept = question.fact->valueType.unit.text;
  return offered.empty() || std::find(offered.begin(), offered.end(), kept) != offered.end()
             ? kept
             : offered.front();
}

}  // namespace

std::string rangeInWords(const FormQuestion& question) {
  const std::string unit = unitOfPrompt(question);
  const auto low = boundIn(question, question.fact->possibleLow, unit);
  const auto high = boundIn(question, question.fact->possibleHigh, unit);
  if (!low && !high) return {};
  constexpr int kDecimals = 2;
  std::string words = low && high ? low->toText(kDecimals) + " to " + high->toText(kDecimals)
                      : low       ? "at least " + low->toText(kDecimals)
                                  : "up to " + high->toText(kDecimals);
  const std::string unitWords = question.item->units.empty() ? "" : facts::unitWords(unit);
  return words + (unitWords.empty() ? "" : " " + unitWords);
}

std::string numberWantedInWords(const FormQuestion& question) {
  const bool hasUnits = question.item->type == ItemType::Quantity;
  std::string words = question.item->type == ItemType::Integer ? "A whole number" : "A number";
  if (hasUnits && question.item->units.size() > 1) words += " with its unit (" + unitsInWords(question) + ")";
  const std::string range = rangeInWords(question);
  if (!range.empty()) return words + ", " + range;
  return hasUnits && question.item->units.size() == 1 ? words + " (" + unitsInWords(question) + ")" : words;
}

bool isOneDigit(const FormQuestion& question) {
  if (questionnaire::isChoice(question.item->type))
    return !question.item->repeats && question.item->options.size() <= 9;
  const auto& low = question.fact->possibleLow;
  const auto& high = question.fact->possibleHigh;
  return question.item->type == ItemType::Integer && low && high && *low >= Rational(0) &&
         *high <= Rational(9);
}

}  // namespace stile::interview
