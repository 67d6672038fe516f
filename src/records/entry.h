// One line of a record: written once, never edited. Only a draft of answers is replaced.
#pragma once

#include <string>
#include <string_view>

namespace stile::records {

/// The one kind that may be replaced and removed.
inline constexpr std::string_view kDraftKind = "draft";

struct Entry {
  std::string id;        ///< random
  std::string kind;      ///< see records/client_record.h for what each kind carries
  long long writtenMs = 0;  ///< UTC, milliseconds since 1970
  std::string by;        ///< sign-in name of who wrote it
  std::string signer;    ///< sign-in name when signed, else ""
  std::string body;      ///< JSON, or the text of a paper
};

}  // namespace stile::records
