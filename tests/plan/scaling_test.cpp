// Exercises done smaller to keep within a cap: as far as the cap allows and no further, drawn so and told so.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "../support/plan_breaches.h"
#include "drawing/svg.h"
#include "plan/figure_of.h"
#include "plan/shown_degrees.h"
#include "planning.h"

using namespace stile::plan;
using stile::limits::Rung;
using stile::limits::Side;
namespace base = stile::base;
namespace limits = stile::limits;
namespace movement = stile::movement;

namespace {

Client anyoneActive() {
  return Client().hasEverything().startsAt('D').usable(Rung::Vigorous, Rung::Vigorous);
}

/// The form in which an exercise would be given, or nullopt.
std::optional<Candidate> fitted(const Client& client, const char* exercise) {
  const Library& library = realContent().library;
  const Request request = client.request();
  const Holders holders(request.findings, library.doses->surgicalMargin);
  const limits::Limits limits = holders.withMargin(request.limits);
  const auto prescription = prescribe(*library.doses, request, holders);
  auto result = fit(*library.find(exercise), {*library.doses, request, limits, holders, prescription});
  const auto* candidate = std::get_if<Candidate>(&result);
  return candidate == nullptr ? std::nullopt : std::optional(*candidate);
}

std::vector<const Exercise*> scaledExercises() {
  std::vector<const Exercise*> all;
  for (const Exercise& exercise : realContent().library.exercises)
    if (exercise.scaling) all.push_back(&exercise);
  return all;
}

std::string complaintsWith(const std::string& file, const std::string& text, const std::string& with) {
  auto files = planFiles();
  std::string& content = files.at(file);
  const auto at = content.find(text);
  REQUIRE(at != std::string::npos);
  content.replace(at, text.size(), with);
  std::string all;
  const PlanContent broken(files);
  for (const auto& issue : broken.issues.all()) all += toText(issue) + "\n";
  return all;
}

}  // namespace

TEST_CASE("A cap is met by less of the same movement, and both readers are told how far") {
  const auto press =
      fitted(anyoneActive().under("shoulder-repair", capped("shoulderElevation", 115)), "overhead-press");
  REQUIRE(press);
  CHECK(press->form() == 0);
  CHECK(press->isAdapted());
  CHECK(press->percent < 100);
  CHECK(press->saidSmaller ==
        "Press up only as far as the picture shows. Stop when your elbows are as high as your chin.");
  CHECK(press->changedBecause.find(
            "shoulder elevation 165 degrees, limit 115 (shoulder-repair). Eased to 11") == 0);
  CHECK(press->changedBecause.find(" degrees of shoulder elevation: " + std::to_string(press->percent) +
                                   " % of the full movement.") != std::string::npos);
  CHECK(press->changedBy == std::vector<std::string>{"shoulder-repair"});
}

TEST_CASE("The words go by where the movement ends, and never name a place beyond it") {
  const auto said = [](int cap) {
    return fitted(anyoneActive().under("cap", capped("shoulderElevation", cap)), "overhead-press")
        ->saidSmaller;
  };
  CHECK(said(135).find("as high as your eyes") != std::string::npos);
  CHECK(said(129).find("as high as your chin") != std::string::npos);  // the eyes are reached at 130
  CHECK(said(105).find("as high as your shoulders") != std::string::npos);
  // Chin and eyes at .870 and .936 of stature (winter-segments) beside an upper arm that ends there.
  const auto elevationAt = [](double height) {
    using namespace movement::proportion;
    return 90 + movement::toDegrees(std::asin((height - kShoulderHeight) / kUpperArm));
  };
  const Landmarks* press = realContent().library.doses->easingWords.find("press-up");
  REQUIRE(press->rows.size() == 4);
  CHECK(press->rows[1].from == 90);
  CHECK(press->rows[2].from == std::ceil(elevationAt(.870)));
  CHECK(press->rows[3].from == std::ceil(elevationAt(.936)));
}

TEST_CASE("Under its smallest useful share an exercise gives way to its easing") {
  const auto press = fitted(anyoneActive().under("cap", capped("shoulderElevation", 80)), "overhead-press");
  REQUIRE(press);
  CHECK(press->form() == 1);
  CHECK(press->percent == 100);
  CHECK(press->saidSmaller.empty());
  CHECK_FALSE(fitted(anyoneActive().under("cap", capped("trunkRotation", 3)), "trunk-turn-seated"));
}

