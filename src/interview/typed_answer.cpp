#include "interview/typed_answer.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <optional>
#include <regex>

#include "facts/fact_display.h"
#include "questionnaire/item_type.h"

namespace stile::interview {
namespace {

using answers::Answer;
using base::Rational;
using questionnaire::ItemType;

std::string lowered(std::string_view text) {
  std::string low;
  for (const char c : text) low += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  const auto first = low.find_first_not_of(" \t");
  if (first == std::string::npos) return {};
  return low.substr(first, low.find_last_not_of(" \t") - first + 1);
}

std::vector<std::string> wordsOf(const std::string& text, std::string_view separators) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : text) {
    if (separators.find(c) == std::string_view::npos) {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::move(word));
      word.clear();
    }
  }
  if (!word.empty()) words.push_back(std::move(word));
  return words;
}

TypedAnswer trouble(std::string why) { return {{}, std::move(why)}; }

/// Everyday spellings of units; what is not here is tried as UCUM.
const std::map<std::string, std::string, std::less<>>& spellings() {
  static const std::map<std::string, std::string, std::less<>> kSpellings{
      {"mmhg", "mm[Hg]"},  {"ft", "[ft_i]"},     {"foot", "[ft_i]"},    {"feet", "[ft_i]"},  {"'", "[ft_i]"},
      {"in", "[in_i]"},    {"inch", "[in_i]"},   {"inches", "[in_i]"},  {"\"", "[in_i]"},    {"lb", "[lb_av]"},
      {"lbs", "[lb_av]"},  {"pound", "[lb_av]"}, {"pounds", "[lb_av]"}, {"st", "[stone_av]"},   {"stone", "[stone_av]"},
      {"oz", "[oz_av]"},   {"c", "Cel"},         {"°c", "Cel"},         {"f", "[degF]"},     {"°f", "[degF]"},
      {"bpm", "/min"},     {"per minute", "/min"}, {"beats per minute", "/min"}, {"percent", "%"}, {"seconds", "s"},
      {"second", "s"},     {"sec", "s"},         {"minutes", "min"},    {"degrees", "deg"},  {"°", "deg"},
      {"mmol/l", "mmol/L"}, {"mg/dl", "mg/dL"},  {"kilos", "kg"},       {"kilo", "kg"},      {"metres", "m"},
      {"meters", "m"},     {"m/s", "m/s"},       {"kg", "kg"},          {"cm", "cm"}};
  return kSpellings;
}

struct Amount {
  Rational number;
  std::string digits, unit;
};

/// Numbers, each with the words that follow it.
std::optional<std::vector<Amount>> amountsIn(const std::string& text) {
  std::vector<Amount> amounts;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (c == ' ') {
      ++at;
      continue;
    }
    if (std::isdigit(static_cast<unsigned char>(c)) == 0 && c != '-' && c != '.') return std::nullopt;
    std::size_t end = at + 1;
    while (end < text.size() && (std::isdigit(static_cast<unsigned char>(text[end])) != 0 || text[end] == '.' || text[end] == ',')) ++end;
    std::string digits = text.substr(at, end - at);
    std::replace(digits.begin(), digits.end(), ',', '.');
    const auto number = Rational::parse(digits);
    if (!number) return std::nullopt;
    std::size_t unitEnd = end;
    while (unitEnd < text.size() && !(std::isdigit(static_cast<unsigned char>(text[unitEnd])) != 0 && text[unitEnd - 1] == ' ')) ++unitEnd;
    amounts.push_back({*number, digits, lowered(text.substr(end, unitEnd - end))});
    at = unitEnd;
  }
  return amounts;
}

std::string ucumOf(const std::string& typed, const FormQuestion& question) {
  for (const std::string& offered : question.item->units)
    if (typed == lowered(offered) || typed == lowered(facts::unitWords(offered))) return offered;
  const auto at = spellings().find(typed);
  return at == spellings().end() ? typed : at->second;
}

