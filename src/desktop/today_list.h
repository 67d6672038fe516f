// What the page "Today" shows: who waits for whom, and everybody whom a search finds. No window in it.
#pragma once

#include <string>
#include <vector>

#include "application/clinic.h"
#include "base/date.h"

namespace stile::desktop {

struct TodayRow {
  std::string id;
  std::string name;      ///< with the age: "Maren Oakshott, 63 years"
  std::string sentence;  ///< what is next
  std::string since;     ///< "since 19 November 2026", or ""
};

struct TodayGroup {
  std::string title;
  std::vector<TodayRow> rows;
};

/// With `part` empty: the worklist of the day by who is waited for, a client once under the most
/// pressing task, then everybody else under "Clients". Otherwise the clients found by that part of a
/// name or record number. Groups without rows are left out.
std::vector<TodayGroup> todayListOf(const application::Clinic& clinic, base::Date today, const std::string& part);

/// "63 years", or "" when the day of birth is not known.
std::string ageInWords(const std::string& born, base::Date today);
/// "Wednesday 25 November"
std::string dayInWords(base::Date day);

}  // namespace stile::desktop
