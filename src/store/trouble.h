// A failure on its way out of the store. Thrown inside the room only; every public function of
// the room turns it into a Result.
#pragma once

#include <string>

#include "base/result.h"

namespace stile::store {

struct Trouble {
  base::Failure failure;
};

[[noreturn]] inline void fail(base::FailureKind kind, std::string message) { throw Trouble{{kind, std::move(message)}}; }

/// Content that does not fit its seal, its list or its chain.
[[noreturn]] inline void failDamaged(const std::string& what) {
  fail(base::FailureKind::File, what + "; the clinic file was changed outside Stile or the disk is failing: "
                                "keep it as it is and go back to the last backup that verifies");
}

}  // namespace stile::store
