#include "plan/computed_demands.h"

#include <algorithm>
#include <cmath>

#include "movement/demands.h"
#include "plan/scale.h"
#include "plan/shown_degrees.h"

namespace stile::plan {
namespace {

class Taker {
 public:
  Taker(const movement::Figure& figure, Exercise& exercise, base::Issues& issues)
      : figure_(figure), exercise_(exercise), issues_(issues) {
    for (std::size_t form = 0; form < figure.forms.size(); ++form) shown_.push_back(demandsOf(figure, form));
  }

  void run() {
    if (figure_.forms.size() != exercise_.easings.size() + 1)
      complain("the figure draws " + std::to_string(figure_.forms.size() - 1) +
                   " eased forms, the exercise has " + std::to_string(exercise_.easings.size()),
               "give each easing its drawn form in rules/movement");
    checkDeclared();
    takeBans();
    takeAngles();
    for (std::size_t i = 0; i < exercise_.easings.size(); ++i)
      takeEasing(exercise_.easings[i], std::min(i + 1, shown_.size() - 1));
    if (exercise_.scaling && figure_.forms.size() == exercise_.easings.size() + 1)
      computeScales(figure_, exercise_, issues_);
  }

 private:
  void complain(std::string message, std::string remedy) {
    issues_.error(exercise_.place, exercise_.id, std::move(message), std::move(remedy));
  }

  /// What a form shows of a movement on a limb, in whole degrees.
  int shown(const std::string& movement, Limb limb, std::size_t form) const {
    return static_cast<int>(std::lround(shownDegrees(figure_, exercise_, shown_[form], movement, limb)));
  }

  void checkDeclared() {
    for (const Demand& demand : exercise_.demands) {
      const int degrees = shown(demand.movement, demand.limb, 0);
      if (base::Rational(degrees) <=
          *base::Rational::add(demand.degrees, base::Rational(static_cast<long long>(kAngleTolerance))))
        continue;
      complain("declares " + demand.movement + " of " + demand.degrees.toText() +
                   " degrees, its figure shows " + std::to_string(degrees),
               "declare at least what the figure shows, or mend the pose");
    }
  }

  void takeBans() {
    const auto take = [&](const std::set<std::string>& bans, std::set<std::string>& into) {
      for (const std::string& ban : bans) {
        if (into.insert(ban).second)
          complain("its figure shows \"" + ban + "\", which it does not declare",
                   "add it to \"involves\" or \"involvesOther\", or mend the pose");
      }
    };
    const auto working = movement::indexOf(figure_.working);
    take(shown_[0].bans, exercise_.involves);
    take(shown_[0].limbBans[working], exercise_.involves);
    take(shown_[0].limbBans[1 - working], exercise_.oneSided ? exercise_.involvesOther : exercise_.involves);
  }

  void takeAngles() {
    for (Demand& demand : exercise_.demands)
      demand.degrees = std::max(demand.degrees, base::Rational(shown(demand.movement, demand.limb, 0)));
    addAll(exercise_.demands, 0);
  }

  /// Adds a movement of a form to the demands where they do not cover it yet.
  void add(std::vector<Demand>& demands, const std::string& movement, Limb limb, std::size_t form) const {
    const int degrees = shown(movement, limb, form);
    if (degrees < leastDemandOf(movement)) return;
    std::set<limits::Qualifier> done;
    for (const Demand& demand : demands) {
      if (demand.movement != movement) continue;
      const bool covers =
          demand.limb == limb || demand.limb == Limb::Both || !exercise_.oneSided || isOfTrunk(movement);
      if (covers && demand.degrees >= base::Rational(degrees)) return;
      if (covers) done.insert(demand.done.begin(), demand.done.end());
    }
    demands.push_back({movement, base::Rational(degrees), done, limb});
  }

  void addAll(std::vector<Demand>& demands, std::size_t form) const {
    std::set<std::string> movements;
    for (const movement::Angles* angles :
         {&shown_[form].trunk, &shown_[form].limbs[0], &shown_[form].limbs[1]})
      for (const auto& [movement, degrees] : *angles) movements.insert(movement);
    for (const std::string& movement : movements) {
      if (isOfTrunk(movement) || !exercise_.oneSided) {
        add(demands, movement, Limb::Both, form);
      } else {
        add(demands, movement, Limb::Working, form);
        add(demands, movement, Limb::Other, form);
      }
    }
  }

  void takeEasing(Easing& easing, std::size_t form) {
    for (const Demand& demand : exercise_.demands) {
      Demand asked = demand;
      const auto named = easing.degrees.find(demand.movement);
      if (named != easing.degrees.end()) asked.degrees = std::min(demand.degrees, named->second);
      asked.degrees = std::max(asked.degrees, base::Rational(shown(demand.movement, demand.limb, form)));
      easing.asked.push_back(asked);
    }
    addAll(easing.asked, form);  // an eased form may ask more of what it does not ease
    for (const auto& [movement, degrees] : easing.degrees) {
      // An easing speaks of the limb on which the exercise asks most.
      const Demand* most = nullptr;
      for (const Demand& demand : exercise_.demands)
        if (demand.movement == movement && (most == nullptr || demand.degrees > most->degrees))
          most = &demand;
      if (most == nullptr) continue;
      const int drawn = shown(movement, most->limb, form);
      if (base::Rational(drawn) >
          *base::Rational::add(degrees, base::Rational(static_cast<long long>(kAngleTolerance))))
        complain("an easing promises " + movement + " of " + degrees.toText() +
                     " degrees, its figure shows " + std::to_string(drawn),
                 "mend the eased pose, or promise what it shows");
    }
    const auto still = [&](const std::string& ban) {
      const auto& demands = shown_[form];
      return demands.bans.count(ban) != 0 || demands.limbBans[0].count(ban) != 0 ||
             demands.limbBans[1].count(ban) != 0;
    };
    for (const std::string& ban : movement::computedBans())
      if (still(ban) && exercise_.involves.count(ban) == 0 && exercise_.involvesOther.count(ban) == 0)
        complain("the figure of an easing shows \"" + ban + "\", which the exercise does not declare",
                 "add it to \"involves\" or mend the eased pose");
    for (const std::string& ban : easing.without)
      if (still(ban))
        complain("an easing avoids \"" + ban + "\", its figure still shows it", "mend the eased pose");
  }

  const movement::Figure& figure_;
  Exercise& exercise_;
  base::Issues& issues_;
  std::vector<movement::Demands> shown_;
};

}  // namespace

void applyFigures(const movement::Figures& figures, std::vector<Exercise>& exercises, base::Issues& issues) {
  std::set<std::string> drawn;
  for (Exercise& exercise : exercises) {
    const auto at = figures.find(exercise.id);
    if (at == figures.end() || at->second.forms.empty() || at->second.forms.front().poses.size() < 2) {
      issues.error(exercise.place, exercise.id, "this exercise has no figure",
                   "add its poses to rules/movement");
      continue;
    }
    drawn.insert(exercise.id);
    Taker(at->second, exercise, issues).run();
  }
  for (const auto& [id, figure] : figures)
    if (drawn.count(id) == 0)
      issues.error(figure.place, id, "this figure belongs to no exercise",
                   "write the exercise, or delete the figure");
}

}  // namespace stile::plan
