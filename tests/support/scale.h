// How many rounds a randomised test makes.
#pragma once

#include <algorithm>
#include <cstdlib>

namespace stile::test {

/// STILE_TEST_SCALE multiplies the counts of randomised tests; the seeds stay the same.
inline int scale() {
  const char* text = std::getenv("STILE_TEST_SCALE");
  return text == nullptr ? 1 : std::max(1, std::atoi(text));
}

}  // namespace stile::test
