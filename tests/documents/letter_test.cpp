// Letters: what they must tell, what they ask, and that the answer can be typed back in.
#include <catch2/catch.hpp>

#include "documents/decision_words.h"
#include "documents/letter.h"
#include "documents/letter_asks.h"
#include "documents/letter_facts.h"
#include "documents/text_writer.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

/// Certain findings that ask for clearance.
std::vector<std::size_t> toClear(const screening::Screening& screening) {
  std::vector<std::size_t> indices;
  for (std::size_t i = 0; i < screening.findings.size(); ++i)
    if (screening.findings[i].standing == rules::Standing::Certain &&
        screening.findings[i].full.clearance.aerobic > limits::Clearance::BeforeVigorous)
      indices.push_back(i);
  return indices;
}

}  // namespace

TEST_CASE("the letter asks one question and tells what a physician needs to answer it") {
  const auto screening = screened("waiting");
  const auto settings = clinicSettings();
  const LetterRequest request{screening, content(), settings, kMaren, letterTexts(), "Dr Rowan Teale"};
  const auto paper = clearanceLetterOf(request, toClear(screening), limits::Rung::Moderate);
  REQUIRE(paper);
  const std::string words = wordsOf(*paper);
  CHECK(has(words, "To Dr Rowan Teale"));
  CHECK(has(words, "Do you know of a reason against moderate exercise for Maren Oakshott?"));
  CHECK(has(words, "Please reply by 9 December 2026"));
  CHECK(has(words, "silence is never taken as a yes"));
  for (const char* heading : {"Why we ask", "Symptoms, as told", "Conditions told", "Medicines, as told", "Measured", "What is planned"})
    CHECK(has(words, heading));
  for (const std::size_t index : toClear(screening)) {
    CHECK(has(words, screening.findings[index].say.clinician));
    CHECK(has(words, screening.findings[index].rule->id));
  }
  CHECK(has(words, content().intendedUse.caution));
  CHECK(has(words, "born 14 March 1963"));
  CHECK_FALSE(has(words, "{"));
  for (const char* word : {" cleared", " safe ", " is fit"}) CHECK_FALSE(has(words, word));
}

TEST_CASE("the slip offers the answers of the form that it is typed into") {
  const auto screening = screened("waiting");
  const auto settings = clinicSettings();
  const auto paper = clearanceLetterOf({screening, content(), settings, kMaren, letterTexts()}, toClear(screening), limits::Rung::Moderate);
  REQUIRE(paper);
  const std::string words = wordsOf(*paper);
  const auto* form = content().forms.byName("clearance-reply");
  REQUIRE(form != nullptr);
  for (const char* question : {"replyAnswer", "replyBay", "replyIntensity"})
    for (const auto& option : form->find(question)->options) {
      INFO(option.display);
      CHECK(has(words, option.display));
    }
}

TEST_CASE("nothing waits for a reply: no letter") {
  const auto screening = screened("healthy");
  const auto settings = clinicSettings();
  CHECK_FALSE(clearanceLetterOf({screening, content(), settings, kMaren, letterTexts()}, {}, limits::Rung::Moderate));
}

TEST_CASE("each service that is called gets its own letter with why and what is asked") {
  const auto screening = screened("maren");
  const auto settings = clinicSettings();
  const auto letters = referralLettersOf({screening, content(), settings, kMaren, letterTexts()}, false);
  CHECK(letters.size() == screening.reach.limits.referrals.size());
  for (const auto& [service, paper] : letters) {
    const std::string words = wordsOf(paper);
    const auto& referral = screening.reach.limits.referrals.at(service);
    INFO(service);
    for (const std::string& why : referral.why) CHECK(has(words, why.substr(1)));
    for (const std::string& ask : referral.ask) CHECK(has(words, ask.substr(1)));
    CHECK(has(words, "Result or opinion"));
  }
}

TEST_CASE("the outcome goes back to who sent the client") {
  const auto screening = screened("maren");
  const auto settings = clinicSettings();
  const std::string words = wordsOf(outcomeLetterOf({screening, content(), settings, kMaren, letterTexts(), "Dr Rowan Teale"}));
  CHECK(has(words, "Thank you for sending Maren Oakshott"));
  CHECK(has(words, "What was decided"));
  for (const auto& id : screening.floor.limits.checks)
    CHECK(has(words, content().rules.checks.find(id)->second.say.clinician));
}

