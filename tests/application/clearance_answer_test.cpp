// A physician's reply that somebody typed in.
#include "application/clearance_answer.h"

#include <catch2/catch.hpp>

#include "application/client_screening.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;

TEST_CASE("A reply typed in finding by finding is filed, and a wrong one is not") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  tarnside.screen({{"answers", textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people/waiting.json")}});
  take(tarnside.put("consent", "{'date': '2026-11-25', 'what': 'physician', 'given': true, 'how': 'signed'}"));
  const auto asked = take(application::askPhysician(clinic, tarnside.id, content(), "Dr Hale", kTarnsideDay));
  const auto findings = take(application::findingsAsked(clinic, tarnside.id, asked.request, content()));
  REQUIRE_FALSE(findings.empty());
  CHECK_FALSE(findings.front().basis.empty());

  application::PhysicianReply reply;
  reply.whole = {{"replyBy", "Dr Hale"}, {"replyDate", "2026-11-25"}};
  for (std::size_t i = 0; i < findings.size(); ++i)
    reply.findings.push_back({{"replyAnswer", "withLimits"}, {"replyBay", "both"}, {"replyIntensity", "moderate"}, {"replyHeartRateLimit", "110"}});
  const auto file = [&](const application::PhysicianReply& one) {
    base::Issues issues;
    return application::fileReply(clinic, tarnside.id, asked.request, content(), {"reply", application::replyResponse(content(), findings, one)}, kTarnsideDay, issues);
  };
  auto nobody = reply;
  nobody.whole["replyBy"].clear();
  CHECK_FALSE(file(nobody).ok());
  auto noNumber = reply;
  noNumber.findings.front()["replyHeartRateLimit"] = "about a hundred";
  CHECK_FALSE(file(noNumber).ok());
  auto nothing = reply;
  for (auto& one : nothing.findings) one["replyAnswer"].clear();
  CHECK_FALSE(file(nothing).ok());

  CHECK(file(reply).ok());
  const auto work = take(application::RecordWork::open(clinic, tarnside.id));
  CHECK(work.folded().clearances.front().answered == kTarnsideDay);
}
