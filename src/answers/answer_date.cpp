#include <algorithm>

#include "answers/answer_reader.h"

namespace stile::answers {
namespace {

bool isDigits(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

/// Reads two digits at most `most` from the front of `text`.
bool takeTwo(std::string_view& text, int most) {
  if (text.size() < 2 || !isDigits(text.substr(0, 2))) return false;
  if ((text[0] - '0') * 10 + (text[1] - '0') > most) return false;
  text.remove_prefix(2);
  return true;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

/// Takes `hh:mm:ss(.fff)` from the front; a leap second is allowed.
bool takeTime(std::string_view& text) {
  if (!takeTwo(text, 23) || !take(text, ':') || !takeTwo(text, 59) || !take(text, ':') ||
      !takeTwo(text, 60)) {
    return false;
  }
  if (!take(text, '.')) return true;
  const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
  text.remove_prefix(digits);
  return digits > 0;
}

/// As FHIR's dateTime wants it: a time always has a zone.
bool isTimeWithZone(std::string_view text) {
  if (!takeTime(text)) return false;
  if (text == "Z") return true;
  if (!take(text, '+') && !take(text, '-')) return false;
  return takeTwo(text, 14) && take(text, ':') && takeTwo(text, 59) && text.empty();
}

void refuse(json::Node node, const std::string& subject, base::Issues& issues) {
  const std::string written = node.isString() ? "\"" + node.string() + "\"" : std::string("this");
  issues.error(node.place(), subject, written + " is not a date of the calendar",
               "write YYYY-MM-DD, or YYYY-MM or YYYY when the day is not known");
}

}  // namespace

bool isTimeOfDay(std::string_view text) {
  return takeTime(text) && text.empty();
}

std::optional<base::PartialDate> readDate(json::Node node, const std::string& subject, base::Issues& issues) {
  auto date = node.isString() ? base::PartialDate::parse(node.string()) : std::nullopt;
  if (!date) refuse(node, subject, issues);
  return date;
}

std::optional<base::PartialDate> readDateTime(json::Node node, const std::string& subject,
                                              base::Issues& issues) {
  constexpr std::size_t kDayLength = 10;
  if (!node.isString() || node.string().size() <= kDayLength) return readDate(node, subject, issues);
  const std::string_view text = node.string();
  const auto day = base::Date::parse(text.substr(0, kDayLength));
  if (!day || text[kDayLength] != 'T') {
    refuse(node, subject, issues);
    return std::nullopt;
  }
  if (!isTimeWithZone(text.substr(kDayLength + 1))) {
    issues.error(node.place(), subject, "\"" + node.string() + "\" has no proper time of day and zone",
                 "write it like 2026-11-25T09:30:00+01:00, or the day alone");
    return std::nullopt;
  }
  return base::PartialDate(*day);
}

}  // namespace stile::answers