class QuantityReader {
 public:
  explicit QuantityReader(const FormQuestion& question) : question_(question), units_(question.item->units) {}

  TypedAnswer read(const std::string& text) const {
    auto amounts = amountsIn(text);
    if (!amounts || amounts->empty()) return trouble("type a number and its unit, such as \"" + example() + "\"");
    if (amounts->size() > 2) return trouble("type one measurement, such as \"" + example() + "\"");
    for (Amount& amount : *amounts) {
      if (amount.unit.empty() && amounts->size() == 1 && units_.size() == 1) amount.unit = units_.front();
      if (amount.unit.empty()) return trouble("the unit is missing: type for example \"" + amount.digits + " " + facts::unitWords(units_.front()) + "\"");
      amount.unit = ucumOf(amount.unit, question_);
    }
    if (amounts->size() == 1 && std::find(units_.begin(), units_.end(), amounts->front().unit) != units_.end())
      return given(amounts->front().number, amounts->front().digits, amounts->front().unit);
    return converted(*amounts);
  }

 private:
  std::string example() const { return "120 " + facts::unitWords(units_.empty() ? "1" : units_.front()); }

  static TypedAnswer given(const Rational& number, const std::string& digits, const std::string& unit) {
    Answer answer;
    answer.number = number;
    answer.numberText = digits;
    answer.unit = unit;
    return {{answer}, {}};
  }

  /// The sum in the offered unit that suits the last part ("5 ft 7 in" in inches), else in the first.
  TypedAnswer converted(const std::vector<Amount>& amounts) const {
    const bool isLastOffered = std::find(units_.begin(), units_.end(), amounts.back().unit) != units_.end();
    const std::string target = isLastOffered ? amounts.back().unit : units_.front();
    const auto to = base::parseUnit(target);
    Rational sum;
    for (const Amount& amount : amounts) {
      const auto from = base::parseUnit(amount.unit);
      const auto part = from && to ? base::convert(amount.number, *from, *to, question_.fact->valueType.analyte) : std::nullopt;
      const auto next = part ? Rational::add(sum, *part) : std::nullopt;
      if (!next) return trouble("\"" + amount.unit + "\" is no unit for this; use " + unitsInWords(question_));
      sum = *next;
    }
    const std::string digits = sum.toText(6);
    return given(Rational::parse(digits).value_or(sum), digits, target);
  }

  const FormQuestion& question_;
  const std::vector<std::string>& units_;
};

TypedAnswer readNumber(const FormQuestion& question, const std::string& text) {
  const auto amounts = amountsIn(text);
  if (!amounts || amounts->size() != 1 || !amounts->front().unit.empty()) return trouble("type a number, in digits");
  if (question.item->type == ItemType::Integer && !amounts->front().number.isWhole()) return trouble("type a whole number");
  Answer answer;
  answer.number = amounts->front().number;
  answer.numberText = amounts->front().digits;
  return {{answer}, {}};
}

