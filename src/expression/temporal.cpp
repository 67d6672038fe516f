#include "expression/temporal.h"

#include <algorithm>
#include <array>

#include "base/date.h"

namespace stile::expression {
namespace {

constexpr int kMinutesPerDay = 24 * 60;
constexpr std::size_t kNanosecondDigits = 9;

/// Reads digits from the front of a text.
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}
  bool atEnd() const { return text_.empty(); }
  bool take(char c) {
    if (!text_.starts_with(c)) return false;
    text_.remove_prefix(1);
    return true;
  }
  bool digits(std::size_t count, int largest, int& value) {
    if (text_.size() < count) return false;
    value = 0;
    for (const char c : text_.substr(0, count)) {
      if (c < '0' || c > '9') return false;
      value = value * 10 + (c - '0');
    }
    text_.remove_prefix(count);
    return value <= largest;
  }
  bool fraction(Temporal& into) {
    std::size_t count = 0;
    int scale = 100000000;
    for (; count < text_.size() && text_[count] >= '0' && text_[count] <= '9'; ++count) {
      into.nanosecond += (text_[count] - '0') * scale;
      scale /= 10;
    }
    if (count == 0) return false;
    into.fractionDigits = static_cast<int>(count < kNanosecondDigits ? count : kNanosecondDigits);
    text_.remove_prefix(count);
    return true;
  }

 private:
  std::string_view text_;
};

bool readDate(Reader& reader, Temporal& into) {
  if (!reader.digits(4, 9999, into.year) || into.year == 0) return false;
  if (!reader.take('-')) return true;
  into.precision = Precision::Month;
  if (!reader.digits(2, 12, into.month) || into.month == 0) return false;
  if (!reader.take('-')) return true;
  into.precision = Precision::Day;
  return reader.digits(2, 31, into.day) && base::Date::of(into.year, into.month, into.day).has_value();
}

bool readTime(Reader& reader, Temporal& into) {
  if (!reader.digits(2, 23, into.hour)) return false;
  into.precision = Precision::Hour;
  if (!reader.take(':')) return true;
  into.precision = Precision::Minute;
  if (!reader.digits(2, 59, into.minute)) return false;
  if (!reader.take(':')) return true;
  into.precision = Precision::Second;
  // 60 is a leap second, which FHIR allows and no calendar here can count.
  if (!reader.digits(2, 59, into.second)) return false;
  return !reader.take('.') || reader.fraction(into);
}

bool readZone(Reader& reader, Temporal& into) {
  if (reader.take('Z')) {
    into.zoneMinutes = 0;
    into.isZulu = true;
    return true;
  }
  const bool isMinus = reader.take('-');
  if (!isMinus && !reader.take('+')) return true;
  int hours = 0;
  int minutes = 0;
  if (!reader.digits(2, 14, hours) || !reader.take(':') || !reader.digits(2, 59, minutes)) return false;
  into.zoneMinutes = (hours * 60 + minutes) * (isMinus ? -1 : 1);
  return true;
}

std::string padded(int value, std::size_t width) {
  const std::string digits = std::to_string(value);
  return digits.size() >= width ? digits : std::string(width - digits.size(), '0') + digits;
}

std::string timeText(const Temporal& value) {
  std::string text = padded(value.hour, 2);
  if (value.precision < Precision::Minute) return text;
  text += ":" + padded(value.minute, 2);
  if (value.precision < Precision::Second) return text;
  text += ":" + padded(value.second, 2);
  if (value.fractionDigits > 0) {
    text +=
        "." +
        padded(value.nanosecond, kNanosecondDigits).substr(0, static_cast<std::size_t>(value.fractionDigits));
  }
  return text;
}

bool isTime(const Temporal& value) {
  return value.kind == TemporalKind::Time;
}

