// Content in another language: every key fits, what changed since falls back and says so.
#include "application/translation.h"

#include <catch2/catch.hpp>

#include <cstdio>

#include "../support/content.h"
#include "application/content_folder.h"
#include "application/translated_papers.h"

using namespace stile;
using namespace stile::application;

namespace {

const std::map<std::string, std::string>& files() {
  static const auto all = [] {
    auto read = readContentFolder(STILE_SOURCE_DIR);
    if (!read) throw std::runtime_error(read.failure().message);
    return std::move(read).value();
  }();
  return all;
}

/// A small world: one check and its translation.
std::map<std::string, std::string> small(const std::string& english, const std::string& of, const std::string& say) {
  return {{"rules/conditions/feet.json", R"({"checks": [{"id": "feet", "client": ")" + english + R"("}]})"},
          {"rules/phrases/es.json", R"({"language": "es", "notice": "n", "missing": "(en inglés) ", "reviewed": {"date": "2026-11-25", "by": "x", "licensed": false}})"},
          {"rules/phrases/es/feet.json", R"({"texts": {"checks.feet.client": {"of": ")" + of + R"(", "say": ")" + say + R"("}}})"}};
}

std::string feetIn(const std::map<std::string, std::string>& world, TranslationCount& count, base::Issues& issues) {
  const auto translation = Translation::load(world, "es", issues);
  REQUIRE(translation);
  return translated(world, *translation, count, issues).at("rules/conditions/feet.json");
}

}  // namespace

TEST_CASE("a sentence is translated; one whose English has changed since stays English and says so") {
  base::Issues issues;
  TranslationCount count;
  CHECK(feetIn(small("Look at your feet.", "Look at your feet.", "Mire sus pies."), count, issues).find("Mire sus pies.") != std::string::npos);
  CHECK(count.sentences == 1);
  CHECK(count.toDo.empty());
  CHECK(feetIn(small("Look at both feet.", "Look at your feet.", "Mire sus pies."), count, issues).find("(en inglés) Look at both feet.") != std::string::npos);
  CHECK(count.changed == 1);
  CHECK(count.toDo == std::vector<std::string>{"checks.feet.client"});
  CHECK(issues.empty());
}

TEST_CASE("a translation with other slots, a key without a sentence and a key that stands twice are issues") {
  TranslationCount count;
  base::Issues slots;
  feetIn(small("Lift {kg} kg.", "Lift {kg} kg.", "Levante poco."), count, slots);
  CHECK(slots.hasErrors());
  auto world = small("Look.", "Look.", "Mire.");
  world["rules/phrases/es/hands.json"] = R"({"texts": {"checks.hands.client": {"of": "a", "say": "b"}}})";
  base::Issues unused;
  feetIn(world, count, unused);
  CHECK(unused.hasErrors());
  world["rules/phrases/es/hands.json"] = world["rules/phrases/es/feet.json"];
  base::Issues twice;
  feetIn(world, count, twice);
  CHECK(twice.hasErrors());
}

TEST_CASE("the shipped Spanish fits the content, and most of it is up to date") {
  base::Issues issues;
  const auto translation = Translation::load(files(), "es", issues);
  REQUIRE(translation);
  TranslationCount count;
  translated(files(), *translation, count, issues);
  for (const auto& issue : issues.all()) FAIL_CHECK(issue.subject + ": " + issue.message);
  std::printf("Spanish: %zu sentences, %zu missing, %zu changed since\n", count.sentences, count.missing, count.changed);
  CHECK(count.sentences > 2000);
  // English sentences may change before their translation does; a paper then says so.
  CHECK((count.missing + count.changed) * 10 < count.sentences);
  CHECK_FALSE(translation->isReviewed);
  CHECK_FALSE(translation->notice.empty());
}

TEST_CASE("a language the content does not have is refused by name") {
  base::Issues issues;
  CHECK_FALSE(Translation::load(files(), "xx", issues));
  const auto status = translationStatus(STILE_SOURCE_DIR, false, issues);
  REQUIRE(status);
  CHECK(status.value().find("Language es, a draft: ") == 0);
}
