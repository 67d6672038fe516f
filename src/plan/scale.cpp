#include "plan/scale.h"

#include <algorithm>
#include <cmath>

#include "movement/joint_angles.h"
#include "plan/shown_degrees.h"

namespace stile::plan {
namespace {

using base::Rational;

/// A smaller form that asks at least so much less is worth offering. Degrees.
constexpr int kWorthwhile = 5;
constexpr double kExact = 1e-9;  // degrees; what arithmetic may lose

class ScaleMaker {
 public:
  ScaleMaker(const movement::Figure& figure, Exercise& exercise, std::size_t form, base::Issues& issues)
      : figure_(figure),
        exercise_(exercise),
        form_(form),
        issues_(issues),
        asked_(exercise.demandsOfForm(form)) {}

  Scale run() {
    const Scaling& scaling = *exercise_.scaling;
    const auto whole = demandsOf(figure_, form_);
    for (const Demand& demand : asked_)
      whole_.push_back(shownDegrees(figure_, exercise_, whole, demand.movement, demand.limb));
    Scale scale;
    for (int percent = scaling.leastPercent; percent < 100; percent += kScaleStep) {
      const movement::Form smaller = scaled(figure_.forms[form_], percent / 100.0);
      const auto demands = demandsOf(figure_, smaller);
      scale.push_back(rowOf(demands, scale.empty() ? nullptr : &scale.back()));
      if (!isSound_) continue;
      checkBodies(smaller);
      checkNothingNew(demands);
    }
    checkWorthwhile(scale);
    return scale;
  }

 private:
  void complain(const std::string& message, const std::string& remedy) {
    issues_.error(exercise_.place, exercise_.id,
                  (form_ == 0 ? "done smaller: " : "eased and done smaller: ") + message, remedy);
    isSound_ = false;
  }

  bool isEased(const Demand& demand) const { return exercise_.scaling->eases.count(demand.movement) != 0; }

  /// Never less than the row before, never more than the form itself.
  std::vector<Rational> rowOf(const movement::Demands& demands, const std::vector<Rational>* before) const {
    std::vector<Rational> row;
    for (std::size_t i = 0; i < asked_.size(); ++i) {
      const Demand& demand = asked_[i];
      Rational degrees = demand.degrees;
      if (isEased(demand)) {
        // What was declared beyond the figure, such as a rocking pelvis, stays in full.
        const double shown = shownDegrees(figure_, exercise_, demands, demand.movement, demand.limb);
        const Rational less(static_cast<long long>(std::floor(whole_[i] - shown)));
        const Rational drawn(static_cast<long long>(std::ceil(shown - kExact)));
        degrees = *Rational::subtract(demand.degrees, std::max(Rational(0), less));
        degrees = std::min(demand.degrees, std::max(degrees, drawn));
        if (before != nullptr) degrees = std::max(degrees, (*before)[i]);
      }
      row.push_back(degrees);
    }
    return row;
  }

  void checkBodies(const movement::Form& form) {
    for (const auto& body : bodiesOf(form))
      for (const std::string& trouble : impossibilities(body))
        complain(trouble, "mend the pose in rules/movement, or do not scale this exercise");
  }

  /// What the form covers covers its smaller forms too.
  void checkNothingNew(const movement::Demands& demands) {
    const auto check = [&](const movement::Angles& angles, Limb limb) {
      for (const auto& [movement, degrees] : angles) {
        if (degrees < leastDemandOf(movement)) continue;
        const auto covers = [&](const Demand& demand) {
          const bool isMeant =
              demand.limb == limb || demand.limb == Limb::Both || !exercise_.oneSided || isOfTrunk(movement);
          return demand.movement == movement && isMeant &&
                 demand.degrees >= Rational(static_cast<long long>(std::lround(degrees)));
        };
        if (std::none_of(asked_.begin(), asked_.end(), covers))
          complain("shows " + movement + " of " + std::to_string(std::lround(degrees)) +
                       " degrees, more than the form itself",
                   "give the figure a rest from which the movement begins");
      }
    };
    check(demands.trunk, Limb::Both);
    const auto working = movement::indexOf(figure_.working);
    check(demands.limbs[working], Limb::Working);
    check(demands.limbs[1 - working], Limb::Other);
    for (const auto* bans : {&demands.bans, &demands.limbBans[0], &demands.limbBans[1]})
      for (const std::string& ban : *bans)
        if (!isDeclared(ban)) complain("shows \"" + ban + "\"", "mend the pose in rules/movement");
  }

  bool isDeclared(const std::string& ban) const {
    if (form_ > 0 && exercise_.easings[form_ - 1].without.count(ban) != 0) return false;
    return exercise_.involves.count(ban) != 0 || exercise_.involvesOther.count(ban) != 0;
  }

  void checkWorthwhile(const Scale& scale) {
    for (const std::string& movement : exercise_.scaling->eases) {
      bool isAsked = false, isLess = form_ > 0;  // an eased form may ask little of it already
      for (std::size_t i = 0; i < asked_.size(); ++i) {
        if (asked_[i].movement != movement) continue;
        isAsked = true;
        isLess = isLess || scale.front()[i] <= *Rational::subtract(asked_[i].degrees, Rational(kWorthwhile));
      }
      if (!isAsked && form_ == 0)
        complain("eases " + movement + ", which the exercise does not ask for", "take it out of \"eases\"");
      else if (!isLess)
        complain("asks hardly less of " + movement, "take it out of \"eases\", or lower \"leastPercent\"");
    }
  }

  const movement::Figure& figure_;
  const Exercise& exercise_;
  std::size_t form_;
  base::Issues& issues_;
  const std::vector<Demand>& asked_;
  std::vector<double> whole_;  ///< what the form shows of each demand
  bool isSound_ = true;        ///< one complaint tells for all rows
};

}  // namespace

void computeScales(const movement::Figure& figure, Exercise& exercise, base::Issues& issues) {
  const auto isSmallerAlready = [&](std::size_t form) {
    const auto& degrees = exercise.easings[form - 1].degrees;
    return std::any_of(degrees.begin(), degrees.end(),
                       [&](const auto& each) { return exercise.scaling->eases.count(each.first) != 0; });
  };
  for (std::size_t form = 0; form < figure.forms.size(); ++form) {
    Scale scale;
    if (form == 0 || !isSmallerAlready(form)) scale = ScaleMaker(figure, exercise, form, issues).run();
    exercise.scaling->scales.push_back(std::move(scale));
  }
}

}  // namespace stile::plan
