// The interview on the terminal, driven through a pipe as a person would: to the end, with mistakes,
// stopped by a red flag, and killed at any point.
#include <catch2/catch.hpp>

#include "../support/content.h"
#include "conversation.h"
#include "run_program.h"

using namespace stile::test;

namespace {

Conversation begin(const std::string& file, const std::string& form = {}) {
  std::vector<std::string> arguments{STILE_BINARY, "--content", STILE_SOURCE_DIR, "interview", file, "--date", "2026-11-25", "--lines"};
  if (!form.empty()) arguments.insert(arguments.end(), {"--form", form});
  return Conversation(arguments);
}

/// What a well person says.
std::string wellAnswer(const std::string& asked) {
  const auto has = [&](const char* part) { return contains(asked, part); };
  if (has("no to all of these")) return "n";
  if (has("y keep it")) return "y";
  if (has("y yes, n no")) return has("breathe harder") || has("lie flat on your back") ? "y" : "n";
  if (has("born") || has("date of birth")) return "1963-03-14";
  if (has("A date")) return "2020";
  if (has("(or n)")) return "n";
  if (has("The numbers that apply")) return "1 2";
  if (has("The number of one answer")) return "1";
  const std::pair<const char*, const char*> known[] = {
      {"first number", "128"}, {"second number", "78 mmHg"}, {"pulse", "64"}, {"your height", "5 ft 7 in"}, {"your weight", "70 kg"},
      {"minutes in all", "30"}, {"how many months", "8"}, {"how many days do you exercise", "4"}, {"how many days do you train", "1"},
      {"your waist", "80 cm"}, {"in 30 seconds", "14"}, {"heel to toe", "10 s"}, {"usual walking speed", "1.2 m/s"}, {"How long", "9 s"}};
  for (const auto& [part, answer] : known)
    if (has(part)) return answer;
  if (has("(kg")) return "30 kg";
  if (has("(m or")) return "500 m";
  if (has("(cm or")) return "2 cm";
  if (has("its unit")) return "9 s";
  if (has("A number") || has("A whole number")) return "5";
  return "Tarnside, 555 0100";
}

struct Talked {
  std::string all;
  int asked = 0;
  int exit = -1;
};

/// Answers until the end, or until so many questions were answered and the program is killed.
Talked talk(Conversation& conversation, int killAfter = -1) {
  Talked talked;
  while (true) {
    const std::string said = conversation.listen();
    talked.all += said;
    if (conversation.isOver()) break;
    if (talked.asked == killAfter) {
      conversation.kill();
      return talked;
    }
    if (talked.asked > 300) throw std::runtime_error("it never ends:\n" + said);
    // Only what stands after the last blank line is the question.
    const auto last = said.rfind("\n\n");
    conversation.answer(wellAnswer(last == std::string::npos ? said : said.substr(last)));
    ++talked.asked;
  }
  talked.exit = conversation.finish();
  return talked;
}

}  // namespace

TEST_CASE("A well person's interview comes to its end, and its response is screened like any other") {
  const Folder folder;
  for (const char* form : {"clinic", "telephone"}) {
    const std::string file = folder / (std::string(form) + ".json");
    auto conversation = begin(file, form);
    const Talked talked = talk(conversation);
    INFO(talked.all);
    CHECK(talked.exit == 0);
    CHECK(contains(talked.all, "That was the last question."));
    CHECK(contains(talked.all, "The response is in"));
    CHECK(contains(talked.all, "The decision is settled."));
    CHECK(contains(slurp(file), "\"completed\""));
    const Ran screened = run("screen " + file + " --date 2026-11-25 --json");
    INFO(screened.err);
    CHECK(screened.exit == 0);
    CHECK(contains(screened.out, "\"action\""));
    // Nothing but lines: no colours, no cursor.
    CHECK(talked.all.find('\x1b') == std::string::npos);
    WARN(form << ": " << talked.asked << " lines typed");
  }
}

TEST_CASE("An interview killed at any point goes on from the last answer and ends with the same bytes") {
  const Folder folder;
  auto whole = begin(folder / "whole.json");
  const Talked undisturbed = talk(whole);
  REQUIRE(undisturbed.exit == 0);
  for (const int killAfter : {1, 2, 7, 15, undisturbed.asked - 1}) {
    const std::string file = folder / ("killed-" + std::to_string(killAfter) + ".json");
    auto first = begin(file);
    const Talked before = talk(first, killAfter);
    INFO("killed after " << killAfter << " answers");
    CHECK(parsed(slurp(file), file)->root().isObject());
    CHECK(run("screen " + file + " --date 2026-11-25").exit == 0);
    auto second = begin(file);
    const Talked after = talk(second);
    INFO(after.all);
    CHECK(after.exit == 0);
    CHECK(contains(after.all, "Going on where it was left"));
    CHECK(after.asked == undisturbed.asked - killAfter);
    CHECK(slurp(file) == slurp(folder / "whole.json"));
  }
}

