// What a screen never asks a client by itself.
#include "desktop/client_question.h"

#include <catch2/catch.hpp>

#include "../support/content.h"

using stile::desktop::isForClient;

TEST_CASE("a clinician's module and what is measured by hand are not put to a client") {
  stile::questionnaire::Item item;
  stile::facts::Definition fact;
  fact.slot = 7;
  stile::interview::FormQuestion question;
  question.item = &item;
  question.fact = &fact;
  stile::screening::Content content;
  item.topic = "https://stile.example/questionnaire/symptoms";
  CHECK(isForClient(question, content));
  item.topic = "https://stile.example/questionnaire/clinician-view";
  CHECK_FALSE(isForClient(question, content));
  item.topic = "https://stile.example/questionnaire/measurements-by-clinician";
  CHECK_FALSE(isForClient(question, content));
  item.topic = "https://stile.example/questionnaire/tests";
  content.measuring.emplace_back();
  content.measuring.back().slot = 7;
  CHECK_FALSE(isForClient(question, content));
}

TEST_CASE("what a clinician found an unknown medicine to be is not asked of a client") {
  const auto& content = stile::test::content();
  stile::questionnaire::Item item;
  item.topic = "https://stile.example/questionnaire/medicines";
  stile::interview::FormQuestion question;
  question.item = &item;
  question.fact = content.dictionary.find("medicineLookedUp");
  REQUIRE(question.fact != nullptr);
  CHECK_FALSE(isForClient(question, content));
  question.fact = content.dictionary.find("medicineName");
  CHECK(isForClient(question, content));
}
