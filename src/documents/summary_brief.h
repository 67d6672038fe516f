// How much the first part of the summary tells, so that it stays on two pages.
#pragma once

#include <algorithm>
#include <cstddef>

#include "screening/screening.h"

namespace stile::documents {

/// Counts of what is told in full or by name; the annex has all of it. The more was found, the less of
/// each is told: a client with eighty findings is read from the gravest few.
struct Brief {
  std::size_t findings = 6, medicines = 3;  ///< in full
  std::size_t reasons = 1;                  ///< facts behind each
  std::size_t titles = 16;                  ///< of further findings
  std::size_t cited = 4;                    ///< numbers of findings behind a limit
  std::size_t referralSentences = 2;        ///< for each of why, what to ask, what to do meanwhile
  std::size_t checks = 9, policies = 6, askedBack = 6, adapted = 4;
  std::size_t questions = 5;                ///< by name for each stake
  std::size_t toSettle = 8;

  static Brief of(const screening::Screening& screening) {
    const auto certain = std::count_if(screening.findings.begin(), screening.findings.end(),
                                       [](const rules::Finding& one) { return one.standing == rules::Standing::Certain; });
    if (certain <= 10) return {};
    if (certain <= 24) return {4, 2, 1, 10, 3, 1, 5, 2, 2, 2, 2, 1};
    if (certain <= 48) return {4, 2, 1, 8, 2, 1, 6, 3, 2, 3, 3, 4};
    if (certain <= 64) return {3, 1, 1, 6, 1, 1, 4, 2, 1, 2, 1, 2};
    return {3, 1, 1, 4, 1, 1, 3, 1, 1, 1, 1, 1};
  }
};

}  // namespace stile::documents
