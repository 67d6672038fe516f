// Papers on their way out: made apart from the clinic file, called off in between, a letter in other
// words, and kept in the record as they went out.
#include <catch2/catch.hpp>

#include <set>

#include "application/client_papers.h"
#include "application/clinic_document.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;

namespace {

/// Tarnside with a filed screening that wants letters.
struct Waiting : Tarnside {
  explicit Waiting(bool isShared = true) {
    base::Issues issues;
    take(application::saveClinicSettings(
        *clinic, textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/data/tarnside-settings.json"), "s",
        {}, kTarnsideDay, issues));
    if (isShared)
      take(put("consent", "{'date': '2026-11-25', 'what': 'physician', 'given': true, 'how': 'signed'}"));
    screen({{"answers",
             textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people/waiting.json")}});
  }
  application::PaperOrder order(application::PaperOptions options = {}) {
    options.pdf = false;
    return take(application::orderPapers(*clinic, id, content(), options));
  }
  static application::MadePapers make(const application::PaperOrder& order) {
    base::Issues issues;
    return take(application::makePapers(order, content(), STILE_SOURCE_DIR, issues));
  }
  std::vector<application::IssuedPaper> issued() {
    return application::issuedPapers(take(clinic->file().read(id)));
  }
  std::string bytesOfLast(const std::string& name) {
    std::string entry;
    for (const auto& paper : issued())
      if (paper.name == name) entry = paper.entry;
    return take(application::readPaper(*clinic, id, entry));
  }
};

std::set<std::string> namesOf(const application::MadePapers& made) {
  std::set<std::string> names;
  for (const auto& paper : made.papers) names.insert(paper.name);
  return names;
}

documents::LetterWording& letterIn(application::MadePapers& made, const std::string& name) {
  return *std::find_if(made.wordings.begin(), made.wordings.end(),
                       [&name](const auto& one) { return one.letter == name; });
}

}  // namespace

TEST_CASE("Making papers touches neither folder nor record; what is told before each paper counts them") {
  Waiting tarnside;
  auto order = tarnside.order();
  std::vector<std::string> told;
  std::size_t all = 0;
  order.options.progress = [&](std::size_t done, std::size_t of, const std::string& name) {
    CHECK(done == told.size());
    told.push_back(name);
    all = of;
    return true;
  };
  const auto made = tarnside.make(order);
  CHECK(told.size() == all);
  CHECK(all == made.papers.size());
  CHECK(namesOf(made).contains("clearance-letter"));
  CHECK(tarnside.issued().empty());
}

TEST_CASE("Called off between two papers, nothing is made") {
  Waiting tarnside;
  auto order = tarnside.order();
  int told = 0;
  order.options.progress = [&told](std::size_t, std::size_t, const std::string&) { return ++told < 2; };
  base::Issues issues;
  const auto made = application::makePapers(order, content(), STILE_SOURCE_DIR, issues);
  REQUIRE_FALSE(made.ok());
  CHECK(contains(made.failure().message, "called off"));
  CHECK(told == 2);
}

TEST_CASE(
    "A letter goes out in other words, and the record keeps it so; the preview of it alone is the same") {
  Waiting tarnside;
  auto computed = tarnside.make(tarnside.order());
  application::PaperOptions options;
  options.wordings = {letterIn(computed, "clearance-letter")};
  options.wordings.front().passages[1].text = "May she walk in the park with her sister?";
  options.wordings.front().passages.back().text = "She sings in our choir.";
  const auto order = tarnside.order(options);
  const auto made = tarnside.make(order);
  CHECK(namesOf(made) == namesOf(computed));
  const TemporaryFolder out;
  take(application::issueMade(*tarnside.clinic, tarnside.id, order, made, out.path(), "", kTarnsideDay));
  const std::string letter = tarnside.bytesOfLast("clearance-letter");
  CHECK(contains(letter, "May she walk in the park with her sister?"));
  CHECK(contains(letter, "She sings in our choir."));
  CHECK(letter == bytesOf(out / "clearance-letter.html"));
  options.only = "clearance-letter";
  const auto alone = tarnside.make(tarnside.order(options));
  REQUIRE(alone.papers.size() == 1);
  CHECK(alone.papers.front().bytes == letter);
}

TEST_CASE("A wording of other words than today's is refused, and so is a letter without its question") {
  Waiting tarnside;
  auto computed = tarnside.make(tarnside.order());
  application::PaperOptions options;
  options.wordings = {letterIn(computed, "clearance-letter")};
  base::Issues issues;
  options.wordings.front().passages[1].text = " ";
  CHECK(contains(
      application::makePapers(tarnside.order(options), content(), STILE_SOURCE_DIR, issues).failure().message,
      "a letter needs it"));
  options.wordings = {letterIn(computed, "clearance-letter")};
  options.wordings.front().basis = "0";
  CHECK(contains(
      application::makePapers(tarnside.order(options), content(), STILE_SOURCE_DIR, issues).failure().message,
      "fits no longer"));
}

TEST_CASE(
    "One paper of several goes out: the others in the folder stay while they hold, and fall away when they "
    "do not") {
  Waiting tarnside;
  const auto order = tarnside.order();
  const auto made = tarnside.make(order);
  const TemporaryFolder out;
  take(application::issueMade(*tarnside.clinic, tarnside.id, order, made, out.path(), "", kTarnsideDay));
  const std::size_t before = tarnside.issued().size();
  take(application::writeFile(out / "handout.html", "of another day"));
  const auto paths = take(application::issueMade(*tarnside.clinic, tarnside.id, order, made, out.path(),
                                                 "summary", kTarnsideDay));
  CHECK(paths.size() == 1);
  CHECK(tarnside.issued().size() == before + 1);
  CHECK(std::filesystem::exists(out / "clearance-letter.html"));
  REQUIRE_FALSE(namesOf(made).contains("handout"));
  CHECK_FALSE(std::filesystem::exists(out / "handout.html"));
}

TEST_CASE("Printed papers are kept without a file; what cannot be saved is not on record") {
  Waiting tarnside;
  const auto order = tarnside.order();
  const auto made = tarnside.make(order);
  CHECK(take(application::issueMade(*tarnside.clinic, tarnside.id, order, made, "", "summary", kTarnsideDay))
            .empty());
  CHECK(tarnside.issued().size() == 1);
  CHECK(contains(tarnside.bytesOfLast("summary"), "Maren Oakshott"));
  const TemporaryFolder out;
  take(application::writeFile(out / "file", "no folder"));
  CHECK_FALSE(
      application::issueMade(*tarnside.clinic, tarnside.id, order, made, out / "file", "", kTarnsideDay)
          .ok());
  CHECK(tarnside.issued().size() == 1);
  auto notFiled = order;
  notFiled.entry.clear();
  CHECK_FALSE(
      application::issueMade(*tarnside.clinic, tarnside.id, notFiled, made, "", "", kTarnsideDay).ok());
}

TEST_CASE(
    "Drawings show the figure that the client, or else the clinic, chose; written again they are the same") {
  using movement::Build;
  Tarnside tarnside;
  const auto settings = [&tarnside](const char* build) {
    base::Issues issues;
    take(application::saveClinicSettings(
        *tarnside.clinic, std::string(R"({"name": "Tarnside", "emergencyNumber": "112")") + build + "}", "s",
        {}, kTarnsideDay, issues));
  };
  settings("");
  const std::filesystem::path people = std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people";
  tarnside.screen({{"answers", textOf(people / "healthy.json")}});
  const auto handout = [&tarnside](application::PaperOptions options = {}) {
    options.pdf = false;
    options.only = "handout";
    const auto order = take(application::orderPapers(*tarnside.clinic, tarnside.id, content(), options));
    return std::pair(order, Waiting::make(order));
  };
  const auto send = [&tarnside](const auto& made) {
    take(
        application::issueMade(*tarnside.clinic, tarnside.id, made.first, made.second, "", "", kTarnsideDay));
    return application::issuedPapers(take(tarnside.clinic->file().read(tarnside.id))).back().build;
  };
  const auto first = handout();
  REQUIRE(first.second.papers.size() == 1);
  const std::string sturdy = first.second.papers.front().bytes;
  CHECK(send(first) == "sturdy");
  // Once it went out so, another choice of the clinic changes nothing for this screening.
  settings(R"(, "drawnBuild": "slight")");
  CHECK(handout().second.papers.front().bytes == sturdy);
  // The client's own choice does.
  take(application::chooseBuild(*tarnside.clinic, tarnside.id, Build::Slight));
  const auto chosen = handout();
  const std::string slight = chosen.second.papers.front().bytes;
  CHECK(slight != sturdy);
  CHECK(send(chosen) == "slight");
  // What is asked for once holds once.
  application::PaperOptions once;
  once.build = Build::Sturdy;
  CHECK(handout(once).second.papers.front().bytes == sturdy);
  CHECK(handout().second.papers.front().bytes == slight);
  CHECK(contains(take(application::showClient(*tarnside.clinic, tarnside.id, kTarnsideDay)),
                 "Drawings show the slight figure, as the client chose"));
  // Taken back, it is as it went out last; a new screening is drawn as the clinic draws.
  take(application::chooseBuild(*tarnside.clinic, tarnside.id, std::nullopt));
  CHECK(handout().second.papers.front().bytes == slight);
  settings(R"(, "drawnBuild": "sturdy")");
  CHECK(handout().second.papers.front().bytes == slight);
  tarnside.screen({{"answers", textOf(people / "healthy.json")}});
  CHECK(handout().second.papers.front().bytes == sturdy);
}

TEST_CASE("Without consent to share there is no letter whose words could be changed") {
  Waiting tarnside(false);
  const auto made = tarnside.make(tarnside.order());
  CHECK(made.wordings.empty());
  CHECK_FALSE(namesOf(made).contains("clearance-letter"));
}
