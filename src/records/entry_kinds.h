// The kinds of entries a client's record is made of, and what each must say.
//
// Entries are written once. What stands of a client today is folded from them (client_record.h), so
// nothing that was true on a day is ever overwritten.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "records/entry.h"

namespace stile::records {

enum class MemberType {
  Text,       ///< not empty when required
  Date,       ///< YYYY-MM-DD
  Flag,
  Number,     ///< whole
  Texts,
  Word,       ///< one of `words`
  Reference,  ///< id of an entry of kind `words[0]` in the same record
  Any,        ///< whatever: a response, a screening
};

struct Member {
  std::string name;
  MemberType type = MemberType::Text;
  bool isRequired = true;
  std::vector<std::string> words;
};

struct EntryKind {
  std::string id;
  std::string title;
  bool isSigned = false;
  bool isByHand = true;  ///< filed by people; others are made by use cases alone
  std::vector<Member> members;
};

const std::vector<EntryKind>& entryKinds();
const EntryKind* entryKind(std::string_view id);  ///< nullptr: no such kind

/// Checks a body against its kind: missing and unknown members, types, words, and that what it
/// refers to stands in `record`.
void checkBody(const EntryKind& kind, const std::string& text, const std::string& file, const std::vector<Entry>& record, base::Issues& issues);

}  // namespace stile::records
