// Whether a form of an exercise goes beyond limits, measured from its drawn bodies anew and not read from
// what the planner used.
#pragma once

#include <array>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "movement/demands.h"
#include "plan/candidate.h"
#include "plan/doses.h"
#include "plan/library.h"
#include "plan/starter_plan.h"

namespace stile::test {

inline const movement::Demands& shownBy(const plan::Library& library, const plan::Line& line) {
  static std::map<std::tuple<std::string, std::size_t, int>, movement::Demands> known;
  const auto key = std::tuple{line.exercise->id, line.form, line.percent};
  auto at = known.find(key);
  if (at == known.end()) {
    const movement::Figure& figure = library.figures.at(line.exercise->id);
    at = known.emplace(key, demandsOf(figure, scaled(figure.forms[line.form], line.percent / 100.0))).first;
  }
  return at->second;
}

/// The ways in which an exercise of the library is done: loaded, to the end of the range, fast.
inline std::set<limits::Qualifier> doneOf(const plan::Exercise& exercise, std::size_t form,
                                          const std::string& movement) {
  std::set<limits::Qualifier> done;
  for (const auto& demand : exercise.demandsOfForm(form))
    if (demand.movement == movement && demand.limb != plan::Limb::Other)
      done.insert(demand.done.begin(), demand.done.end());
  return done;
}

/// The least degrees that are a demand at all: nobody stands or sits with every joint at nought.
inline double leastDemand(const std::string& movement) {
  if (movement == "hipAdduction") return 2;
  if (movement == "shoulderHorizontalAdduction") return 100;
  return movement == "hipInternalRotation" || movement == "hipExternalRotation" ? 12 : 6;
}

/// Every way in which the line's drawn form, and what the exercise declares besides, goes beyond the limits;
/// "" = none.
inline std::string breachesOf(const plan::Library& library, const plan::Line& line,
                              const limits::Limits& limits) {
  using limits::Side;
  std::string found;
  const plan::Exercise& exercise = *line.exercise;
  const movement::Figure& figure = library.figures.at(exercise.id);
  const movement::Demands& shown = shownBy(library, line);
  const bool drawnRight = figure.working == movement::Hand::Right;
  // The sides of the client on which the drawn left and right fall.
  std::vector<std::array<Side, 2>> ways{{Side::Left, Side::Right}};
  if (exercise.oneSided) {
    const bool onlyDrawn = line.side == (drawnRight ? "right only" : "left only");
    if (line.side.empty()) ways.push_back({Side::Right, Side::Left});
    if (!line.side.empty() && !onlyDrawn) ways = {{Side::Right, Side::Left}};
  }
  const auto test = [&](const movement::Angles& angles, Side side, bool isWorking) {
    for (const auto& [name, degrees] : angles) {
      const auto cap = capFor(limits, name, side,
                              isWorking ? doneOf(exercise, line.form, name) : std::set<limits::Qualifier>{});
      if (cap && std::round(degrees) >= leastDemand(name) && base::Rational(std::lround(degrees)) > *cap)
        found += name + " " + std::to_string(degrees) + " over " + cap->toText() + "; ";
    }
  };
  test(shown.trunk, Side::Both, true);
  for (const auto& way : ways)
    for (std::size_t i = 0; i < 2; ++i) {
      const bool isWorking = !exercise.oneSided || (i == indexOf(figure.working));
      test(shown.limbs[i], way[i], isWorking);
      for (const std::string& ban : shown.limbBans[i])
        if (isBanned(limits, ban, way[i])) found += ban + "; ";
    }
  for (const std::string& ban : shown.bans)
    if (isBanned(limits, ban)) found += ban + "; ";
  const auto& without = line.form == 0 ? std::set<std::string>{} : exercise.easings[line.form - 1].without;
  std::vector<Side> sides{Side::Left, Side::Right};
  if (line.side == "left only") sides = {Side::Left};
  if (line.side == "right only") sides = {Side::Right};
  for (const std::string& ban : exercise.involves)
    for (const Side side : sides)
      if (without.count(ban) == 0 && isBanned(limits, ban, side)) found += ban + " declared; ";
  for (const std::string& setting : exercise.settings)
    if (limits.settings.count(setting) != 0) found += setting + "; ";
  return found;
}

/// Every exercise that is open under the request, in the form it would be given, chosen or not.
inline std::vector<plan::Line> everyOffer(const plan::Library& library, const plan::Request& request) {
  const plan::Holders holders(request.findings, library.doses->surgicalMargin);
  const limits::Limits limits = holders.withMargin(request.limits);
  const auto prescription = prescribe(*library.doses, request, holders);
  std::vector<plan::Line> lines;
  for (const plan::Exercise& exercise : library.exercises) {
    auto fitted = fit(exercise, {*library.doses, request, limits, holders, prescription});
    const auto* candidate = std::get_if<plan::Candidate>(&fitted);
    if (candidate == nullptr) continue;
    plan::Line line;
    line.exercise = &exercise;
    line.side = candidate->side;
    line.form = candidate->form();
    line.percent = candidate->percent;
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace stile::test
