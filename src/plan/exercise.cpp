#include "plan/exercise.h"

namespace stile::plan {

const char* idOf(Section value) {
  switch (value) {
    case Section::WarmUp: return "warm-up";
    case Section::Aerobic: return "aerobic";
    case Section::Strength: return "strength";
    case Section::Balance: return "balance";
    case Section::Stretching: return "stretching";
    case Section::CoolDown: return "cool-down";
    case Section::Breathing: return "breathing";
  }
  return "";
}

std::optional<Section> sectionOf(std::string_view id) {
  for (Section section : kSections) {
    if (id == idOf(section)) return section;
  }
  return std::nullopt;
}

std::optional<DoseKind> doseKindOf(std::string_view id) {
  if (id == "minutes") return DoseKind::Minutes;
  if (id == "repetitions") return DoseKind::Repetitions;
  if (id == "holds") return DoseKind::Holds;
  if (id == "balanceHolds") return DoseKind::BalanceHolds;
  return std::nullopt;
}

std::optional<Load> loadOf(std::string_view id) {
  if (id == "none") return Load::None;
  if (id == "body") return Load::Body;
  if (id == "band") return Load::Band;
  if (id == "weight") return Load::Weight;
  return std::nullopt;
}

limits::Bay bayOf(Section section) {
  switch (section) {
    case Section::WarmUp:
    case Section::Aerobic:
    case Section::CoolDown: return limits::Bay::Aerobic;
    default: return limits::Bay::Strength;
  }
}

std::set<std::string> piecesOf(const Exercise& exercise) {
  std::set<std::string> pieces(exercise.equipment.begin(), exercise.equipment.end());
  for (const Setup& setup : exercise.setups) pieces.insert(setup.equipment.begin(), setup.equipment.end());
  for (const Easing& easing : exercise.easings)
    pieces.insert(easing.equipment.begin(), easing.equipment.end());
  if (exercise.scaling) pieces.insert(exercise.scaling->equipment.begin(), exercise.scaling->equipment.end());
  return pieces;
}

}  // namespace stile::plan
