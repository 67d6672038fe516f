// The wording of a letter goes out as a text, is changed, and comes back.
#include <catch2/catch.hpp>

#include "documents/letter.h"
#include "documents/letter_wording.h"
#include "documents/text_writer.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

Document outcome() {
  return outcomeLetterOf(
      {screened("maren"), content(), clinicSettings(), kMaren, letterTexts(), "Dr Rowan Teale"});
}

void replace(std::string& text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
}

LetterWording readBack(const std::string& text) {
  base::Issues issues;
  auto wording = letterWordingFrom(text, "outcome.txt", issues);
  CHECK(issues.empty());
  return wording;
}

}  // namespace

TEST_CASE("a wording given back as it was changes no word of the letter") {
  Document letter = outcome();
  const std::string before = wordsOf(letter);
  const auto wording = wordingOf("outcome-letter", letter, letterTexts());
  const auto back = readBack(toText(wording));
  REQUIRE(back.passages.size() == wording.passages.size());
  CHECK(back.basis == wording.basis);
  REQUIRE(reword(letter, back, letterTexts()));
  CHECK(wordsOf(letter) == before);
}

TEST_CASE("changed, added and emptied passages are printed so, and the foot names them") {
  Document letter = outcome();
  std::string text = toText(wordingOf("outcome-letter", letter, letterTexts()));
  replace(text, "To Dr Rowan Teale", "Dear Rowan,");
  replace(text, "\n[Added by us]\n", "\n[Added by us]\nShe asked me to greet\nyou.\n\nA second line.\n");
  const auto from = text.find("[At every session]"), to = text.find("\n[", from);
  REQUIRE(to != std::string::npos);
  text.replace(from, to - from, "[At every session]\n");
  REQUIRE(reword(letter, readBack(text), letterTexts()));
  const std::string words = wordsOf(letter);
  CHECK(has(words, "Dear Rowan,"));
  CHECK_FALSE(has(words, "To Dr Rowan Teale"));
  CHECK(has(words, "She asked me to greet you."));
  CHECK(has(words, "A second line."));
  CHECK(has(letter.footer.back(), "To whom, At every session, Added by us"));
  for (const Block& block : letter.sections.front().blocks)
    if (const auto* rows = std::get_if<Rows>(&block.form))
      for (const Row& row : rows->rows) CHECK(row.term != "At every session");
  CHECK(has(words, content().intendedUse.caution));
}

TEST_CASE("a wording made from other words, or with a passage lost, is refused") {
  const auto wording = wordingOf("outcome-letter", outcome(), letterTexts());
  Document letter = outcome();
  std::get<Rows>(letter.sections.front().blocks.back().form).rows.front().text.front() += " More was found.";
  auto done = reword(letter, wording, letterTexts());
  REQUIRE_FALSE(done);
  CHECK(has(done.failure().message, "write the wording anew"));

  letter = outcome();
  auto lost = wording;
  lost.passages.erase(lost.passages.begin() + 3);
  done = reword(letter, lost, letterTexts());
  REQUIRE_FALSE(done);
  CHECK(has(done.failure().message, "keep every name in brackets"));

  auto empty = wording;
  empty.passages[1].text = " \n";
  done = reword(letter, empty, letterTexts());
  REQUIRE_FALSE(done);
  CHECK(has(done.failure().message, "a letter needs it"));
  CHECK(wordsOf(letter) == wordsOf(outcome()));
}

TEST_CASE("another file is no wording") {
  for (const char* text : {"", "Dear Rowan", "Wording of a letter: outcome-letter"}) {
    base::Issues issues;
    letterWordingFrom(text, "note.txt", issues);
    INFO(text);
    CHECK(issues.hasErrors());
  }
}
