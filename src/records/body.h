// The body of an entry, read leniently: entries were checked when they were filed (entry_kinds.h),
// and one of an older program may lack a member.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "json/document.h"

namespace stile::records {

class Body {
 public:
  explicit Body(const std::string& text);
  bool isReadable() const { return document_ != nullptr; }
  std::optional<json::Node> root() const;
  std::string text(std::string_view key) const;  ///< "" when absent
  std::optional<base::Date> date(std::string_view key) const;
  bool flag(std::string_view key) const;  ///< false when absent
  std::optional<long long> number(std::string_view key) const;
  std::vector<std::string> texts(std::string_view key) const;

 private:
  std::optional<json::Node> find(std::string_view key) const;
  std::shared_ptr<const json::Document> document_;
};

}  // namespace stile::records
