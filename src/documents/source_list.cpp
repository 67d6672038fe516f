#include "documents/source_list.h"

#include <algorithm>

namespace stile::documents {

std::string SourceList::cite(const std::vector<std::string>& sourceIds) {
  std::string numbers, plain;
  std::size_t count = 0;
  for (const std::string& id : sourceIds) {
    if (id == rules::kNoSource) {
      plain = id;
      continue;
    }
    auto at = std::find(ids_.begin(), ids_.end(), id);
    if (at == ids_.end()) at = ids_.insert(ids_.end(), id);
    numbers += (numbers.empty() ? "" : ", ") + std::to_string(at - ids_.begin() + 1);
    ++count;
  }
  if (numbers.empty()) return plain;
  return (count == 1 ? "source " : "sources ") + numbers + (plain.empty() ? "" : "; " + plain);
}

List SourceList::listed() const {
  List list;
  list.isNumbered = true;
  for (const std::string& id : ids_) list.items.push_back(rules_.cite(id));
  return list;
}

}  // namespace stile::documents
