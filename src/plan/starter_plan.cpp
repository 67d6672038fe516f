#include "plan/starter_plan.h"

#include <algorithm>

#include "plan/planner.h"

namespace stile::plan {
namespace {

/// Everything a plan is made from besides the library; without it there is no plan.
class Preparation {
 public:
  Preparation(const Library& library, const Request& request)
      : holders_(request.findings, library.doses->surgicalMargin),
        limits_(holders_.withMargin(request.limits)),
        prescription_(prescribe(*library.doses, request, holders_)),
        fitting_{*library.doses, request, limits_, holders_, prescription_} {}
  Preparation(const Preparation&) = delete;
  Preparation& operator=(const Preparation&) = delete;

  const Fitting& fitting() const { return fitting_; }

 private:
  Holders holders_;
  limits::Limits limits_;
  Prescription prescription_;
  Fitting fitting_;
};

bool isAtRest(const Library& library, const Request& request) {
  const auto rest = limits::Rung::None;
  return library.doses == nullptr || (request.usable.aerobic == rest && request.usable.strength == rest);
}

}  // namespace

StarterPlan makeStarterPlan(const Library& library, const Request& request) {
  if (isAtRest(library, request)) return {};
  const Preparation preparation(library, request);
  if (preparation.fitting().prescription.level == nullptr) return {};
  return Planner(library, preparation.fitting()).run();
}

EditedPlan editStarterPlan(const Library& library, const Request& request, const Edits& edits) {
  EditedPlan result;
  if (isAtRest(library, request)) {
    for (std::size_t i = 0; i < edits.list.size(); ++i) result.refused.push_back({i, "there is no plan to change", false});
    return result;
  }
  const Preparation preparation(library, request);
  if (preparation.fitting().prescription.level == nullptr) return result;
  const StarterPlan unedited = Planner(library, preparation.fitting()).run();
  // What cannot be followed is left out and the rest is tried again, as if it had not been asked for.
  Edits kept{edits.by, {}};
  std::vector<std::size_t> indices;
  for (std::size_t i = 0; i < edits.list.size(); ++i) kept.list.push_back(edits.list[i]), indices.push_back(i);
  while (true) {
    Planner planner(library, preparation.fitting());
    const auto refused = planner.take(kept, unedited);
    if (refused.empty()) {
      result.plan = planner.run();
      break;
    }
    for (auto one = refused.rbegin(); one != refused.rend(); ++one) {
      const auto at = static_cast<std::ptrdiff_t>(one->index);
      if (one != refused.rbegin() && std::prev(one)->index == one->index) continue;
      result.refused.push_back({indices[one->index], one->because, one->needsOverride});
      kept.list.erase(kept.list.begin() + at);
      indices.erase(indices.begin() + at);
    }
  }
  std::sort(result.refused.begin(), result.refused.end(),
            [](const RefusedEdit& a, const RefusedEdit& b) { return a.index < b.index; });
  for (Line& line : result.plan.lines) {
    const auto isSame = [&](const Line& before) { return before.exercise == line.exercise; };
    if (line.pinnedBy.empty() && std::none_of(unedited.lines.begin(), unedited.lines.end(), isSame))
      line.chosenBecause += " New in the plan since it was changed.";
  }
  return result;
}

}  // namespace stile::plan
