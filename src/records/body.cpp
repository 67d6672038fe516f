#include "records/body.h"

namespace stile::records {

Body::Body(const std::string& text) {
  base::Issues ignored;
  document_ = json::Document::parse(text, "entry", ignored);
}

std::optional<json::Node> Body::root() const { return document_ ? std::optional(document_->root()) : std::nullopt; }

std::optional<json::Node> Body::find(std::string_view key) const { return document_ ? document_->root().find(key) : std::nullopt; }

std::string Body::text(std::string_view key) const {
  const auto node = find(key);
  return node && node->isString() ? node->string() : "";
}

std::optional<base::Date> Body::date(std::string_view key) const { return base::Date::parse(text(key)); }

bool Body::flag(std::string_view key) const {
  const auto node = find(key);
  return node && node->isBoolean() && node->boolean();
}

std::optional<long long> Body::number(std::string_view key) const {
  const auto node = find(key);
  return node && node->isNumber() ? node->integer() : std::nullopt;
}

std::vector<std::string> Body::texts(std::string_view key) const {
  std::vector<std::string> all;
  const auto node = find(key);
  for (std::size_t i = 0; node && node->isArray() && i < node->size(); ++i)
    if (node->at(i).isString()) all.push_back(node->at(i).string());
  return all;
}

}  // namespace stile::records
