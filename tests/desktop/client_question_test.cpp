// What a screen never asks a client by itself.
#include "desktop/client_question.h"

#include <catch2/catch.hpp>

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
