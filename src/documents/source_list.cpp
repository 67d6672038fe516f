#include "documents/source_list.h"

#include <algorithm>

namespace stile::documents {

std::string SourceList::cite(const std::vector<std::string>& sourceIds) {
  std::string numbers, plain;
  for (const std::string& id : sourceIds) {
    if (id == rules::kNoSource) {
      plain = id;
      continue;
    }
    auto at = std::find(ids_.begin(), ids_.end(), id);
    if (at == ids_.end()) at = ids_.insert(ids_.end(), id);
    numbers += (numbers.empty() ? "" : ", ") + std::to_string(at - ids_.begin() + 1);
  }
  if (numbers.empty()) return plain;
  return numbers + (plain.empty() ? "" : "; " + plain);
}

Rows SourceList::listed() const {
  Rows rows;
  rows.isCompact = true;
  for (std::size_t i = 0; i < ids_.size(); ++i)
    rows.rows.push_back({std::to_string(i + 1) + ".", {rules_.cite(ids_[i])}, {}});
  return rows;
}

}  // namespace stile::documents
