// Whether a clinic file is what was written: database, journal, records, signatures.
#pragma once

#include <string>

#include "store/database.h"
#include "store/keyring.h"

namespace stile::store {

struct Verification {
  std::string trouble;  ///< the first thing that does not fit, in words; "" when all fits
  long long journalEntries = 0;
  long long records = 0;
  long long entries = 0;
  long long signatures = 0;
  std::string mark;  ///< of the journal's end: "<entries>-<16 signs>", to be kept on paper

  bool isClean() const { return trouble.empty(); }
};

/// Reads everything. `mark` is one printed earlier, or "": with it, a whole file that was put back
/// to an older state is noticed. Without it that cannot be seen, and only that.
Verification verifyWith(Database& database, const Keyring& keys, const std::string& mark);

std::string markOf(long long entries, const std::string& hash);

}  // namespace stile::store