/// The fields from the year (or the hour of a Time) down; seconds with their fraction are one.
std::array<long long, 6> fields(const Temporal& value) {
  const long long seconds = value.second * 1000000000LL + value.nanosecond;
  return {isTime(value) ? 0 : value.year,
          isTime(value) ? 0 : value.month,
          isTime(value) ? 0 : value.day,
          value.hour,
          value.minute,
          seconds};
}

}  // namespace

std::optional<Temporal> Temporal::parseDate(std::string_view text) {
  Temporal value;
  Reader reader(text);
  if (!readDate(reader, value) || !reader.atEnd()) return std::nullopt;
  return value;
}

std::optional<Temporal> Temporal::parseDateTime(std::string_view text) {
  Temporal value;
  value.kind = TemporalKind::DateTime;
  Reader reader(text);
  if (!readDate(reader, value)) return std::nullopt;
  if (reader.take('T') && !reader.atEnd()) {
    if (value.precision != Precision::Day || !readTime(reader, value) || !readZone(reader, value)) {
      return std::nullopt;
    }
  }
  if (!reader.atEnd()) return std::nullopt;
  return value;
}

std::optional<Temporal> Temporal::parseTime(std::string_view text) {
  Temporal value;
  value.kind = TemporalKind::Time;
  Reader reader(text);
  if (!readTime(reader, value) || !reader.atEnd()) return std::nullopt;
  return value;
}

std::string Temporal::toText() const {
  if (isTime(*this)) return timeText(*this);
  std::string text = padded(year, 4);
  if (precision >= Precision::Month) text += "-" + padded(month, 2);
  if (precision >= Precision::Day) text += "-" + padded(day, 2);
  if (precision < Precision::Hour) return text;
  text += "T" + timeText(*this);
  if (!zoneMinutes) return text;
  if (isZulu) return text + "Z";
  const int size = *zoneMinutes < 0 ? -*zoneMinutes : *zoneMinutes;
  return text + (*zoneMinutes < 0 ? "-" : "+") + padded(size / 60, 2) + ":" + padded(size % 60, 2);
}

Temporal Temporal::asDateTime() const {
  Temporal result = *this;
  if (kind == TemporalKind::Date) result.kind = TemporalKind::DateTime;
  return result;
}

Temporal inZone(const Temporal& value, int zoneMinutes) {
  if (!value.zoneMinutes || value.precision < Precision::Hour) return value;
  const int shift = zoneMinutes - *value.zoneMinutes;
  if (shift == 0) return value;
  const int minutes = value.hour * 60 + value.minute + shift;
  const int days =
      minutes < 0 ? -((-minutes + kMinutesPerDay - 1) / kMinutesPerDay) : minutes / kMinutesPerDay;
  const auto date = base::Date::of(value.year, value.month, value.day);
  Temporal result = value;
  if (date) {
    const base::Date moved = base::Date::fromDayNumber(date->dayNumber() + days);
    result.year = moved.year();
    result.month = moved.month();
    result.day = moved.day();
  }
  const int rest = minutes - days * kMinutesPerDay;
  result.hour = rest / 60;
  result.minute = rest % 60;
  result.zoneMinutes = zoneMinutes;
  result.isZulu = false;
  return result;
}

std::optional<std::strong_ordering> compare(const Temporal& a, const Temporal& b, int localZoneMinutes) {
  if (isTime(a) != isTime(b)) return std::nullopt;
  const auto left = fields(inZone(a, localZoneMinutes));
  const auto right = fields(inZone(b, localZoneMinutes));
  const auto coarser = static_cast<std::size_t>(std::min(a.precision, b.precision));
  for (std::size_t i = 0; i <= coarser; ++i) {
    if (left[i] != right[i]) return left[i] <=> right[i];
  }
  if (a.precision != b.precision) return std::nullopt;
  return std::strong_ordering::equal;
}

bool areEquivalent(const Temporal& a, const Temporal& b, int localZoneMinutes) {
  if (a.precision != b.precision) return false;
  const auto order = compare(a, b, localZoneMinutes);
  return order && std::is_eq(*order);
}

}  // namespace stile::expression
