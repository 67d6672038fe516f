// What somebody typed, as an answer to a question: numbers with units in everyday spelling, dates,
// choices by number, lists.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "answers/response.h"
#include "interview/question.h"

namespace stile::interview {

/// The answers, or why the text is none, in words that say what to type instead.
struct TypedAnswer {
  std::vector<answers::Answer> answers;
  std::string trouble;
  bool ok() const { return trouble.empty(); }
};

/// Reads `text` for the question. Yes and no by y and n; options by their numbers from 1, several
/// apart by spaces or commas, "n" for "none of these"; "170 cm", "5 ft 7 in", "11 st 4 lb"; dates as
/// 2025-03-14, 14 March 2025, March 2025 or 2025. A unit that is not offered is converted to one that
/// is; a missing one is refused unless only one is offered.
TypedAnswer readTyped(const FormQuestion& question, std::string_view text);

/// Two whole numbers as one is used to write them together, "138/82" or "138/82 mmHg": one text for each, with the
/// unit behind both. nullopt when it is anything else.
std::optional<std::pair<std::string, std::string>> readPair(std::string_view text);

/// A list of yes-or-no questions: "n" (no to all) or the numbers that apply from 1, with a question
/// mark after a number for "not sure".
struct TypedList {
  std::vector<std::size_t> yes, notSure;  ///< indices from 0
  std::string trouble;
};
TypedList readTypedList(std::size_t count, std::string_view text);

/// "cm, m, ft or in": the units a question offers, as they may be typed.
std::string unitsInWords(const FormQuestion& question);

}  // namespace stile::interview
