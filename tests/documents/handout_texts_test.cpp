#include "documents/handout_texts.h"

#include <catch2/catch.hpp>

#include "documents/client_paper.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

std::string shipped() {
  return fileText(std::filesystem::path(STILE_SOURCE_DIR) / "rules/handout.json");
}

std::string changed(const std::string& from, const std::string& to) {
  std::string text = shipped();
  const auto at = text.find(from);
  if (at == std::string::npos) throw std::runtime_error("not in handout.json: " + from);
  return text.replace(at, from.size(), to);
}

std::string firstIssue(const std::string& text) {
  base::Issues issues;
  HandoutTexts::load(text, "handout.json", issues);
  return issues.empty() ? "" : issues.all().front().message;
}

}  // namespace

TEST_CASE("the shipped handout texts load, and name only rules and sources that exist") {
  CHECK(firstIssue(shipped()).empty());
  const auto issues = handoutTexts().check(content().rules);
  for (const auto& issue : issues.all()) FAIL_CHECK(issue.subject + ": " + issue.message);
}

TEST_CASE("a misspelt member, a missing heading, an unknown slot and a missing source are issues") {
  CHECK(firstIssue(changed("\"useFor\"", "\"usedFor\"")) != "");
  CHECK(firstIssue(changed("\"stopAndCall\": \"", "\"stopCall\": \"")) != "");
  CHECK(firstIssue(changed("{emergencyNumber}", "{number}")).find("{number}") != std::string::npos);
  CHECK(firstIssue(changed("\"sources\": [\"memory-head-injury\"]", "\"sources\": []")).find("source") !=
        std::string::npos);
  CHECK(firstIssue("{") != "");
}

TEST_CASE("a sentence for one kind of client stands only with the finding that calls for it") {
  const std::vector<ClientSentence> sentences{{"always", "Always.", "", {}, {}, {"s"}},
                                              {"if", "If.", "", {"rule-a"}, {}, {"s"}},
                                              {"unless", "Unless.", "", {}, {"rule-a"}, {"s"}}};
  HandMade none;
  CHECK(HandoutTexts::chosen(sentences, none.make(), Choice::AllFindings) ==
        std::vector<std::string>{"Always.", "Unless."});
  HandMade made;
  const auto at = made.finding("A", rules::KeyKind::None, "");
  const_cast<rules::Rule*>(made.at(at).rule)->id = "rule-a";
  CHECK(HandoutTexts::chosen(sentences, made.make(), Choice::AllFindings) ==
        std::vector<std::string>{"Always.", "If."});
  made.at(at).standing = rules::Standing::Open;
  CHECK(HandoutTexts::chosen(sentences, made.make(), Choice::CertainOnly) ==
        std::vector<std::string>{"Always.", "Unless."});
  CHECK(HandoutTexts::chosen(sentences, made.make(), Choice::AllFindings) ==
        std::vector<std::string>{"Always.", "If.", "Unless."});
}

TEST_CASE("slots are filled in, and no client sentence says cleared, safe or fit") {
  CHECK(handoutTexts().heading("emergency", {{"emergencyNumber", "112"}}) == "Call 112 now if");
  CHECK(handoutTexts().heading("nothing") == "");
  const std::string text = shipped();
  for (const char* word : {"cleared", "safe", " fit "}) CHECK(text.find(word) == std::string::npos);
}

TEST_CASE("a stricter sentence stands in place of the milder one") {
  const std::vector<ClientSentence> sentences{{"head", "Hit and feel sick.", "", {}, {}, {"s"}},
                                              {"blood", "Hit, even if well.", "head", {"rule-a"}, {}, {"s"}}};
  HandMade none;
  CHECK(HandoutTexts::chosen(sentences, none.make(), Choice::AllFindings) ==
        std::vector<std::string>{"Hit and feel sick."});
  HandMade made;
  const auto at = made.finding("A", rules::KeyKind::None, "");
  const_cast<rules::Rule*>(made.at(at).rule)->id = "rule-a";
  made.at(at).standing = rules::Standing::Open;
  CHECK(HandoutTexts::chosen(sentences, made.make(), Choice::AllFindings) ==
        std::vector<std::string>{"Hit, even if well."});
}

TEST_CASE("letters are large for who sees poorly, unless usual ones are wanted; the facts behind it exist") {
  for (const LetterSizeLine& line : handoutTexts().letterSizes) {
    INFO(line.fact);
    const auto* fact = content().dictionary.find(line.fact);
    REQUIRE(fact != nullptr);
    CHECK((line.is.empty() ? fact->type == facts::FactType::Boolean : fact->option(line.is) != nullptr));
  }
  const auto sizeFor = [](const std::string& answers) {
    base::Issues issues;
    const auto document = json::Document::parse(answers, "answers", issues);
    auto facts = facts::factsFromPlain(content().dictionary, content().forms, document->root(), kToday, issues);
    orThrow(issues);
    return letterSizeFor(screening::screen(content(), std::move(facts), {}, kToday), handoutTexts());
  };
  CHECK(sizeFor("{}").textSize == TextSize::Points14);
  CHECK(sizeFor(R"({"readingNeeds": "largePrint"})").textSize == TextSize::Points18);
  const auto poorSight = sizeFor(R"({"communicationNeeds": ["sight"]})");
  CHECK(poorSight.textSize == TextSize::Points18);
  CHECK_FALSE(poorSight.say.empty());
  CHECK(sizeFor(R"({"communicationNeeds": ["sight"], "readingNeeds": "standard"})").textSize == TextSize::Points14);
}
