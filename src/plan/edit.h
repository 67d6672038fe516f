// What a clinician changes in a starter plan. Plain data; the plan is then chosen anew round it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stile::plan {

enum class EditKind {
  Swap,  ///< `exercise` goes, `with` takes its place for the same purpose
  Pin,   ///< `exercise` is in the plan, in the place of another for its purpose
  Drop,  ///< `exercise`, or every exercise for the purpose of that id, is not in the plan
  Add,   ///< `exercise` is in the plan besides what is chosen anyway
};

inline constexpr std::array<EditKind, 4> kEditKinds{EditKind::Swap, EditKind::Pin, EditKind::Drop,
                                                    EditKind::Add};
const char* idOf(EditKind kind);

struct Edit {
  EditKind kind = EditKind::Pin;
  std::string exercise;
  std::string with;            ///< only of a swap
  std::string overrideReason;  ///< "" = nothing beyond the limits is asked for
};

/// Edits are taken in order; a later one about the same exercise takes the place of an earlier one.
struct Edits {
  std::string by;  ///< who asks, as it is printed; "" = "the clinician"
  std::vector<Edit> list;
};

/// An edit that was not followed, and why.
struct RefusedEdit {
  std::size_t index = 0;  ///< in Edits::list
  std::string because;
  bool needsOverride = false;  ///< it would be followed with a reason for going beyond the limits
};

}  // namespace stile::plan