TypedAnswer readDate(const std::string& text) {
  static constexpr std::array kMonths{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"};
  std::string written = text;
  const auto words = wordsOf(text, " ,");
  for (std::size_t month = 0; month < kMonths.size() && words.size() >= 2; ++month) {
    if (words[words.size() - 2].substr(0, 3) != kMonths[month]) continue;
    const std::string two = (month < 9 ? "0" : "") + std::to_string(month + 1);
    const std::string day = words.size() == 3 ? "-" + std::string(words[0].size() == 1 ? "0" : "") + words[0] : "";
    written = words.back() + "-" + two + day;
  }
  const auto date = base::PartialDate::parse(written);
  if (!date) return trouble("type a date as 2025-03-14, 14 March 2025, or only 2025-03 or 2025");
  Answer answer;
  answer.date = *date;
  return {{answer}, {}};
}

TypedAnswer readChoice(const FormQuestion& question, const std::string& text) {
  const auto& options = question.item->options;
  std::vector<Answer> chosen;
  for (const std::string& word : wordsOf(text, " ,")) {
    Answer answer;
    if (word == "n" || word == "none") {
      const auto none = std::find_if(options.begin(), options.end(), [](const auto& option) { return option.isExclusive; });
      if (none == options.end()) return trouble("type the number of an answer from 1 to " + std::to_string(options.size()));
      answer.code = none->code;
    } else {
      const auto number = Rational::parse(word);
      if (!number || !number->isWhole() || *number < Rational(1) || *number > Rational(static_cast<std::int64_t>(options.size())))
        return trouble("type the number of an answer from 1 to " + std::to_string(options.size()));
      answer.code = options[static_cast<std::size_t>(number->floor() - 1)].code;
    }
    const bool isTwice = std::any_of(chosen.begin(), chosen.end(), [&](const Answer& other) { return other.code == answer.code; });
    if (!isTwice) chosen.push_back(std::move(answer));
  }
  if (chosen.empty()) return trouble("type the number of an answer");
  if (chosen.size() > 1 && !question.item->repeats) return trouble("choose one answer only");
  return {std::move(chosen), {}};
}

}  // namespace

TypedAnswer readTyped(const FormQuestion& question, std::string_view text) {
  const std::string typed = lowered(text);
  if (typed.empty()) return trouble("type an answer, or s to skip");
  if (questionnaire::isChoice(question.item->type)) return readChoice(question, typed);
  Answer answer;
  switch (question.item->type) {
    case ItemType::Boolean:
      if (typed != "y" && typed != "yes" && typed != "n" && typed != "no") return trouble("type y for yes, n for no or u for not sure");
      answer.boolean = typed[0] == 'y';
      return {{answer}, {}};
    case ItemType::Quantity: return QuantityReader(question).read(typed);
    case ItemType::Integer:
    case ItemType::Decimal: return readNumber(question, typed);
    case ItemType::Date: return readDate(typed);
    default: break;
  }
  const auto first = text.find_first_not_of(" \t");
  answer.text = std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
  return {{answer}, {}};
}

std::optional<std::pair<std::string, std::string>> readPair(std::string_view text) {
  static const std::regex kPair(R"(\s*(\d+)\s*/\s*(\d+)\s*(\D*))");
  std::cmatch found;
  if (!std::regex_match(text.data(), text.data() + text.size(), found, kPair)) return std::nullopt;
  const std::string unit = found[3].length() == 0 ? "" : " " + found[3].str();
  return std::pair(found[1].str() + unit, found[2].str() + unit);
}

TypedList readTypedList(std::size_t count, std::string_view text) {
  TypedList list;
  const std::string typed = lowered(text);
  if (typed == "n" || typed == "no") return list;
  const auto words = wordsOf(typed, " ,");
  for (std::string word : words) {
    const bool isUnsure = word.size() > 1 && word.back() == '?';
    if (isUnsure) word.pop_back();
    const auto number = Rational::parse(word);
    if (!number || !number->isWhole() || *number < Rational(1) || *number > Rational(static_cast<std::int64_t>(count))) {
      list.trouble = "type n for no to all of these, or the numbers that apply, from 1 to " + std::to_string(count);
      return list;
    }
    (isUnsure ? list.notSure : list.yes).push_back(static_cast<std::size_t>(number->floor() - 1));
  }
  if (words.empty()) list.trouble = "type n for no to all of these, or the numbers that apply";
  return list;
}

std::string unitsInWords(const FormQuestion& question) {
  std::string words;
  const auto& units = question.item->units;
  for (std::size_t i = 0; i < units.size(); ++i)
    words += (i == 0 ? "" : i + 1 == units.size() ? " or " : ", ") + facts::unitWords(units[i]);
  return words;
}

}  // namespace stile::interview