TEST_CASE("Standing up is eased by a higher seat, drawn and told as high as the cap asks") {
  const auto capAt = [](int degrees) { return anyoneActive().under("hip", capped("hipFlexion", degrees)); };
  int before = 100;
  for (const int cap : {104, 98, 92, 86}) {
    const auto stand = fitted(capAt(cap), "sit-to-stand");
    INFO(cap);
    REQUIRE(stand);
    CHECK(stand->form() == 0);
    CHECK(stand->percent < before);
    before = stand->percent;
    CHECK(stand->saidSmaller.find("Use a higher seat, as the picture shows.") == 0);
    CHECK(stand->changedBecause.find("degrees of hip flexion: " + std::to_string(stand->percent) + " %") !=
          std::string::npos);
    CHECK(equipmentOf(*stand) == std::vector<std::string>{"homeHasChair", "homeHasHighSeat"});
  }
  // Where no high seat is certain, none is asked for.
  CHECK_FALSE(fitted(capAt(92).is("homeHasHighSeat", false), "sit-to-stand"));
}

TEST_CASE("The words for a higher seat never let it be lower than the picture") {
  const auto& figure = realContent().library.figures.at("sit-to-stand");
  const Landmarks* seat = realContent().library.doses->easingWords.find("seat");
  REQUIRE(seat->rows.size() == 3);
  const int least = realContent().library.find("sit-to-stand")->scaling->leastPercent;
  // The knee at .285 of stature (winter-segments), half a kneecap above it, fingers of 1.75 cm (both common
  // practice).
  const double kneecap = .285 * movement::kStature + .022, finger = .0175;
  const auto seatAt = [&](int percent) {
    return propsOf(scaled(figure.forms.front(), percent / 100.0)).front().seat;
  };
  CHECK(seatAt(least) <= kneecap + 4 * finger);
  CHECK(seatAt(seat->rows[1].from) <= kneecap + 2 * finger);
  CHECK(seatAt(seat->rows[2].from) <= kneecap);
}

TEST_CASE("Beside a limit that no smaller movement meets, none is offered") {
  CHECK_FALSE(
      fitted(anyoneActive().under("cap", capped("trunkRotation", 12)).under("ban", banned("supineFlat")),
             "low-back-rock"));
  // What the scaling does not ease is not met by it.
  CHECK_FALSE(fitted(anyoneActive().under("cap", capped("kneeFlexion", 60)), "trunk-turn-seated"));
}

TEST_CASE("A smaller form asks as much as the cap allows: the next share would exceed it") {
  int shares = 0;
  for (const Exercise* exercise : scaledExercises()) {
    for (std::size_t form = 0; form < exercise->scaling->scales.size(); ++form) {
      const Scale& scale = exercise->scaling->scales[form];
      for (std::size_t row = 0; row + 1 < scale.size(); ++row)
        for (std::size_t i = 0; i < scale[row].size(); ++i) {
          INFO(exercise->id << " form " << form << " row " << row);
          CHECK(scale[row][i] <= scale[row + 1][i]);
          CHECK(scale[row + 1][i] <= exercise->demandsOfForm(form)[i].degrees);
        }
    }
    // A cap at what a share asks gives that share, or a later one that asks the same.
    const Scale& written = exercise->scaling->scales.front();
    const std::size_t middle = written.size() / 2;
    for (std::size_t i = 0; i < written[middle].size(); ++i) {
      const Demand& demand = exercise->demands[i];
      if (exercise->scaling->eases.count(demand.movement) == 0 || written[middle][i] == demand.degrees)
        continue;
      limits::Limits asked;
      asked.caps[{demand.movement, Side::Both, limits::Qualifier::Any}] = written[middle][i];
      const auto candidate = fitted(anyoneActive().under("cap", asked), exercise->id.c_str());
      if (!candidate || candidate->form() != 0 || candidate->percent == 100) continue;
      INFO(exercise->id << " " << demand.movement);
      const auto at =
          static_cast<std::size_t>((candidate->percent - exercise->scaling->leastPercent) / kScaleStep);
      bool isNextTooMuch = at + 1 == written.size();
      for (std::size_t k = 0; !isNextTooMuch && k < exercise->demands.size(); ++k)
        isNextTooMuch =
            exercise->demands[k].movement == demand.movement && written[at + 1][k] > written[middle][i];
      CHECK(isNextTooMuch);
      CHECK_FALSE(candidate->saidSmaller.empty());
      ++shares;
    }
  }
  CHECK(shares > 50);
}

