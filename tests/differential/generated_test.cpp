// The generated expressions themselves: Stile answers all of them, the same way each time.
#include <catch2/catch.hpp>

#include "case_writer.h"

using namespace stile::differential;

TEST_CASE("generated expressions are answered, mostly with something") {
  Counts counts;
  const std::string text = writeCases(kSeed, 1000, counts);
  Counts again;
  CHECK(writeCases(kSeed, 1000, again) == text);
  Counts other;
  CHECK(writeCases(kSeed + 1, 1000, other) != text);
  CHECK(counts.cases > 950);
  CHECK(counts.answered + counts.empty + counts.refused == counts.cases);
  // A comparison says something only where most expressions have an answer.
  CHECK(counts.answered * 2 > counts.cases);
  CHECK(counts.refused * 4 < counts.cases);
}
