// Generated cases with Stile's own answers, as JSON for the comparison with the reference engine.
#pragma once

#include <string>

namespace stile::differential {

inline constexpr unsigned kSeed = 20261125;
inline constexpr int kResources = 200;

/// What came out, for those who only count.
struct Counts {
  int cases = 0;
  int answered = 0;  ///< not empty, no error
  int empty = 0;
  int refused = 0;  ///< ended in an error
};

/// `{"seed", "resources": […], "cases": [{"resource", "expression", "answer": […]} or with "error"]}`.
/// The same seed and count give the same bytes. Resources that are not asked are written as well.
std::string writeCases(unsigned seed, int count, Counts& counts);

}  // namespace stile::differential
