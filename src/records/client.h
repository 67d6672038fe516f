// A client of the clinic: who it is, how to reach them, who their physician is.
#pragma once

#include <optional>
#include <string>

#include "base/date.h"
#include "base/issue.h"
#include "movement/build.h"

namespace stile::records {

struct Person {
  std::string name, place, telephone;
};

struct Client {
  std::string given, family;
  std::optional<base::Date> born;
  std::string record;  ///< the clinic's own record number; may be empty
  std::string telephone, email, address;
  Person emergencyContact;
  Person physician;
  /// Which figure the client wants to see in drawings; nothing said: the clinic's. Chosen, never worked out.
  std::optional<movement::Build> drawnBuild;

  std::string fullName() const { return given.empty() ? family : given + " " + family; }
};

/// Needs given, family and born; unknown members are issues.
Client loadClient(const std::string& text, const std::string& file, base::Issues& issues);
std::string toJson(const Client& client);

/// Small letters without diacritics, single spaces: what is compared when names are searched.
/// Letters outside Latin stay as they are.
std::string searchable(std::string_view text);

}  // namespace stile::records
