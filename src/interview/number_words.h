// What number a question wants, in words: its range and its unit, as a prompt says them.
#pragma once

#include <string>

#include "interview/question.h"

namespace stile::interview {

/// "0 to 7", "20 to 400 kg", "up to 50": what the fact can be at all, in its unit, or in the first one
/// the form offers where it does not offer that; "" when there are no bounds.
std::string rangeInWords(const FormQuestion& question);

/// "A whole number, 0 to 7", "A number with its unit (kg or lb), 20 to 400 kg".
std::string numberWantedInWords(const FormQuestion& question);

/// True when every possible answer is one digit, so that one keystroke says it.
bool isOneDigit(const FormQuestion& question);

}  // namespace stile::interview