TEST_CASE("A smaller form shows no more than it is said to ask, looked at more closely on its way") {
  for (const Exercise* exercise : scaledExercises()) {
    const movement::Figure& figure = realContent().library.figures.at(exercise->id);
    for (const int percent : {exercise->scaling->leastPercent, exercise->scaling->leastPercent + 20}) {
      if (percent >= 100) continue;
      const auto& row = exercise->scaling->scales[0][static_cast<std::size_t>(20 / kScaleStep) *
                                                     (percent == exercise->scaling->leastPercent ? 0 : 1)];
      const auto shown = demandsOf(figure, scaled(figure.forms[0], percent / 100.0), 25);
      for (std::size_t i = 0; i < row.size(); ++i) {
        const Demand& demand = exercise->demands[i];
        if (exercise->scaling->eases.count(demand.movement) == 0) continue;
        INFO(exercise->id << " " << percent << " % " << demand.movement);
        constexpr double kBetweenMoments = .6;  // degrees a peak may lie above the moments looked at
        CHECK(base::Rational(static_cast<long long>(std::ceil(
                  shownDegrees(figure, *exercise, shown, demand.movement, demand.limb) - kBetweenMoments))) <=
              row[i]);
      }
    }
  }
}

TEST_CASE("A tighter cap never gives a larger share") {
  for (const Exercise* exercise : scaledExercises())
    for (const std::string& movement : exercise->scaling->eases) {
      int before = 0;
      for (int cap = 0; cap <= 170; cap += 10) {
        const auto candidate =
            fitted(anyoneActive().under("cap", capped(movement, cap)), exercise->id.c_str());
        if (!candidate || candidate->form() != 0) continue;
        INFO(exercise->id << " " << movement << " " << cap);
        CHECK(candidate->percent >= before);
        before = candidate->percent;
      }
    }
}

TEST_CASE("A line that is done smaller is drawn smaller") {
  const StarterPlan plan = anyoneActive().under("cap", capped("kneeFlexion", 45)).plan();
  const auto line =
      std::find_if(plan.lines.begin(), plan.lines.end(), [](const Line& each) { return each.percent < 100; });
  REQUIRE(line != plan.lines.end());
  CHECK_FALSE(line->changed.empty());
  Line whole = *line;
  whole.percent = 100;
  const auto& library = realContent().library;
  CHECK(toSvg(*figureOf(library, *line)) != toSvg(*figureOf(library, whole)));
  const auto& figure = library.figures.at(line->exercise->id);
  const auto less = bodiesOf(scaled(figure.forms[0], line->percent / 100.0)),
             more = bodiesOf(figure.forms[0]);
  double apart = 0;
  for (std::size_t bone = 0; bone < movement::kBoneCount; ++bone)
    apart = std::max(apart, length(less.back().bones[bone].to - more.back().bones[bone].to));
  CHECK(apart > .05);
}

TEST_CASE("Scalings that are no such thing are content errors") {
  CHECK(complaintsWith("rules/exercises/stretching-chair.json", "\"words\": [\"turn-trunk\"]",
                       "\"words\": [\"turn-table\"]")
            .find("there are no landmarks \"turn-table\"") != std::string::npos);
  CHECK(complaintsWith("rules/exercises/stretching-chair.json",
                       "\"eases\": [\"trunkRotation\", \"neckRotation\"]",
                       "\"eases\": [\"trunkRotation\", \"ankleDorsiflexion\"]")
            .find("eases ankleDorsiflexion, which the exercise does not ask for") != std::string::npos);
  CHECK(
      complaintsWith("rules/exercises/stretching-chair.json", "\"leastPercent\": 30", "\"leastPercent\": 100")
          .find("\"leastPercent\" is a whole number from 1 to 99") != std::string::npos);
  CHECK(complaintsWith("rules/exercises/stretching-chair.json",
                       "\"leastPercent\": 30, \"words\": [\"turn-trunk\"]",
                       "\"leastPercent\": 96, \"words\": [\"turn-trunk\"]")
            .find("asks hardly less of") != std::string::npos);
  CHECK(complaintsWith("rules/easing.json", "{ \"from\": 45,", "{ \"from\": 0,")
            .find("must begin at 0 and rise") != std::string::npos);
}
