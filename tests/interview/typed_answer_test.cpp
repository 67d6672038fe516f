// What people type: units in everyday spelling, dates, choices, lists; and what is refused, with words.
#include <catch2/catch.hpp>

#include "interview/answer_check.h"
#include "interview/number_words.h"
#include "interview/typed_answer.h"

using namespace stile;
using interview::FormQuestion;
using questionnaire::ItemType;

namespace {

/// A question of its own, with the fact it asks.
struct Asked {
  questionnaire::Item item;
  facts::Definition fact;
  FormQuestion question;

  explicit Asked(ItemType type, std::vector<std::string> units = {}) {
    item.linkId = fact.id = "asked";
    item.type = type;
    item.units = std::move(units);
    fact.label = "Asked";
    fact.type = facts::FactType::Quantity;
    if (!item.units.empty()) fact.valueType.unit = *base::parseUnit(item.units.front());
    question.item = &item;
    question.fact = &fact;
  }
  Asked(const Asked&) = delete;
  std::string read(const std::string& text) const {
    const auto typed = interview::readTyped(question, text);
    if (!typed.ok()) return "refused: " + typed.trouble;
    std::string all;
    for (const auto& answer : typed.answers) {
      all += all.empty() ? "" : "|";
      if (answer.boolean) all += *answer.boolean ? "yes" : "no";
      if (answer.number) all += answer.numberText + " " + answer.unit;
      if (answer.code) all += *answer.code;
      if (answer.date) all += answer.date->toText();
      if (answer.text) all += *answer.text;
    }
    return all;
  }
};

bool isRefused(const std::string& text) { return text.rfind("refused", 0) == 0; }

}  // namespace

TEST_CASE("A height is taken in the units people use") {
  const Asked height(ItemType::Quantity, {"cm", "[in_i]"});
  CHECK(height.read("170 cm") == "170 cm");
  CHECK(height.read("170cm") == "170 cm");
  CHECK(height.read(" 1.7 m ") == "170 cm");
  CHECK(height.read("1,7 m") == "170 cm");
  CHECK(height.read("67 inches") == "67 [in_i]");
  CHECK(height.read("5 ft 7 in") == "67 [in_i]");
  CHECK(height.read("5' 7\"") == "67 [in_i]");
  CHECK(height.read("5 ft") == "152.4 cm");
}

TEST_CASE("A number without a unit is refused where several are offered, and taken where one is") {
  const Asked height(ItemType::Quantity, {"cm", "[in_i]"});
  CHECK(height.read("170") == "refused: the unit is missing: type for example \"170 cm\"");
  const Asked pressure(ItemType::Quantity, {"mm[Hg]"});
  CHECK(pressure.read("138") == "138 mm[Hg]");
  CHECK(pressure.read("138 mmHg") == "138 mm[Hg]");
  CHECK(isRefused(pressure.read("138 kg")));
  CHECK(isRefused(pressure.read("high")));
  CHECK(isRefused(pressure.read("")));
}

TEST_CASE("Two numbers written as one reading come apart, with the unit behind both") {
  using Pair = std::pair<std::string, std::string>;
  CHECK(interview::readPair("138/82") == Pair("138", "82"));
  CHECK(interview::readPair(" 138 / 82 mmHg") == Pair("138 mmHg", "82 mmHg"));
  for (const char* other : {"138", "138/", "/82", "5.5 mmol/l", "1/2/3", "12 stone/4", ""}) CHECK_FALSE(interview::readPair(other));
}

TEST_CASE("Dates are taken in part and in words") {
  const Asked date(ItemType::Date);
  CHECK(date.read("2025-03-14") == "2025-03-14");
  CHECK(date.read("14 March 2025") == "2025-03-14");
  CHECK(date.read("4 mar 2025") == "2025-03-04");
  CHECK(date.read("March 2025") == "2025-03");
  CHECK(date.read("2025") == "2025");
  CHECK(isRefused(date.read("last spring")));
  CHECK(isRefused(date.read("2025-02-30")));
}

TEST_CASE("Choices go by number, and none of these by a letter") {
  Asked choice(ItemType::Choice);
  for (const auto& [code, display] : {std::pair{"a", "A"}, std::pair{"b", "B"}, std::pair{"none", "None of these"}}) {
    questionnaire::Option& option = choice.item.options.emplace_back();
    option.code = code;
    option.display = display;
    option.isExclusive = option.code == "none";
  }
  CHECK(choice.read("2") == "b");
  CHECK(choice.read("n") == "none");
  CHECK(isRefused(choice.read("1 2")));
  CHECK(isRefused(choice.read("4")));
  choice.item.repeats = true;
  CHECK(choice.read("1, 2") == "a|b");
  CHECK(choice.read("1 1") == "a");
}

TEST_CASE("A list takes no to all, numbers, and not sure") {
  CHECK(interview::readTypedList(6, "n").yes.empty());
  CHECK(interview::readTypedList(6, "2 5").yes == std::vector<std::size_t>{1, 4});
  const auto mixed = interview::readTypedList(6, "2, 3?");
  CHECK(mixed.yes == std::vector<std::size_t>{1});
  CHECK(mixed.notSure == std::vector<std::size_t>{2});
  CHECK_FALSE(interview::readTypedList(6, "7").trouble.empty());
  CHECK_FALSE(interview::readTypedList(6, "").trouble.empty());
  CHECK_FALSE(interview::readTypedList(6, "yes").trouble.empty());
}

TEST_CASE("Impossible values are refused and implausible ones asked back") {
  Asked pressure(ItemType::Quantity, {"mm[Hg]"});
  pressure.fact.possibleLow = 40;
  pressure.fact.possibleHigh = 320;
  pressure.fact.plausibleLow = 80;
  pressure.fact.plausibleHigh = 230;
  const base::Date today = *base::Date::of(2026, 11, 25);
  const auto issuesOf = [&](const std::string& text) {
    base::Issues issues;
    interview::checkAnswer(pressure.question, interview::readTyped(pressure.question, text).answers, today, issues);
    return issues;
  };
  CHECK(issuesOf("138").empty());
  CHECK(issuesOf("400").hasErrors());
  CHECK_FALSE(issuesOf("250").empty());
  CHECK_FALSE(issuesOf("250").hasErrors());
}

TEST_CASE("A number is asked for with its range and unit") {
  Asked weight(ItemType::Quantity, {"kg", "[lb_av]"});
  CHECK(interview::numberWantedInWords(weight.question) == "A number with its unit (kg or lb)");
  weight.fact.possibleLow = 20;
  weight.fact.possibleHigh = 400;
  CHECK(interview::numberWantedInWords(weight.question) == "A number with its unit (kg or lb), 20 to 400 kg");
  weight.item.units = {"[lb_av]"};  // the fact keeps kilograms, the form offers none
  CHECK(interview::numberWantedInWords(weight.question) == "A number, 44.09 to 881.85 lb");
  Asked pulse(ItemType::Quantity, {"/min"});
  CHECK(interview::numberWantedInWords(pulse.question) == "A number (per min)");
  Asked days(ItemType::Integer);
  CHECK(interview::numberWantedInWords(days.question) == "A whole number");
  CHECK_FALSE(interview::isOneDigit(days.question));
  days.fact.possibleLow = 0;
  CHECK(interview::numberWantedInWords(days.question) == "A whole number, at least 0");
  days.fact.possibleHigh = 7;
  CHECK(interview::numberWantedInWords(days.question) == "A whole number, 0 to 7");
  CHECK(interview::isOneDigit(days.question));
  days.fact.possibleHigh = 10;
  CHECK_FALSE(interview::isOneDigit(days.question));
}
