// Papers made in the background: told one by one, and nothing any more once they were called off.
#include "desktop/paper_job.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <future>

#include "../application/tarnside.h"
#include "application/clinic_document.h"
#include "desktop/client_words.h"

using namespace stile;
using namespace stile::test;
using desktop::PaperJob;

namespace {

application::PaperOrder orderIn(Tarnside& tarnside) {
  base::Issues issues;
  take(application::saveClinicSettings(*tarnside.clinic,
                                       R"({"name": "Tarnside Movement Clinic", "emergencyNumber": "112"})",
                                       "s", {}, kTarnsideDay, issues));
  tarnside.screen(
      {{"answers", textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people/waiting.json")}});
  application::PaperOptions options;
  options.pdf = false;
  return take(application::orderPapers(*tarnside.clinic, tarnside.id, content(), options));
}

std::shared_ptr<const screening::Content> keptContent() {
  return {&content(), [](const screening::Content*) {}};
}

}  // namespace

TEST_CASE("A job tells before each paper and gives what making them at once gives") {
  Tarnside tarnside;
  const auto order = orderIn(tarnside);
  std::promise<base::Result<application::MadePapers>> promise;
  std::atomic<std::size_t> told = 0;
  const PaperJob job(order, keptContent(), STILE_SOURCE_DIR,
                     {[&](std::size_t, std::size_t, const std::string&) { ++told; },
                      [&](auto made) { promise.set_value(std::move(made)); }});
  const auto made = take(promise.get_future().get());
  base::Issues issues;
  const auto atOnce = take(application::makePapers(order, content(), STILE_SOURCE_DIR, issues));
  REQUIRE(made.papers.size() == atOnce.papers.size());
  CHECK(told == made.papers.size());
  for (std::size_t i = 0; i < made.papers.size(); ++i) CHECK(made.papers[i].bytes == atOnce.papers[i].bytes);
}

TEST_CASE("A job that was called off tells nothing more") {
  Tarnside tarnside;
  const auto order = orderIn(tarnside);
  std::atomic<int> told = 0, done = 0;
  std::promise<void> begun;
  std::promise<void> mayGoOn;
  auto goOn = mayGoOn.get_future();
  {
    PaperJob job(order, keptContent(), STILE_SOURCE_DIR,
                 {[&](std::size_t, std::size_t, const std::string&) {
                    if (++told == 1) begun.set_value(), goOn.wait();
                  },
                  [&](auto) { ++done; }});
    begun.get_future().wait();
    job.callOff();
    mayGoOn.set_value();
  }
  CHECK(told == 1);
  CHECK(done == 0);
}

TEST_CASE("a date in the client's language is read as questions expect it; other words stay") {
  const auto languages = desktop::clientLanguages(STILE_SOURCE_DIR);
  REQUIRE(languages.size() == 2);
  CHECK(desktop::dateInEnglish("14 de marzo de 1963", *languages.back()) == "14 March 1963");
  CHECK(desktop::dateInEnglish("Diciembre 2024", *languages.back()) == "December 2024");
  CHECK(desktop::dateInEnglish("2025-03-14", *languages.back()) == "2025-03-14");
  CHECK(desktop::dateInEnglish("14 March 1963", *languages.front()) == "14 March 1963");
  CHECK(desktop::clientLanguages("/nowhere").size() == 1);
}
