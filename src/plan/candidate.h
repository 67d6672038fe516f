// Which exercises a client may do under the limits, and in which form: as written, eased, or on
// one side only. What cannot be done says why and which rules hold it back.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "plan/holders.h"
#include "plan/prescription.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// The mildest form of an exercise that runs into nothing.
struct Candidate {
  const Exercise* exercise = nullptr;
  const Setup* setup = nullptr;    ///< the place, if the exercise has several
  const Easing* easing = nullptr;  ///< nullptr = as written
  int percent = 100;               ///< of the full movement, when it is done smaller
  std::string saidSmaller;         ///< for the client: how far to go, when it is done smaller
  std::string side;                ///< "" both, "left only", "right only"
  std::vector<std::string> changedBy;  ///< rules that made the change necessary
  std::string changedBecause;          ///< for the clinician; "" when nothing is changed
  std::vector<std::string> preferredBy, discouragedBy;
  bool isAdapted() const { return easing != nullptr || percent < 100 || !side.empty(); }
  /// 0 as written, n = its n-th easing.
  std::size_t form() const { return easing == nullptr ? 0 : static_cast<std::size_t>(easing - exercise->easings.data()) + 1; }
};

enum class Ground {
  Limits,     ///< limits rule it out
  Equipment,  ///< a piece or ability is not certainly there
  Level,      ///< it comes later than the starting level
};

struct Refusal {
  const Exercise* exercise = nullptr;
  Ground ground = Ground::Limits;
  std::string because;
  std::vector<std::string> heldBy;  ///< rules, where limits rule it out
};

/// What fitting looks at; `limits` carry the surgical margin already.
struct Fitting {
  const Library::Doses& doses;
  const Request& request;
  const limits::Limits& limits;
  const Holders& holders;
  const Prescription& prescription;
};

std::variant<Candidate, Refusal> fit(const Exercise& exercise, const Fitting& fitting);

/// The form that goes least beyond the limits, for an exercise that fit() refuses: first the fewest things it
/// lacks or may not do, then the fewest degrees past the caps, done smaller where that helps. `beyond` is
/// filled with everything in its way. The section must be open.
Candidate fitBeyond(const Exercise& exercise, const Fitting& fitting, Refusal& beyond);

/// Facts of equipment the candidate uses, each once.
std::vector<std::string> equipmentOf(const Candidate& candidate);

}  // namespace stile::plan