TEST_CASE("safety: while everything is shut, no letter says that something goes on") {
  int letters = 0;
  const auto settings = clinicSettings();
  for (const char* name : {"waiting", "sternotomy", "pressure", "low-mood", "crowded", "half"}) {
    const auto screening = screened(name);
    const auto& usable = screening.floor.usable;
    if (usable.aerobic != limits::Rung::None || usable.strength != limits::Rung::None) continue;
    INFO(name);
    const auto& referrals = screening.reach.limits.referrals;
    const LetterRequest request{screening, content(), settings, kMaren, letterTexts()};
    for (const auto& [service, letter] : referralLettersOf(request, false)) {
      const std::string words = wordsOf(letter);
      INFO(service);
      CHECK(has(words, letterTexts().phrases.say("meanwhileShut")));
      for (const std::string& goesOn : referrals.at(service).meanwhile)
        CHECK_FALSE(has(words, asSentence(capitalized(goesOn))));
      ++letters;
    }
  }
  CHECK(letters > 0);
}

TEST_CASE("a letter within days asks for a nearer day than a routine one") {
  HandMade made;
  const auto at = made.finding("A", rules::KeyKind::None, "");
  for (auto* limits : {&made.at(at).full, &made.at(at).reach, &made.at(at).floor}) {
    limits->referrals["pharmacist"].within = limits::Within::Days;
    limits->referrals["dietitian"].within = limits::Within::Routine;
  }
  auto screening = made.make();
  screening.date = kToday;
  screening.reach.limits.referrals = made.at(at).full.referrals;
  const auto settings = clinicSettings();
  const LetterRequest request{screening, content(), settings, kMaren, letterTexts()};
  for (const auto& [service, letter] : referralLettersOf(request, false)) {
    INFO(service);
    const auto period = service == "pharmacist" ? letterTexts().replySoon : letterTexts().replyWithin;
    CHECK(has(wordsOf(letter), "reply by " + plus(kToday, period).toLongText()));
  }
}

TEST_CASE("each question stands in one paragraph with the reasons it follows from") {
  const auto screening = screened("crowded");
  const auto& referrals = screening.reach.limits.referrals;
  for (const auto& [service, referral] : referrals) {
    INFO(service);
    const auto paragraphs = asksOf(screening, letterTexts(), service, {});
    std::string all;
    for (const std::string& one : paragraphs) all += one + "\n";
    for (const std::string& why : referral.why) CHECK(has(all, why.substr(1)));
    for (const std::string& ask : referral.ask) CHECK(has(all, ask.substr(1)));
    for (const rules::Finding& finding : screening.findings) {
      const auto own = finding.full.referrals.find(service);
      if (finding.standing != rules::Standing::Certain || own == finding.full.referrals.end()) continue;
      for (const std::string& why : own->second.why)
        for (const std::string& ask : own->second.ask) {
          INFO(why << " -> " << ask);
          CHECK(std::any_of(paragraphs.begin(), paragraphs.end(), [&](const std::string& one) {
            return has(one, why.substr(1)) && has(one, ask.substr(1));
          }));
        }
    }
  }
}

TEST_CASE("safety: a letter does without what its reader does not need, counts it, and keeps every medicine it does not know") {
  const auto screening = screened("crowded");
  LetterKind kind;
  kind.conditions = {"eyeConditions"};
  kind.medicines = {"no-such-class"};
  kind.without = {"answeredNo"};
  const auto wordsFor = [&](const LetterKind& one) {
    std::string words;
    for (const Row& row : letterFactRows(screening, content(), letterTexts(), one)) {
      words += row.term + "\n";
      for (const std::string& text : row.text) words += text + "\n";
    }
    return words;
  };
  const std::string all = wordsFor({}), some = wordsFor(kind);
  CHECK(has(all, letterTexts().headings.say("answeredNo")));
  CHECK_FALSE(has(some, letterTexts().headings.say("answeredNo")));
  CHECK(some.size() < all.size() / 2);
  CHECK(has(some, "Told besides"));
  CHECK_FALSE(has(all, "Told besides"));
  // Of no class at all, only what is not known by name is kept.
  const auto& dictionary = screening.facts.dictionary();
  const auto* name = dictionary.find("medicineName");
  int known = 0;
  for (int i = 0; i < screening.facts.repetitions("medicine"); ++i) {
    const auto& value = screening.facts.at(name->slot, i).value;
    if (!value.text) continue;
    INFO(*value.text);
    const bool isKnown = dictionary.medicines().match(*value.text).isResolved;
    known += isKnown;
    CHECK(has(all, value.text->substr(1)));
    CHECK(has(some, value.text->substr(1)) != isKnown);
  }
  CHECK(known > 0);
  CHECK(has(some, "Taken besides, and sent if you ask for it: " + std::to_string(known) + " more."));
}