TEST_CASE("A red flag interrupts with what to do now") {
  const Folder folder;
  auto conversation = begin(folder / "flag.json", "telephone");
  conversation.listen();
  conversation.answer("555 0100");
  conversation.listen();
  conversation.answer("3 Mill Lane, Tarnside");
  conversation.listen();
  conversation.answer("1");
  const std::string stop = conversation.listen();
  CHECK(contains(stop, "STOP. THIS IS AN EMERGENCY."));
  CHECK(contains(stop, "Send help to: 3 Mill Lane, Tarnside"));
  CHECK(contains(stop, "Number to call back: 555 0100"));
  CHECK(contains(stop, "Meanwhile: No exercise."));
  conversation.answer("n");
  const std::string end = conversation.listen();
  CHECK(contains(end, "Emergency: help comes before anything else."));
  CHECK(contains(end, "To go on: stile interview"));
  CHECK(conversation.finish() == 0);
  const Ran screened = run("screen " + (folder / "flag.json") + " --date 2026-11-25 --json");
  CHECK(contains(screened.out, "\"action\": \"emergency\""));
}

TEST_CASE("Mistakes are explained, and an answer can be taken back, changed and left out") {
  const Folder folder;
  auto conversation = begin(folder / "mistakes.json");
  const std::string list = conversation.listen();
  CHECK(contains(list, "Does any of these apply?"));
  CHECK(contains(list, "2 Short of breath right now, sitting still"));
  CHECK_FALSE(contains(list, "Right now, are you short of breath"));
  conversation.answer("9");
  CHECK(contains(conversation.listen(), "Not understood: type n for no to all of these"));
  conversation.answer("?");
  const std::string explained = conversation.listen();
  CHECK(contains(explained, "Right now, are you short of breath while you sit still?"));
  CHECK(contains(explained, "This can be the heart."));
  conversation.answer("n");
  const std::string second = conversation.listen();
  conversation.answer("b");
  CHECK(contains(conversation.listen(), "Does any of these apply?"));
  conversation.answer("n");
  CHECK(conversation.listen() == second);
  // On to the height, whatever comes before it.
  std::string said = second;
  bool sawHeight = false;
  for (int i = 0; i < 120 && !conversation.isOver() && !sawHeight; ++i) {
    const auto last = said.rfind("\n\n");
    const std::string asked = last == std::string::npos ? said : said.substr(last);
    if (contains(asked, "your height?")) {
      sawHeight = true;
      break;
    }
    conversation.answer(wellAnswer(asked));
    said = conversation.listen();
  }
  REQUIRE(sawHeight);
  CHECK(contains(said, "A number with its unit (cm or in), 90 to 250 cm: "));
  conversation.answer("170");
  CHECK(contains(conversation.listen(), "the unit is missing"));
  conversation.answer("400 cm");
  CHECK(contains(conversation.listen(), "That cannot be: 400 cm is outside the possible range"));
  conversation.answer("100 cm");
  CHECK(contains(conversation.listen(), "Is that right? 100 cm is unusual"));
  conversation.answer("n");
  conversation.listen();
  conversation.answer("s");
  CHECK(contains(conversation.listen(), "Why?"));
  conversation.answer("2");
  conversation.listen();
  CHECK(contains(slurp(folder / "mistakes.json"), "asked-declined"));
  CHECK(conversation.finish() == 0);
}

TEST_CASE("A file that is no response is refused and left alone, and so is a folder that is not there") {
  const Folder folder;
  const std::string other = folder.file("other.json", "{\"resourceType\": \"Patient\"}");
  CHECK(run("interview " + other + " --lines </dev/null").exit == 3);
  CHECK(slurp(other) == "{\"resourceType\": \"Patient\"}");
  CHECK(run("interview " + (folder / "none/at-all.json") + " --lines </dev/null").exit == 4);
  CHECK(run("interview " + (folder / "new.json") + " --form nowhere --lines </dev/null").exit == 2);
}
