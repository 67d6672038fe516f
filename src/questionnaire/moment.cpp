#include "questionnaire/moment.h"

#include <algorithm>
#include <string>

#include "base/date.h"

namespace stile::questionnaire {
namespace {

constexpr std::int64_t kSecondMs = 1000;
constexpr std::int64_t kMinuteMs = 60 * kSecondMs;
constexpr std::int64_t kHourMs = 60 * kMinuteMs;
constexpr std::int64_t kDayMs = 24 * kHourMs;

/// Takes two digits of at most `most` from the front.
std::optional<int> takeTwo(std::string_view& text, int most) {
  const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
  if (text.size() < 2 || !isDigit(text[0]) || !isDigit(text[1])) return std::nullopt;
  const int value = (text[0] - '0') * 10 + (text[1] - '0');
  if (value > most) return std::nullopt;
  text.remove_prefix(2);
  return value;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

/// Takes hh:mm:ss(.fff) from the front.
std::optional<Moment> takeTime(std::string_view& text) {
  const auto hours = takeTwo(text, 23);
  if (!hours || !take(text, ':')) return std::nullopt;
  const auto minutes = takeTwo(text, 59);
  if (!minutes || !take(text, ':')) return std::nullopt;
  const auto seconds = takeTwo(text, 60);  // a leap second
  if (!seconds) return std::nullopt;
  Moment moment;
  moment.first = *hours * kHourMs + *minutes * kMinuteMs + *seconds * kSecondMs;
  // The standard's precision: seconds and milliseconds count as one.
  if (take(text, '.')) {
    std::int64_t scale = kSecondMs / 10;
    std::size_t digits = 0;
    for (; digits < text.size() && text[digits] >= '0' && text[digits] <= '9'; ++digits, scale /= 10) {
      moment.first += (text[digits] - '0') * scale;
    }
    if (digits == 0) return std::nullopt;
    text.remove_prefix(digits);
  }
  moment.last = moment.first;
  return moment;
}

/// Z, +hh:mm, -hh:mm or nothing, as milliseconds east of UTC.
std::optional<std::int64_t> takeZone(std::string_view text) {
  if (text.empty() || text == "Z") return 0;
  const bool isWest = text.front() == '-';
  if (!isWest && text.front() != '+') return std::nullopt;
  text.remove_prefix(1);
  const auto hours = takeTwo(text, 14);
  if (!hours || !take(text, ':')) return std::nullopt;
  const auto minutes = takeTwo(text, 59);
  if (!minutes || !text.empty()) return std::nullopt;
  const std::int64_t offset = *hours * kHourMs + *minutes * kMinuteMs;
  return isWest ? -offset : offset;
}

}  // namespace

std::optional<Moment> momentOf(std::string_view text) {
  const std::size_t hours = text.find('T');
  const auto date = base::PartialDate::parse(text.substr(0, hours));
  if (!date) return std::nullopt;
  if (hours == std::string_view::npos) {
    return Moment{date->first().dayNumber() * kDayMs, (date->last().dayNumber() + 1) * kDayMs - 1};
  }
  if (!date->isExact()) return std::nullopt;
  std::string_view rest = text.substr(hours + 1);
  auto moment = takeTime(rest);
  const auto zone = moment ? takeZone(rest) : std::nullopt;
  if (!zone) return std::nullopt;
  const std::int64_t shift = date->first().dayNumber() * kDayMs - *zone;
  return Moment{moment->first + shift, moment->last + shift};
}

bool hasZoneOrNoHours(std::string_view text) {
  const std::size_t hours = text.find('T');
  if (hours == std::string_view::npos) return true;
  return text.find_first_of("Z+-", hours) != std::string_view::npos;
}

std::optional<Moment> timeOfDay(std::string_view text) {
  auto moment = takeTime(text);
  return moment && text.empty() ? moment : std::nullopt;
}

expression::Truth compareMoments(const Moment& a, const Moment& b, EnableOperator op) {
  using expression::Truth;
  const auto decide = [](bool isTrue, bool isFalse) {
    return isTrue ? Truth::True : isFalse ? Truth::False : Truth::Unknown;
  };
  // Two values known to the same extent compare as they are written, as FHIRPath compares them.
  const bool isSame = a.first == b.first && a.last == b.last;
  switch (op) {
    case EnableOperator::Greater:
      return decide(a.first > b.last, isSame || a.last <= b.first);
    case EnableOperator::GreaterOrEqual:
      return decide(isSame || a.first >= b.last, a.last < b.first);
    case EnableOperator::Less:
      return decide(a.last < b.first, isSame || a.first >= b.last);
    case EnableOperator::LessOrEqual:
      return decide(isSame || a.last <= b.first, a.first > b.last);
    default:
      break;
  }
  const Truth equal = decide(isSame, a.last < b.first || a.first > b.last);
  return op == EnableOperator::NotEqual ? expression::truthNot(equal) : equal;
}

}  // namespace stile::questionnaire
