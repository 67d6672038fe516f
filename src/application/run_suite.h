// The use case "run a conformance suite": a file of FHIRPath cases and the folder of their inputs.
#pragma once

#include <string>

#include "base/issue.h"
#include "base/result.h"
#include "expression/clock.h"

namespace stile::application {

/// One line (or JSON object) per case with its verdict, and totals.
struct SuiteReport {
  std::string text;
  std::size_t agreeing = 0;
  std::size_t differing = 0;
};

/// Runs every case. A file that cannot be read is a failure; a suite of another form is refused
/// with located issues. An input called x.xml is read from x.json where only that is there.
base::Result<SuiteReport> runSuite(const std::string& suiteFile, const std::string& inputFolder,
                                   const expression::Clock& clock, bool asJson, base::Issues& issues);

}  // namespace stile::application
